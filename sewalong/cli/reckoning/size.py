"""`size`: from the pieces cut to the unit, or from the unit wanted to the pieces to cut."""

from __future__ import annotations

import argparse
from collections.abc import Iterator, Mapping
from fractions import Fraction

from sewalong.cli.frame.context import Context
from sewalong.cli.frame.errors import CommandError
from sewalong.cli.frame.length_arguments import method_named, read, read_or_none, read_size, unit_of
from sewalong.cli.frame.line_report import told
from sewalong.cli.frame.report import Report
from sewalong.cli.reckoning.strip_taken import strip_taken
from sewalong.lengths import Length, Unit, as_given, show
from sewalong.piecing.definition import Definition
from sewalong.piecing.derive import SEAM, Derivation, derive, start_for
from sewalong.piecing.start_sizes import StartSize
from sewalong.quilt.as_fraction import as_fraction, exactly
from sewalong.quilt.size import Size
from sewalong.quilt.unit_size import off_its_corner, raw_unit, unit_sewn_with, why_not_trimmed_to
from sewalong.quilt.worksheet.line import Line, size_line
from sewalong.quilt.worksheet.unit_lines import edge_line, seam_room_line, trim_line


def size(args: argparse.Namespace, context: Context) -> Report:
    """`size --method M` with --square or --strip, or with --finishes or --unfinished."""
    unit = unit_of(args)
    seam = read(args, "seam", SEAM)
    written = method_named(args.method)
    start, finishes, unfinished = (
        read_or_none(args, name) for name in ("start", "finishes", "unfinished")
    )
    given = [one for one in (start, finishes, unfinished) if one is not None]
    if len(given) != 1:
        raise CommandError(
            "Give one of --square (or --strip), --finishes and --unfinished: the size cut, the "
            "size wanted without its seams, or with them."
        )
    if start is not None:
        sizes: Mapping[str, Length] = {written.starts[0].pile: start}
    else:
        wanted = start_for(
            written,
            finishes=finishes,
            unfinished=unfinished,
            seam=seam,
            fineness=_step(args, unit),
            unit=unit,
        )
        sizes = {pile: one.cutting for pile, one in wanted.items()}
    strip = strip_taken(written, args, sizes[written.starts[0].pile])
    made = derive(
        written,
        sizes,
        seam,
        strip_length=strip.length,
        fineness=_step(args, unit),
        unit=unit,
    )
    lines: list[Line] = []
    if start is None:
        lines += _to_cut(written, wanted, unit)
    else:
        lines += _cut(written, made, unit)
    trim = None if args.trim_to is None else read_size(args, "trim-to")
    lines += [*strip.lines, *_unit(made, trim, unit)]
    own = read_or_none(args, "own-seam")
    if own is not None:
        lines += _own(made, own, unit)
    return told(lines, method=written.id, unit=unit.value)


def _step(args: argparse.Namespace, unit: Unit) -> Length:
    return read(args, "step", unit.step)


def _to_cut(written: Definition, wanted: Mapping[str, StartSize], unit: Unit) -> Iterator[Line]:
    for pile, one in wanted.items():
        many = written.noun(pile).many
        exact = exactly(one.exact, unit)
        shown = as_given(one.cutting, unit)
        same = as_fraction(one.exact) == one.cutting
        text = shown if same else f"{shown} (rounded up from {exact})"
        yield Line(f"cut {many} at", text, inches=float(one.cutting))


def _cut(written: Definition, made: Derivation, unit: Unit) -> Iterator[Line]:
    first, *others = written.starts
    start = made.starts[first.pile].cutting
    yield Line(written.noun(first.pile).many, as_given(start, unit), inches=float(start))
    yield from _to_cut(written, {one.pile: made.starts[one.pile] for one in others}, unit)


def _unit(made: Derivation, wanted: Size | None, unit: Unit) -> Iterator[Line]:
    """The unit and the size it is trimmed to: the one `wanted`, else the largest on the marks.

    Raises CommandError for a size it cannot be trimmed to.
    """
    raw = raw_unit(made.unit)
    if wanted is not None and (refusal := why_not_trimmed_to(made.unit, wanted, unit)):
        raise CommandError(refusal)
    trim = wanted or Size(*made.unit.trim_to(unit.trim_step))
    seam_said = show(made.seam, unit, fineness=unit.finest)
    yield size_line("unit unfinished", raw, unit, f"seams of {seam_said}")
    off = max(raw.width - trim.width, raw.length - trim.length)
    spare = f"{exactly(off, unit)} to trim off" if off > Fraction(1, 10**5) else "nothing to trim"
    yield trim_line(trim, unit, spare)
    is_trimmed = wanted is not None or made.trim_stage is not None
    yield from _finishes(raw.grown(-made.seam), trim.grown(-made.seam), is_trimmed, unit)
    yield seam_room_line(made, (trim.width, trim.length), unit)
    yield edge_line(made)
    if wanted is not None:
        yield _trimmed_off(raw, trim, unit)


def _finishes(raw: Size, trimmed: Size, is_trimmed: bool, unit: Unit) -> Iterator[Line]:
    """What it finishes at, as it is joined; both ways where trimming is left to the maker."""
    if is_trimmed or raw == trimmed:
        yield size_line("unit finishes at", trimmed, unit, "trimmed" if raw != trimmed else "")
    else:
        yield size_line("unit finishes at", raw, unit, "untrimmed")
        yield size_line("trimmed it finishes at", trimmed, unit)


def _trimmed_off(raw: Size, trim: Size, unit: Unit) -> Line:
    across, down = raw.width - trim.width, raw.length - trim.length
    return Line(
        "to trim off",
        f"{exactly(across, unit)} across, {exactly(down, unit)} down, half from each side",
        "keep a seam that runs to the corners on the ruler's diagonal; all taken from two sides "
        f"it would lie {exactly(off_its_corner(raw, trim), unit)} off its corner",
        float(across),
        float(down),
    )


def _own(made: Derivation, own: Length, unit: Unit) -> Iterator[Line]:
    sewn = unit_sewn_with(made.unit, own)
    lost = as_fraction(made.unit.width) - sewn.width
    way = "less" if lost > 0 else "more"
    reason = f"{exactly(abs(lost), unit)} {way} across" if lost else "the same"
    yield size_line("unit with your own seam", sewn, unit, f"unfinished; {reason}")

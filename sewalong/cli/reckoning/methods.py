"""`methods`: what methods there are, and all that follows from one of them, or from one's own."""

from __future__ import annotations

import argparse
import os
from collections import Counter
from collections.abc import Iterator
from fractions import Fraction

from sewalong.cli.frame.context import Context
from sewalong.cli.frame.errors import CommandError
from sewalong.cli.frame.faults_report import faults_report
from sewalong.cli.frame.input_files import read_bytes
from sewalong.cli.frame.length_arguments import method_named, read, read_or_none, unit_of
from sewalong.cli.frame.line_report import told
from sewalong.cli.frame.method_beside import LONGEST_METHOD_FILE
from sewalong.cli.frame.report import Report
from sewalong.cli.reckoning.strip_taken import strip_taken
from sewalong.lengths import Unit, as_given
from sewalong.piecing.catalogue import method_ids, written_method
from sewalong.piecing.definition import Definition
from sewalong.piecing.derive import SEAM, Derivation, derive
from sewalong.piecing.faults import MethodFault, SizeRefused
from sewalong.piecing.method import Method, MethodKey, Pieces
from sewalong.piecing.method_counts import count_out
from sewalong.piecing.same_when_turned import kinds
from sewalong.quilt.as_fraction import as_fraction
from sewalong.quilt.file.faults import MethodFileFaults
from sewalong.quilt.file.method_file import method_text, read_method
from sewalong.quilt.size import Size
from sewalong.quilt.unit_size import raw_unit, usual_unit
from sewalong.quilt.worksheet.line import Line, length_line, size_line
from sewalong.quilt.worksheet.unit_lines import edge_line
from sewalong.wall.picture import picture_of
from sewalong.wall.pieces import finished_unit

PICTURE = 24
"""Letters in a row of a picture of a unit."""


def methods(args: argparse.Namespace, context: Context) -> Report:
    """`methods`: one a line, with what it is. `methods show M`: its stages and what it makes.

    `methods check FILE`: every fault of a method file, or the same of the method in it.
    """
    if args.what == "show":
        if args.method is None:
            raise CommandError("Which one? Give its name: sewalong methods show stacked-four-patch")
        return _shown(method_named(args.method), args)
    if args.what == "check":
        if args.method is None:
            raise CommandError("Which file? Give its name: sewalong methods check my-method.toml")
        return check_method(args)
    found = [written_method(id) for id in method_ids()]
    lines = tuple(f"{one.id}: {one.name}. {one.about}" for one in found)
    data = [{"id": one.id, "name": one.name, "about": one.about} for one in found]
    return Report(lines, {"methods": data})


def check_method(args: argparse.Namespace) -> Report:
    """The faults are what it has to tell, so they are printed as its answer."""
    file = args.method
    try:
        text = method_text(read_bytes(file, LONGEST_METHOD_FILE))
        written = read_method(os.path.basename(file), text)
    except MethodFileFaults as error:
        return faults_report(file, error.faults)
    try:
        report = _shown(written, args)
    except (SizeRefused, MethodFault) as refusal:
        why = refusal.bare if isinstance(refusal, MethodFault) else str(refusal)
        raise CommandError(
            f"The file has no faults, but no unit comes of pieces of this size: {why} Give another "
            "--square, --strip or --seam."
        ) from refusal
    first = f"No faults: {written.name}"
    return Report((first, *report.lines), {"file": file, "faults": [], **report.data})


def _shown(written: Definition, args: argparse.Namespace) -> Report:
    """Stages, sizes, piles, edges, where each fabric lands, and which units lean the other way."""
    unit = unit_of(args)
    seam = read(args, "seam", SEAM)
    strip = strip_taken(written, args)
    start = strip.width if written.starts[0].strip else read(args, "start", Fraction(5))
    strip_length = strip.length
    made = derive(written, start, seam, strip_length=strip_length, unit=unit)
    method = count_out(written, MethodKey(written.id, start, strip_length, seam))
    rows = _picture(made)
    lines = [
        Line("method", f"{method.name}, {method.id}", method.about),
        *strip.lines,
        *_starts(method, made, unit, given=read_or_none(args, "start") is not None),
        *_stages(method, made, unit),
        *_piles(method, made, unit),
        edge_line(made),
        *_landing(made),
        *_handed(made),
        *(Line(f"picture, row {n:>2}", row) for n, row in enumerate(rows, start=1)),
    ]
    report = told(lines, method=method.id, unit=unit.value)
    stages = [_stage_data(method, made, stage.id) for stage in method.stages]
    more = {"stages": stages, "units": _units_data(made), "picture": rows}
    return Report(report.lines, {**report.data, **more})


def _pieces(method: Method, pieces: Pieces) -> str:
    return method.pile(pieces.pile).noun.count(pieces.count)


def _starts(method: Method, made: Derivation, unit: Unit, *, given: bool) -> Iterator[Line]:
    for pile in method.starts:
        noun = method.pile(pile).noun
        per_unit = made.per_unit[pile]
        reason = f"{per_unit} to a unit" if per_unit.denominator == 1 else f"{per_unit} of one"
        example = "" if given else "; an example, give --square or --strip for yours"
        yield length_line(f"begins with {noun.many}", made.starts[pile].cutting, unit,
                          f"{reason}{example}")  # fmt: skip


def _stages(method: Method, made: Derivation, unit: Unit) -> Iterator[Line]:
    for number, stage in enumerate(method.stages, start=1):
        takes = " and ".join(_pieces(method, one) for one in stage.takes)
        work = made.stage(stage.id)
        sewn = f", {as_given(work.sewn, unit)} of seam" if work.sewn else ""
        yield Line(
            f"stage {number}, {stage.label}",
            f"takes {takes}, makes {_pieces(method, stage.makes)}{sewn}",
            f"{stage.station.value}; {stage.do}",
            work.sewn or None,
        )


def _piles(method: Method, made: Derivation, unit: Unit) -> Iterator[Line]:
    joined = usual_unit(made, unit)
    trimmed = ", trimmed" if joined != raw_unit(made.unit) else ""
    for pile in method.piles:
        if pile.id == method.unit:
            yield size_line(f"one {pile.noun.one}", joined, unit, f"unfinished{trimmed}")
        else:
            width, height = made.piles[pile.id].size
            size = Size(as_fraction(width), as_fraction(height))
            yield size_line(f"one {pile.noun.one}", size, unit, "unfinished")
    yield size_line("unit finishes at", joined.grown(-made.seam), unit)


def _landing(made: Derivation) -> Iterator[Line]:
    """Fabric by fabric, where it shows in each different unit, in reading order."""
    for number, flat in enumerate(made.units, start=1):
        shares = flat.shares(float(made.seam))
        patches = [f"{letter} on {share:.0%}" for letter, share in shares]
        yield Line(f"unit {number} of a batch", f"shows {', '.join(patches)}", "in reading order")
    names = ", ".join(f"{letter} a {pile}" for letter, pile in sorted(made.letters.items()))
    yield Line("fabrics of a batch", f"{made.unit_count} units from {names}")


def _picture(made: Derivation) -> list[str]:
    """The first unit of a batch once its seams are taken, each fabric by its letter."""
    picture = picture_of(finished_unit(made, 0), PICTURE, PICTURE // 2)
    return ["".join(key or " " for key in upper) for upper, _ in picture.pairs]


def _handed(made: Derivation) -> Iterator[Line]:
    """Units that cannot be turned to look alike: cloth can be turned, but not turned over."""
    if len(made.units) == 1:
        yield Line("handedness", "all units of a batch are alike")
        return
    found = kinds(made.units)
    groups = "; ".join(" and ".join(str(place + 1) for place in kind) for kind in found)
    text = "all units can be turned to look alike"
    if len(found) > 1:
        text = f"{len(found)} kinds that no turning makes alike: units {groups}"
    yield Line("handedness", text, "prints that stand one way up may still differ")


def _stage_data(method: Method, made: Derivation, id: str) -> dict[str, object]:
    stage, work = method.stage(id), made.stage(id)
    return {
        "id": stage.id,
        "label": stage.label,
        "station": stage.station.value,
        "hazards": [hazard.value for hazard in stage.hazards],
        "takes": dict(Counter({one.pile: one.count for one in stage.takes})),
        "makes": {stage.makes.pile: stage.makes.count},
        "sewn_inches": work.sewn,
        "do": stage.do,
        "check": stage.check,
    }


def _units_data(made: Derivation) -> list[list[dict[str, object]]]:
    """The polygons of each different unit, finished, in inches."""
    return [
        [
            {"letter": patch.letter, "points": [list(point) for point in patch.points],
             "turn": patch.turn}
            for patch in flat.finished(float(made.seam))
        ]
        for flat in made.units
    ]  # fmt: skip

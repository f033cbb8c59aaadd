"""Sizes: what is cut, what lies in each pile, the unit, the row, and the top border by border."""

from __future__ import annotations

from collections.abc import Iterator

from sewalong.lengths import as_given, show
from sewalong.quilt.as_fraction import as_fraction, exactly
from sewalong.quilt.cloth.borders import borders
from sewalong.quilt.cloth.row import row_length
from sewalong.quilt.cloth.to_cut import to_cut
from sewalong.quilt.layouts.setting_straight import straight_top, with_own_seam
from sewalong.quilt.size import Size
from sewalong.quilt.worksheet.basis import Basis
from sewalong.quilt.worksheet.line import (
    Line,
    Section,
    attempt,
    length_line,
    size_line,
    size_text,
)
from sewalong.quilt.worksheet.unit_lines import edge_line, seam_room_line


def sizes(basis: Basis) -> Section:
    """Starting pieces at their label, each pile unfinished, the unit, and the top."""
    lines = [
        *_starts(basis),
        *_piles(basis),
        *attempt("unit", lambda: _unit(basis)),
        *_top(basis),
        *attempt("units trimmed", lambda: _trimmed(basis)),
    ]
    if basis.choices.own_seam is not None:
        lines += attempt("own seam", lambda: _own_seam(basis))
    return Section("sizes", "Sizes", tuple(lines))


def rows(basis: Basis) -> Section:
    """How long the centre is after each row, to hold against the real one while joining."""
    unit, seam = basis.shown_in, basis.quilt.seam
    lines = [
        length_line(f"after row {row}", row_length(row, basis.unit.length, seam), unit)
        for row in range(1, basis.target.rows + 1)
    ]
    return Section("rows", "Row by row, down, raw edge to raw edge", tuple(lines))


def _starts(basis: Basis) -> Iterator[Line]:
    unit = basis.shown_in
    method = basis.quilt.method
    for start in basis.quilt.starts:
        noun = method.pile(start.pile).noun
        there = f"{start.count} at their label"
        if start.packs is not None:
            packs = "1 pack" if start.packs == 1 else f"{start.packs} packs"
            there = f"{start.count} in {packs}, at their label"
        if start.length is None:
            text = as_given(start.size, unit)
        else:
            text = f"{as_given(start.size, unit)} wide, {as_given(start.length, unit)} long"
        yield Line(noun.many, text, there, float(start.size))


def _piles(basis: Basis) -> Iterator[Line]:
    method = basis.quilt.method
    skipped = {method.unit, *method.starts}
    for pile in method.piles:
        if pile.id not in skipped:
            width, height = basis.made.piles[pile.id].size
            size = Size(as_fraction(width), as_fraction(height))
            yield size_line(pile.noun.one, size, basis.shown_in, "unfinished")


def _unit(basis: Basis) -> Iterator[Line]:
    unit = basis.shown_in
    seam = basis.quilt.seam
    yield size_line("unit unfinished", basis.unit, unit)
    yield size_line("unit finishes at", basis.unit.grown(-seam), unit)
    yield edge_line(basis.made)
    trim = basis.made.unit.trim_to(unit.trim_step)
    yield size_line(
        "trim units to",
        Size(*trim),
        unit,
        "the largest whole eighth of an inch"
        if unit.symbol == "in"
        else "the largest whole half centimetre",
    )
    yield seam_room_line(basis.made, trim, unit)


def _top(basis: Basis) -> Iterator[Line]:
    unit, target = basis.shown_in, basis.target
    row = row_length(target.columns, basis.unit.width, basis.quilt.seam)
    yield length_line(f"row of {target.columns}", row, unit, "raw edge to raw edge")
    yield size_line(
        "centre",
        basis.centre,
        unit,
        f"{target.rows} rows of {target.columns}, raw edge to raw edge",
    )
    for number, (border, edge) in enumerate(
        zip(basis.quilt.borders, basis.edges[1:], strict=True), start=1
    ):
        width = to_cut(border.cut, unit).length - 2 * basis.quilt.seam
        reason = f"{border.cloth} adds {as_given(width, unit)} each side, raw edge to raw edge"
        yield size_line(f"with border {number}", edge, unit, reason)
    yield size_line("top finishes at", basis.finishes_at, unit, "once it is bound")


def _trimmed(basis: Basis) -> Iterator[Line]:
    """The same top from units all trimmed to the largest whole step."""
    unit, seam, target = basis.shown_in, basis.quilt.seam, basis.target
    trimmed = Size(*basis.made.unit.trim_to(unit.trim_step))
    if trimmed == basis.unit:
        return
    centre = straight_top(target.rows, target.columns, trimmed, seam)
    finishes = centre.grown(basis.border_in_all - seam)
    reason = f"from units trimmed to {trimmed.show(unit)}"
    yield size_line("top of trimmed units finishes at", finishes, unit, reason)


def _own_seam(basis: Basis) -> Iterator[Line]:
    """What her measured seam does; borders sewn with it too."""
    own = basis.choices.own_seam
    assert own is not None
    unit, quilt, target = basis.shown_in, basis.quilt, basis.target
    wider = float(own - quilt.seam)
    made = basis.made.unit
    own_unit = Size(
        as_fraction(made.width - wider * made.width_per_seam),
        as_fraction(made.height - wider * made.height_per_seam),
    )
    change = with_own_seam(target.rows, target.columns, basis.unit, quilt.seam, own_unit, own, unit)
    found = borders(change.sewn, basis.plans, seam=own, unit=unit)
    top = (found[-1].outer if found else change.sewn).grown(-own)
    seam_said = show(own, unit, fineness=unit.finest)
    yield size_line(f"unit with your own seam of {seam_said}", own_unit, unit, "unfinished")
    yield size_line("centre with your own seam", change.sewn, unit, change.reason)
    yield Line(
        "top with your own seam finishes at",
        size_text(top, unit),
        _differs(basis.finishes_at, top, basis),
        float(top.width),
        float(top.length),
    )


def _differs(planned: Size, sewn: Size, basis: Basis) -> str:
    unit = basis.shown_in
    ways = []
    for lost, where in (
        (planned.width - sewn.width, "across"),
        (planned.length - sewn.length, "down"),
    ):
        if lost == 0:
            ways.append(f"the same {where}")
        else:
            ways.append(f"{exactly(abs(lost), unit)} {'less' if lost > 0 else 'more'} {where}")
    return ", ".join(ways)

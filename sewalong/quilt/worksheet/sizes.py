"""Sizes: what is cut, what lies in each pile, the unit, the row, and the top border by border."""

from __future__ import annotations

from collections.abc import Iterator

from sewalong.lengths import Unit, as_given, show
from sewalong.piecing.faults import SizeRefused
from sewalong.piecing.method import Noun
from sewalong.quilt.as_fraction import as_fraction, exactly
from sewalong.quilt.cloth.borders import borders
from sewalong.quilt.cloth.row import row_length
from sewalong.quilt.cloth.to_cut import to_cut
from sewalong.quilt.derived import derived
from sewalong.quilt.layouts.centre import centre, in_a_line, sashes_of
from sewalong.quilt.layouts.setting_straight import with_own_seam
from sewalong.quilt.point import point_lost
from sewalong.quilt.quilt import Lot, StartPile, with_lot_alone
from sewalong.quilt.size import Size
from sewalong.quilt.unit_size import joined_from, raw_unit, trim_text, unit_sewn_with
from sewalong.quilt.worksheet.basis import Basis
from sewalong.quilt.worksheet.line import (
    Line,
    Section,
    attempt,
    length_line,
    plural,
    size_line,
    size_text,
)
from sewalong.quilt.worksheet.unit_lines import edge_line, point_lines, seam_room_line, trim_line


def sizes(basis: Basis) -> Section:
    """Starting pieces at their label, each pile unfinished, the unit, and the top."""
    lines = [
        *_starts(basis),
        *_piles(basis),
        *attempt("unit", lambda: _unit(basis)),
        *_top(basis),
        *attempt("units trimmed", lambda: _could_be_trimmed(basis)),
    ]
    if basis.choices.own_seam is not None:
        lines += attempt("own seam", lambda: _own_seam(basis))
    return Section("sizes", "Sizes", tuple(lines))


def rows(basis: Basis) -> Section:
    """How long the centre is after each row, to hold against the real one while joining."""
    unit, seam = basis.shown_in, basis.quilt.seam
    sashing = basis.quilt.sashing
    if basis.quilt.is_on_point:
        return Section("rows", "Slanting row by row, raw edge to raw edge", _slanting(basis))
    if sashing is None:
        lines = [
            length_line(f"after row {row}", row_length(row, basis.unit.length, seam), unit)
            for row in range(1, basis.target.rows + 1)
        ]
    else:
        reached = sashes_of(basis.quilt, sashing, basis.target, basis.unit).down_to
        first = 1 if sashing.frame else 0
        lines = [
            length_line(_after(place + 1 - first), finished + 2 * seam, unit)
            for place, finished in enumerate(reached)
        ]
    return Section("rows", "Row by row, down, raw edge to raw edge", tuple(lines))


def _slanting(basis: Basis) -> tuple[Line, ...]:
    """The units of each row without the triangles at its ends, which are trimmed later."""
    rows = basis.quilt.rows_for(basis.target)
    return tuple(
        length_line(
            f"units of row {number}",
            row_length(row.units, basis.unit.width, basis.quilt.seam),
            basis.shown_in,
            f"{plural(row.units, 'unit')}, {plural(row.sides, 'side triangle')}",
        )
        for number, row in enumerate(rows, start=1)
    )


def _after(place: int) -> str:
    """What was joined last, of rows and the sashes between them; 0 is a frame's first sash."""
    row, is_row = divmod(place, 2)
    if not place:
        return "after the sash above row 1"
    return f"after row {row + 1}" if is_row else f"after the sash below row {row}"


def _starts(basis: Basis) -> Iterator[Line]:
    method = basis.quilt.method
    for start in basis.quilt.starts:
        noun = method.pile(start.pile).noun
        for lot in start.in_lots:
            yield _lot(noun, start, lot, basis)
        if start.lots:
            for lot in start.lots:
                yield _gives(noun, start, lot, basis)


def _lot(noun: Noun, start: StartPile, lot: Lot, basis: Basis) -> Line:
    unit = basis.shown_in
    there = f"{lot.count} at their label"
    if lot.packs is not None:
        there = f"{lot.count} in {plural(lot.packs, 'pack')}, at their label"
    text, size = as_given(lot.size, unit), lot.size
    if not start.lots and (size := basis.quilt.cut_at(start)) != start.size:
        text, there = to_cut(start.size, unit).text, f"{lot.count}, and all sizes follow that"
    if start.length is not None:
        text = f"{text} wide, {as_given(start.length, unit)} long"
    return Line(noun.many, text, there, float(size))


def _gives(noun: Noun, start: StartPile, lot: Lot, basis: Basis) -> Line:
    """What units of this lot alone would come to, and which lot all units follow."""
    unit = basis.shown_in
    label = f"units of {noun.many} of {as_given(lot.size, unit)}"
    reason = "which all units follow" if lot.size == start.size else "if they were all so"
    try:
        return size_line(
            label, raw_unit(derived(with_lot_alone(basis.quilt, start, lot)).unit), unit, reason
        )
    except SizeRefused as refused:
        return Line(label, str(refused))


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
    untrimmed = "before it is trimmed" if basis.raw_unit != basis.unit else ""
    yield size_line("unit unfinished", basis.raw_unit, unit, untrimmed)
    if basis.is_trimmed:
        yield trim_line(basis.unit, unit, _why_so(basis))
    yield size_line("unit finishes at", basis.unit.grown(-seam), unit)
    yield edge_line(basis.made)
    yield from point_lines(basis.quilt, basis.made)
    if basis.is_trimmed:
        yield seam_room_line(basis.made, (basis.unit.width, basis.unit.length), unit)
        return
    could = basis.made.unit.trim_to(unit.trim_step)
    largest = f"{_LARGEST[unit]}; once you say that they are, all sizes follow it"
    yield size_line("units can be trimmed to", Size(*could), unit, largest)
    yield seam_room_line(basis.made, could, unit)


_LARGEST = {
    Unit.INCH: "the largest whole eighth of an inch",
    Unit.CM: "the largest whole half centimetre",
}


def _why_so(basis: Basis) -> str:
    if basis.quilt.trim is not None:
        return "as decided"
    if basis.unit == basis.raw_unit:
        return "nothing to trim off"
    shape = basis.made.unit.shape
    if shape is None:
        return _LARGEST[basis.shown_in]
    so = f"the largest on whole marks that finishes {shape.denominator} to {shape.numerator}"
    return so if point_lost(basis.made) else f"{so}, so that the point keeps its allowance"


def _top(basis: Basis) -> Iterator[Line]:
    unit, target = basis.shown_in, basis.target
    if not basis.quilt.is_on_point:
        row = in_a_line(basis.quilt, basis.unit.width, target.columns, whole=True)
        yield length_line(f"row of {target.columns}", row, unit, "raw edge to raw edge")
    yield size_line(
        "centre",
        basis.centre,
        unit,
        f"{target.rows} rows of {target.columns}{_set(basis)}, raw edge to raw edge",
    )
    for number, (border, edge) in enumerate(
        zip(basis.quilt.borders, basis.edges[1:], strict=True), start=1
    ):
        width = to_cut(border.cut, unit).length - 2 * basis.quilt.seam
        reason = f"{border.cloth} adds {as_given(width, unit)} each side, raw edge to raw edge"
        yield size_line(f"with border {number}", edge, unit, reason)
    yield size_line("top finishes at", basis.finishes_at, unit, "once it is bound")


def _set(basis: Basis) -> str:
    sashing = basis.quilt.sashing
    if basis.quilt.is_on_point:
        return f" on point and those between, {basis.units:,} units in all"
    if sashing is None:
        return ""
    width = to_cut(sashing.cut, basis.shown_in).length - 2 * basis.quilt.seam
    around = " and around" if sashing.frame else ""
    return f" with sashes of {as_given(width, basis.shown_in)} finished between{around}"


def _could_be_trimmed(basis: Basis) -> Iterator[Line]:
    """The same top if units were trimmed to the largest whole step, where they are not."""
    unit, seam = basis.shown_in, basis.quilt.seam
    trimmed = Size(*basis.made.unit.trim_to(unit.trim_step))
    if basis.is_trimmed or trimmed == basis.unit:
        return
    finishes = centre(basis.quilt, basis.target, trimmed).grown(basis.border_in_all - seam)
    reason = f"if all are trimmed to {trim_text(trimmed, unit)}"
    yield size_line("top of trimmed units finishes at", finishes, unit, reason)


def _own_seam(basis: Basis) -> Iterator[Line]:
    """What her measured seam does; borders sewn with it too."""
    own = basis.choices.own_seam
    assert own is not None
    unit, quilt = basis.shown_in, basis.quilt
    own_unit = unit_sewn_with(basis.made.unit, own)
    joined = joined_from(quilt, basis.made, own_unit)
    change = with_own_seam(basis.centre, centre(quilt, basis.target, joined, own), unit)
    found = borders(change.sewn, basis.plans, seam=own, unit=unit)
    top = (found[-1].outer if found else change.sewn).grown(-own)
    seam_said = show(own, unit, fineness=unit.finest)
    trimmed = f", trimmed to {trim_text(joined, unit)}" if joined != own_unit else ""
    yield size_line(
        f"unit with your own seam of {seam_said}", own_unit, unit, f"unfinished{trimmed}"
    )
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

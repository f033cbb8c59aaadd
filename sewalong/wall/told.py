"""The unit and the top in words, as the pictures show them: one fact each, in reading order.

For whoever cannot see the pictures. Directions are said by row 1 and by where a row begins, never
by hands.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise

from sewalong.lengths import as_given, show
from sewalong.piecing.cloth import Flat, Patch, turned
from sewalong.piecing.derive import Derivation
from sewalong.piecing.geometry import box, centre, turn
from sewalong.quilt.derived import derived_if_any
from sewalong.quilt.quilt import Quilt, Target
from sewalong.quilt.set_rows import SetRow
from sewalong.quilt.web import passes
from sewalong.wall.tops import by_turns

CANNOT_BE_MADE = "The pieces are too small for their seams, so there is no unit to tell of."

MOST_PATCHES = 40
"""Patches of a unit told one by one; of more only how many there are."""

LEVEL = 1e-6
"""Inches: nearer than this, two ends are level."""

_TURNED = {
    0: "but one-way prints stand another way",
    2: "turned, so that its edge towards row 1 lies where the row goes on",
    4: "turned half way round",
    6: "turned, so that its edge towards row 1 lies where the row begins",
}
"""By eighths of a circle, x axis towards y axis."""


def unit_told(quilt: Quilt) -> tuple[str, ...]:
    """Every patch of the unit: which shape, where, of which fabric; and how its kinds differ."""
    derivation = derived_if_any(quilt)
    if derivation is None:
        return (CANNOT_BE_MADE,)
    names = {fabric.letter: fabric.name for fabric in quilt.named_fabrics}
    units = derivation.units
    lines = [] if len(units) == 1 else [f"The units come in {len(units)} kinds."]
    for number, unit in enumerate(units):
        lines += _kind(derivation, units[:number], unit, names)
    return tuple(lines)


def _kind(
    derivation: Derivation, before: Sequence[Flat], unit: Flat, names: dict[str, str]
) -> Iterator[str]:
    name = "The unit" if len(derivation.units) == 1 else f"Kind {len(before) + 1}"
    for number, other in enumerate(before, start=1):
        for eighths, words in _TURNED.items():
            if _seen(turned(other, turn(eighths))) == _seen(unit):
                yield f"{name}: as kind {number}, {words}."
                return
    seam = float(derivation.seam)
    patches = unit.in_order(seam).finished(seam)
    yield f"{name}: {len(patches)} patch{'' if len(patches) == 1 else 'es'}."
    size = _far(patches)
    for number, patch in enumerate(patches if len(patches) <= MOST_PATCHES else (), start=1):
        fabric = names.get(patch.letter, f"fabric {patch.letter}")
        yield f"Patch {number}: {_shape(patch)} of {fabric}, {_where(patch, size)}."


def _seen(unit: Flat) -> frozenset[tuple[str, frozenset[tuple[float, float]]]]:
    return frozenset(
        (patch.letter, frozenset((round(x, 4), round(y, 4)) for x, y in patch.points))
        for patch in unit.patches
    )


def _far(patches: Sequence[Patch]) -> tuple[float, float]:
    _, _, x1, y1 = box(patch.points for patch in patches)
    return x1, y1


def _shape(patch: Patch) -> str:
    sides = len(patch.points)
    if sides == 3:
        return "a triangle"
    x0, y0, x1, y1 = box([patch.points])
    level = all(
        min(abs(x - x0), abs(x - x1)) < LEVEL and min(abs(y - y0), abs(y - y1)) < LEVEL
        for x, y in patch.points
    )
    if sides == 4 and level:
        return "a square" if abs((x1 - x0) - (y1 - y0)) < LEVEL else "a rectangle"
    return "a slanting square or rhombus" if sides == 4 else f"a piece with {sides} sides"


def _where(patch: Patch, size: tuple[float, float]) -> str:
    x, y = centre(patch.points)
    down = _third(y / size[1], "towards row 1", "away from row 1")
    along = _third(x / size[0], "where the row begins", "where the row goes on")
    return ", ".join(filter(None, (down, along))) or "in the middle"


def _third(at: float, first: str, last: str) -> str:
    return first if at < 0.4 else last if at > 0.6 else ""


def top_told(quilt: Quilt, target: Target) -> tuple[str, ...]:
    """How the units are set, every row and what is in it, what lies between, and the borders.

    Rows that are alike are told together.
    """
    rows = quilt.rows_for(target)
    how = quilt.setting.words if quilt.setting is not None else "edge to edge"
    return (
        f"The top: {len(rows)} row{'' if len(rows) == 1 else 's'}.",
        f"The units are set {how}.",
        *_web(quilt, target),
        *_turns(quilt),
        *_rows(quilt, rows),
        *_sashes(quilt, target),
        *_corners(quilt),
        *_borders(quilt),
    )


def _web(quilt: Quilt, target: Target) -> Iterator[str]:
    if quilt.is_web:
        n = passes(target.columns)
        many = f"{n} pass{'' if n == 1 else 'es'} of {target.rows} seams"
        yield f"They are put together as a web, column by column: {many}."
        joins = target.rows - 1
        yield f"Then {joins} long seam{' joins' if joins == 1 else 's join'} the rows."


def _turns(quilt: Quilt) -> Iterator[str]:
    if _kinds(quilt) > 1:
        yield "No unit has its place yet: the kinds are told by turns, as the picture shows them."


def _kinds(quilt: Quilt) -> int:
    derivation = derived_if_any(quilt)
    return len(derivation.units) if derivation is not None else 1


def _rows(quilt: Quilt, rows: Sequence[SetRow]) -> Iterator[str]:
    of = _kinds(quilt)
    first = by_turns(of)
    alike: dict[tuple[str, str], list[int]] = {}
    for number, row in enumerate(rows, start=1):
        begins = first(number - 1, 0).unit + 1 if of > 1 and not quilt.is_on_point else 0
        alike.setdefault(_row(row, begins, on_point=quilt.is_on_point), []).append(number)
    for (units, more), numbers in alike.items():
        if len(numbers) == 1:
            yield f"Row {numbers[0]}: {units}{more}."
        else:
            yield f"Rows {_listed(numbers)}: {units} each{more}."


def _row(row: SetRow, begins: int, *, on_point: bool) -> tuple[str, str]:
    units = f"{row.units} unit{'' if row.units == 1 else 's'}"
    if begins:
        return units, f", beginning with kind {begins}"
    ends = ("no side triangle", "a side triangle at one end", "a side triangle at both ends")
    return units, f", with {ends[row.sides]}" if on_point else ""


def _listed(numbers: Sequence[int]) -> str:
    """ "1 to 9", "1, 3, 5 and 7", "4": what is in one run is told as a run."""
    if len(numbers) > 2 and numbers[-1] - numbers[0] == len(numbers) - 1:
        return f"{numbers[0]} to {numbers[-1]}"
    if len(numbers) > 3 and len({b - a for a, b in pairwise(numbers)}) == 1:
        step = numbers[1] - numbers[0]
        return f"{numbers[0]}, {numbers[1]} and so on to {numbers[-1]}, every {_ORDINAL[step]}"
    *others, last = map(str, numbers)
    return f"{', '.join(others)} and {last}" if others else last


_ORDINAL = {n: f"{n}th" for n in range(4, 200)} | {2: "second", 3: "third"}


def _sashes(quilt: Quilt, target: Target) -> Iterator[str]:
    sashing = quilt.sashing
    if sashing is None:
        return
    columns, rows = sashing.among(target.columns), sashing.among(target.rows)
    ends = ", one at either end among them" if sashing.frame else ""
    if columns:
        yield f"In every row: {columns} sash{'' if columns == 1 else 'es'}{ends}."
    if rows:
        around = ", before row 1 and after the last, too" if sashing.frame else ""
        yield f"Between two rows: a row of sashes{around}."
    if sashing.cornerstones is not None:
        yield f"In a row of sashes: {columns} cornerstones where sashes meet."
        yield f"Cornerstones: {sashing.cornerstones.cloth}."
    elif rows:
        yield "In a row of sashes: one long sash."
    yield f"Sashes: {sashing.cloth}, cut {as_given(sashing.cut, quilt.unit)} wide."


def _corners(quilt: Quilt) -> Iterator[str]:
    if quilt.is_on_point:
        yield "Rows run on the slant, from corner to corner of the top."
        yield "Last come 4 corner triangles."
        yield f"Triangles: {quilt.setting.cloth}."  # type: ignore[union-attr]


def _borders(quilt: Quilt) -> Iterator[str]:
    for number, border in enumerate(quilt.borders, start=1):
        yield f"Border {number}, on all four sides: {border.cloth}."
        finishes = show(border.cut - 2 * quilt.seam, quilt.unit)
        yield f"Border {number} is {finishes} wide when it is sewn in."
    if not quilt.borders:
        yield "It has no border."

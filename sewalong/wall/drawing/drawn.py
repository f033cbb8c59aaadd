"""A set, or a top with all sets, as a drawing to be printed or sent: polygons in inches, with the
letter of its fabric on every patch and the names below, so that it can be read in grey too."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence

from msgspec import Struct

from sewalong.fabrics.colours import Colour
from sewalong.piecing.cloth import Flat, turned
from sewalong.piecing.derive import Derivation
from sewalong.piecing.geometry import box, shift, turn
from sewalong.quilt.derived import derived
from sewalong.quilt.quilt import Quilt, Target
from sewalong.quilt.setting import SetOnPoint
from sewalong.wall.cloth_colours import cloth_colours
from sewalong.wall.drawing.top_polygons import Part, top_polygons
from sewalong.wall.keys import CORNERSTONE, SASH, SETTING, UNKNOWN, Key, border_key, cloth_key
from sewalong.wall.of_quilt import own_colours, the_top
from sewalong.wall.on_point import by_turns_on_point
from sewalong.wall.palette import colour_of
from sewalong.wall.set_picture import Squares, in_fabrics, units_of_set
from sewalong.wall.top_of_sets import UnitOf, laid_top
from sewalong.wall.tops import Level, by_turns

APART = 0.12
"""The gap between units that are not sewn together, as a share of a unit's width (own
choice)."""


class Drawing(Struct, frozen=True):
    """Polygons within a box of `size` inches, its corner at (0, 0). `names` says what each key
    that shows is called, `letters` what is written on its patches."""

    title: str
    about: str
    size: tuple[float, float]
    parts: tuple[Part, ...]
    names: Mapping[Key, str]
    letters: Mapping[Key, str]
    colours: Mapping[Key, Colour]


def drawing_of_set(quilt: Quilt, squares: Squares, title: str) -> Drawing:
    """The units that come of a set, side by side. Raises SizeRefused when none can come of it."""
    units = units_of_set(derived(quilt), squares)
    size, parts = _side_by_side(units)
    return _drawing(quilt, title, f"The units of this set: {len(units)}.", size, parts)


def drawing_of_row(quilt: Quilt, units: Sequence[UnitOf | None], title: str) -> Drawing:
    """The units of a row side by side as they are sewn, the edge towards row 1 above. On point, seen
    so, a row begins where others end. Raises SizeRefused as `drawing_of_set`."""
    made = derived(quilt)
    flat = [_as_it_lies(made, one) for one in units]
    wide, high = flat[0].size
    # Seen as it was made, a unit on point has the one before it above (`laying.grid`).
    across, down, quarter = (0.0, high, 1) if quilt.is_on_point else (wide, 0.0, 0)
    patches = [
        (shift(n * across, n * down).polygon(patch.points), patch.letter)
        for n, unit in enumerate(flat)
        for patch in unit.patches
    ]
    lying = [(turn(2 * quarter).polygon(polygon), key) for polygon, key in patches]
    x0, y0, x1, y1 = box(polygon for polygon, _ in lying)
    parts = [(shift(-x0, -y0).polygon(polygon), key) for polygon, key in lying]
    known = sum(one is not None for one in units)
    about = f"A row of {len(units)} units; {known} of them known."
    return _drawing(quilt, title, about, (x1 - x0, y1 - y0), parts)


def _as_it_lies(made: Derivation, unit: UnitOf | None) -> Flat:
    laid = in_fabrics(made, *((unit.squares, unit.number) if unit else ((), 0)))
    return turned(Flat(laid.finished(float(made.seam))), turn(2 * unit.turns if unit else 0))


def _side_by_side(units: Sequence[Flat]) -> tuple[tuple[float, float], list[Part]]:
    wide, high = units[0].size
    step = wide * (1 + APART)
    parts: list[Part] = [
        (shift(n * step, 0).polygon(patch.points), patch.letter)
        for n, unit in enumerate(units)
        for patch in unit.patches
    ]
    return ((len(units) - 1) * step + wide, high), parts


def drawing_of_top(
    quilt: Quilt, target: Target, units: tuple[UnitOf | None, ...], title: str
) -> Drawing:
    """The top with its borders, these units laid row by row; those not known are left empty.

    Raises SizeRefused when no unit can come of the quilt's pieces.
    """
    derived(quilt)
    laid = laid_top(quilt, target, units)
    assert laid is not None, "its pieces make a unit"
    size, parts = top_polygons(*laid)
    known = sum(unit is not None for unit in units[: quilt.units_for(target)])
    about = f"{target} units; the fabrics of {known} are known."
    return _drawing(quilt, title, about, size, parts)


def drawing_of_pattern(quilt: Quilt, target: Target, title: str) -> Drawing:
    """The top with its borders before anybody knows which fabric lies where: the kinds of unit by
    turns, in what the method calls by its letters. Raises SizeRefused as `drawing_of_top`."""
    kinds = len(derived(quilt).units)
    top = the_top(quilt, target)
    assert top is not None, "its pieces make a unit"
    place = by_turns(kinds) if isinstance(top, Level) else by_turns_on_point(kinds)
    size, parts = top_polygons(top, place)
    about = f"{target} units; which of them lies where is not settled."
    return _drawing(quilt, title, about, size, parts)


def _drawing(
    quilt: Quilt, title: str, about: str, size: tuple[float, float], parts: Iterable[Part]
) -> Drawing:
    parts = tuple(parts)
    own = {**own_colours(quilt), **cloth_colours(quilt.fabrics)}
    shown = {key for _, key in parts}
    names = {key: name for key, name in _names(quilt).items() if key in shown}
    fabrics = ", ".join(names.values())
    return Drawing(
        title,
        f"{about} {fabrics}." if fabrics else about,
        size,
        parts,
        names,
        {cloth_key(one.letter): one.letter for one in quilt.counted_fabrics}
        | {key: _of_the_method(quilt, key)[0] for key in derived(quilt).letters},
        {key: colour_of(key, own) for key in shown},
    )


def _of_the_method(quilt: Quilt, letter: str) -> tuple[str, str]:
    """What is written on patches of a letter of the method, and what it is called. Where fabrics
    have letters of her own it is a place of a set, since one letter has one sense."""
    if quilt.counted_fabrics:
        place = [*derived(quilt).letters].index(letter) + 1
        return str(place), f"{place}: square {place} of a set"
    named = {one.letter: one.called for one in quilt.named_fabrics}
    return letter, named.get(letter, f"fabric {letter}")


def _names(quilt: Quilt) -> dict[Key, str]:
    """What everything that can show is called, in the order of a legend."""
    names = {cloth_key(one.letter): one.called for one in quilt.counted_fabrics}
    names |= {key: _of_the_method(quilt, key)[1] for key in derived(quilt).letters}
    if isinstance(quilt.setting, SetOnPoint):
        names[SETTING] = f"triangles: {quilt.setting.cloth}"
    if quilt.sashing is not None:
        names[SASH] = f"sashes: {quilt.sashing.cloth}"
        if quilt.sashing.cornerstones is not None:
            names[CORNERSTONE] = f"cornerstones: {quilt.sashing.cornerstones.cloth}"
    for number, border in enumerate(quilt.borders, start=1):
        names[border_key(number)] = f"border {number}: {border.cloth}"
    return names | {UNKNOWN: "not known"}

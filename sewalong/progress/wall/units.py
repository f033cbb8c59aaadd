"""The units there are to lay: of which set each is, of which fabrics, and what it shows."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import lru_cache
from typing import TYPE_CHECKING

from msgspec.structs import replace

from sewalong.piecing.derive import Derivation
from sewalong.progress.record.state import State
from sewalong.progress.record.wall import BY_LETTER, OF_NO_SET, LaidUnit
from sewalong.quilt.choices import Fabric
from sewalong.quilt.derived import derived_if_any
from sewalong.quilt.quilt import Quilt
from sewalong.quilt.set_shape import set_shape
from sewalong.wall.laying.units import WallUnit, plain_unit, wall_unit

if TYPE_CHECKING:
    from sewalong.fabrics.swatch import Swatch

NOT_KNOWN = "?"
"""A patch begins with this, in place of a fabric, where nothing is known of it."""


def units_to_lay(state: State) -> tuple[LaidUnit, ...]:
    """Every unit that is known: those of all accepted sets that are not held back, sewn or not, set
    by set in order of making; of plain squares, one for each square of her fabrics. Empty where
    nothing is known of them."""
    quilt = state.quilt
    shape = set_shape(quilt)
    if shape is not None:
        return tuple(
            LaidUnit(number, unit, one.known)
            for number, one in sorted(state.sets.sets.items())
            if not one.held_back
            for unit in range(shape.units)
        )
    made = derived_if_any(quilt)
    if made is None or len(made.letters) != 1 or made.unit_count != 1:
        return ()
    return tuple(
        LaidUnit(OF_NO_SET, 0, (fabric.letter,))
        for fabric in quilt.counted_fabrics
        for _ in range(fabric.squares or 0)
    )


def units_by_letter(letters: Sequence[str]) -> tuple[LaidUnit, ...]:
    """Units of which nothing is known but one letter each, as they are typed."""
    return tuple(LaidUnit(OF_NO_SET, BY_LETTER, (letter,)) for letter in letters)


def as_it_is_now(state: State, unit: LaidUnit) -> LaidUnit:
    """The unit with the squares its set has now: two may have been swapped since it was laid."""
    laid = state.sets.sets.get(unit.set)
    if laid is None or laid.lost or len(laid.squares) != len(unit.squares):
        return unit
    return unit if laid.squares == unit.squares else replace(unit, squares=laid.squares)


def shown_by(state: State, unit: LaidUnit, number: int = 0) -> WallUnit:
    """What one unit, of this number on the wall, shows along its sides, in which turns it may lie, and
    its stack; nothing of value and family, as colours take long to load."""
    now, made = as_it_is_now(state, unit), derived_if_any(state.quilt)
    if now.unit == BY_LETTER or made is None:
        return plain_unit(now.squares[0] if now.squares else "")
    fabrics = _laid(made, now, number)
    return wall_unit(made.units[now.unit], float(made.seam), fabrics, stack=now.set or None)


def _laid(made: Derivation, unit: LaidUnit, number: int) -> dict[str, str]:
    """Her fabric at each of the method's letters. Two patches of which nothing is known are not
    known to be alike, so what stands for them bears the number of the unit."""
    return {
        place: letter or f"{NOT_KNOWN}{number} {place}"
        for place, letter in zip(made.letters, unit.squares, strict=False)
    }


def wall_units(state: State, units: Sequence[LaidUnit]) -> tuple[WallUnit, ...]:
    """What the units show along their sides, their stack, value and family, in the same order."""
    return _shown(state.quilt, tuple(as_it_is_now(state, unit) for unit in units))


@lru_cache(maxsize=4)
def _shown(quilt: Quilt, units: tuple[LaidUnit, ...]) -> tuple[WallUnit, ...]:
    made = derived_if_any(quilt)
    known = _known(quilt.counted_fabrics)
    shown: dict[tuple[int, tuple[str, ...]], WallUnit] = {}
    found = []
    for number, unit in enumerate(units):
        if unit.unit == BY_LETTER or made is None:
            (letter, *_) = unit.squares or ("",)
            found.append(plain_unit(letter, known.get(letter)))
            continue
        kind = (unit.unit, unit.squares)
        if kind not in shown or "" in unit.squares:
            fabrics = _laid(made, unit, number)
            shown[kind] = wall_unit(made.units[unit.unit], float(made.seam), fabrics, known)
        found.append(replace(shown[kind], stack=unit.set or None))
    return tuple(found)


@lru_cache(maxsize=4)
def _known(fabrics: tuple[Fabric, ...]) -> Mapping[str, Swatch]:
    """Her fabrics as an eye takes them, by letter: reckoned once, for units are asked for one by one."""
    from sewalong.fabrics.swatch import swatches  # colours take long to load

    return {swatch.letter: swatch for swatch in swatches(fabrics)}

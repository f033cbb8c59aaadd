"""The top as it would look with known sets: their units laid in reading order."""

from __future__ import annotations

from functools import lru_cache

from msgspec import Struct
from msgspec.structs import replace

from sewalong.piecing.derive import Derivation
from sewalong.quilt.derived import derived_if_any
from sewalong.quilt.quilt import Quilt, Target
from sewalong.wall.of_quilt import the_top
from sewalong.wall.on_point import Slanting
from sewalong.wall.picture import EMPTY, Picture
from sewalong.wall.set_picture import Squares, in_fabrics
from sewalong.wall.standing import known_picture
from sewalong.wall.tops import Arrangement, Level, Placed


class UnitOf(Struct, frozen=True):
    """A unit that is known: of a set of these squares the unit `number`, from 0 on in order of
    making; `turns` are the quarter turns in which it lies (see `Placed`)."""

    squares: Squares
    number: int
    turns: int = 0


def all_units(sets: tuple[Squares, ...], made: Derivation) -> tuple[UnitOf, ...]:
    """Every unit of these sets, set by set."""
    return tuple(UnitOf(squares, n) for squares in sets for n in range(made.unit_count))


@lru_cache(maxsize=4)
def top_of_sets(
    quilt: Quilt, target: Target, sets: tuple[Squares, ...], across: int, down: int
) -> Picture | None:
    """The top with its borders in at most `across` x `down` cells, the units of the sets laid row
    by row; where there are no more of them, units in outline.

    None when the pieces are too small for their seams. Part of it where there is no room for all
    its units.
    """
    made = derived_if_any(quilt)
    return (
        None if made is None else top_of_units(quilt, target, all_units(sets, made), across, down)
    )


def top_of_units(
    quilt: Quilt, target: Target, units: tuple[UnitOf | None, ...], across: int, down: int
) -> Picture | None:
    """The same with units in whatever order they lie; None for one that is not known."""
    top = laid_top(quilt, target, units)
    if top is None:
        return None
    if across < 1 or down < 1:
        return EMPTY
    level, place = top
    return known_picture(level.laid(across, down, arrangement=place))


def laid_top(
    quilt: Quilt, target: Target, units: tuple[UnitOf | None, ...]
) -> tuple[Level | Slanting, Arrangement] | None:
    """The top of a quilt and which of its units lies where, each with its patches in her fabrics;
    None when the pieces are too small for their seams."""
    top = the_top(quilt, target)
    if top is None:
        return None
    order = {at: n for n, at in enumerate(_in_reading_order(top))}
    wanted = [*units[: len(order)], *[None] * (len(order) - len(units))]
    different = list(dict.fromkeys(map(_unturned, wanted)))
    kinds = tuple(
        in_fabrics(top.derivation, *((unit.squares, unit.number) if unit else ((), 0)))
        for unit in different
    )
    number = {unit: n for n, unit in enumerate(different)}

    def place(row: int, column: int) -> Placed:
        unit = wanted[order[row, column]]
        return Placed(number[_unturned(unit)], unit.turns if unit else 0)

    return replace(top, derivation=replace(top.derivation, units=kinds)), place


def _unturned(unit: UnitOf | None) -> UnitOf | None:
    return replace(unit, turns=0) if unit else None


def _in_reading_order(top: Level | Slanting) -> list[tuple[int, int]]:
    """Row and column of each unit, as they show. On point the rows between are one unit shorter,
    and there is one fewer of them."""
    if isinstance(top, Level):
        return [(row, column) for row in range(top.rows) for column in range(top.columns)]
    return [
        (row, column) for row in range(2 * top.rows - 1) for column in range(top.columns - row % 2)
    ]

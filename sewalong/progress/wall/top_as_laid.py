"""The units as they lie on the wall, to be drawn as a top."""

from __future__ import annotations

from sewalong.progress.record.state import State
from sewalong.progress.record.wall import BY_LETTER, Lies
from sewalong.progress.wall.units import as_it_is_now
from sewalong.quilt.derived import derived
from sewalong.wall.laying.grid import grid_of
from sewalong.wall.top_of_sets import UnitOf

NEAR = 1e-6
"""Inches: sides of a unit that differ by less are alike."""


def units_as_laid(state: State) -> tuple[UnitOf | None, ...]:
    """What lies at each place, in the order in which places show (`top_of_sets.laid_top`); None
    where nothing does. Of a unit known by a letter all patches are of that one fabric,
    and no turn changes it.

    Raises SizeRefused when no unit can come of the quilt's pieces.
    """
    target = state.target
    shown = grid_of(target.rows, target.columns, state.quilt.setting).shown
    units = [unit for row in range(1, len(state.wall.rows) + 1) for unit in row_as_laid(state, row)]
    order = sorted(range(len(shown)), key=lambda number: shown[number])
    return tuple(units[number] for number in order)


def row_as_laid(state: State, row: int) -> tuple[UnitOf | None, ...]:
    """What lies in a row, from its place 1 on. Raises IndexError for no such row, and as above."""
    return tuple(_unit(state, lies) for lies in state.wall.rows[row - 1])


def _unit(state: State, lies: Lies | None) -> UnitOf | None:
    if lies is None:
        return None
    number, turns = lies
    made = derived(state.quilt)
    if abs(made.unit.width - made.unit.height) > NEAR:
        # No such unit fits its place but level; a record may say otherwise.
        turns -= turns % 2
    laid = as_it_is_now(state, state.wall.units[number])
    squares = tuple(letter or None for letter in laid.squares)
    if laid.unit == BY_LETTER:
        return UnitOf(squares * len(made.letters), 0)
    return UnitOf(squares, laid.unit, turns)

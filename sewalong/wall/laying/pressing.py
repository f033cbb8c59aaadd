"""Rows that were pressed by turns and then changed places: which must be pressed anew."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from itertools import pairwise

from msgspec import Struct


class PressedAnew(Struct, frozen=True):
    """Rows now in another order. `collide` are the joins where ridge lies on ridge, by the numbers
    of the places that meet there; `crossings` of seams lie so. `anew` are the rows, by the number
    they were pressed under, that are pressed the other way so that all nest: as few as can be."""

    collide: tuple[tuple[int, int], ...]
    crossings: int
    anew: tuple[int, ...]


def pressed_anew(order: Sequence[int], columns: int) -> PressedAnew:
    """What becomes of the pressing when the rows lie in this order: for each place from row 1 on,
    the number from 1 on that its row was pressed under, odd ones one way and even ones the other.

    Two rows nest where they were pressed in opposite ways. Either those rows are pressed anew that
    went from an odd place to an even one or back, or all others: both give rows by turns, and no
    other choice does. Raises ValueError unless each row is named once.
    """
    if sorted(order) != list(range(1, len(order) + 1)) or columns < 1:
        raise ValueError("each row is named once, by its number from 1 on")
    collide = tuple(
        (place, place + 1)
        for place, (one, other) in enumerate(pairwise(order), start=1)
        if (one - other) % 2 == 0
    )
    stay: list[int] = []
    change: list[int] = []
    for place, row in enumerate(order, start=1):
        (change if (row - place) % 2 else stay).append(row)
    return PressedAnew(
        collide,
        len(collide) * (columns - 1),
        tuple(change if len(change) <= len(stay) else stay) if collide else (),
    )


class NotNesting(Struct, frozen=True):
    """Joins at which ridge lies on ridge, by the rows that meet there, and the rows to press anew so
    that all can nest: as few as can be, both by where they lie now."""

    collide: tuple[tuple[int, int], ...]
    anew: tuple[int, ...]


def not_nesting(pressed: Sequence[int | None], joined: Collection[int] = ()) -> NotNesting:
    """Where rows do not nest that lie in another order than they were pressed in.

    `pressed` has for each place from row 1 on the number its row was pressed under: odd ones one way,
    even ones the other; below zero where it lies end for end since, which turns its allowances about;
    None for a row that is not sewn yet, and is pressed as suits. Of the two choices there are that
    one is taken that presses fewer rows anew that are `joined` already, then fewer in all.
    """
    way = [None if under is None else (under % 2 == 1) is (under > 0) for under in pressed]
    collide = tuple(
        (row, row + 1)
        for row, (one, other) in enumerate(pairwise(way), start=1)
        if one is not None and one is other
    )
    by_turns: list[int] = []
    against: list[int] = []
    for row, one in enumerate(way, start=1):
        if one is not None:
            (by_turns if one is (row % 2 == 1) else against).append(row)
    anew = min(against, by_turns, key=lambda rows: (len({*rows} & {*joined}), len(rows)))
    return NotNesting(collide, tuple(anew))

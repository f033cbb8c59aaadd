"""Rows begun: units sewn together that are no whole row yet, and what finishes them.

A person says what she can see on the table: so many pieces of so many units. Which row a piece
will lie in she need not know, so the rows are worked out: the longest piece is laid first, each
into the first row with room for it, and the fullest row is finished first.
"""

from __future__ import annotations

from functools import lru_cache

from sewalong.piecing.method import Stage
from sewalong.progress.record.route import SEW_ROWS, Route, RouteStage

Begun = tuple[tuple[int, int], ...]
"""So many pieces of so many units each: ((3, 4), (10, 2)), the longest first, each length once."""

BegunRow = tuple[int, ...]
"""The units in each piece of one row, the longest first."""


def units_across(route: Route, unit: str) -> int:
    """Units in one row of the route."""
    stage = route.stage(SEW_ROWS)
    takes = stage.takes if isinstance(stage, Stage) else ()
    return sum(taken.count for taken in takes if taken.pile == unit)


def in_order(pieces: Begun) -> Begun:
    """The same pieces as they are kept: the longest first, each length once."""
    lengths: dict[int, int] = {}
    for n, units in pieces:
        lengths[units] = lengths.get(units, 0) + n
    return tuple((n, units) for units, n in sorted(lengths.items(), reverse=True) if n)


def units_in(begun: Begun) -> int:
    """Units in all the pieces."""
    return sum(n * units for n, units in begun)


@lru_cache(maxsize=64)
def rows_begun(begun: Begun, across: int) -> tuple[BegunRow, ...]:
    """The rows of `across` units that the pieces begin, the fullest first.

    Each piece, the longest first, goes into the first row that has room for it.
    """
    rows: list[list[int]] = []
    room: list[int] = []
    for n, units in begun:
        # A row without room for one piece of a length has none for the next of it either.
        at = 0
        for _ in range(n):
            while at < len(rows) and room[at] < units:
                at += 1
            if at == len(rows):
                rows.append([])
                room.append(across)
            rows[at].append(units)
            room[at] -= units
    return tuple(sorted((tuple(row) for row in rows), key=sum, reverse=True))


def held(begun: Begun, across: int, rows: int) -> int:
    """Units that need not be taken from the loose ones when so many rows are made."""
    return sum(sum(row) for row in rows_begun(begun, across)[:rows])


def pieces_in(stage: RouteStage, unit: str, begun: Begun) -> dict[str, int]:
    """By pile that rows take, what the pieces hold of it: their units, and where rows have sashes
    one between every two units."""
    seams = units_in(begun) - sum(n for n, _ in begun)
    return {t.pile: units_in(begun) if t.pile == unit else seams for t in stage.takes}


def pieces_held(
    stage: RouteStage, unit: str, begun: Begun, across: int, rows: int
) -> dict[str, int]:
    """By pile, what need not be taken from it when so many rows are made."""
    first = [(1, units) for row in rows_begun(begun, across)[:rows] for units in row]
    return pieces_in(stage, unit, tuple(first))


def left_begun(begun: Begun, across: int, rows: int) -> Begun:
    """What is still only begun once so many rows are made."""
    left = rows_begun(begun, across)[rows:]
    return in_order(tuple((1, units) for row in left for units in row))


def part_sewn(begun: Begun, across: int, rows: int) -> float:
    """How many rows' worth of seams is sewn in the fullest so many of the rows begun."""
    first = rows_begun(begun, across)[:rows]
    return sum(sum(row) - len(row) for row in first) / (across - 1) if first else 0.0


def can_be_made(begun: Begun, across: int, loose: int) -> int:
    """Whole rows that can be made of what is begun and so many loose units."""
    made = 0
    for row in rows_begun(begun, across):
        loose -= across - sum(row)
        if loose < 0:
            return made
        made += 1
    return made + loose // across


def pieces_in_words(begun: Begun) -> str:
    """ "3 pieces of 4 units and 10 pairs"; "nothing" for none."""
    words = []
    for n, units in begun:
        if units == 2:
            words.append(f"{n} pair{'' if n == 1 else 's'}")
        else:
            words.append(f"{n} piece{'' if n == 1 else 's'} of {units} units")
    return " and ".join(words) or "nothing"


def begun_in_words(begun: Begun, across: int) -> str:
    """What is begun and what finishes it, in one sentence; empty when nothing is.

    "1 row begun: 1 piece of 5 units sewn, 4 more units finish it."
    """
    rows = rows_begun(begun, across)
    if not rows:
        return ""
    one = len(rows) == 1
    more = len(rows) * across - units_in(begun)
    rest = f"{more} more unit{'' if more == 1 else 's'} finish{'es' if more == 1 else ''}"
    if not more:
        rest = "no more units are wanted to finish"
    return (
        f"{len(rows)} row{'' if one else 's'} begun: {pieces_in_words(begun)} sewn, "
        f"{rest} {'it' if one else 'them'}."
    )

"""Rows of a laying turned end for end, put in order again, and found to be turned."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise
from random import Random

from msgspec import Struct
from msgspec.structs import replace

from sewalong.wall.laying.edges import TouchRule
from sewalong.wall.laying.faces import BARE, Face, Faces
from sewalong.wall.laying.laying import Laying, Put, Rules, Touch, touches, touches_at
from sewalong.wall.laying.units import WallUnit

Row = tuple[Put | None, ...]

MOST_PROVED = 12
"""Rows up to which every order is accounted for; of more, orders are searched (own choice)."""


def end_for_end(row: Row) -> Row:
    """A row turned half way round: its units in the other order, each half turned."""
    return tuple(
        None if put is None else Put(put.unit, (put.turns + 2) % 4) for put in reversed(row)
    )


def with_row_turned(laying: Laying, row: int) -> Laying:
    """The laying with a row, from 1 on, turned end for end; raises KeyError for no such row."""
    if not 1 <= row <= len(laying.places):
        raise KeyError(row)
    rows = list(laying.places)
    rows[row - 1] = end_for_end(rows[row - 1])
    return replace(laying, places=tuple(rows))


def touches_if_turned(
    laying: Laying, units: Sequence[WallUnit], rules: Rules, row: int
) -> tuple[Touch, ...]:
    """The touches that are there once this row is turned end for end, and are not now."""
    now = set(touches(laying, units, rules))
    then = touches(with_row_turned(laying, row), units, rules)
    return tuple(touch for touch in then if touch not in now)


def perhaps_turned(
    laying: Laying, units: Sequence[WallUnit], rules: Rules
) -> tuple[tuple[int, int], ...]:
    """Rows that would touch less if they were turned end for end, and by how much, the most
    first: such a row was perhaps picked up the wrong way round."""
    grid = laying.grid
    found = []
    for row in range(1, len(laying.places) + 1):
        # Only what its own units touch can change.
        own = [number for number, at in enumerate(grid.places) if at[0] == row]
        now, then = (
            len(touches_at(grid, one.in_order, units, rules, own))
            for one in (laying, with_row_turned(laying, row))
        )
        if then < now:
            found.append((row, now - then))
    return tuple(sorted(found, key=lambda one: (-one[1], one[0])))


class InOrder(Struct, frozen=True):
    """Rows in an order in which neighbouring ones touch least, by their numbers from 0 on, and
    whether each is turned end for end; `touches` are those between rows and at the rim.

    `is_least` says that no order has fewer, and `as_good` how many orders have as few: None where
    not all were accounted for. An order read from the last row to the first counts as another.
    """

    order: tuple[int, ...]
    turned: tuple[bool, ...]
    touches: int
    is_least: bool
    as_good: int | None


def with_rows_ordered(laying: Laying, found: InOrder) -> Laying:
    """The laying with its rows in the order that was found."""
    rows = laying.places
    return replace(
        laying,
        places=tuple(
            end_for_end(rows[row]) if turned else rows[row]
            for row, turned in zip(found.order, found.turned, strict=True)
        ),
    )


def order_of_rows(
    rows: Sequence[Row],
    units: Sequence[WallUnit],
    rules: Rules,
    *,
    turning: bool = False,
    seed: int = 1,
) -> InOrder:
    """An order of rows whose order was lost, from what their edges show; all are equally long and
    set straight. With `turning` they may lie either way round.

    Up to MOST_PROVED rows all orders are accounted for, row by row (dynamic programming over the
    sets of rows already laid, Held and Karp); beyond that they are searched, with no claim. Raises
    ValueError for no rows, or for rows of different lengths.
    """
    if not rows or len({len(row) for row in rows}) != 1:
        raise ValueError("rows of one length, one at least")
    ways = [(n, turned) for n in range(len(rows)) for turned in ((False, True)[: 1 + turning])]
    shown = [end_for_end(rows[n]) if turned else tuple(rows[n]) for n, turned in ways]
    costs = _Costs(shown, [n for n, _ in ways], Faces(units, rules), rules)
    if len(rows) <= MOST_PROVED:
        path, as_good = _proved(costs, len(rows))
    else:
        path, as_good = _searched(costs, len(rows), Random(seed)), None
    order = tuple(ways[way][0] for way in path)
    turned = tuple(ways[way][1] for way in path)
    return InOrder(order, turned, costs.of(path), as_good is not None, as_good)


class _Costs:
    """Touches of rows, each in the ways it can lie: `row` has the row of each way, `between` what
    one way touches that lies after another, `above` and `below` what it touches at the rim."""

    def __init__(
        self, shown: Sequence[Row], row: Sequence[int], faces: Faces, rules: Rules
    ) -> None:
        lines = [[_face(faces, put) for put in line] for line in shown]
        self.row = row
        self.between = [[_joined(faces, one, other, rules) for other in lines] for one in lines]
        rim = [faces.rim] * len(lines[0])
        edge = replace(rules, touch=TouchRule.EDGE)
        self.above = [_joined(faces, rim, line, edge) for line in lines]
        self.below = [_joined(faces, line, rim, edge) for line in lines]

    def of(self, path: Sequence[int]) -> int:
        """Touches of ways that lie in this order."""
        joins = sum(self.between[one][other] for one, other in pairwise(path))
        return self.above[path[0]] + joins + self.below[path[-1]]


def _face(faces: Faces, put: Put | None) -> Face:
    return BARE if put is None else faces.of[put.unit][put.turns]


def _joined(faces: Faces, above: Sequence[Face], below: Sequence[Face], rules: Rules) -> int:
    """Touches where a row lies above another: facets as `grid.Link` numbers them."""
    shared = faces.shared
    found = sum(shared[a[2]][b[0]] for a, b in zip(above, below, strict=True))
    if rules.touch is TouchRule.CORNER:
        found += sum(shared[a[6]][b[4]] for a, b in zip(above[:-1], below[1:], strict=True))
        found += sum(shared[a[7]][b[5]] for a, b in zip(above[1:], below[:-1], strict=True))
    return found


def _proved(costs: _Costs, rows: int) -> tuple[list[int], int]:
    """A best order, and how many are as good. For each set of rows that lie already and the one
    that lies last, the fewest touches, in how many orders, and the way before."""
    ways = range(len(costs.row))
    best = {(1 << costs.row[way], way): (costs.above[way], 1, -1) for way in ways}
    layer = dict(best)
    for _ in range(rows - 1):
        grown: dict[tuple[int, int], tuple[int, int, int]] = {}
        for (laid, last), (touched, orders, _) in layer.items():
            for way in ways:
                bit = 1 << costs.row[way]
                if laid & bit:
                    continue
                then = touched + costs.between[last][way]
                at = (laid | bit, way)
                known = grown.get(at)
                if known is None or then < known[0]:
                    grown[at] = (then, orders, last)
                elif then == known[0]:
                    grown[at] = (then, known[1] + orders, known[2])
        best |= grown
        layer = grown
    ends = {at: touched + costs.below[at[1]] for at, (touched, _, _) in layer.items()}
    least = min(ends.values())
    as_good = sum(layer[at][1] for at, touched in ends.items() if touched == least)
    laid, way = min(at for at, touched in ends.items() if touched == least)
    path = []
    while way >= 0:
        path.append(way)
        before = best[laid, way][2]
        laid, way = laid & ~(1 << costs.row[way]), before
    return path[::-1], as_good


TRIES, BEGINNINGS = 3_000, 8
"""Changes tried in each search for an order, and how many searches are begun by chance (own
choice)."""


def _searched(costs: _Costs, rows: int, chance: Random) -> list[int]:
    """The best order found by taking a stretch of rows and laying it elsewhere, or the other way
    round, as long as that does not touch more; begun by chance several times."""
    ways_of = [[way for way, one in enumerate(costs.row) if one == row] for row in range(rows)]
    found: list[list[int]] = []
    for _ in range(BEGINNINGS):
        path = [chance.choice(ways) for ways in chance.sample(ways_of, rows)]
        touched = costs.of(path)
        for _ in range(TRIES):
            start, end = sorted(chance.sample(range(rows + 1), 2))
            part, rest = path[start:end], path[:start] + path[end:]
            if chance.random() < 0.5:
                part.reverse()
            if chance.random() < 0.5:
                part = [chance.choice(ways_of[costs.row[way]]) for way in part]
            at = chance.randrange(len(rest) + 1)
            tried = rest[:at] + part + rest[at:]
            if (then := costs.of(tried)) <= touched:
                path, touched = tried, then
        found.append(path)
    return min(found, key=costs.of)

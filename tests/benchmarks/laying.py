"""How soon a wall is laid without a touch, and what a move on it would cost is known."""

from __future__ import annotations

from collections.abc import Iterator
from functools import partial
from random import Random

from sewalong.wall.laying.board import Board
from sewalong.wall.laying.laying import Rules, empty_laying, touches
from sewalong.wall.laying.moves import Move, effect
from sewalong.wall.laying.search import Asked, search
from sewalong.wall.laying.units import WallUnit
from tests.benchmarks.effort import Effort
from tests.benchmarks.row import Goal, Row, milliseconds
from tests.benchmarks.timing import seconds, turn_about
from tests.wall.laying.walls import laid_anyhow, made, squares


def laying_rows(effort: Effort) -> Iterator[Row]:
    """Two walls laid, and the cost of a move on the larger one."""
    stacked, plain = made("stacked-four-patch", 84, 42), squares(900, 12)
    yield _laid("9 × 9 stacked, 42 fabrics, no touch", stacked, 9, effort, Goal(more=200))
    yield _laid("30 × 30 squares, 12 fabrics, no touch", plain, 30, effort, Goal(more=2_000))
    yield _move(plain, effort)


def _laid(what: str, units: tuple[WallUnit, ...], side: int, effort: Effort, goal: Goal) -> Row:
    """From asking to a laying in which nothing touches, beside one by chance that is only counted."""
    asked = Asked(units, side, side)

    def lay() -> None:
        # It ends by itself once nothing touches.
        *_, last = search(asked)
        assert last.touches == 0

    def count() -> None:
        assert touches(laid_anyhow(units, side, side, 1), units)

    taken = turn_about(partial(seconds, count), partial(seconds, lay), effort.rounds)
    return milliseconds(what, "laid by chance, counted", taken, goal)


def _move(units: tuple[WallUnit, ...], effort: Effort) -> Row:
    """What each of many swaps mends and makes, beside copying what lies in 900 places."""
    board = Board(next(search(Asked(units, 30, 30))).laying, units, Rules())
    chance = Random(1)
    pairs = [chance.sample(board.grid.places, 2) for _ in range(100)]

    def copied() -> float:
        return seconds(lambda: [empty_laying(30, 30).in_order for _ in pairs]) / len(pairs)

    def known() -> float:
        return seconds(lambda: [effect(board, Move(a, 0, b, 0)) for a, b in pairs]) / len(pairs)

    taken = turn_about(copied, known, effort.rounds)
    return milliseconds(
        "a move at 30 × 30 and its touches", "900 places copied", taken, Goal(more=1)
    )

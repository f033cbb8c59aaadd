"""Layings found in so many seconds are never worse than what the exact solver finds in as many.

The solver has the seconds for its search alone, and both processors; we have them in all. Where no
laying can be better it is not asked. Of stacked units at points on 20 x 20 it is not asked either:
it finds no first laying of 12 x 12 in ten seconds of search.
"""

from __future__ import annotations

import time
from itertools import takewhile

import pytest

from sewalong.wall.laying.edges import TouchRule
from sewalong.wall.laying.laying import Rules
from sewalong.wall.laying.search import Asked, Found, search
from tests.wall.laying.exact_solver import solved
from tests.wall.laying.walls import made, squares

SECONDS = 2.0

EVERY_SIZE = ((6, 4), (6, 42), (9, 5), (9, 12), (12, 8), (20, 5), (20, 42))
"""Places on a side, and fabrics: every side and every number of fabrics at least once."""


def after(asked: Asked, seconds: float) -> Found:
    end = time.monotonic() + seconds
    *_, found = takewhile(lambda _: time.monotonic() < end, search(asked))
    return found


def not_worse(method: str, side: int, fabrics: int, rule: TouchRule, seconds: float) -> None:
    count = side * side
    units = squares(count, fabrics) if method == "plain-squares" else made(method, count, fabrics)
    ours = after(Asked(units, side, side, rules=Rules(touch=rule)), seconds)
    assert ours.touches >= ours.least
    if ours.is_least or (side == 20 and method != "plain-squares" and rule is TouchRule.CORNER):
        return
    theirs = solved(units, side, side, rule, seconds)
    assert ours.touches >= theirs.least
    if theirs.touches is not None:
        assert ours.touches <= theirs.touches


@pytest.mark.parametrize(
    ("method", "side", "fabrics", "rule"),
    [
        ("plain-squares", 6, 4, TouchRule.EDGE),
        ("plain-squares", 9, 5, TouchRule.CORNER),
        ("stacked-four-patch", 6, 12, TouchRule.CORNER),
        ("stacked-four-patch", 9, 8, TouchRule.EDGE),
    ],
)
def test_never_worse_in_the_same_time(
    method: str, side: int, fabrics: int, rule: TouchRule
) -> None:
    not_worse(method, side, fabrics, rule, SECONDS)


@pytest.mark.long
@pytest.mark.parametrize("rule", TouchRule, ids=["seams", "points"])
@pytest.mark.parametrize("method", ["plain-squares", "stacked-four-patch"])
@pytest.mark.parametrize(("side", "fabrics"), EVERY_SIZE)
def test_never_worse_in_the_same_time_at_every_size(
    side: int, fabrics: int, method: str, rule: TouchRule
) -> None:
    not_worse(method, side, fabrics, rule, SECONDS)

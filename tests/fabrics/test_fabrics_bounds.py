"""The bound of any strengths: against every way of pairing, and matchings of networkx."""

from __future__ import annotations

from itertools import combinations
from math import inf
from random import Random

import networkx
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from sewalong.fabrics.pairing import weakest_at_best
from sewalong.fabrics.sets.bounds import matching_bound
from sewalong.fabrics.sets.proposing import proposed
from sewalong.fabrics.sets.rules import Rule
from sewalong.fabrics.sets.strength import colour_strength
from tests.fabrics.made_fabrics import apart_by_value, asked, colour_drawer


def best_by_matching(strength: list[list[float]], counts: list[int], pairs: int) -> float:
    """The strongest weakest of so many pairs of whole squares."""
    squares = [print for print, n in enumerate(counts) for _ in range(n)]
    steps = sorted({one for row in strength for one in row})
    reached = [-inf]
    for least in steps:
        graph = networkx.Graph(
            (i, j)
            for i, j in combinations(range(len(squares)), 2)
            if strength[squares[i]][squares[j]] >= least
        )
        if len(networkx.max_weight_matching(graph, maxcardinality=True)) >= pairs:
            reached.append(least)
    return max(reached)


@settings(max_examples=60, deadline=None)
@given(st.integers(0, 10_000), st.integers(2, 5), st.booleans())
def test_no_matching_passes_the_bound_and_even_counts_reach_it(
    seed: int, prints: int, even: bool
) -> None:
    chance = Random(seed)
    counts = [2 * chance.randint(1, 2) if even else chance.randint(1, 3) for _ in range(prints)]
    strength = [[0.0] * prints for _ in range(prints)]
    for a, b in combinations(range(prints), 2):
        strength[a][b] = strength[b][a] = float(chance.randint(1, 9))
    pairs = sum(counts) // 2
    bound = matching_bound(strength, counts, pairs)
    best = best_by_matching(strength, counts, pairs)
    assert bound is not None
    # Twice as many squares of each: whole pairs reach what half pairs do.
    twice = best_by_matching(strength, [2 * n for n in counts], 2 * pairs)
    assert best <= bound == twice


@settings(max_examples=80, deadline=None)
@given(
    st.lists(st.tuples(st.integers(0, 60), st.integers(1, 4)), min_size=1, max_size=8), st.data()
)
def test_by_value_it_is_that_of_the_pairs_in_step(
    fabrics: list[tuple[int, int]], data: st.DataObject
) -> None:
    values = [float(value) for value, _ in fabrics]
    counts = [n for _, n in fabrics]
    every = [value for value, n in fabrics for _ in range(n)]
    if len(every) < 2:
        return
    pairs = data.draw(st.integers(1, len(every) // 2))
    assert matching_bound(apart_by_value(values), counts, pairs) == weakest_at_best(every, pairs)


def test_what_is_not_known_holds_nothing_down() -> None:
    assert matching_bound(((0.0, inf), (inf, 0.0)), (2, 2), 2) is None
    assert matching_bound(((0.0, inf), (inf, 0.0)), (3, 1), 2) == 0
    assert matching_bound(((-inf, 5.0), (-inf, -inf)), (2, 2), 2) == 5


@pytest.mark.parametrize("seed", range(8))
def test_pairs_by_colour_are_as_strong_as_a_matching_of_networkx(seed: int) -> None:
    fabrics = colour_drawer(8, 2, seed)
    strength = [list(row) for row in colour_strength(fabrics)]
    best = best_by_matching(strength, [2] * 8, 8)
    found = proposed(asked(fabrics, 8, Rule.BY_COLOUR, "paired-squares"))
    assert (found.weakest, found.bound, found.doubles) == (best, best, 0)

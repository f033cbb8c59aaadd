"""What can be had of squares in sets: worked cases, and every way tried on small ones."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction as F
from itertools import combinations

import networkx
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from sewalong.fabrics.pairing import (
    independent_contacts,
    most_sets,
    strongest_pairs,
    weakest_at_best,
)
from sewalong.piecing.catalogue import method_ids
from sewalong.piecing.contacts import Contact, contacts
from sewalong.piecing.derive import derive

VALUES = st.lists(st.integers(0, 100), min_size=2, max_size=8)


def every_pairing(values: Sequence[float], pairs: int) -> Iterator[list[tuple[float, float]]]:
    """All ways to take so many pairs out of the values."""
    if pairs == 0:
        yield []
        return
    if len(values) < 2 * pairs:
        return
    first, *rest = values
    yield from every_pairing(rest, pairs)
    for place, other in enumerate(rest):
        for more in every_pairing(rest[:place] + rest[place + 1 :], pairs - 1):
            yield [(first, other), *more]


def test_pairing_for_the_weakest_pair_takes_nothing_from_the_sum() -> None:
    # A worked case: favourites first leaves 50 with 55.
    values = [22, 30, 44, 50, 55, 60, 75, 90]
    pairs = [(values[low], values[high]) for low, high in strongest_pairs(values, 4)]
    assert pairs == [(22, 55), (30, 60), (44, 75), (50, 90)]
    assert weakest_at_best(values, 4) == 30
    strongest_first = [(22, 90), (30, 75), (44, 60), (50, 55)]
    assert sum(b - a for a, b in pairs) == sum(b - a for a, b in strongest_first) == 134


@settings(max_examples=60, deadline=None)
@given(VALUES, st.data())
def test_no_way_of_pairing_has_a_stronger_weakest_pair(
    values: list[float], data: st.DataObject
) -> None:
    pairs = data.draw(st.integers(1, len(values) // 2))
    best = max(min(abs(a - b) for a, b in way) for way in every_pairing(values, pairs))
    assert weakest_at_best(values, pairs) == best
    taken = [place for pair in strongest_pairs(values, pairs) for place in pair]
    assert len(set(taken)) == len(taken) == 2 * pairs


def test_the_strongest_pairing_is_a_bottleneck_matching_of_networkx() -> None:
    values = [11, 90, 35, 35, 62, 17, 71, 48, 55, 29]
    for least in range(100):
        graph = networkx.Graph(
            (i, j) for i, j in combinations(range(10), 2) if abs(values[i] - values[j]) >= least
        )
        can_be = len(networkx.max_weight_matching(graph, maxcardinality=True)) == 5
        assert can_be == (weakest_at_best(values, 5) >= least)


def test_more_pairs_than_there_are_squares_for_are_refused() -> None:
    with pytest.raises(ValueError, match="fewer values"):
        strongest_pairs([1, 2, 3], 2)


@pytest.mark.parametrize(
    ("counts", "sets", "over"),
    [
        ([2] * 21, 10, 2),
        ([20, 3, 3, 2, 2], 3, 18),
        ([12, 10, 8, 6, 4], 9, 4),
        ([9, 7, 6, 5, 5, 4, 4], 10, 0),
    ],
)
def test_sets_of_four_with_no_print_twice(counts: list[int], sets: int, over: int) -> None:
    # Worked cases of makers who sorted piles by eye.
    found = most_sets(counts, 4)
    assert (found, sum(counts) - 4 * found) == (sets, over)


def test_one_background_makes_as_many_pairs_as_there_are_others() -> None:
    # Forty squares, 22 of one fabric and 18 single prints: 18 pairs, not 20.
    assert most_sets([22, *[1] * 18], 2) == 18


def most_by_trying(counts: tuple[int, ...], different: int) -> int:
    if sum(count > 0 for count in counts) < different:
        return 0
    return max(
        1 + most_by_trying(tuple(n - (i in taken) for i, n in enumerate(counts)), different)
        for taken in combinations([i for i, n in enumerate(counts) if n], different)
    )


@settings(max_examples=60, deadline=None)
@given(st.lists(st.integers(0, 3), min_size=1, max_size=4), st.integers(1, 4))
def test_no_way_of_dealing_prints_out_makes_more_sets(counts: list[int], different: int) -> None:
    assert most_sets(counts, different) == most_by_trying(tuple(counts), different)


def test_a_set_of_nothing_is_refused() -> None:
    with pytest.raises(ValueError, match="one square at least"):
        most_sets([1, 2], 0)


@pytest.mark.parametrize("id", method_ids())
def test_contacts_with_no_square_in_common_are_a_largest_matching(id: str) -> None:
    meeting = contacts(derive(id, F(6)).units, 0.25)
    graph = networkx.Graph(c.letters for c in meeting if c.letters[0] != c.letters[1])
    assert independent_contacts(meeting) == len(networkx.max_weight_matching(graph, True))


@settings(max_examples=60, deadline=None)
@given(st.sets(st.tuples(st.sampled_from("ABCDEFGHIJ"), st.sampled_from("ABCDEFGHIJ"))))
def test_in_any_graph_too(edges: set[tuple[str, str]]) -> None:
    ordered = {(a, b) if a <= b else (b, a) for a, b in edges}
    meeting = [Contact(0, (0, 1), pair, 1.0) for pair in ordered]
    graph = networkx.Graph(pair for pair in ordered if pair[0] != pair[1])
    assert independent_contacts(meeting) == len(networkx.max_weight_matching(graph, True))


def test_a_stack_has_four_contacts_apart_and_a_nine_patch_too() -> None:
    for id in ("stacked-four-patch", "nine-patch"):
        assert independent_contacts(contacts(derive(id, F(5)).units, 0.25)) == 4

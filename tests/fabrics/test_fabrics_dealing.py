"""Squares dealt into sets: nothing lost, no print twice where that can be, as strong as can be had."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from fractions import Fraction as F
from itertools import combinations, islice, permutations
from math import inf
from random import Random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from sewalong.fabrics.pairing import independent_contacts, most_sets, weakest_at_best
from sewalong.fabrics.sets.dealing import LOOKS_A_ROUND, deal
from sewalong.fabrics.sets.wanted import Dealt, Wanted
from sewalong.piecing.contacts import contacts
from sewalong.piecing.derive import derive
from tests.fabrics.made_fabrics import apart_by_value

CUBE = (
    (0, 1), (1, 2), (2, 3), (0, 3), (4, 5), (5, 6), (6, 7), (4, 7), (0, 5), (1, 4), (2, 7), (3, 6),
)  # fmt: skip
"""The contacts of a stack of two four-patches, as test_piecing_contacts finds them."""

PAIR, SQUARE, TRIANGLE = ((0, 1),), ((0, 1), (1, 2), (2, 3), (0, 3)), ((0, 1), (1, 2), (0, 2))


def dealt(wanted: Wanted, aim: float, *, seed: int = 1, rounds: int = 3) -> Dealt:
    """The best after so many rounds."""
    *_, last = islice(deal(wanted, aim, seed), rounds * LOOKS_A_ROUND)
    return last


def wanted_by_value(
    values: list[float], counts: list[int], meeting: tuple[tuple[int, int], ...], sets: int
) -> Wanted:
    places = 1 + max(place for pair in meeting for place in pair)
    return Wanted(tuple(counts), apart_by_value(values), meeting, places, sets)


def every_deal(wanted: Wanted) -> Iterator[list[tuple[int, ...]]]:
    """All ways to deal, sets in any order of their first squares."""
    squares = [print for print, n in enumerate(wanted.counts) for _ in range(n)]

    def after(left: tuple[int, ...], sets: int) -> Iterator[list[tuple[int, ...]]]:
        if not sets:
            yield []
            return
        for one in sorted(set(permutations(left, wanted.places))):
            rest = Counter(left)
            rest.subtract(one)
            for more in after(tuple(rest.elements()), sets - 1):
                yield [one, *more]

    return after(tuple(squares), wanted.sets)


def best_by_trying(wanted: Wanted) -> tuple[int, float]:
    """The fewest doubles, and with so few the strongest weakest contact, of all deals."""
    return max(
        (
            -sum(len(one) - len(set(one)) for one in sets),
            min(wanted.strength[one[a]][one[b]] for one in sets for a, b in wanted.meeting),
        )
        for sets in every_deal(wanted)
    )


@pytest.mark.parametrize(
    ("values", "counts", "meeting", "sets"),
    [
        ([22, 30, 44, 50, 55, 60, 75, 90], [1] * 8, PAIR, 4),
        ([20, 35, 60, 80], [2, 2, 2, 2], SQUARE, 2),
        ([20, 35, 60, 80, 90], [1, 2, 2, 1, 2], SQUARE, 1),
        ([10, 20, 60, 75, 95], [1, 1, 2, 1, 2], TRIANGLE, 2),
        ([10, 20, 60], [3, 1, 2], TRIANGLE, 2),
    ],
)
def test_small_ones_are_dealt_as_well_as_can_be(
    values: list[float], counts: list[int], meeting: tuple[tuple[int, int], ...], sets: int
) -> None:
    wanted = wanted_by_value(values, counts, meeting, sets)
    found = dealt(wanted, 100)
    assert (-found.doubles, found.weakest) == best_by_trying(wanted)


@settings(max_examples=25, deadline=None)
@given(
    st.lists(st.integers(1, 4), min_size=2, max_size=8), st.sampled_from((PAIR, SQUARE, CUBE)),
    st.integers(0, 99),
)  # fmt: skip
def test_every_square_is_in_a_set_or_over(
    counts: list[int], meeting: tuple[tuple[int, int], ...], seed: int
) -> None:
    places = 1 + max(place for pair in meeting for place in pair)
    sets = sum(counts) // places
    if not sets:
        return
    values = [Random(seed + print).uniform(15, 95) for print in range(len(counts))]
    wanted = wanted_by_value(values, counts, meeting, sets)
    found = dealt(wanted, 40, seed=seed, rounds=1)
    lying = Counter([*(print for one in found.sets for print in one), *found.over])
    assert lying == Counter(dict(enumerate(counts)))
    assert [len(one) for one in found.sets] == [places] * sets
    assert found.doubles == sum(len(one) - len(set(one)) for one in found.sets)
    assert found.weakest == min(
        wanted.strength[one[a]][one[b]] for one in found.sets for a, b in meeting
    )
    if most_sets(counts, places) >= sets:
        assert found.doubles == 0


def a_pack_four_times() -> tuple[list[float], Wanted]:
    """Invented: 42 prints, four squares of each, in 21 stacks of eight."""
    chance = Random(17)
    values = [chance.gauss(55, 17) for _ in range(42)]
    return values, wanted_by_value(values, [4] * 42, CUBE, 21)


def test_four_packs_of_42_come_near_the_bound_with_no_print_twice() -> None:
    values, wanted = a_pack_four_times()
    apart = independent_contacts(contacts(derive("stacked-four-patch", F(5)).units, 0.25))
    every = [value for value in values for _ in range(4)]
    bound = weakest_at_best(every, apart * wanted.sets)
    found = dealt(wanted, bound, rounds=4)
    assert found.doubles == 0
    assert 0.8 * bound <= found.weakest <= bound


def test_the_same_seed_deals_the_same_and_going_on_never_makes_it_worse() -> None:
    _, wanted = a_pack_four_times()
    once, again = (list(islice(deal(wanted, 25, 3), 90)) for _ in range(2))
    assert once == again
    assert [one.rank for one in once] == sorted(one.rank for one in once)
    assert dealt(wanted, 25, seed=4, rounds=1) != once[LOOKS_A_ROUND - 1]


def test_it_ends_where_there_is_nothing_left_to_strive_for() -> None:
    values = [10.0, 90.0]
    *_, last = deal(wanted_by_value(values, [3, 3], PAIR, 3), 80, 1)
    assert (last.weakest, last.doubles, last.shortfall) == (80, 0, 0)


def test_families_are_spread_where_nothing_else_says() -> None:
    # Invented: six prints a family, all of them lights or darks alike, in sets of four.
    values = [20.0 if print % 2 else 80.0 for print in range(24)]
    families = tuple(print // 6 for print in range(24))
    plain = wanted_by_value(values, [1] * 24, SQUARE, 6)
    spread = Wanted(plain.counts, plain.strength, SQUARE, 4, 6, families)
    found = dealt(spread, 60)
    assert (found.doubles, found.weakest) == (0, 60)
    assert all(len({families[print] for print in one}) == 4 for one in found.sets)


def test_where_nothing_meets_any_deal_will_do() -> None:
    *_, last = deal(Wanted((2, 2), apart_by_value([1, 2]), (), 1, 4), 1, 1)
    assert (last.weakest, last.doubles, len(last.sets)) == (inf, 0, 4)


@pytest.mark.parametrize(("counts", "sets"), [((1, 2), 1), ((4, 4), 0), ((), 1)])
def test_more_sets_than_there_are_squares_for_are_refused(
    counts: tuple[int, ...], sets: int
) -> None:
    with pytest.raises(ValueError, match="fewer squares"):
        Wanted(counts, apart_by_value([0.0] * len(counts)), SQUARE, 4, sets)


@settings(max_examples=30, deadline=None)
@given(st.lists(st.integers(15, 95), min_size=8, max_size=8))
def test_no_set_of_eight_passes_the_bound(values: list[float]) -> None:
    # All ways to choose which four lie light and which dark bound every deal from above.
    wanted = wanted_by_value(values, [1] * 8, CUBE, 1)
    bound = weakest_at_best(values, 4)
    for dark in combinations(range(8), 4):
        light = [print for print in range(8) if print not in dark]
        assert min(abs(values[a] - values[b]) for a, b in zip(dark, light, strict=True)) <= bound
    assert dealt(wanted, max(bound, 1), rounds=1).weakest <= bound

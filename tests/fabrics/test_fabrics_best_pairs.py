"""Sets of two by value: as strong as any choice, with no more doubles than any; by trying all."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from itertools import combinations

import networkx
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from sewalong.fabrics.pairing import least_doubles
from sewalong.fabrics.sets.proposing import proposed
from sewalong.fabrics.sets.rules import Rule
from sewalong.quilt.choices import ASSORTED
from tests.fabrics.made_fabrics import asked, swatch

FABRICS = st.lists(st.tuples(st.integers(0, 9), st.integers(1, 3)), min_size=1, max_size=4)


def every_choice(squares: list[int], pairs: int) -> Iterator[list[tuple[int, int]]]:
    if not pairs:
        yield []
        return
    for i, j in combinations(range(len(squares)), 2):
        rest = [one for place, one in enumerate(squares) if place not in (i, j)]
        # The first pair holds the first square that is in any, or that square is over.
        for more in every_choice(rest if not i else rest[i:], pairs - 1):
            yield [(squares[i], squares[j]), *more]


@settings(max_examples=80, deadline=None)
@given(FABRICS, st.data())
def test_no_choice_of_pairs_has_fewer_doubles_or_a_stronger_weakest(
    fabrics: list[tuple[int, int]], data: st.DataObject
) -> None:
    squares = [print for print, (_, n) in enumerate(fabrics) for _ in range(n)]
    if len(squares) < 2:
        return
    pairs = data.draw(st.integers(1, min(4, len(squares) // 2)))
    best = max(
        (
            -sum(a == b for a, b in choice),
            min(abs(fabrics[a][0] - fabrics[b][0]) for a, b in choice),
        )
        for choice in every_choice(squares, pairs)
    )
    made = tuple(swatch("ABCD"[i], n, float(value)) for i, (value, n) in enumerate(fabrics))
    found = proposed(asked(made, pairs, method="paired-squares"), 1)
    assert (-found.doubles, found.weakest) == best
    assert found.doubles == least_doubles([n for _, n in fabrics], 2, pairs)


def test_the_pairs_of_a_worked_case() -> None:
    # N015: "Best for the weakest: 22-55, 30-60, 44-75, 50-90: none under 30."
    values = {"A": 22, "B": 30, "C": 44, "D": 50, "E": 55, "F": 60, "G": 75, "H": 90}
    made = tuple(swatch(letter, 1, float(value)) for letter, value in values.items())
    found = proposed(asked(made, 4, method="paired-squares"))
    assert (found.weakest, found.bound) == (30, 30)
    assert sorted(abs(values[a] - values[b]) for a, b in found.sets) == [30, 31, 33, 40]
    assert found.words[1] == "No choice of sets passes 30."


def test_light_on_dark_pairs_are_the_same_pairs_with_the_light_first() -> None:
    values = {"A": 22, "B": 90, "C": 44, "D": 50, "E": 75, "F": 60}
    made = tuple(swatch(letter, 1, float(value)) for letter, value in values.items())
    found = proposed(asked(made, 3, Rule.LIGHT_ON_DARK, "paired-squares"))
    assert found.weakest == 75 - 44
    assert all(values[light] > values[dark] for light, dark in found.sets)


def test_a_pile_may_lie_with_itself_and_a_print_may_not() -> None:
    for kind, doubles in ((ASSORTED, 0), (None, 2)):
        made = (swatch("A", 6, 20, kind), swatch("B", 2, 60))
        found = proposed(asked(made, 4, method="paired-squares"))
        assert found.doubles == doubles


def test_one_background_and_many_prints_are_counted_by_fabric() -> None:
    # N018: forty squares, 22 of one fabric and 18 single prints: "18 pairs at most, 4 of the
    # background over; not 20."
    made = (swatch("Z", 22, 90), *(swatch(f"A{i}", 1, float(i)) for i in range(18)))
    for wanted in (18, 20):
        found = proposed(asked(made, wanted, Rule.ONE_BACKGROUND, "paired-squares", "Z"))
        assert len(found.sets) == 18
        assert found.over == {"Z": 4}
        assert (found.doubles, found.weakest) == (0, 90 - 17)
    assert proposed(asked(made, 18, method="paired-squares"), 1).doubles == 0
    assert proposed(asked(made, 20, method="paired-squares"), 1).doubles == 2


@settings(max_examples=60, deadline=None)
@given(st.lists(st.integers(1, 4), min_size=1, max_size=6), st.integers(1, 4))
def test_the_least_doubles_are_those_of_a_flow(counts: list[int], sets: int) -> None:
    # Each print to each set once: what flows is what lies without its like (networkx).
    different = 3
    if sum(counts) < sets * different:
        return
    graph: networkx.DiGraph[object] = networkx.DiGraph()
    for print, n in enumerate(counts):
        graph.add_edge("squares", ("print", print), capacity=n)
        for one in range(sets):
            graph.add_edge(("print", print), ("set", one), capacity=1)
            graph.add_edge(("set", one), "laid", capacity=different)
    without, _ = networkx.maximum_flow(graph, "squares", "laid")
    assert least_doubles(counts, different, sets) == sets * different - without


@pytest.mark.parametrize(
    ("counts", "sets", "over"),
    [
        ([2] * 21, 10, 2),
        ([20, 3, 3, 2, 2], 3, 18),
        ([12, 10, 8, 6, 4], 9, 4),
        ([9, 7, 6, 5, 5, 4, 4], 10, 0),
    ],
)
def test_blocks_with_no_print_twice_are_proposed_as_many_as_there_can_be(
    counts: list[int], sets: int, over: int
) -> None:
    # N017: "(a) 10 blocks, 2 over; (b) 3 blocks though there are 30 squares; (c) 9, 4 over; (d) 10,
    # none over."
    made = tuple(swatch(f"A{i}", n, 50.0) for i, n in enumerate(counts))
    found = proposed(asked(made, sets, Rule.SCRAPPY, "four-patch"), 60)
    assert found.doubles == 0
    assert sum(found.over.values()) == over
    assert Counter(map(len, map(set, found.sets))) == {4: sets}
    if (sets + 1) * 4 <= sum(counts):
        assert proposed(asked(made, sets + 1, Rule.SCRAPPY, "four-patch"), 60).doubles > 0

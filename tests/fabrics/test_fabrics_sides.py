"""The two sides of a set are those of its contact graph: networkx, and the cube written out."""

from __future__ import annotations

from fractions import Fraction as F

import networkx
import pytest
from hypothesis import given
from hypothesis import strategies as st

from sewalong.fabrics.sets.sides import from_first, meeting_places, sides
from sewalong.piecing.catalogue import method_ids
from sewalong.piecing.derive import derive
from sewalong.quilt.set_shape import shape_of
from tests.fabrics.made_fabrics import meeting_of

PAIRS = st.sets(st.tuples(st.integers(0, 8), st.integers(0, 8)).filter(lambda two: two[0] < two[1]))


@given(PAIRS)
def test_there_are_two_sides_where_networkx_colours_with_two(pairs: set[tuple[int, int]]) -> None:
    two = sides(sorted(pairs))
    graph = networkx.Graph(pairs)
    assert (two is not None) == networkx.is_bipartite(graph)
    if two is not None:
        one, other = two
        assert one.isdisjoint(other)
        assert one | other == set(graph)
        assert all((a in one) != (b in one) for a, b in pairs)
        assert all(a in one and b in other for a, b in from_first(sorted(pairs), one))


@pytest.mark.parametrize(
    ("method", "one", "other"),
    [
        # N013: lights at A C E G, darks at B D F H.
        ("stacked-four-patch", "ACEG", "BDFH"),
        ("four-patch", "AC", "BD"),
        ("nine-patch", "ACEGI", "BDFH"),
        ("paired-squares", "A", "B"),
    ],
)
def test_the_sides_of_a_method_follow_from_what_meets(method: str, one: str, other: str) -> None:
    places = sorted({letter for c in meeting_of(method) for letter in c.letters})
    two = sides(meeting_places(meeting_of(method), places))
    assert two is not None
    assert ["".join(places[place] for place in sorted(side)) for side in two] == [one, other]


@pytest.mark.parametrize("method", method_ids())
def test_every_method_that_has_sets_has_two_sides(method: str) -> None:
    shape = shape_of(derive(method, F(5)))
    if shape is not None:
        pairs = meeting_places(meeting_of(method), shape.places)
        assert {place for pair in pairs for place in pair} == set(range(len(shape.places)))
        assert sides(pairs) is not None


def test_a_square_of_another_pile_and_one_that_meets_itself_are_left_out() -> None:
    assert meeting_places(meeting_of("four-patch"), "ABC") == ((0, 1), (1, 2))

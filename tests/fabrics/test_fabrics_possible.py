"""What is possible is said before anything is laid: worked cases, and by trying."""

from __future__ import annotations

from itertools import permutations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from sewalong.fabrics.pairing import weakest_at_best
from sewalong.fabrics.possible import possible
from sewalong.fabrics.swatch import Swatch


def swatch(letter: str, squares: int, value: float | None = 50) -> Swatch:
    return Swatch(letter, f"fabric {letter}", squares, None, None, value, None, None)


def test_one_background_is_named_as_the_one_that_is_too_many() -> None:
    # Forty squares, 22 of one fabric and 18 single prints: 18 pairs, not 20.
    singles = [swatch(f"A{letter}", 1) for letter in "ABCDEFGHIJKLMNOPQR"]
    found = possible([swatch("B", 22), *singles], wanted=20, places=2, apart=1)
    assert found.different == 18
    assert [(one.swatch.letter, one.squares) for one in found.too_many] == [("B", 4)]


def test_nothing_is_too_many_where_all_can_be_used() -> None:
    found = possible([swatch(letter, 2) for letter in "ABCDEFGH"], wanted=2, places=8, apart=4)
    assert (found.different, found.too_many) == (2, ())


def test_the_bound_is_that_of_the_weakest_pair_at_best() -> None:
    values = [22, 30, 44, 50, 55, 60, 75, 90]
    drawer = [swatch(letter, 1, value) for letter, value in zip("ABCDEFGH", values, strict=True)]
    found = possible(drawer, wanted=4, places=2, apart=1)
    assert (found.bound, found.readable, found.lights, found.darks) == (30, 4, 0, 0)


def test_it_says_how_many_more_lights_would_let_all_be_used() -> None:
    # Two lights of 80, six of 30: two pairs read. One light more for every pair beyond them.
    drawer = [swatch("A", 2, 80), swatch("B", 6, 30)]
    found = possible(drawer, wanted=4, places=2, apart=1)
    assert (found.readable, found.bound, found.lights, found.darks) == (2, 0, 2, None)


def test_what_is_not_known_is_not_claimed() -> None:
    found = possible([swatch("A", 4), swatch("B", 4, None)], wanted=4, places=2, apart=1)
    assert (found.different, found.bound, found.lights, found.darks) == (4, None, None, None)
    nothing_meets = possible([swatch("A", 4)], wanted=4, places=1, apart=0)
    assert (nothing_meets.different, nothing_meets.bound) == (4, None)


@settings(max_examples=60, deadline=None)
@given(st.lists(st.integers(0, 100), min_size=2, max_size=7), st.integers(1, 4))
def test_with_so_many_more_it_can_be_had_and_with_fewer_not(values: list[int], wanted: int) -> None:
    letters = [chr(ord("A") + place) for place in range(len(values))]
    drawer = [swatch(letter, 1, value) for letter, value in zip(letters, values, strict=True)]
    found = possible(drawer, wanted, places=2, apart=1)
    for more, like in ((found.lights, max(values)), (found.darks, min(values))):
        for n in range(wanted + 1):
            squares = [*values, *[like] * n]
            can_be = 2 * wanted <= len(squares) and weakest_at_best(squares, wanted) >= 20
            assert can_be == (more is not None and n >= more)


def best_of_one_set(values: list[float]) -> float:
    """The strongest weakest seam of a four-patch, of all ways to lay one."""
    return max(
        min(abs(one[place] - one[(place + 1) % 4]) for place in range(4))
        for one in permutations(values, 4)
    )


@settings(max_examples=60, deadline=None)
@given(st.lists(st.integers(0, 100), min_size=4, max_size=6))
def test_what_is_said_to_be_impossible_is_so_however_a_set_is_laid(values: list[float]) -> None:
    letters = "ABCDEF"[: len(values)]
    drawer = [swatch(letter, 1, value) for letter, value in zip(letters, values, strict=True)]
    found = possible(drawer, wanted=1, places=4, apart=2)
    assert found.bound is not None
    assert best_of_one_set(values) <= found.bound
    if not found.readable:
        assert best_of_one_set(values) < 20
    for more, like in ((found.lights, max(values)), (found.darks, min(values))):
        if more:
            assert best_of_one_set([*values, *[like] * (more - 1)]) < 20


def test_of_too_few_fabrics_none_is_called_too_many() -> None:
    found = possible([swatch("A", 9), swatch("B", 9)], wanted=2, places=4, apart=2)
    assert (found.different, found.too_many, found.pairs, found.sets) == (0, (), 9, 2)


def test_sets_of_nothing_are_refused() -> None:
    with pytest.raises(ValueError, match="one square at least"):
        possible([swatch("A", 2)], wanted=1, places=0, apart=0)

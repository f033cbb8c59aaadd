"""A fabric of which squares are in sets cannot be taken out of the plan."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from sewalong.progress.record.fabrics_in_use import refuse_taking_out_of_sets
from sewalong.progress.record.refused import Refused
from sewalong.progress.record.sets.laid import LaidSet, SetsNow
from sewalong.progress.record.state import State
from tests.progress.building import opening
from tests.progress.sets.fabrics import with_fabrics

TWO = ("A", "B")


def state_with(sets: SetsNow) -> State:
    return replace(opening(with_fabrics("paired-squares")), sets=sets)


def why_not(sets: SetsNow, letter: str = "A") -> str:
    """Why the fabric cannot be taken out; empty where it can."""
    state = state_with(sets)
    kept = tuple(one for one in state.quilt.fabrics if one.letter != letter)
    try:
        refuse_taking_out_of_sets(state, replace(state.quilt, fabrics=kept))
    except Refused as refused:
        return str(refused)
    return ""


@pytest.mark.parametrize(
    ("sets", "said"),
    [
        (1, "in set 1."),
        (2, "in sets 1, 2."),
        (4, "in sets 1, 2, 3, 4."),
        (5, "in sets 1, 2, 3, 4 and 1 more."),
        (7, "in sets 1, 2, 3, 4 and 3 more."),
    ],
)
def test_the_sets_are_named(sets: int, said: str) -> None:
    laid = {n: LaidSet(n, TWO) for n in range(1, sets + 1)}
    assert why_not(SetsNow(laid)).startswith(
        f"A chalk stays in the plan, for squares of it are {said}"
    )
    assert why_not(SetsNow(laid), "C") == ""


def test_what_was_spoiled_of_it_keeps_it_too_and_a_lost_place_does_not() -> None:
    assert "squares of it were used" in why_not(SetsNow(gone={"A": 1}))
    assert why_not(SetsNow({1: LaidSet(1, TWO, lost=(0,))})) == ""
    assert why_not(SetsNow()) == ""

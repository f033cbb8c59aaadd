"""What is over once sets stand, in words."""

from __future__ import annotations

from msgspec.structs import replace

from sewalong.progress.record.sets.laid import LaidSet, SetsNow
from sewalong.progress.record.state import State
from sewalong.progress.sets.left_words import left_words
from tests.progress.building import opening
from tests.progress.sets.fabrics import sets_of, with_fabrics


def state_with(sets: int, each: int) -> State:
    """So many sets of eight out of twelve fabrics with `each` squares."""
    laid = {n: LaidSet(n, squares) for n, squares in enumerate(sets_of(8, sets), start=1)}
    return replace(opening(with_fabrics(each=each)), sets=SetsNow(laid))


def test_before_there_are_sets_nothing_is_said() -> None:
    assert left_words(opening(with_fabrics())) == ()


def test_what_is_in_no_set_is_counted_and_a_few_are_named() -> None:
    # Twelve fabrics of 2 are 24 squares, and three sets take every one twice.
    assert left_words(state_with(3, 2)) == (
        "3 sets are accepted.",
        "No square is over: all are in sets.",
    )
    first, over = left_words(state_with(1, 2))
    assert first == "1 set is accepted."
    assert over == (
        "Squares in no set: 16 in all, 1 of A chalk, 1 of B oat, 1 of C shell, 1 of D butter and "
        "12 of others."
    )


def test_a_fabric_that_sets_take_too_much_of_is_named() -> None:
    *_, last = left_words(state_with(3, 1))
    assert last == "Sets take 1 more of L cocoa than there are."

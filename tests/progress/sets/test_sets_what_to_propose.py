"""What is asked of a proposal: free squares, and as many sets as the target still wants."""

from __future__ import annotations

from msgspec.structs import replace

from sewalong.fabrics.sets.rules import Rule
from sewalong.progress.record.events.replanning import planned
from sewalong.progress.sets.what_to_propose import what_to_propose
from tests.progress import every_act as c
from tests.progress.building import go_on, opening, play
from tests.progress.sets.fabrics import sets_of, with_fabrics

QUILT = with_fabrics()
"""96 squares of twelve fabrics; a target of four units wants one set of eight squares."""


def test_of_a_fresh_quilt_all_squares_are_free_and_the_target_says_how_many_sets() -> None:
    asked = what_to_propose(opening(QUILT), Rule.BY_VALUE)
    assert sum(one.squares for one in asked.swatches) == 96
    assert asked.sets == 1
    assert asked.places == tuple("ABCDEFGH")


def test_what_stands_is_not_dealt_again() -> None:
    state, record = play(QUILT, c.ChangeTarget(6, 8), c.AcceptSets(sets_of(8, 12)),
                         c.Count("pair", 5), c.MarkSet(5, "locked"), c.MarkSet(6, "held back"))  # fmt: skip
    asked = what_to_propose(state, Rule.BY_VALUE, without=("A",))
    # Sets 1 and 2 are begun, 5 is locked, 6 is held back: 64 of 96 are free, less those of A.
    left_of_a = 8 - sum(state.sets.sets[n].squares.count("A") for n in (1, 2, 5, 6))
    assert sum(one.squares for one in asked.swatches) == 64 - left_of_a
    assert asked.locked == (state.sets.sets[5].squares,)
    # Twelve in all for 48 units; two begun and one locked; there are squares for seven more.
    assert asked.sets == (64 - left_of_a) // 8
    state = go_on(state, record, c.ChangeTarget(4, 4))
    assert what_to_propose(state, Rule.BY_VALUE).sets == 1


def test_what_was_begun_before_there_were_sets_is_not_wanted_again() -> None:
    state, _ = play(QUILT, c.ChangeTarget(4, 4), c.Count("pair", 8))
    assert what_to_propose(state, Rule.BY_VALUE).sets == 2


def test_what_was_spoiled_on_the_way_is_wanted_again() -> None:
    done = (c.Count("pair", 8), c.Count("sew", 4), c.Spoil("four-patch", 2, "torn"))
    state, _ = play(QUILT, c.ChangeTarget(4, 4), *done)
    # Four stacks in all: two four-patches are one of them, and the other three are to come.
    assert what_to_propose(state, Rule.BY_VALUE).sets == 3


def test_nothing_is_wanted_below_nothing() -> None:
    done, _ = play(QUILT, c.AcceptSets(sets_of(8, 2)), c.Count("pair", 8))
    assert what_to_propose(done, Rule.BY_VALUE).sets == 0


def test_squares_that_are_not_there_any_more_are_not_free() -> None:
    laid = (c.ChangeTarget(4, 4), c.AcceptSets((("A",) * 8,)), c.Count("pair"))
    was = planned(play(QUILT, *laid)[0])
    fewer = tuple(
        replace(one, squares=1 if one.letter == "A" else 8) for one in was.counted_fabrics
    )
    changed, _ = play(QUILT, *laid, c.ChangePlan(was, replace(was, fabrics=fewer)))
    asked = what_to_propose(changed, Rule.BY_VALUE)
    # Set 1 takes eight squares of A, and the plan has one: none of them is free.
    assert [one.letter for one in asked.swatches if one.squares] == list("BCDEFGHIJKL")

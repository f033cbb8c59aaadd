"""How many sets are still to be chosen, and from which squares: worked by hand."""

from __future__ import annotations

import pytest

from sewalong.progress.plan.plan import plan
from sewalong.progress.record.state import State
from sewalong.progress.sets.to_choose import ToChoose, to_choose
from tests.progress import every_act as c
from tests.progress.building import a_quilt, play
from tests.progress.sets.fabrics import sets_of, with_fabrics

# 12 fabrics of 8 squares; 2 × 2 units take one stack of eight squares.
QUILT = with_fabrics()


def chosen(state: State) -> ToChoose:
    return to_choose(state, plan(state))


def played(*acts: c.Act) -> State:
    return play(QUILT, *acts)[0]


def test_of_a_fresh_quilt_all_that_the_target_takes() -> None:
    found = chosen(played())
    assert (found.sets, found.kept) == (1, ())
    assert set(found.free.values()) == {8}
    # 5 × 5 units are 25, from 7 stacks: the last gives three more than are wanted.
    assert chosen(played(c.ChangeTarget(5, 5))).sets == 7


def test_no_more_than_there_are_squares_for() -> None:
    assert chosen(played(c.ChangeTarget(6, 8))).sets == 12
    # 92 squares are left: eleven sets, four squares over.
    short = played(c.ChangeTarget(6, 8), c.Spoil("square", 4, "torn"))
    assert chosen(short).sets == 11


def test_what_stands_is_neither_chosen_again_nor_free() -> None:
    six = c.AcceptSets(sets_of(8, 6), "by value")
    state = played(c.ChangeTarget(5, 5), six, c.Count("pair"), c.MarkSet(3, "locked"))
    found = chosen(state)
    # Seven in all: set 1 is begun, set 3 is locked.
    assert found.sets == 5
    assert found.kept == (six.sets[0], six.sets[2])
    used = [*six.sets[0], *six.sets[2]]
    assert found.free == {letter: 8 - used.count(letter) for letter in found.free}


def test_what_was_sewn_before_there_were_sets_is_not_wanted_twice() -> None:
    # Four pairs, of which nobody knows the squares, are one stack of the seven.
    assert chosen(played(c.ChangeTarget(5, 5), c.Count("pair", 4))).sets == 6


def test_a_method_without_sets_says_so() -> None:
    with pytest.raises(c.Refused, match="no sets"):
        chosen(play(a_quilt("rail-fence"))[0])

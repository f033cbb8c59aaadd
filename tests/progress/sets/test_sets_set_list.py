"""The sets as a list on paper: every fabric with letter and name, front and back apart."""

from __future__ import annotations

from sewalong.progress.sets.set_list import set_list
from sewalong.progress.sets.set_words import NOT_KNOWN
from tests.progress import every_act as c
from tests.progress.building import opening, play
from tests.progress.sets.fabrics import NAMES, sets_of, with_fabrics


def test_without_sets_there_is_none() -> None:
    assert set_list(opening(with_fabrics())) == ()


def test_front_and_back_with_letters_and_names() -> None:
    state, _ = play(with_fabrics(), c.AcceptSets(sets_of(8, 2)), c.MarkSet(2, "held back"))
    first, second = set_list(state)
    assert (first.number, first.standing, second.standing) == (1, "next", "held back")
    assert [title for title, _ in first.groups] == ["front", "back"]
    fabrics = [fabric for _, part in first.groups for fabric in part]
    assert fabrics == [f"{chr(ord('A') + n)} {NAMES[n]}" for n in range(8)]


def test_a_method_without_a_front_lists_its_squares() -> None:
    state, _ = play(with_fabrics("nine-patch"), c.AcceptSets(sets_of(9, 1)))
    (only,) = set_list(state)
    assert sum(len(part) for _, part in only.groups) == 9


def test_a_square_nobody_knows_any_more_is_said_to_be_so() -> None:
    state, _ = play(
        with_fabrics(),
        c.AcceptSets(sets_of(8, 1)),
        c.Count("pair", 1),
        c.Spoil("pair", 1, "cut too small", set=1),
    )
    (only,) = set_list(state)
    if state.sets.sets[1].lost:
        assert NOT_KNOWN in [fabric for _, part in only.groups for fabric in part]

"""What can be asked of sets, what is refused, and what is said of it."""

from __future__ import annotations

import pytest

from sewalong.progress.joining.current_stage import which_set
from sewalong.progress.record.squares_left import squares_left
from sewalong.progress.sets.in_hand import set_in_hand
from tests.progress import every_act as c
from tests.progress.building import a_quilt, go_on, opening, play
from tests.progress.sets.fabrics import sets_of, with_fabrics

QUILT = with_fabrics()
ACCEPTED = c.AcceptSets(sets_of(8, 6), "by value")


@pytest.mark.parametrize(
    ("act", "why"),
    [
        (c.AcceptSets((("A",) * 7,)), "A set of this method is 8 squares, and 7 were given"),
        (c.AcceptSets((("A", "Z") * 4,)), "There is no fabric “Z” with squares"),
        (
            c.AcceptSets((("A",) * 8, tuple("ABCDEFGH"))),
            "1 more of A chalk is wanted than there is",
        ),
        (c.SwapSquares(7, 1, 1, 1), "There is no set 7. There are sets 1 to 6."),
        (c.SwapSquares(1, 9, 2, 1), "Places in a set go from 1 to 8."),
        (c.SwapSquares(1, 1, 1, 1), "That is how it is laid already."),
        (c.LayOwn(1, tuple("ABCDEFGH")), "That is how it is laid already."),
        (c.MarkSet(1, "unlocked"), "Set 1 is unlocked already."),
        (c.MarkSet(1, "back in"), "Set 1 is not held back."),
        (c.TakeUp("press", 1), "No piece of set 1 waits at press."),
        (c.TakeUp("presses", 1), "Did you mean press?"),
        (c.Spoil("pair", 1, "torn", set=1), "No pair of set 1 is known to lie there"),
    ],
)
def test_what_cannot_be_is_refused_in_a_sentence_and_changes_nothing(act: c.Act, why: str) -> None:
    state, record = play(QUILT, ACCEPTED, c.Find("pair", 1))
    before = len(record)
    with pytest.raises(c.Refused, match=why.replace("?", r"\?").replace("“", ".")):
        go_on(state, record, act)
    assert len(record) == before


@pytest.mark.parametrize("method", ["rail-fence", "plain-squares", "flying-geese-four"])
def test_a_method_without_sets_says_so(method: str) -> None:
    with pytest.raises(c.Refused, match="This method has no sets"):
        play(a_quilt(method), c.AcceptSets((("A",),)))


def test_begun_locked_and_held_back_sets_stay_when_the_rest_is_proposed_anew() -> None:
    state, record = play(QUILT, ACCEPTED, c.Count("pair"), c.MarkSet(3, "locked"),
                         c.MarkSet(5, "held back"))  # fmt: skip
    assert state.sets.order("square") == (2, 3, 4, 6)
    anew = (tuple("LKJIHGFE"), tuple("LKJIDCBA"))
    state = go_on(state, record, c.AcceptSets(anew, "light on dark"))
    assert {number: one.squares for number, one in state.sets.sets.items()} == {
        1: ACCEPTED.sets[0], 3: ACCEPTED.sets[2], 5: ACCEPTED.sets[4], 2: anew[0], 4: anew[1],
    }  # fmt: skip
    # What is begun goes on, what is locked keeps its turn, and the new ones follow.
    assert state.sets.order("square") == (3, 2, 4)
    found = set_in_hand(state, "pair")
    assert found is not None
    assert (found.number, found.count) == (1, 2)


def test_a_skipped_set_comes_last_and_a_held_back_one_when_it_is_let_in() -> None:
    state, record = play(QUILT, ACCEPTED, c.MarkSet(1, "skipped"), c.MarkSet(2, "held back"))
    assert state.sets.order("square") == (3, 4, 5, 6, 1)
    state = go_on(state, record, c.MarkSet(2, "back in"))
    assert state.sets.order("square") == (3, 4, 5, 6, 1, 2)
    for _ in range(3):
        state = go_on(state, record, c.Undo())
    assert state.sets.order("square") == (1, 2, 3, 4, 5, 6)
    state = go_on(state, record, c.Count("pair"))
    with pytest.raises(c.Refused, match="Set 1 is begun"):
        go_on(state, record, c.MarkSet(1, "skipped"))


def test_squares_are_swapped_between_two_sets_and_within_one() -> None:
    state, record = play(QUILT, ACCEPTED, c.SwapSquares(1, 1, 2, 8), c.SwapSquares(1, 2, 1, 3))
    assert state.sets.sets[1].squares == ("D", "C", "B", "D", "E", "F", "G", "H")
    assert state.sets.sets[2].squares == ("I", "J", "K", "L", "A", "B", "C", "A")
    assert [one.event.words(state, record) for one in record[-2:]] == [
        "Swapped squares in sets 1 and 2.",
        "Swapped squares in set 1.",
    ]


def test_her_own_set_may_take_what_is_over_and_no_more() -> None:
    state, record = play(QUILT, ACCEPTED)
    left = squares_left(QUILT, state.sets)
    assert left == dict.fromkeys("ABCDEFGHIJKL", 4)
    state = go_on(state, record, c.LayOwn(6, ("A",) * 4 + ("B",) * 4))
    with pytest.raises(c.Refused, match="2 more of A chalk are wanted"):
        go_on(state, record, c.LayOwn(5, ("A",) * 3 + tuple("CDEFG")))


def test_the_set_in_hand_is_said_with_letters_and_names() -> None:
    state, record = play(QUILT, ACCEPTED)
    assert which_set(state, "pair") == "Set 1 of 6, 1 of 4: B oat on A chalk."
    state = go_on(state, record, c.Count("pair", 4), c.Count("sew", 2), c.Count("press", 2))
    assert which_set(state, "stack") == (
        "Set 1 of 6: E rust dots + F moss + 2 more on A chalk + B oat + 2 more."
    )
    # Another set is begun meanwhile, and of one pile nobody knows what is gone.
    state = go_on(
        state, record, c.Count("pair", 4), c.Count("sew", 2), c.Spoil("four-patch", 1, "x")
    )
    assert which_set(state, "press") == (
        "Set 2 of 6, 1 of 2: I plum + J coal + 2 more (not sure: a piece of the pile is gone)."
    )


def test_without_sets_nothing_is_in_hand_and_nothing_is_followed() -> None:
    state = opening(QUILT)
    assert set_in_hand(state, "pair") is None
    state, _ = play(QUILT, c.Count("pair", 4))
    assert state.sets == opening(QUILT).sets


def test_a_set_of_her_own_stays_when_the_rest_is_proposed_anew() -> None:
    state, record = play(QUILT, ACCEPTED, c.LayOwn(4, tuple("LKJIHGFE")))
    assert (
        record[-1].event.words(state, record).startswith("Set 4 is your own, and stays: L cocoa, ")
    )
    state = go_on(state, record, c.AcceptSets((tuple("ABCDABCD"),)))
    assert {number: one.squares for number, one in state.sets.sets.items()} == {
        4: tuple("LKJIHGFE"), 1: tuple("ABCDABCD"),
    }  # fmt: skip
    state = go_on(state, record, c.MarkSet(4, "unlocked"), c.AcceptSets((tuple("ABCDABCD"),)))
    assert list(state.sets.sets) == [1]


def test_what_is_spoiled_is_said_with_its_set_and_the_name_of_its_fabric() -> None:
    state, record = play(QUILT, ACCEPTED, c.Count("pair", 4), c.Spoil("pair", 1, "torn", set=1, fabric="C"),
                         c.Spoil("square", 1, "ink", fabric="B"), c.Spoil("pair", 1, "lost", set=1))  # fmt: skip
    assert [one.event.words(state, record) for one in record[-3:]] == [
        "Spoiled 1 pair of set 1, with C shell: torn.",
        "Spoiled 1 square of B oat: ink.",
        "Spoiled 1 pair of set 1: lost.",
    ]

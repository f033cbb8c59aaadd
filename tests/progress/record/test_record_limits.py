"""How much of everything the record takes: the most that passes and the least that does not."""

from __future__ import annotations

from fractions import Fraction

import pytest

from sewalong.lengths import LONGEST
from sewalong.progress.record.events import every_kind as e
from sewalong.progress.record.events.sessions import NO_SESSION
from sewalong.progress.record.limits import are, lie, quoted, short
from sewalong.progress.record.refused import Refused
from tests.progress import every_act as c
from tests.progress.building import EVENING, a_quilt, opening, play

QUILT = a_quilt(pieces=40, rows=4, columns=5)


def test_at_most_9999_at_once_and_1_at_least() -> None:
    state, _ = play(QUILT, c.Find("square", 9999), c.Find("square", 1))
    assert state.found == {"square": 10_000}
    state, _ = play(QUILT, c.Recount("square", 9999), c.Recount("square", 0))
    assert state.piles["square"] == 0


def test_rows_and_columns_go_from_1_to_200() -> None:
    state, _ = play(QUILT, c.ChangeTarget(200, 1), c.ChangeTarget(1, 200))
    assert (state.target.rows, state.target.columns) == (1, 200)


def test_two_thousand_letters_are_kept() -> None:
    state, _ = play(QUILT, c.WriteNote("a" * 2000))
    assert len(state.notes[0].text) == 2000


def test_a_name_is_quoted_up_to_forty_letters() -> None:
    assert quoted("a" * 40) == "“" + "a" * 40 + "”"
    assert quoted("a" * 41) == "“" + "a" * 40 + "”"


def test_a_number_too_long_for_a_sentence_is_not_said() -> None:
    assert (short(999_999_999), short(-999_999_999)) == ("999999999", "-999999999")
    assert short(1_000_000_000) == short(-1_000_000_000) == "far too many"


def test_one_is_and_lies_and_others_are_and_lie() -> None:
    assert [(are(n), lie(n)) for n in (0, 1, 2)] == [("are", "lie"), ("is", "lies"), ("are", "lie")]


def measured(*readings: str, expected: str = "7/2") -> e.Checked:
    return e.Checked(
        at=EVENING,
        session=NO_SESSION,
        piece="strips:3:3/2",
        readings=readings,
        expected=expected,
        passed=True,
    )


@pytest.mark.parametrize(
    "event",
    [
        measured("7/2"),
        measured(*["7/2"] * 50),
        measured("1/1000000000"),
        measured(str(LONGEST)),
    ],
    ids=["one", "fifty", "a thousand millionth", "the longest"],
)
def test_from_one_to_fifty_lengths_can_be_read_from_the_tape(event: e.Checked) -> None:
    event.check(opening(QUILT))


@pytest.mark.parametrize(
    ("event", "said"),
    [
        (measured(), "Give from 1 to 50 readings of the tape."),
        (measured(*["7/2"] * 51), "Give from 1 to 50 readings of the tape."),
        (measured("0"), "A reading is a length above zero. Measure again."),
        (measured("-1"), "A reading is a length above zero. Measure again."),
        (measured("wide"), "A reading is a length above zero. Measure again."),
        (measured("1/1000000001"), "A reading is a length above zero. Measure again."),
        (
            measured(str(LONGEST + Fraction(1, 8))),
            "A reading is a length above zero. Measure again.",
        ),
        (measured("7/2", expected="0"), "A reading is a length above zero. Measure again."),
    ],
    ids=["none", "fifty-one", "nought", "less", "a word", "too fine", "too long", "expected"],
)
def test_no_other_reading_of_the_tape_is_taken(event: e.Checked, said: str) -> None:
    with pytest.raises(Refused) as refused:
        event.check(opening(QUILT))
    assert str(refused.value) == said

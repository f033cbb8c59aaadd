"""Sessions open by themselves, close with questions, and are forgotten after four hours."""

from __future__ import annotations

from datetime import timedelta

import pytest

from sewalong.progress.acts.decide import decide
from sewalong.progress.record.events.sessions import NO_SESSION, SESSION_GAP
from sewalong.progress.record.fold import fold
from sewalong.progress.record.settings import Settings
from sewalong.progress.safety.closing_questions import (
    ON_LEAVING_THE_IRON,
    leaving_question,
    questions,
)
from tests.progress import every_act as c
from tests.progress.building import (
    EVENING,
    HOUR,
    MINUTE,
    a_quilt,
    counts_of,
    everything,
    go_on,
    opening,
    play,
)

QUILT = a_quilt(pieces=40, rows=4, columns=5)
ALL_YES = {"iron": "yes", "blade": "yes", "machine": "yes", "pins": "yes"}


def test_the_first_count_opens_the_first_session() -> None:
    state, record = play(QUILT, c.Count("pair", 2))
    assert counts_of(record) == ["session opened", "counted"]
    assert state.session is not None
    assert (state.session.number, state.session.opened) == (1, EVENING)
    assert state.session.counts == {"pair": 2}


def test_opening_a_session_twice_is_one_session() -> None:
    state, record = play(QUILT, c.OpenSession(), c.OpenSession(), c.Count("pair"))
    assert counts_of(record) == ["session opened", "counted"]
    assert len(state.sessions) == 1


def test_less_than_four_quiet_hours_is_the_same_session() -> None:
    state, _ = play(QUILT, c.Count("pair"), c.Count("pair"), every=SESSION_GAP - MINUTE)
    assert len(state.sessions) == 1


def test_four_quiet_hours_close_the_session_as_forgotten_when_it_was_last_heard_from() -> None:
    state, record = play(QUILT, c.Count("pair"), c.Count("pair", 3), c.CloseSession())
    state = go_on(state, record, c.Count("pair"), c.Count("pair"), every=SESSION_GAP)
    assert counts_of(record)[4:] == [
        "session opened",
        "counted",
        "session closed",
        "session opened",
        "counted",
    ]
    first, forgotten, third = state.sessions
    assert (first.forgotten, forgotten.forgotten, third.is_open) == (False, True, True)
    assert forgotten.ended == forgotten.last_at == third.opened - SESSION_GAP
    assert forgotten.answers == {}
    assert [session.number for session in state.sessions] == [1, 2, 3]


def test_each_event_keeps_the_session_awake() -> None:
    state, record = play(QUILT, c.Count("pair"))
    for _ in range(5):
        state = go_on(state, record, c.WriteNote("still here"), every=3 * HOUR)
    assert len(state.sessions) == 1


def test_a_forgotten_session_can_still_be_closed_by_hand_and_ended_when_it_ended() -> None:
    state, record = play(QUILT, *everything(QUILT, "sew"))
    last = record[-1].event.at
    state = go_on(state, record, c.CloseSession({"machine": "did not look"}), at=last + 20 * HOUR)
    session = state.sessions[-1]
    assert (len(state.sessions), session.ended, session.forgotten) == (1, last, False)
    assert session.answers == {"machine": "did not look"}


def test_a_session_closed_in_time_ends_then_and_one_put_away_from_ends_with_that() -> None:
    state, record = play(QUILT, c.Count("pair"))
    closed = go_on(state, record.copy(), c.CloseSession(), at=EVENING + 2 * HOUR)
    assert closed.sessions[-1].ended == EVENING + 2 * HOUR
    closed = go_on(state, record, c.CloseSession(put={"pair": "tin"}), at=EVENING + 20 * HOUR)
    assert closed.sessions[-1].ended == EVENING + 20 * HOUR
    assert (len(closed.sessions), closed.where) == (1, {"pair": "tin"})


def test_what_was_put_away_on_closing_is_taken_back_in_one() -> None:
    state, record = play(QUILT, c.Count("pair", 4), c.PutPileAway("square", "shelf"))
    put = {"pair": "tin", "square": "shoe box"}
    state = go_on(state, record, c.CloseSession(put=put))
    assert state.where == put
    state = go_on(state, record, c.Undo(of=record[-2].seq))
    assert state.where == {"square": "shelf"}
    state = go_on(state, record, c.Undo())
    assert (state.where, state.done["pair"]) == ({}, 4)


def test_closing_in_the_moment_of_a_count_makes_no_one_act_of_them() -> None:
    _, record = play(QUILT, c.PutPileAway("square", "tin"), c.Count("pair"), c.Count("pair"))
    at = record[-1].event.at
    state = go_on(fold(QUILT, record), record, c.CloseSession(), at=at)
    assert state.last_act == (record[-2].seq,)


def test_undoing_after_the_session_opens_no_other() -> None:
    state, record = play(QUILT, c.Count("pair"), c.CloseSession(), c.Undo())
    assert (len(state.sessions), record[-1].event.session) == (1, NO_SESSION)


def test_a_clock_set_back_does_not_close_a_session_before_it_opened() -> None:
    state, record = play(QUILT, c.Count("pair"), start=EVENING)
    state = go_on(state, record, c.CloseSession(), at=EVENING - 2 * HOUR)
    session = state.sessions[-1]
    assert session.ended is not None
    assert session.ended >= session.opened


@pytest.mark.parametrize(
    ("upto", "asked"),
    [
        ("pair", []),
        ("sew", ["machine"]),
        ("press", ["iron", "machine"]),
        ("stack", ["iron", "machine", "pins"]),
        ("cut-twice", ["iron", "blade", "machine", "pins"]),
    ],
)
def test_closing_asks_about_what_was_met_in_this_session(upto: str, asked: list[str]) -> None:
    state, _ = play(QUILT, *everything(QUILT, upto))
    assert [question.id for question in questions(state)] == asked


def test_nothing_is_asked_about_an_earlier_session() -> None:
    state, record = play(QUILT, *everything(QUILT, "press"), c.CloseSession(ALL_YES))
    assert questions(state) == ()
    state = go_on(state, record, c.Count("stack"))
    assert [question.id for question in questions(state)] == ["pins"]


def test_the_answers_are_kept_as_given_and_no_others() -> None:
    answers = {"iron": "no", "machine": "did not look", "kettle": "yes"}
    state, _ = play(
        QUILT, *everything(QUILT, "press"), c.CloseSession(answers, next_step="stack the ten")
    )
    session = state.sessions[-1]
    assert session.answers == {"iron": "no", "machine": "did not look"}
    assert session.next_step == "stack the ten"
    assert state.session is None


def test_an_unpicked_or_undone_stage_is_asked_about_as_the_record_has_it() -> None:
    state, record = play(QUILT, c.Count("pair", 2), c.Count("sew"), c.Unpick("sew"))
    assert [question.id for question in questions(state)] == ["machine"]
    state = go_on(state, record, c.Undo(), c.Undo())
    assert questions(state) == ()


def test_leaving_the_board_asks_about_the_iron_once() -> None:
    state, record = play(QUILT, *everything(QUILT, "press"))
    assert leaving_question(state, "press-open") is None
    assert leaving_question(state, "stack") == ON_LEAVING_THE_IRON
    assert leaving_question(state, "no-such-stage") is None
    state = go_on(state, record, c.Answer("iron", "did not look"), c.Count("stack"))
    assert leaving_question(state, "sew-around") is None


def test_back_at_the_board_the_iron_is_asked_about_again() -> None:
    state, record = play(QUILT, *everything(QUILT, "press", make=4), c.Answer("iron", "yes"))
    state = go_on(state, record, c.Count("press"))
    assert leaving_question(state, "stack") == ON_LEAVING_THE_IRON


def test_no_iron_question_before_the_iron_nor_in_the_next_session() -> None:
    state, record = play(QUILT, *everything(QUILT, "sew"))
    assert leaving_question(state, "stack") is None
    state = go_on(state, record, c.Count("press", 2), c.CloseSession(ALL_YES), c.Count("stack"))
    assert leaving_question(state, "sew-around") is None


def test_laying_aside_and_notes_on_a_quilt_put_down_open_no_session() -> None:
    state, record = play(
        QUILT,
        c.LayAside("the other one is due first"),
        c.PutPileAway("square", "blue tin"),
        c.WriteNote("wants a darker border"),
        c.PickUp(),
        c.MarkDone(),
        c.WriteNote("given to Ines"),
        c.Undo(),
    )
    assert state.sessions == ()
    assert "session opened" not in counts_of(record)
    assert {recorded.event.session for recorded in record} == {NO_SESSION} == {0}
    assert [note.text for note in state.notes] == ["wants a darker border"]


def test_unpicking_after_weeks_belongs_to_the_session_it_is_done_in() -> None:
    state, record = play(QUILT, c.Count("pair", 4), c.Count("sew", 2), c.CloseSession(ALL_YES))
    state = go_on(state, record, c.Unpick("sew"), at=EVENING + timedelta(days=24))
    assert state.sessions[0].counts == {"pair": 4, "sew": 2}
    assert state.sessions[1].counts == {"sew": -1}


def test_after_24_days_the_facts_are_as_they_were_left() -> None:
    settings = Settings(foot="1/4 in", proof="three 1 1/2 in strips came out at 3 1/2 in")
    state, record = play(
        QUILT,
        c.Count("pair", 12),
        c.Count("sew", 5),
        c.RecordSettings(settings),
        c.PutPileAway("four-patch", "shoe box, shelf"),
        c.WriteNote("two pairs of the same blue, don't stack them together"),
        c.CloseSession({"machine": "yes"}, next_step="press the five"),
    )
    later = EVENING + timedelta(days=24)
    assert decide(state, c.OpenSession(), later)[0].session == 2
    state = go_on(state, record, c.OpenSession(), at=later)
    assert state.target == QUILT.target
    assert state.where == {"four-patch": "shoe box, shelf"}
    assert state.settings == settings
    assert next(note.text for note in state.notes).startswith("two pairs of the same blue")
    last = state.last_session
    assert last is not None
    assert (last.number, last.next_step) == (1, "press the five")
    assert {pile: n for pile, n in state.piles.items() if n} == {
        "square": 16,
        "pair": 2,
        "four-patch": 5,
    }


def test_the_last_session_is_the_last_with_a_count_or_else_the_last_of_all() -> None:
    state, record = play(QUILT, c.OpenSession(), c.CloseSession(), c.OpenSession())
    assert state.last_session is not None
    assert state.last_session.number == 2
    state = go_on(state, record, c.Count("pair"), c.CloseSession(), c.OpenSession())
    assert [session.number for session in state.sessions] == [1, 2, 3]
    assert state.last_session is not None
    assert state.last_session.number == 2


def test_a_fresh_quilt_has_had_no_session() -> None:
    state = opening(QUILT)
    assert (state.session, state.last_session) == (None, None)
    assert questions(state) == ()

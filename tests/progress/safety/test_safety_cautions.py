"""Cautions: due the first time in a session, after an hour, with a new blade, and late."""

from __future__ import annotations

import re
from datetime import datetime, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sewalong.piecing.method import Hazard
from sewalong.progress.record.state import State
from sewalong.progress.safety.cautions import (
    LATE,
    LONG_STRETCH,
    NEW_BLADE,
    TIRED,
    TIRED_AT_THE_IRON,
    WORDS,
    Caution,
    Why,
    caution_at,
    caution_due,
)
from sewalong.progress.safety.closing_questions import _ON_CLOSING, ON_LEAVING_THE_IRON
from tests.progress import every_act as c
from tests.progress.building import EVENING, HOUR, MINUTE, a_quilt, everything, go_on, play

QUILT = a_quilt(pieces=160, rows=4, columns=5)
MOST_ON_A_SMALL_SCREEN = 9


def due(
    *hazards: Hazard,
    now: datetime,
    read: datetime | None = None,
    blade_changed: datetime | None = None,
) -> Caution | None:
    """What is due in a session opened in the evening, all hazards read at `read`."""
    return caution_due(
        hazards,
        read=dict.fromkeys(hazards, read) if read else {},
        opened=EVENING,
        blade_changed=blade_changed,
        now=now,
    )


def why(caution: Caution | None) -> Why | None:
    return caution.why if caution else None


def at_stage(state: State, stage: str, at: datetime) -> Why | None:
    road_stage = state.route.stage(stage)
    assert road_stage is not None
    return why(caution_at(state, road_stage, at))


def test_a_stage_without_a_hazard_has_no_caution() -> None:
    assert due(now=EVENING + 10 * HOUR) is None


@pytest.mark.parametrize("hazard", list(Hazard))
def test_the_first_time_in_a_session_then_not_until_an_hour_later(hazard: Hazard) -> None:
    assert why(due(hazard, now=EVENING)) is Why.FIRST
    assert due(hazard, now=EVENING + 2 * MINUTE, read=EVENING) is None
    assert due(hazard, now=EVENING + LONG_STRETCH - MINUTE, read=EVENING) is None
    assert why(due(hazard, now=EVENING + LONG_STRETCH, read=EVENING)) is Why.AGAIN


@pytest.mark.parametrize("hazard", list(Hazard))
def test_a_new_blade_concerns_only_what_cuts(hazard: Hazard) -> None:
    caution = due(
        hazard,
        now=EVENING + 9 * MINUTE,
        read=EVENING + MINUTE,
        blade_changed=EVENING + 8 * MINUTE,
    )
    if hazard in (Hazard.CUTTER, Hazard.CROSS_CUT):
        assert caution is not None
        assert caution.why is Why.NEW_BLADE
        assert caution.lines[0] == NEW_BLADE
    else:
        assert caution is None


def test_a_new_blade_read_about_is_read_about_even_in_the_same_moment() -> None:
    changed = EVENING + MINUTE
    assert why(due(Hazard.CUTTER, now=changed, blade_changed=changed)) is Why.NEW_BLADE
    assert due(Hazard.CUTTER, now=changed, read=changed, blade_changed=changed) is None


def test_a_blade_changed_in_an_earlier_session_is_no_longer_new() -> None:
    before = EVENING - timedelta(days=2)
    assert why(due(Hazard.CUTTER, now=EVENING, blade_changed=before)) is Why.FIRST


def test_late_in_a_long_session_each_caution_comes_once_more() -> None:
    late = EVENING + LATE
    just_read = late - 5 * MINUTE
    assert why(due(Hazard.CUTTER, now=late, read=just_read)) is Why.LATE
    assert due(Hazard.CUTTER, now=late + 5 * MINUTE, read=late) is None
    assert why(due(Hazard.CUTTER, now=late + HOUR, read=late)) is Why.AGAIN
    assert why(due(Hazard.CUTTER, now=late + HOUR)) is Why.LATE


def test_an_hour_is_long_and_three_hours_are_late() -> None:
    assert due(Hazard.IRON, now=EVENING + 59 * MINUTE, read=EVENING) is None
    assert why(due(Hazard.IRON, now=EVENING + 60 * MINUTE, read=EVENING)) is Why.AGAIN
    assert why(due(Hazard.IRON, now=EVENING + 3 * HOUR - MINUTE)) is Why.FIRST
    assert why(due(Hazard.IRON, now=EVENING + 3 * HOUR)) is Why.LATE


def test_what_was_read_just_before_it_was_late_is_read_once_more_and_what_was_read_then_is_not() -> (
    None
):
    late = EVENING + 3 * HOUR
    assert why(due(Hazard.IRON, now=late + MINUTE, read=late - MINUTE)) is Why.LATE
    assert due(Hazard.IRON, now=late + MINUTE, read=late) is None


def test_a_blade_changed_as_the_session_opens_is_new() -> None:
    assert why(due(Hazard.CUTTER, now=EVENING, blade_changed=EVENING)) is Why.NEW_BLADE
    before = EVENING - MINUTE
    assert why(due(Hazard.CUTTER, now=EVENING, blade_changed=before)) is Why.FIRST


@pytest.mark.parametrize(
    ("hazards", "each"),
    [
        # Three lines each for iron, cutter and needle, two for crossing cuts, one for pins; six
        # in all can be read at once.
        ((Hazard.IRON,), 3),
        ((Hazard.IRON, Hazard.NEEDLE), 3),
        ((Hazard.IRON, Hazard.NEEDLE, Hazard.PINS), 2),
        ((Hazard.IRON, Hazard.CUTTER, Hazard.NEEDLE), 2),
        ((Hazard.CUTTER, Hazard.CROSS_CUT), 3),
        ((Hazard.CUTTER, Hazard.CROSS_CUT, Hazard.PINS), 3),
        ((Hazard.IRON, Hazard.CUTTER, Hazard.NEEDLE, Hazard.PINS), 1),
    ],
)
def test_where_hazards_are_many_each_says_its_first_lines(
    hazards: tuple[Hazard, ...], each: int
) -> None:
    caution = due(*hazards, now=EVENING)
    assert caution is not None
    assert caution.lines == tuple(line for hazard in hazards for line in WORDS[hazard].lines[:each])


def test_late_it_speaks_of_tiredness_and_of_leaving_the_cutting() -> None:
    late = EVENING + LATE
    cutting, pressing = due(Hazard.CUTTER, now=late), due(Hazard.IRON, now=late)
    assert cutting is not None
    assert pressing is not None
    assert (cutting.lines[0], pressing.lines[0]) == (TIRED, TIRED_AT_THE_IRON)


def test_only_the_hazards_not_yet_read_are_shown() -> None:
    caution = caution_due(
        (Hazard.NEEDLE, Hazard.PINS),
        read={Hazard.NEEDLE: EVENING},
        opened=EVENING,
        blade_changed=None,
        now=EVENING + MINUTE,
    )
    assert caution is not None
    assert caution.hazards == (Hazard.PINS,)


def test_several_hazards_are_one_caution_with_the_most_urgent_reason() -> None:
    changed = EVENING + MINUTE
    caution = caution_due(
        (Hazard.NEEDLE, Hazard.CUTTER, Hazard.CROSS_CUT),
        read={},
        opened=EVENING,
        blade_changed=changed,
        now=changed,
    )
    assert caution is not None
    assert caution.why is Why.NEW_BLADE
    assert caution.title == "Needle · Rotary cutter · Two cuts across"


@given(st.lists(st.sampled_from(list(Hazard)), unique=True, min_size=1), st.integers(0, 300))
def test_every_caution_due_says_something_of_each_hazard_and_fits_a_small_screen(
    hazards: list[Hazard], minutes: int
) -> None:
    caution = due(*hazards, now=EVENING + minutes * MINUTE)
    assert caution is not None
    assert caution.hazards == tuple(hazards)
    for hazard in hazards:
        assert WORDS[hazard].title in caution.title
        assert WORDS[hazard].lines[0] in caution.lines
    assert len(caution.lines) <= MOST_ON_A_SMALL_SCREEN
    assert len(set(caution.lines)) == len(caution.lines)


def test_the_crossing_cut_is_turned_not_reached_across() -> None:
    """Sources: cautions for the double diagonal cut are common practice."""
    lines = " ".join(WORDS[Hazard.CROSS_CUT].lines)
    assert "Turn the mat" in lines
    assert "don't reach across" in lines
    assert "firm" in lines
    assert "well back" in lines


def said_to_the_person() -> list[str]:
    lines = [line for words in WORDS.values() for line in (words.title, *words.lines)]
    asked = [question.ask for _, question in _ON_CLOSING] + [ON_LEAVING_THE_IRON.ask]
    return [*lines, *asked, NEW_BLADE, TIRED, TIRED_AT_THE_IRON]


@pytest.mark.parametrize("line", said_to_the_person())
def test_no_temperatures_no_times_and_no_handed_words(line: str) -> None:
    assert not re.search(r"\d|°|\bdegrees?\b|\bseconds\b|\bminutes?\b|\bfirst aid\b", line)
    assert not re.search(r"\b(left|right|clockwise|anticlockwise)\b", line, re.IGNORECASE)


def test_each_hazard_has_words_and_says_where_its_facts_stand() -> None:
    assert set(WORDS) == set(Hazard)
    for words in WORDS.values():
        assert words.lines
        assert words.source


def test_iron_cutter_and_machine_defer_to_their_makers() -> None:
    assert "the iron's own book" in " ".join(WORDS[Hazard.IRON].lines)
    assert "the machine's own book" in " ".join(WORDS[Hazard.NEEDLE].lines)
    assert "its maker" in " ".join((*WORDS[Hazard.CUTTER].lines, NEW_BLADE))


def test_nothing_claims_to_know_that_the_iron_is_off() -> None:
    for line in said_to_the_person():
        if "off" in line and "iron" in line.lower():
            assert line.endswith("?")


def test_in_a_session_a_stage_is_cautioned_once() -> None:
    state, record = play(QUILT, c.Count("pair", 20))
    assert at_stage(state, "sew", EVENING + MINUTE) is Why.FIRST
    state = go_on(state, record, c.ReadCaution("sew"), c.Count("sew", 3))
    assert at_stage(state, "sew", record[-1].event.at + 10 * MINUTE) is None
    assert at_stage(state, "sew-around", record[-1].event.at) is Why.FIRST  # its pins are new


def test_reading_a_caution_not_due_records_nothing_twice() -> None:
    state, record = play(QUILT, c.ReadCaution("sew"), c.ReadCaution("sew"), c.ReadCaution("pair"))
    assert [recorded.event.kind for recorded in record] == ["session opened", "caution read"]
    assert set(state.cautions_read) == {"needle"}


def test_the_next_session_cautions_anew() -> None:
    state, record = play(QUILT, *everything(QUILT, "sew", make=3))
    state = go_on(state, record, c.CloseSession({"machine": "yes"}))
    assert at_stage(state, "sew", record[-1].event.at + MINUTE) is Why.FIRST


def test_a_session_long_forgotten_counts_as_a_new_one() -> None:
    """Two days on it is not "late in a long session" and nothing in it was read just now."""
    state, record = play(QUILT, *everything(QUILT, "sew", make=3))
    at = record[-1].event.at + timedelta(days=2)
    assert at_stage(state, "sew", at) is Why.FIRST
    state = go_on(state, record, c.Count("sew"), at=at)
    assert [r.event.kind for r in record[-4:]] == [
        "session closed",
        "session opened",
        "caution read",
        "counted",
    ]


def test_a_blade_changed_between_two_stacks_is_spoken_of_at_the_next() -> None:
    state, record = play(QUILT, *everything(QUILT, "cut-twice", make=3))
    assert at_stage(state, "cut-twice", record[-1].event.at + MINUTE) is None
    state = go_on(state, record, c.ChangeTool("blade"))
    assert at_stage(state, "cut-twice", record[-1].event.at + MINUTE) is Why.NEW_BLADE
    assert at_stage(state, "press-open", record[-1].event.at + MINUTE) is None
    state = go_on(state, record, c.ReadCaution("cut-twice"))
    assert at_stage(state, "cut-twice", record[-1].event.at + MINUTE) is None


def test_a_blade_change_taken_back_is_not_spoken_of() -> None:
    state, record = play(QUILT, *everything(QUILT, "cut-twice", make=3), c.ChangeTool("blade"))
    state = go_on(state, record, c.Undo())
    assert at_stage(state, "cut-twice", record[-1].event.at + MINUTE) is None


def test_a_new_needle_brings_no_caution_of_its_own() -> None:
    state, record = play(QUILT, *everything(QUILT, "sew", make=3), c.ChangeTool("needle"))
    assert at_stage(state, "sew", record[-1].event.at + MINUTE) is None
    assert state.changed["needle"] == record[-1].event.at


def test_three_hours_on_the_same_stage_speaks_of_tiredness() -> None:
    state, record = play(QUILT, *everything(QUILT, "cut-twice", make=3))
    while record[-1].event.at < EVENING + LATE - 20 * MINUTE:
        state = go_on(state, record, c.Count("cut-twice"), every=20 * MINUTE)
    assert at_stage(state, "cut-twice", EVENING + LATE) is Why.LATE


def test_rows_are_pressed_when_sewn_so_the_iron_is_spoken_of_there() -> None:
    stage = play(QUILT)[0].route.stage("sew-rows")
    assert stage is not None
    assert "press" in stage.do
    assert Hazard.IRON in stage.hazards

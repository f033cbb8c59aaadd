"""Leaving and coming back: the note that cannot forget, a good place to stop, what to count."""

from __future__ import annotations

from datetime import timedelta
from fractions import Fraction

import pytest
from msgspec.structs import replace

from sewalong.progress.joining.bias_edges import bias
from sewalong.progress.plan.plan import plan
from sewalong.progress.record.measurable import read_piece
from sewalong.progress.record.settings import Settings
from sewalong.progress.record.state import State
from sewalong.progress.resuming.by_place import by_place
from sewalong.progress.resuming.coming_back import coming_back, facts
from sewalong.progress.resuming.concerns import concerns
from sewalong.progress.resuming.interruption import after_interruption
from sewalong.progress.resuming.pause_note import pause_note
from sewalong.progress.resuming.recount_advice import offer_in_words, worth_counting
from sewalong.progress.resuming.stop_advice import StopHere, stop_here
from sewalong.quilt.setting import Sashing, SetOnPoint, Setting
from tests.progress import every_act as c
from tests.progress.building import EVENING, HOUR, MINUTE, Record, a_quilt, everything, go_on, play

QUILT = a_quilt()
CLOSE = c.CloseSession(dict.fromkeys(("iron", "blade", "machine", "pins"), "yes"))
DAY = timedelta(days=1)
GOOD = c.Measure("unit", (Fraction(51, 8),))


def stop(*commands: c.Act) -> StopHere:
    state, _ = play(QUILT, *commands)
    return stop_here(state, plan(state))


def labels(state: State, record: Record, later: timedelta) -> list[str]:
    return [label for label, _ in facts(coming_back(state, record, EVENING + later))]


def test_a_chain_half_sewn_is_no_place_to_stop_and_its_end_is_offered() -> None:
    found = stop(c.Count("pair", 84), c.Count("sew", 36))
    assert not found.good
    assert (found.stage, found.n) == ("sew", 6)
    assert found.why == "6 four-patches are still to do at sew."
    assert found.offer.startswith("Go on to the end of the chain: 6 four-patches, about ")


def test_a_pile_half_pressed_can_be_left() -> None:
    found = stop(c.Count("pair", 84), c.Count("sew", 42), c.Count("press", 40))
    assert found.good
    assert found.offer.startswith("Go on to the end of the pile: 2 ")


def test_before_the_cuts_on_the_bias_is_a_good_place_to_stop() -> None:
    found = stop(*everything(QUILT, "sew-around"))
    assert found.good
    assert found.why == (
        "Good: nothing is cut on the bias yet. Leave that cut for when you are back."
    )


def test_after_the_cuts_the_edges_stretch_while_they_wait() -> None:
    found = stop(*everything(QUILT, "cut-twice"))
    assert not found.good
    assert "84 cut units wait with edges on the bias: they stretch." in found.why
    assert "stay-stitch" in found.why
    assert "starch" in found.why


def test_the_cutting_itself_is_never_urged_to_its_end() -> None:
    found = stop(*everything(QUILT, "cut-twice", make=3))
    assert found.offer == ""


def test_spare_units_left_over_after_the_rows_worry_nobody() -> None:
    quilt = a_quilt(pieces=16, rows=1, columns=4)
    state, record = play(quilt, *everything(quilt, "press-open"), c.Count("sew-rows"), CLOSE)
    assert state.piles["unit"] == 4
    assert stop_here(state, plan(state)).good
    assert "On the bias" not in labels(state, record, DAY)


def test_units_with_straight_edges_wait_without_harm() -> None:
    quilt = a_quilt("half-square-two")
    state, _ = play(quilt, *everything(quilt, "trim"))
    assert bias(quilt).piles == ()
    assert stop_here(state, plan(state)).good


def test_the_pause_note_gathers_what_nobody_has_to_type() -> None:
    state, record = play(
        QUILT,
        c.Count("pair", 84),
        c.PutPileAway("pair", "tin"),
        c.RecordSettings(Settings(foot="quarter inch", needle_position="5.5")),
        c.NotePress("press", "towards the dark"),
        GOOD,
        c.Count("sew", 36),
    )
    note = pause_note(state, EVENING, plan(state))
    assert note.next_step == "Sew (at the machine): 12 pairs wait; 6 four-patches to go."
    assert [(one.pile, one.n, one.offered) for one in note.piles] == [
        ("pair", 12, "tin"),
        ("four-patch", 36, ""),
    ]
    assert note.lines == (
        ("Next", note.next_step),
        ("Machine", "foot quarter inch, needle position 5.5"),
        ("Tested by", "unit measured 6 3/8 in (today)"),
        ("Press", "Press: towards the dark"),
    )
    state = go_on(state, record, c.ChangeTool("foot"))
    said = dict(pause_note(state, EVENING, plan(state)).lines)
    assert said["Seam"] == "Not tested as it is now: another foot went on."


def test_piles_not_touched_tonight_are_not_asked_about() -> None:
    state, record = play(QUILT, c.Count("pair", 40), CLOSE)
    state = go_on(state, record, c.Count("sew", 2), at=EVENING + DAY)
    note = pause_note(state, EVENING + DAY, plan(state))
    assert [one.pile for one in note.piles] == ["pair", "four-patch"]


def test_coming_back_the_worst_comes_first() -> None:
    state, record = play(
        QUILT, c.Count("pair", 84), GOOD, c.Count("sew", 30), c.Recount("four-patch", 26, "missing")
    )
    state = go_on(state, record, CLOSE)
    state = go_on(
        state, record, c.Measure("unit", (Fraction(99, 16),)), CLOSE, at=EVENING + 2 * DAY
    )
    found = [
        label for label in labels(state, record, 5 * DAY) if label in ("Missing", "May be wrong")
    ]
    assert found == ["May be wrong", "Missing"]


def test_pieces_that_were_seen_to_are_no_worry_any_more() -> None:
    state, record = play(QUILT, c.Count("pair", 84), c.Count("sew", 30))
    state = go_on(state, record, c.Measure("unit", (Fraction(99, 16),)))
    assert "May be wrong" in labels(state, record, DAY)
    state = go_on(state, record, c.Mention("at-risk-" + str(state.checks[-1].seq)))
    assert "May be wrong" not in labels(state, record, DAY)


def test_the_machine_and_presses_already_done_with_are_left_out() -> None:
    quilt = a_quilt("plain-squares", 4, 1, 4)
    state, record = play(
        quilt,
        c.RecordSettings(Settings(foot="quarter inch")),
        c.NotePress("sew-rows", "all one way"),
        c.Count("square-up", 4),
    )
    assert {"Machine", "Press"} <= set(labels(state, record, DAY))
    state = go_on(state, record, c.Count("sew-rows"))
    assert not {"Machine", "Press", "Tested by"} & set(labels(state, record, DAY))


def test_edges_on_the_bias_that_waited_are_said_with_how_long() -> None:
    state, record = play(QUILT, *everything(QUILT, "cut-twice"), CLOSE)
    (worry,) = [
        text
        for label, text in facts(coming_back(state, record, EVENING + 21 * DAY))
        if label == "On the bias"
    ]
    assert worry == (
        "84 cut units with edges on the bias, cut 21 days ago: don't pull them, and measure one "
        "before joining."
    )


def test_edges_on_the_bias_are_told_by_the_last_evening_that_cut_some() -> None:
    state, record = play(QUILT, *everything(QUILT, "cut-twice", make=3), CLOSE)
    state = go_on(state, record, c.Count("cut-twice"), CLOSE, at=EVENING + 20 * DAY)
    (worry,) = [
        worry
        for worry in concerns(state, record, EVENING + 21 * DAY, plan(state))
        if worry.label == "On the bias"
    ]
    assert worry.text.startswith("16 cut units with edges on the bias, cut yesterday: ")
    assert worry.since == record[-2].event.at


def test_a_seam_changed_since_it_was_proved_worries_from_that_change_on() -> None:
    state, record = play(
        QUILT, c.ChangeTool("foot"), GOOD, c.ChangeTool("needle"), c.ChangeTool("power"), CLOSE
    )
    (seam,) = concerns(state, record, EVENING + DAY, plan(state))
    assert (seam.label, seam.since) == ("Seam", record[3].event.at)
    assert seam.text == (
        "Not tested as it is now: another needle went in, the machine was switched off and on."
    )
    state = go_on(state, record, c.GoOn("sew"))
    assert concerns(state, record, EVENING + DAY, plan(state)) == ()


def test_a_seam_measured_wrong_worries_from_that_measure_on() -> None:
    state, record = play(QUILT, GOOD, c.ChangeTool("foot"), c.Measure("unit", (Fraction(6),)))
    (seam,) = concerns(state, record, EVENING + DAY, plan(state))
    assert (seam.label, seam.since) == ("Seam", record[-1].event.at)
    assert seam.text == "Not tested as it is now: unit measured last did not come out right."


def test_no_seam_worries_before_it_was_ever_proved_or_once_nothing_is_to_be_sewn() -> None:
    quilt = a_quilt("half-square-two", 4, 1, 4)
    state, record = play(quilt, c.ChangeTool("foot"))
    assert concerns(state, record, EVENING, plan(state)) == ()
    right = read_piece(quilt, quilt.target, "open-unit").expected
    state = go_on(state, record, c.Measure("open-unit", (right,)), c.ChangeTool("foot"))
    state = go_on(state, record, *everything(quilt, "trim"))
    assert [worry.label for worry in concerns(state, record, EVENING, plan(state))] == ["Seam"]
    state = go_on(state, record, c.Count("sew-rows"))
    assert concerns(state, record, EVENING, plan(state)) == ()


def test_after_a_long_absence_only_the_piles_that_matter_next_are_counted() -> None:
    state, record = play(
        QUILT, c.Count("pair", 60), c.Count("sew", 25), c.Count("press", 20), CLOSE
    )
    later = EVENING + 30 * DAY
    assert worth_counting(state, EVENING + 13 * DAY, plan(state)) == ()
    piles = [one.pile for one in worth_counting(state, later, plan(state))]
    assert piles == ["four-patch", "pressed-four-patch", "pair"]
    (offer,) = [
        text for label, text in facts(coming_back(state, record, later)) if label == "Count first"
    ]
    assert offer == (
        "It has been long: count the four-patches, then the pressed four-patches, then the pairs "
        "before you go on."
    )


def test_a_pile_with_missing_pieces_is_counted_first_even_if_none_are_left() -> None:
    state, _ = play(
        QUILT,
        c.Count("pair", 84),
        c.Count("sew", 42),
        c.Count("press", 10),
        c.Count("stack", 4),
        c.Recount("stack", 0, "missing"),
        CLOSE,
    )
    counts = worth_counting(state, EVENING + 30 * DAY, plan(state))
    assert (counts[0].pile, counts[0].recorded) == ("stack", 0)


def test_a_pile_in_two_places_is_counted_place_by_place() -> None:
    state, _ = play(
        QUILT,
        c.Count("pair", 84),
        c.PutPileAway("pair", "tin", 64),
        c.PutPileAway("pair", "bag", 20),
        CLOSE,
    )
    counts = worth_counting(state, EVENING + 30 * DAY, plan(state))
    assert [(one.pile, one.place, one.recorded) for one in counts] == [
        ("pair", "tin", 64),
        ("pair", "bag", 20),
    ]


@pytest.mark.parametrize("setting", [None, Sashing(Fraction(2), "oat"), SetOnPoint("oat")])
def test_what_is_cut_from_cloth_is_the_next_thing_at_no_place(setting: Setting | None) -> None:
    state, _ = play(replace(QUILT, setting=setting), c.PutPileAway("square", "tin", 1))
    assert [at.next_there for at in by_place(state, plan(state)) if at.place == "tin"] == [None]


def test_after_an_interruption_the_top_piece_is_compared_with_the_last() -> None:
    state, record = play(QUILT, c.Count("pair", 84), c.Count("sew", 1))
    last = record[-1].event.at
    assert after_interruption(state, last + 4 * MINUTE) == ""
    assert after_interruption(state, last + 12 * MINUTE) == (
        "Before you sew on: lay the top pair on the last one sewn. "
        "Same edge to the needle, same end first?"
    )
    state = go_on(state, record, c.Count("sew", 1), at=last + 13 * MINUTE)
    assert after_interruption(state, last + 14 * MINUTE) == ""


def test_who_counts_a_whole_lot_at_once_was_not_interrupted() -> None:
    state, record = play(QUILT, c.Count("pair", 84), c.Count("sew", 20))
    minutes = QUILT.method.stage("sew").minutes * 20
    last = record[-1].event.at
    assert after_interruption(state, last + minutes * MINUTE) == ""
    assert after_interruption(state, last + 3 * minutes * MINUTE) != ""


def test_nothing_is_asked_after_the_session_is_over_or_before_the_first_count() -> None:
    state, record = play(QUILT, c.Count("pair", 84), c.ChooseStage("sew"))
    last = record[-1].event.at
    assert after_interruption(state, last + HOUR) == ""
    assert after_interruption(state, last + 5 * HOUR) == ""


def test_five_quiet_minutes_are_none_and_more_are_an_interruption() -> None:
    state, record = play(QUILT, c.Count("pair", 84), c.Count("sew", 1))
    last = record[-1].event.at
    assert after_interruption(state, last + 5 * MINUTE) == ""
    assert after_interruption(state, last + 5.1 * MINUTE) != ""


def test_what_another_session_counted_was_not_interrupted_in_this_one() -> None:
    state, record = play(QUILT, c.Count("pair", 1), CLOSE, c.OpenSession())
    assert after_interruption(state, record[-1].event.at + 30 * MINUTE) == ""


def test_who_turned_to_a_stage_by_hand_was_not_interrupted_at_it() -> None:
    state, record = play(QUILT, c.Count("pair", 60), c.Count("sew", 1), c.ChooseStage("pair"))
    assert after_interruption(state, record[-1].event.at + 3 * HOUR) == ""


def test_away_from_the_machine_the_top_piece_is_compared_too() -> None:
    state, record = play(QUILT, *everything(QUILT, "press", make=1))
    assert after_interruption(state, record[-1].event.at + 30 * MINUTE) == (
        "Before you go on: compare the top piece with the last one. Which edge, which end?"
    )


def test_of_two_kinds_sewn_together_the_first_is_laid_on_the_last_one_sewn() -> None:
    quilt = a_quilt("four-patch-strips", 3, 4, 6)
    state, record = play(quilt, c.ReadCaution("sew-strips"), c.Count("sew-strips"))
    assert "lay the top dark strip on the last one sewn" in (
        after_interruption(state, record[-1].event.at + 60 * MINUTE)
    )


def test_a_seam_between_rows_takes_a_minute_a_unit_and_twice_that_is_no_interruption() -> None:
    state, record = play(QUILT, *everything(QUILT, "press-open"), c.Count("sew-rows", 9))
    state = go_on(state, record, c.JoinRows(1, 2))
    last = record[-1].event.at
    assert after_interruption(state, last + 18 * MINUTE) == ""
    assert after_interruption(state, last + 19 * MINUTE) == (
        "Before you go on: which edge is next, and which end is the top?"
    )


def test_a_place_to_stop_says_how_long_the_rest_of_the_chain_takes() -> None:
    found = stop(c.Count("pair", 84), c.Count("sew", 41))
    minutes = QUILT.method.stage("sew").minutes
    assert (found.n, found.minutes) == (1, minutes)
    assert found.why == "1 four-patch is still to do at sew."
    assert found.offer == "Go on to the end of the chain: 1 four-patch, about 2 minutes by a guess?"


def test_after_fourteen_days_a_recount_is_offered_and_not_before() -> None:
    state, _ = play(QUILT, c.Count("pair", 60), CLOSE)
    last = state.sessions[-1].last_at
    assert worth_counting(state, last + 14 * DAY - MINUTE, plan(state)) == ()
    assert offer_in_words(state, last + 14 * DAY - MINUTE, plan(state)) == ""
    assert [one.pile for one in worth_counting(state, last + 14 * DAY, plan(state))] == [
        "square",
        "pair",
    ]


def test_outside_a_session_no_pile_is_asked_about() -> None:
    state, _ = play(QUILT, c.Count("pair", 60), CLOSE)
    assert pause_note(state, EVENING + DAY, plan(state)).piles == ()


def test_a_minute_more_is_said_in_the_singular() -> None:
    found = stop(c.Count("pair", 82))
    assert found.n == 2
    assert found.minutes < 1
    assert found.offer == "Go on to the end of the pile: 2 pairs, about 1 minute by a guess?"


def test_a_pile_half_done_is_left_unwillingly_while_cut_edges_wait() -> None:
    found = stop(*everything(QUILT, "press-open", make=40))
    assert not found.good
    assert found.why.startswith(
        "41 units are still to do at press open. 44 cut units and 40 units wait with "
        "edges on the bias: they stretch. Lay them flat"
    )
    assert found.offer.startswith("Go on to the end of the pile: 41 units, about ")

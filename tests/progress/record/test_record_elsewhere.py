"""Counts from elsewhere: a number that comes in, at its place, with nothing of the owner's own."""

from __future__ import annotations

from datetime import timedelta

import msgspec
import pytest

from sewalong.progress.pace.count_times import stretches
from sewalong.progress.plan.plan import plan
from sewalong.progress.record.events.elsewhere import why_not_there
from sewalong.progress.record.events.every_kind import MadeElsewhere
from sewalong.progress.record.places import came_to, settled
from sewalong.progress.record.state import State
from sewalong.progress.resuming.by_place import (
    by_place,
    elsewhere_in_words,
    in_words,
    places_in_words,
)
from sewalong.progress.resuming.coming_back import coming_back, in_lines
from tests.progress import every_act as c
from tests.progress.building import MINUTE, Record, a_quilt, do, go_on, play, refusal, whole_top
from tests.progress.sets.fabrics import sets_of, with_fabrics

QUILT = a_quilt(pieces=672, rows=14, columns=24)
STACKED = (
    c.Count("pair", 336),
    c.Count("sew", 168),
    c.Count("press", 168),
    c.Count("stack", 84),
    c.Count("sew-around", 12),
)
"""N038: 84 stacks; 12 sewn and 40 unsewn go home with a sister."""
TAKEN = (
    *STACKED,
    c.PutPileAway("sewn-stack", "sister's"),
    c.PutPileAway("stack", "sister's", 40),
    c.PutPileAway("stack", "blue tray", 32),
)


def told(state: State) -> list[str]:
    return [line for at in by_place(state, plan(state)) for line in in_words(state, at)]


def test_what_is_sewn_there_lies_there_and_what_is_sewn_at_home_does_not() -> None:
    state, record = play(QUILT, *TAKEN, c.CountElsewhere("sew-around", 15, "Sister's", "Jo"))
    assert told(state) == [
        "sister's: Jo sews there",
        "sister's: 27 sewn stacks",
        "sister's: 25 stacks",
        "sister's, next there: cut twice, 27 stacks",
        "blue tray: 32 stacks",
        "blue tray, next there: sew around, 32 sewn stacks",
    ]
    state = go_on(state, record, c.Count("sew-around", 2))
    assert "sister's: 27 sewn stacks" in told(state)
    assert "not written down: 2 sewn stacks" in told(state)
    state = go_on(state, record, c.CountElsewhere("cut-twice", 27, "sister's"))
    assert told(state)[:4] == [
        "sister's: Jo sews there",
        "sister's: 25 stacks",
        "sister's: 108 cut units",
        "sister's, next there: press open, 108 units",
    ]
    assert state.done["sew-around"] == 29
    next_there = {at.place: at.next_there for at in by_place(state, plan(state))}
    assert next_there["blue tray"] == (state.route.stage("sew-around"), 30)
    lines = in_lines(coming_back(state, record, record[-1].event.at + timedelta(days=3)))
    assert "At sister's: Jo sews there." in lines
    assert "Next there: press open, 108 units." in lines


def test_it_is_nothing_of_her_own_sewing() -> None:
    state, record = play(QUILT, *TAKEN)
    before = state
    state = go_on(state, record, c.CountElsewhere("sew-around", 15, "sister's", "Jo"))
    guesses = {"sew-around": 1.0, "pair": 1.0}
    assert sum(one.n for one in stretches(record, guesses) if one.stage == "sew-around") == 12
    assert (state.chosen, state.last_lot, state.iron_asked) == (
        before.chosen,
        before.last_lot,
        before.iron_asked,
    )
    assert state.session is not None
    assert before.session is not None
    assert state.session.counts == before.session.counts


def test_it_opens_no_session() -> None:
    state, record = play(
        QUILT, *TAKEN, c.CloseSession(dict.fromkeys(("iron", "machine", "pins"), "yes"))
    )
    later = record[-1].event.at + timedelta(days=2)
    state = do(state, record, c.CountElsewhere("sew-around", 1, by="Jo"), later)
    assert state.session is None
    assert record[-1].event.session == 0


def test_it_is_said_who_and_where_as_far_as_it_was_said() -> None:
    state, record = play(
        QUILT,
        *TAKEN,
        c.CountElsewhere("sew-around", 1),
        c.CountElsewhere("sew-around", 2, by="Jo"),
        c.CountElsewhere("sew-around", 3, "sister's", "jo"),
    )
    assert [one.event.words(state, record) for one in record[-3:]] == [
        "Made elsewhere: 1 sewn stack at sew around.",
        "Made elsewhere, by Jo: 2 sewn stacks at sew around.",
        "Made elsewhere – sister's –, by Jo: 3 sewn stacks at sew around.",
    ]


def test_more_than_lies_there_is_refused_with_what_to_do() -> None:
    state, _ = play(QUILT, *TAKEN)
    said = refusal(state, c.CountElsewhere("sew-around", 41, "sister's"))
    assert said.startswith("Only 40 stacks lie at “sister's”, as far as was said, and 41 would")
    assert "Only 0 stacks" in refusal(state, c.CountElsewhere("sew-around", 1, "sisters"))
    assert "enough for 72" in refusal(state, c.CountElsewhere("sew-around", 73))
    assert "no name" in refusal(state, c.CountElsewhere("sew-around", 1, by="x" * 81))
    assert "Pick it up again" in refusal(
        play(QUILT, *TAKEN, c.MarkDone())[0], c.CountElsewhere("sew-around", 1)
    )


def test_what_takes_two_of_a_pile_uses_two() -> None:
    state, record = play(QUILT, c.Count("pair", 40), c.PutPileAway("pair", "Jo's", 10))
    assert "Only 10 pairs lie at" in refusal(state, c.CountElsewhere("sew", 6, "Jo's"))
    assert "and 12 would have been used" in refusal(state, c.CountElsewhere("sew", 6, "Jo's"))
    state = go_on(state, record, c.CountElsewhere("sew", 4, "Jo's"))
    assert state.places["pair"] == {"Jo's": 2}
    assert state.places["four-patch"] == {"Jo's": 4}
    stage = state.route.stage("sew")
    assert stage is not None
    assert why_not_there(state, stage, "Jo's") == ""
    state = go_on(state, record, c.CountElsewhere("sew", 1, "Jo's"), c.CountElsewhere("sew", 3))
    assert "pair" not in state.places
    assert state.places["four-patch"] == {"Jo's": 5}
    # 24 pairs are left. Of sixteen that were used nobody knows whether eight lay there.
    state = go_on(state, record, c.PutPileAway("pair", "Jo's", 10))
    state = go_on(state, record, c.CountElsewhere("sew", 8))
    assert state.places["pair"] == {"Jo's": None}


def test_where_no_number_is_known_none_is_claimed() -> None:
    assert came_to({"a": None, "b": None}, "a", -3, 10) == {"a": None, "b": None}
    assert came_to({"a": None, "b": 4}, "a", -3, 10) == {"a": 3, "b": 4}
    assert came_to({"a": 3, "b": 4}, "a", -3, 10) == {"b": 4}
    assert came_to({"b": None}, "a", 2, 10) == {"b": None, "a": 2}
    assert came_to({"a": None}, "a", 2, 10) == {"a": 12}
    assert came_to({}, "a", 2, 0) == {"a": 2}


def test_what_is_used_at_home_leaves_what_lies_away_its_number() -> None:
    away = ("Jo's",)
    assert settled({"tin": 10, "Jo's": 12}, 20, away) == {"tin": 8, "Jo's": 12}
    assert settled({"tin": 10, "Jo's": 12}, 12, away) == {"Jo's": 12}
    assert settled({"tin": 10, "bag": 4, "Jo's": 12}, 20, away) == {
        "tin": None,
        "bag": None,
        "Jo's": 12,
    }
    # More is gone than lay at home.
    assert settled({"tin": 10, "Jo's": 12}, 9, away) == {"tin": None, "Jo's": None}
    assert settled({"tin": 10, "Jo's": 12}, 20) == {"tin": None, "Jo's": None}


def test_what_was_used_nobody_said_where_leaves_no_number() -> None:
    state, _ = play(QUILT, *TAKEN, c.CountElsewhere("sew-around", 1, by="Jo"))
    assert state.places["stack"] == {"sister's": None, "blue tray": None}


def test_of_sets_nobody_saw_which_were_sewn_there() -> None:
    quilt = with_fabrics()
    state, record = play(quilt, c.AcceptSets(sets_of(8, 4)), c.Count("pair", 8))
    assert all(one.sure for one in state.sets.lying["pair"] if one.set)
    state = go_on(state, record, c.CountElsewhere("sew", 2, by="Jo"))
    assert not any(one.sure for one in state.sets.lying["pair"] if one.set)
    assert [one.set for one in state.sets.lying["four-patch"]] == [0, 0]


def test_an_undo_takes_all_of_it_back() -> None:
    state, record = play(QUILT, *TAKEN)
    there = state
    state = go_on(state, record, c.CountElsewhere("sew-around", 15, "sister's", "Jo"), c.Undo())
    assert (state.places, state.piles, state.elsewhere) == (
        there.places,
        there.piles,
        there.elsewhere,
    )


def test_rows_that_lie_in_one_place_are_next_joined_there() -> None:
    quilt = a_quilt("plain-squares", 12, 3, 4)
    sewn = whole_top(quilt)[:-1]
    state, record = play(quilt, *sewn, c.PutPileAway("row", "chair"))
    assert told(state)[-1] == "chair, next there: join rows, 2 seams"
    state = go_on(state, record, c.PutPileAway("row", "Jo's", 2))
    assert "Jo's, next there: join rows, 1 seam" in told(state)
    state = go_on(state, record, c.CountElsewhere("join-rows", 1, by="Jo"))
    assert state.done["join-rows"] == 1


def test_old_readers_and_new_agree_on_what_is_written() -> None:
    _, record = play(QUILT, *TAKEN, c.CountElsewhere("sew-around", 1))
    written = msgspec.to_builtins(record[-1].event)
    assert list(written) == ["kind", "at", "session", "stage", "n"]
    assert msgspec.convert(written, MadeElsewhere).place == ""


def test_nothing_is_said_of_places_nobody_counted_from() -> None:
    state, _ = play(QUILT, *TAKEN)
    assert not list(elsewhere_in_words(state, plan(state)))


def test_each_place_is_one_sentence_where_there_are_several() -> None:
    state, _ = play(QUILT, *TAKEN, c.CountElsewhere("sew-around", 15, "sister's", "Jo"))
    assert places_in_words(state, plan(state)) == (
        "sister's: Jo sews there. 27 sewn stacks, 25 stacks. Next there: cut twice, 27 stacks.",
        "blue tray: 32 stacks. Next there: sew around, 32 sewn stacks.",
    )
    state, _ = play(QUILT)
    assert places_in_words(state, plan(state)) == ()


@pytest.mark.parametrize("minutes", [1, 90])
def test_a_session_that_is_open_stays_open(minutes: int) -> None:
    state, record = play(QUILT, *TAKEN)
    at = record[-1].event.at + minutes * MINUTE
    state = do(state, Record(QUILT, record), c.CountElsewhere("sew-around", 1), at)
    assert state.session is not None

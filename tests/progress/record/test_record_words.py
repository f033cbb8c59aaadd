"""Every event says itself: in one sentence as it happens, and in full in the log."""

from __future__ import annotations

from datetime import timedelta
from fractions import Fraction

import pytest
from msgspec.structs import replace

from sewalong.lengths import Unit
from sewalong.piecing.method import Noun
from sewalong.progress.record.events import every_kind as e
from sewalong.progress.record.events.event import counts_of, label_of, noun_of, stopped
from sewalong.progress.record.settings import Settings
from tests.progress import every_act as c
from tests.progress.building import (
    EVENING,
    a_quilt,
    all_units,
    everything,
    go_on,
    opening,
    play,
)

QUILT = a_quilt(pieces=40, rows=4, columns=5, borders=1)
SEWN = everything(QUILT, "sew")
ROWS = [*all_units(QUILT), c.Count("sew-rows", 4)]
THREE_AT_RIGHT = (Fraction(7, 2), Fraction(57, 16))


@pytest.mark.parametrize(
    ("acts", "said", "logged"),
    [
        ([c.Count("pair", 2)], "Counted 2 pairs.", None),
        ([c.Count("pair")], "Counted 1 pair.", None),
        (SEWN, "Counted 10 four-patches at sew.", None),
        ([*SEWN, c.Unpick("sew", 2)], "Unpicked 2 four-patches from sew.", None),
        (
            [*SEWN, c.BobbinEmpty("sew", 3)],
            "The bobbin was empty: the last 3 four-patches at sew not sewn after all. "
            "A full one went in.",
            None,
        ),
        ([*ROWS, c.JoinRows(3, 2)], "Joined rows 2 and 3.", None),
        ([c.Spoil("square", 1, "a hole")], "Spoiled 1 square: a hole.", None),
        ([c.Spoil("square", 2, "oh dear!")], "Spoiled 2 squares: oh dear!", None),
        ([c.Find("square", 3)], "Found 3 squares.", None),
        ([c.Find("square", 1, "bought")], "Bought 1 square.", None),
        ([c.PutPileAway("square", "the tin")], "Put the squares away: the tin.", None),
        ([c.PutPileAway("square", "the tin", 1)], "Put 1 square away: the tin.", None),
        ([c.WriteNote("blue runs")], "Noted: blue runs", None),
        ([c.NotePress("press", "to the dark")], "Pressing at press: to the dark.", None),
        (
            [c.RecordSettings(Settings(foot="1/4 in", proof="three strips"))],
            "Wrote down the machine's settings.",
            "Settings: foot 1/4 in, tested by three strips",
        ),
        ([c.ChangeTool("blade")], "A new blade went in.", None),
        ([c.ChangeTool("needle")], "A new needle went in.", None),
        ([c.ChangeTool("foot")], "Another foot went on.", None),
        ([c.ChangeTool("bobbin")], "A full bobbin went in.", None),
        ([c.ChangeTool("power")], "The machine was switched off and on.", None),
        (
            [c.Measure("strips:3:3/2", THREE_AT_RIGHT)],
            "Measured 3 strips of 1 1/2 in side by side: 3 1/2 in, 3 9/16 in, should be "
            "3 1/2 in: not right.",
            None,
        ),
        (
            [c.Measure("strips:3:3/2", THREE_AT_RIGHT[:1])],
            "Measured 3 strips of 1 1/2 in side by side: 3 1/2 in, should be 3 1/2 in: right.",
            None,
        ),
        (
            [c.GoOn("sew")],
            "Went on at sew without a fresh check: no piece has been measured yet.",
            None,
        ),
        ([c.ChooseStage("press-open")], "Working at press open.", None),
        ([c.ChangeTarget(3, 6)], "The target is now 3 × 6.", None),
        ([c.LayAside("no border cloth")], "Laid aside: no border cloth.", None),
        ([c.LayAside()], "Laid aside.", None),
        ([c.LayAside(), c.PickUp()], "Picked up again.", None),
        ([c.MarkDone()], "Marked done.", None),
        ([c.ReadCaution("sew-around")], "Read the caution: needle, pins.", None),
        ([c.Mention("short")], "Said once.", None),
        (
            [*everything(QUILT, "press"), c.Answer("iron", "did not look")],
            "Asked about the iron: did not look.",
            None,
        ),
        ([c.OpenSession()], "Sat down to sew.", "Session 1 opened."),
        ([c.OpenSession(), c.CloseSession()], "Closed the session.", "Session 1 closed."),
        (
            [
                *everything(QUILT, "press"),
                c.CloseSession({"iron": "yes", "machine": "no"}, next_step="stack"),
            ],
            "Closed the session.",
            "Session 1 closed. Asked about iron: yes; machine: no. Next time: stack",
        ),
        (
            [c.Count("pair", 2), c.Undo()],
            "Undone: counted 2 pairs.",
            "Undid number 2: Counted 2 pairs.",
        ),
        (
            [c.Count("pair", 2), c.Undo(), c.Redo()],
            "Put back: counted 2 pairs.",
            "Put back number 2: Counted 2 pairs.",
        ),
        (
            [c.RecordSettings(Settings(foot="wide")), c.Undo()],
            "Undone: wrote down the machine's settings.",
            "Undid number 2: Settings: foot wide",
        ),
        ([c.Recount("square", 40)], "Recounted the squares: 40, as recorded.", None),
        ([c.Recount("square", 42)], "Recounted the squares: 42, 2 more than recorded.", None),
        ([c.Recount("square", 39)], "Recounted the squares: 39, 1 fewer than recorded.", None),
        (
            [c.PutPileAway("square", "tin", 10), c.Recount("square", 9, "lost", "tin")],
            "Recounted the squares – tin: 9, 1 fewer than recorded; lost.",
            None,
        ),
        (
            [c.Recount("square", 39, "missing"), c.Recount("square", 39, "lost")],
            "Recounted the squares: 39, as recorded; what was missing is given up.",
            None,
        ),
        (
            [c.Count("pair", 2), c.Recount("pair", 3, "made")],
            "Recounted the pairs: 3, 1 more than recorded; made but not counted.",
            None,
        ),
        (
            [c.Count("pair", 2), c.Recount("pair", 1, "made")],
            "Recounted the pairs: 1, 1 fewer than recorded, never made.",
            None,
        ),
        (
            [c.Recount("square", 41, "found")],
            "Recounted the squares: 41, 1 more than recorded; found.",
            None,
        ),
        (
            [c.Recount("square", 39, "spoiled")],
            "Recounted the squares: 39, 1 fewer than recorded; spoiled.",
            None,
        ),
        (
            [c.Recount("square", 39, "missing")],
            "Recounted the squares: 39, 1 fewer than recorded; made, but not found.",
            None,
        ),
    ],
)
def test_an_event_says_itself(acts: list[c.Act], said: str, logged: str | None) -> None:
    state, record = play(QUILT, *acts)
    event = record[-1].event
    assert event.words(state, record) == said
    assert event.in_full(state, record) == (logged or said)


def test_a_session_nobody_closed_says_when_it_was_last_heard_from() -> None:
    state, record = play(QUILT, c.Count("pair"))
    state = go_on(state, record, c.Count("pair"), at=EVENING + timedelta(days=1))
    closed = next(r.event for r in record if isinstance(r.event, e.SessionClosed))
    assert closed.words(state, record) == "The session had ended without being closed."
    heard = f"{EVENING:%H:%M}"
    assert closed.in_full(state, record).startswith("Session 1 was never closed; last heard from ")
    assert closed.in_full(state, record).endswith(f"{heard}.")


def test_in_centimetres_a_reading_is_said_to_the_millimetre() -> None:
    metric = replace(QUILT, unit=Unit.CM)
    state, record = play(metric, c.Measure("strips:3:3/2", (Fraction(89, 25),)))
    assert record[-1].event.words(state, record) == (
        "Measured 3 strips of 3.8 cm side by side: 9 cm, should be 8.9 cm: not right."
    )


def test_a_measure_of_what_nobody_knows_any_more_is_said_by_its_id() -> None:
    state, record = play(QUILT, c.Measure("row", (Fraction(20),)))
    measured = record[-1].event
    assert isinstance(measured, e.Checked)
    gone = replace(measured, piece="braid", expected="20")
    assert gone.words(state, record) == "Measured braid: 20 in, should be 20 in: not right."


def test_what_this_layout_does_not_have_is_said_by_its_id() -> None:
    runner = opening(a_quilt(pieces=16, rows=1, columns=8))
    assert counts_of(runner, "join-rows") == Noun("piece", "pieces")
    assert label_of(runner, "join-rows") == "join-rows"
    assert noun_of(runner, "wool") == Noun("wool", "wool")
    assert (counts_of(runner, "sew").one, label_of(runner, "sew-rows")) == (
        "four-patch",
        "sew rows",
    )
    assert noun_of(runner, "row") == Noun("row", "rows")


def test_words_of_the_owner_end_with_one_full_stop() -> None:
    assert [stopped(text) for text in ("so", "so.", "so!", "so?")] == ["so.", "so.", "so!", "so?"]

"""Leaving the iron, closing a session, and coming back after weeks."""

from __future__ import annotations

import sqlite3
from contextlib import closing
from pathlib import Path

import pytest
from textual.containers import VerticalScroll
from textual.notifications import Notifications

from sewalong.progress.record.events.every_kind import Answered
from sewalong.progress.record.settings import Settings
from sewalong.progress.resuming.pause_note import piles_to_place
from sewalong.screens.prompts.dialogs import CautionDialog, FormDialog, QuestionDialog
from sewalong.screens.quilts import QuiltsScreen
from sewalong.screens.returning import ReturnScreen
from sewalong.screens.sewing import SewingScreen
from sewalong.screens.widgets.literal_text import Words
from tests.progress import every_act as c
from tests.screens.choosing import choose
from tests.screens.sewing_room import (
    ALL_YES,
    DAY,
    HOUR,
    LARGE,
    MINUTE,
    SMALL,
    Room,
    StandingClock,
    at_sewing,
    kinds,
    put_on_shelf,
    the_app,
    up_to,
)


@pytest.fixture
def path(tmp_path: Path) -> Path:
    return tmp_path / "quilts.db"


AT_THE_IRON: list[c.Act] = [c.Count("pair", 20), c.Count("sew", 10), c.ChooseStage("press")]


@pytest.mark.parametrize(
    ("key", "answer", "size"),
    [("y", "yes", LARGE), ("N", "no", SMALL), ("d", "did not look", LARGE)],
)
async def test_leaving_the_iron_asks_and_keeps_the_answer(
    path: Path, key: str, answer: str, size: tuple[int, int]
) -> None:
    async with at_sewing(path, *AT_THE_IRON, c.Count("press", 4), size=size) as room:
        await room.press("o")
        await choose(room, "stack: 5 to go")
        await room.screen_is(QuestionDialog)
        await room.sees("Leaving the board: is the iron off, or safe on", "d: did not look")
        await room.press(key)
        await room.screen_is(SewingScreen)
        last = room.sewing.quilt.record[-1].event
        assert isinstance(last, Answered)
        assert last.answer == answer
    assert kinds(path, room.key or "")[-1] == "answered"


async def test_the_last_piece_pressed_asks_about_the_iron(path: Path) -> None:
    async with at_sewing(path, *AT_THE_IRON, c.Count("press", 9)) as room:
        await room.press("space")
        await room.screen_is(QuestionDialog)
        assert room.on_disk().done["press"] == 10
        await room.press("y")
        await room.sees("STACK at the table")


async def test_a_question_left_open_is_asked_again_after_the_next_count(path: Path) -> None:
    async with at_sewing(path, *AT_THE_IRON, c.Count("press", 4)) as room:
        await room.press("o")
        await choose(room, "pair: done, 4 more could be made")
        await room.screen_is(QuestionDialog)
        await room.press("escape")
        await room.screen_is(SewingScreen)
        assert "answered" not in kinds(path, room.key or "")
        await room.press("space")
        await room.screen_is(QuestionDialog)
        await room.press("y")
        await room.sees("Counted 1 pair.", "STACK at the table")
        await room.screen_is(SewingScreen)
        assert kinds(path, room.key or "")[-1] == "answered"


async def test_a_caution_and_the_question_of_the_iron_come_one_after_the_other(
    path: Path,
) -> None:
    async with at_sewing(path, *AT_THE_IRON, c.Count("press", 4)) as room:
        await room.press("o")
        await choose(room, "stack: 5 to go")
        await room.screen_is(QuestionDialog)
        await room.press("escape")
        await room.screen_is(SewingScreen)
        await room.press("space")
        await room.screen_is(CautionDialog)
        await room.press("enter")
        await room.screen_is(QuestionDialog)
        await room.press("n")
        await room.sees("Counted 1 stack.")


@pytest.mark.parametrize("leaves_with", ["y", "escape"])
async def test_what_is_counted_while_the_question_is_up_is_counted_after_it(
    path: Path, leaves_with: str
) -> None:
    counted = (*AT_THE_IRON, c.Count("press", 9), c.ReadCaution("stack"))
    async with at_sewing(path, *counted) as room:
        await room.press("space")
        await room.screen_is(QuestionDialog)
        await room.press("space")
        await room.sees("1 more is counted at stack after this.")
        # A number is looked at while it is typed: here it would be typed unseen.
        await room.press("space", "1", "2", "enter")
        await room.sees("2 more are counted at stack after this.")
        assert room.on_disk().done["stack"] == 0
        await room.press(leaves_with)
        await room.sees("stacks to go 2 of 5 done")
        assert room.sewing.typed == ""
        answered = [one.event for one in room.sewing.quilt.record if one.event.kind == "answered"]
        assert len(answered) == (1 if leaves_with == "y" else 0)
        if leaves_with == "y":
            await room.press("u")
            await room.sees("Undone: counted 2 stacks.")


async def test_counts_pressed_before_the_question_was_seen_answer_nothing_and_are_kept(
    path: Path,
) -> None:
    async with at_sewing(path, *AT_THE_IRON, c.Count("press", 9)) as room:
        await room.burst("space", "space", "y", "enter")
        await room.screen_is(QuestionDialog)
        await room.sees("1 more is counted at stack after this.")
        await room.press("n")
        await room.screen_is(CautionDialog)
        await room.press("enter")
        await room.sees("stacks to go 1 of 5 done", "Counted 1 stack.")


async def leave_the_places_as_offered(room: Room) -> None:
    """Enter through the form: the next step, then a place for each pile that was touched."""
    piles = len(piles_to_place(room.on_disk()))
    await room.press(*["enter"] * (1 + piles))
    await room.screen_is(QuiltsScreen)


@pytest.mark.parametrize("size", [SMALL])
async def test_closing_asks_about_each_thing_used_and_for_the_next_step(
    path: Path, size: tuple[int, int]
) -> None:
    used = [*up_to("cut-twice"), c.Count("cut-twice", 2)]
    async with at_sewing(path, *used, size=size) as room:
        await room.press("x")
        await room.sees("Before you go (1 of 4)", "Is the iron off and unplugged?")
        await room.press("y")
        await room.sees("Before you go (2 of 4)", "Is the blade closed?")
        await room.press("d")
        await room.sees("Before you go (3 of 4)", "Is the machine off, and your foot off the")
        await room.press("y")
        await room.sees("Before you go (4 of 4)", "Are the pins counted in?")
        await room.press("n")
        await room.screen_is(FormDialog)
        await room.sees("Next time, first of all")
        await room.write_over("find the pin")
        await leave_the_places_as_offered(room)
        (session,) = room.on_disk().sessions
        assert not session.is_open
        assert session.next_step == "find the pin"
        assert session.answers == {
            "iron": "yes",
            "blade": "did not look",
            "machine": "yes",
            "pins": "no",
        }


async def test_the_next_step_offered_is_the_next_thing_for_the_hands(path: Path) -> None:
    async with at_sewing(path, c.Count("pair", 6)) as room:
        await room.press("x")
        await room.screen_is(FormDialog)
        await room.sees("Pair (at the table): 36 squares wait")
        await leave_the_places_as_offered(room)
        (session,) = room.on_disk().sessions
        assert session.next_step == "Pair (at the table): 36 squares wait; 14 pairs to go."


async def test_the_places_are_asked_for_with_the_last_answer_offered(path: Path) -> None:
    async with at_sewing(path, c.Count("pair", 6), c.PutPileAway("pair", "tin")) as room:
        await room.press("x")
        await room.screen_is(FormDialog)
        await room.sees("Where are the 36 squares?", "Where are the 6 pairs?", "tin")
        await room.press("enter")
        await room.write("the blue drawer")
        await room.press("enter", "enter")
        await room.screen_is(QuiltsScreen)
        assert room.on_disk().where == {"square": "the blue drawer", "pair": "tin"}


@pytest.mark.parametrize("leave_at", ["question", "next step"])
async def test_escape_while_closing_leaves_the_session_open(path: Path, leave_at: str) -> None:
    async with at_sewing(path, c.Count("pair", 20), c.Count("sew", 2)) as room:
        before = room.seq()
        await room.press("x")
        await room.screen_is(QuestionDialog)
        if leave_at == "next step":
            await room.press("y")
            await room.screen_is(FormDialog)
        await room.press("escape")
        await room.screen_is(SewingScreen)
        await room.sees("The session stays open.")
        assert room.seq() == before


async def test_closing_with_nothing_counted_asks_only_for_the_next_step(path: Path) -> None:
    async with at_sewing(path) as room:
        await room.press("x")
        await room.screen_is(FormDialog)
        await room.press("enter")
        await room.screen_is(QuiltsScreen)
        assert room.on_disk().session is None


def an_evening_then_24_days(path: Path, clock: StandingClock, *, closed: bool) -> str:
    """A session of 90 minutes with everything in it, and then 24 days without a word."""
    evening: list[c.Act] = [
        c.OpenSession(),
        *up_to("cut-twice"),
        c.Spoil("square", 2, "cut askew"),
        c.PutPileAway("sewn-stack", "blue biscuit tin"),
        c.RecordSettings(
            Settings(foot="quarter inch", needle_position="5.5", proof="3 strips gave 3 1/2 in")
        ),
        c.WriteNote("the grey ones are bias, go easy"),
    ]
    if closed:
        evening.append(c.CloseSession({**ALL_YES, "iron": "did not look"}, "cut the five stacks"))
    key = put_on_shelf(path, clock, *evening, every=9 * MINUTE)
    clock.forward(24 * DAY)
    return key


async def test_after_24_days_the_facts_come_first(path: Path) -> None:
    clock = StandingClock()
    key = an_evening_then_24_days(path, clock, closed=True)
    async with the_app(path, clock, key) as room:
        await room.screen_is(ReturnScreen)
        await room.sees(
            "Window seat 24 days away where was I?",
            "CUT TWICE at the cutting mat",
            "Pick up the 5 sewn stacks – blue biscuit tin – and cut twice.",
            "5 stacks to go.",
            "First See that the iron is off: nobody looked last time.",
            "Count first It has been long: count the sewn stacks",
            "You wrote cut the five stacks",
            "Left cut twice 5, press open 20, sew rows 4",
            "hours;",
            "sessions like yours",
            "Also there 6 squares nobody wrote down where",
        )
        assert "quarter inch" not in room.flowing, "it is not sewn next"
        await room.press("m")
        await room.sees(
            "Machine: foot quarter inch, needle position 5.5",
            "Tested by: 3 strips gave 3 1/2 in (24 days ago)",
        )
        await room.press("enter", "n")
        await room.sees(
            "Last time: 24 days ago",
            "20 at pair,",
            "10 at sew, 10 at press",
            "Still to do: 20 units to go of 20 (4 × 5)",
            "Note: the grey ones are bias, go easy (24 days ago)",
            "Spoiled: 2 squares: cut askew (24 days ago)",
        )
        await room.press("enter")
        await room.press("enter")
        await room.screen_is(SewingScreen)
        await room.sees(
            "CUT TWICE at the cutting mat",
            "5 sewn stacks wait: blue biscuit tin.",
            "session 0 h 00",
        )
        assert len(room.on_disk().sessions) == 2


async def test_on_the_small_screen_the_facts_can_be_read_to_the_end(path: Path) -> None:
    clock = StandingClock()
    key = an_evening_then_24_days(path, clock, closed=True)
    async with the_app(path, clock, key, size=(40, 20)) as room:
        await room.screen_is(ReturnScreen)
        await room.sees("Pick up the 5 sewn stacks", "24 days away", "enter go on")
        # The hours come a moment after the rest, and make the page longer.
        page = room.app.screen.query_one(VerticalScroll)
        await room.until(
            lambda: any("hours" in str(words.visual) for words in page.query(Words)), "the hours"
        )
        await room.press("end")
        await room.sees("Also there", "nobody wrote down where")


async def test_a_session_never_closed_is_said_so_and_the_iron_was_not_asked_about(
    path: Path,
) -> None:
    clock = StandingClock()
    key = an_evening_then_24_days(path, clock, closed=False)
    async with the_app(path, clock, key) as room:
        await room.screen_is(ReturnScreen)
        await room.sees(
            "First See that the iron is off", "that session was never closed, so nobody asked."
        )
        await room.press("escape")
        await room.screen_is(QuiltsScreen)
        await room.sees("24 days ago")


async def test_the_same_evening_goes_straight_on_to_sewing(path: Path) -> None:
    clock = StandingClock()
    key = put_on_shelf(path, clock, c.OpenSession(), c.Count("pair", 2))
    clock.forward(HOUR)
    async with the_app(path, clock, key) as room:
        await room.screen_is(SewingScreen)
        await room.sees("session 1 h 00", "pairs to go 2 of 20 done")


async def test_after_a_long_absence_the_piles_that_matter_are_counted_one_by_one(
    path: Path,
) -> None:
    clock = StandingClock()
    key = an_evening_then_24_days(path, clock, closed=True)
    async with the_app(path, clock, key) as room:
        await room.screen_is(ReturnScreen)
        await room.sees("Count first")
        await room.press("r")
        await room.sees("Count the sewn stacks by hand", "The record says 5 sewn stacks")
        await room.write("4")
        await room.press("enter")
        await choose(room, "made, but not found")
        await room.until(lambda: room.on_disk().missing == {"sewn-stack": 1})


async def test_a_recount_that_cannot_be_kept_on_coming_back_is_said(path: Path) -> None:
    clock = StandingClock()
    key = an_evening_then_24_days(path, clock, closed=True)
    async with the_app(path, clock, key) as room:
        await room.screen_is(ReturnScreen)
        with closing(sqlite3.connect(path)) as disk:
            disk.execute(
                "CREATE TRIGGER refuses BEFORE INSERT ON event "
                "BEGIN SELECT RAISE(ABORT, 'no room'); END"
            )
        await room.press("r")
        await room.sees("Count the sewn stacks by hand")
        await room.write("4")
        await room.press("enter")
        await choose(room, "made, but not found")
        await room.until(lambda: any("Nothing was recorded" in said.message for said in told(room)))
        assert room.on_disk().missing == {}


def told(room: Room) -> Notifications:
    """What was put up over the screen; in a test it is not drawn."""
    return room.app._notifications

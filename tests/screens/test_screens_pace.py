"""How is it going: a table that lines up, what is guessed marked as guessed, one length."""

from __future__ import annotations

from pathlib import Path

import pytest

from sewalong.progress.pace.forecast_words import why
from sewalong.screens.pace import PaceScreen
from sewalong.screens.prompts.dialogs import LinesDialog
from sewalong.screens.sewing import SewingScreen
from sewalong.screens.widgets.course_view import HIGH
from sewalong.service.looks import how_it_goes
from sewalong.service.open_quilt import OpenQuilt
from sewalong.store.library import Library
from tests.progress import every_act as c
from tests.screens.sewing_room import (
    DAY,
    MINUTE,
    SMALL,
    StandingClock,
    at_sewing,
    put_on_shelf,
    the_app,
)


@pytest.fixture
def path(tmp_path: Path) -> Path:
    return tmp_path / "quilts.db"


EVENING: tuple[c.Act, ...] = (*[c.Count("pair", 4)] * 4, *[c.Count("sew", 1)] * 4)
"""Two minutes each: counts with a time of their own."""


async def test_the_table_lines_up_and_says_from_what(path: Path) -> None:
    async with at_sewing(path, *EVENING, every=2 * MINUTE) as room:
        await room.press("g")
        await room.screen_is(PaceScreen)
        await room.sees(" left, most likely ", "partly a guess.")
        heads = next(line for line in room.lines if "to go" in line)
        row = next(line for line in room.lines if line.strip().startswith("sew around"))
        for head, cell in (("each", "min"), ("in all", "min"), ("from", "a guess")):
            start = heads.index(head)
            assert row[start - 1] == " " != row[start], head
            assert cell in row[start:]
        assert heads.index("to go") + len("to go") - 1 == row.index("5"), "figures end together"
        own = next(line for line in room.lines if line.strip().startswith("sew  "))
        assert own[heads.index("from") :].rstrip() == "your 4"


async def test_the_reasons_behind_a_number_are_behind_enter(path: Path) -> None:
    async with at_sewing(path, *EVENING, every=2 * MINUTE) as room:
        await room.press("g")
        await room.screen_is(PaceScreen)
        await room.sees("a guess")
        assert "seam and handling" not in room.flowing
        going = how_it_goes(room.sewing.quilt)
        stages = list(going.left.stages)
        for n, one in enumerate(stages):
            await room.press(*(["down"] if n else []), "enter")
            await room.screen_is(LinesDialog)
            await room.sees(one.pace.stage.label.capitalize(), *(words[:30] for words in why(one)))
            await room.press("enter")
            await room.screen_is(PaceScreen)
        await room.press("down", "enter")
        await room.sees("left at the stages you have worked at", "8 times in 10")


async def test_the_plots_hold_what_was_counted_and_a_day_it_is_wanted_by_is_a_line(
    path: Path,
) -> None:
    async with at_sewing(path, *EVENING, every=2 * MINUTE, size=(160, 50)) as room:
        await room.press("g")
        await room.screen_is(PaceScreen)
        await room.sees("4 Nov 20 ▇", "Hours over the dates", "Too early to say when it is done")
        await room.press("d")
        await room.write("2023-12-24")
        await room.press("enter", "enter", "enter")
        await room.screen_is(LinesDialog)
        await room.press("enter")
        await room.sees("Wanted by 24 Dec 2023.")
        lines = [line for line in room.lines if "│" in line]
        assert len(lines) == HIGH
        assert len({line.index("│") for line in lines}) == 1


async def test_what_another_window_records_stands_there_too(path: Path) -> None:
    clock = StandingClock()
    async with at_sewing(path, *EVENING, every=2 * MINUTE, clock=clock, size=(160, 50)) as room:
        await room.press("g")
        await room.screen_is(PaceScreen)
        await room.sees("4 Nov 20 ▇")
        assert room.key
        with_another_evening(path, clock, room.key)
        await room.sees("4 Nov 23 ▇")


async def test_in_a_small_window_the_table_keeps_the_hours_and_the_guess(path: Path) -> None:
    async with at_sewing(path, *EVENING, every=2 * MINUTE, size=SMALL) as room:
        await room.press("g")
        await room.screen_is(PaceScreen)
        await room.until(lambda: any("sew around" in line for line in room.lines), "the table")
        row = next(line for line in room.lines if "sew around" in line)
        assert "min" in row
        assert "a guess" in row


async def test_the_clock_of_the_session_and_its_length_are_one(path: Path) -> None:
    clock = StandingClock()
    async with at_sewing(path, c.Count("pair", 20), clock=clock) as room:
        clock.forward(49 * MINUTE)
        await room.press("v", "v")
        await room.sees("session 0 h 49")
        await room.press("g")
        await room.screen_is(PaceScreen)
        for _ in range(13):
            await room.press("down")
        await room.sees("4 Nov 20 ▇")
        await room.press("enter")
        await room.sees("49 minutes.", "20 pairs at pair.", "20 without a time.")


async def test_the_first_evening_is_not_told_that_a_day_cannot_be_kept(path: Path) -> None:
    async with at_sewing(path, *EVENING, every=2 * MINUTE) as room:
        await room.press("g")
        await room.screen_is(PaceScreen)
        await room.press("d")
        await room.write("2023-11-06")
        await room.press("enter", "enter", "enter")
        await room.screen_is(LinesDialog)
        await room.sees("Too early to say: it takes", "partly a guess")
        assert "cannot be done" not in room.flowing


async def test_a_date_is_held_against_the_habit_given(path: Path) -> None:
    clock = StandingClock()
    put_away = c.CloseSession({"machine": "yes"})
    key = put_on_shelf(path, clock, *EVENING, put_away, every=2 * MINUTE)
    clock.forward(20 * DAY)
    with_another_evening(path, clock, key)
    async with the_app(path, clock, key) as room:
        await room.screen_is(SewingScreen)
        await room.press("g")
        await room.screen_is(PaceScreen)
        await room.press("d")
        await room.write("2023-12-02")
        await room.press("enter")
        await room.write("15")
        await room.press("enter", "enter")
        await room.sees("Write both, the minutes of a session and how many a week")
        await room.press("enter", "enter")
        await room.write("2")
        await room.press("enter")
        await room.screen_is(LinesDialog)
        await room.sees("That cannot be done with that habit")
        dialog = room.app.screen
        assert isinstance(dialog, LinesDialog)
        assert "the habit given has 30 minutes" in " ".join(dialog._lines)


def with_another_evening(path: Path, clock: StandingClock, key: str) -> None:
    library = Library(path, clock())
    try:
        (entry,) = [one for one in library.entries() if one.key == key]
        quilt = OpenQuilt(library, entry, clock)
        for _ in range(3):
            clock.forward(2 * MINUTE)
            quilt.do(c.Count("pair", 1))
    finally:
        library.close()

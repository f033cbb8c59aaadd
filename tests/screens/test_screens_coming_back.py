"""Coming back at one glance: what fits, what is behind a key, and what another window records."""

from __future__ import annotations

from datetime import timedelta
from fractions import Fraction
from pathlib import Path

import pytest

from sewalong.progress.record.settings import Settings
from sewalong.progress.resuming.coming_back import AT_MOST, ComingBack, coming_back
from sewalong.screens.prompts.facts import FactsDialog, machine_and_proof, notes_and_the_rest
from sewalong.screens.returning import ReturnScreen
from sewalong.screens.widgets.literal_text import Words
from sewalong.screens.widgets.picture_view import PictureView
from sewalong.screens.widgets.return_sheet import LITTLE, USUAL, ReturnSheet
from sewalong.service.looks import where_was_i
from sewalong.service.open_quilt import OpenQuilt
from sewalong.store.library import Library
from tests.progress import building
from tests.progress import every_act as c
from tests.screens.sewing_room import (
    ALL_YES,
    DAY,
    MINUTE,
    Room,
    StandingClock,
    at_sewing,
    put_on_shelf,
    the_app,
    up_to,
)

TROUBLED: tuple[c.Act, ...] = (
    c.Count("pair", 20),
    c.Count("sew", 10),
    c.Count("press", 10),
    c.Count("stack", 5),
    c.Count("sew-around", 3),
    c.Measure("unit", (Fraction(51, 8),)),
    c.Count("sew-around", 2),
    c.Count("cut-twice", 2),
    c.Measure("unit", (Fraction(46, 8),)),
    c.Recount("sewn-stack", 1, "missing"),
    c.CloseSession({**ALL_YES, "pins": "no"}),
)
"""An evening after which more is wrong than is said at once."""


def troubled() -> ComingBack:
    quilt = building.a_quilt(pieces=40, rows=4, columns=5)
    state, record = building.play(quilt, *TROUBLED)
    return coming_back(state, record, building.EVENING + timedelta(days=24))


def test_what_is_too_much_at_once_is_behind_a_key_and_none_is_lost() -> None:
    back = troubled()
    assert len(back.concerns) > AT_MOST
    behind = notes_and_the_rest(back)
    for one in back.concerns[AT_MOST:]:
        assert f"{one.label}: {one.text}" in behind
    for one in back.concerns[:AT_MOST]:
        assert f"{one.label}: {one.text}" not in behind
    assert f"Last time: {back.last_time}" in behind
    assert f"Still to do: {back.units}" in behind


def test_the_machine_behind_its_key_says_when_nothing_is_written_down() -> None:
    state, record = building.play(building.a_quilt(), c.Count("pair"))
    back = coming_back(state, record, building.EVENING)
    (line,) = machine_and_proof(back)
    assert "Nothing is written down" in line


def away(path: Path, *acts: c.Act) -> tuple[StandingClock, str]:
    """A quilt left after `acts`, 24 days ago."""
    clock = StandingClock()
    key = put_on_shelf(path, clock, c.OpenSession(), *acts, every=3 * MINUTE)
    clock.forward(24 * DAY)
    return clock, key


async def stands(room: Room) -> ReturnSheet:
    await room.screen_is(ReturnScreen)
    sheet = room.app.screen.query_one(ReturnSheet)
    await room.until(lambda: sheet.is_filled, "hours and picture")
    await room.pilot.pause()
    return sheet


async def test_three_concerns_are_said_and_how_many_more_there_are(tmp_path: Path) -> None:
    path = tmp_path / "quilts.db"
    clock, key = away(path, *TROUBLED)
    async with the_app(path, clock, key) as room:
        await stands(room)
        await room.sees("First Count the pins: you said no last time.", "more behind n, notes.")
        await room.press("n")
        await room.sees("Notes and the rest", "Last time: 24 days ago")


async def test_over_the_sewing_screen_all_concerns_are_said(tmp_path: Path) -> None:
    async with at_sewing(tmp_path / "quilts.db", *TROUBLED[:-1], size=(120, 50)) as room:
        concerns = where_was_i(room.sewing.quilt).concerns
        assert len(concerns) > AT_MOST
        await room.press("w")
        await room.screen_is(FactsDialog)
        said = [str(text.content) for text in room.app.screen.query(".fact-text").results(Words)]
        assert said[: len(concerns)] == [one.text for one in concerns]
        assert "behind n" not in room.flowing


@pytest.mark.parametrize(
    ("size", "room_for"),
    [((80, 24), USUAL), ((40, 20), LITTLE), ((120, 36), (44, 22)), ((160, 50), (84, 42))],
)
async def test_the_first_sentence_and_the_piece_are_seen_at_once_at_every_size(
    tmp_path: Path, size: tuple[int, int], room_for: tuple[int, int]
) -> None:
    path = tmp_path / "quilts.db"
    settings = c.RecordSettings(Settings(foot="quarter inch", proof="3 strips gave 3 1/2 in"))
    clock, key = away(path, settings, *up_to("sew"), c.CloseSession(ALL_YES, "sew the twenty"))
    async with the_app(path, clock, key, size=size) as room:
        sheet = await stands(room)
        assert "Pick up the 20 pairs and sew." in room.flowing
        (picture,) = [view for view in sheet.query(PictureView) if view.display]
        assert room_for[1] - 1 <= picture.region.height <= room_for[1]
        if size != (40, 20):
            assert "quarter inch" in room.flowing, "it is sewn next"
            assert sheet.region.bottom <= size[1] - 1, "without scrolling"
        await room.press("end")
        await room.sees("8 squares")


async def test_what_another_window_records_meanwhile_stands_there(tmp_path: Path) -> None:
    path = tmp_path / "quilts.db"
    clock, key = away(path, *up_to("sew"), c.CloseSession(ALL_YES))
    async with the_app(path, clock, key) as room:
        await stands(room)
        assert "Pick up the 20 pairs and sew." in room.flowing
        library = Library(path, clock())
        try:
            (entry,) = [one for one in library.entries() if one.key == key]
            OpenQuilt(library, entry, clock).do(c.PutPileAway("pair", "shoe box"))
        finally:
            library.close()
        await room.sees("Pick up the 20 pairs – shoe box – and sew.")

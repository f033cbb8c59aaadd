"""Somebody who works in centimetres sees no inch on any screen, whatever is opened."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from sewalong.quilt.file.reader import read_quilt
from sewalong.screens.sewing import SewingScreen
from sewalong.screens.worksheet import WorksheetScreen
from tests.cli.frame.test_frame_units import AN_INCH, METRIC_QUILT
from tests.progress import every_act as c
from tests.screens.sewing_room import Room, at_sewing
from tests.screens.test_screens_every_size import OPENS, go_on, open_by

SO_MANY_IN_SO_LONG = re.compile(r"\d+ in (?=\d+ (?:h|min)|no time)")
"""Pieces in a time are no inches."""

AT_THE_MAT = (
    *(c.Count(stage, n) for stage, n in (("pair", 84), ("sew", 42), ("press", 42), ("stack", 21))),
    c.Answer("iron", "yes"),
    c.Count("sew-around", 21),
)


async def seen_behind(room: Room, key: str) -> list[str]:
    """All that a key opens, and what comes behind it when its first line is taken."""
    await open_by(room, key)
    seen = []
    for _ in range(4):
        screen = room.app.screen
        seen.append(room.flowing)
        if isinstance(screen, SewingScreen):
            break
        if isinstance(screen, WorksheetScreen):
            for page in "2345678":
                await room.press(page)
                seen.append(room.flowing)
        await go_on(room)
    while not isinstance(room.app.screen, SewingScreen):
        await room.press("escape")
    return seen


@pytest.mark.long
async def test_no_inch_is_seen(tmp_path: Path) -> None:
    quilt = read_quilt(METRIC_QUILT)
    size = (120, 60)
    async with at_sewing(tmp_path / "q.db", *AT_THE_MAT, quilt=quilt, size=size) as room:
        seen = [room.flowing]
        # Last what lays the quilt aside, for then nothing can be counted.
        for key in sorted(OPENS, key="a".__eq__):
            seen += await seen_behind(room, key)
    assert sum("cm" in text for text in seen) > 5
    inches = [
        text[max(0, at.start() - 60) : at.end()]
        for text in (SO_MANY_IN_SO_LONG.sub("", one) for one in seen)
        for at in AN_INCH.finditer(text)
    ]
    assert inches == []

"""What the tests of the screens share: an invented quilt, a clock that stands, and the app.

State is built by carrying commands out on an open quilt, as the app itself does. Nothing
waits for a length of time: `Room.until` waits for what should come about.
"""

from __future__ import annotations

import time
from collections.abc import AsyncIterator, Callable, Sequence
from contextlib import asynccontextmanager
from datetime import datetime, timedelta, timezone
from fractions import Fraction
from pathlib import Path
from typing import Any

from textual import events
from textual.pilot import Pilot
from textual.screen import Screen

from sewalong.lengths import Unit
from sewalong.progress.record.state import State
from sewalong.progress.safety.cautions import CautionFirst
from sewalong.quilt.quilt import Border, Quilt, StartPile, Target
from sewalong.screens.app import SewalongApp
from sewalong.screens.sewing import SewingScreen
from sewalong.screens.widgets.picture_view import PictureView
from sewalong.service.open_quilt import OpenQuilt
from sewalong.store.library import Library
from tests.progress import every_act as c

EVENING = datetime(2023, 11, 4, 19, 0, tzinfo=timezone(timedelta(hours=1)))
MINUTE = timedelta(minutes=1)
HOUR = timedelta(hours=1)
DAY = timedelta(days=1)

LARGE, SMALL = (80, 24), (40, 20)
SIZES = (LARGE, SMALL)

PATIENCE = 4.0
"""Seconds until something that should come about is given up: only reached when it fails."""


class StandingClock:
    """A clock that stands until it is moved."""

    def __init__(self, at: datetime = EVENING) -> None:
        self.at = at

    def __call__(self) -> datetime:
        return self.at

    def forward(self, by: timedelta) -> None:
        """Let so much time go by."""
        self.at += by


FOUR_BY_FIVE = Target(4, 5)


def a_quilt(
    name: str = "Window seat",
    *,
    pieces: int = 48,
    target: Target = FOUR_BY_FIVE,
    borders: tuple[str, ...] = ("cream linen",),
) -> Quilt:
    """An invented quilt: 48 squares make 24 units, and 4 × 5 leaves 4 of them spare."""
    return Quilt(
        name=name,
        method_id="stacked-four-patch",
        unit=Unit.INCH,
        seam=Fraction(1, 4),
        starts=(StartPile("square", Fraction(5), pieces),),
        target=target,
        borders=tuple(Border(Fraction(5, 2), cloth) for cloth in borders),
        finishing=("layer", "quilt", "bind"),
    )


ROAD_TO = {
    "sew": (("pair", 20),),
    "press": (("pair", 20), ("sew", 10)),
    "stack": (("pair", 20), ("sew", 10), ("press", 10)),
    "sew-around": (("pair", 20), ("sew", 10), ("press", 10), ("stack", 5)),
    "cut-twice": (("pair", 20), ("sew", 10), ("press", 10), ("stack", 5), ("sew-around", 5)),
}
"""For a stage: the counts that bring the invented quilt to it."""


PAST_THE_IRON = ("stack", "sew-around", "cut-twice")
"""Stages before which something is pressed, so that the iron is asked about."""


def up_to(stage: str) -> list[c.Act]:
    """Commands that bring the invented quilt to the start of `stage`, asked-for answers given."""
    counts: list[c.Act] = [c.Count(id, n) for id, n in ROAD_TO[stage]]
    return [*counts, *([c.Answer("iron", "yes")] if stage in PAST_THE_IRON else [])]


ALL_YES = {"iron": "yes", "blade": "yes", "machine": "yes", "pins": "yes"}


def put_on_shelf(
    path: Path,
    clock: StandingClock,
    *commands: c.Act,
    quilt: Quilt | None = None,
    every: timedelta = timedelta(0),
) -> str:
    """A new quilt in the record at `path` with `commands` carried out; its key.

    A caution that is due is read. The clock moves on by `every` before each command.
    """
    library = Library(path, clock())
    try:
        entry = library.add(quilt or a_quilt(), clock())
        quilt_open = OpenQuilt(library, entry, clock)
        for command in commands:
            clock.forward(every)
            carry_out(quilt_open, command)
        return entry.key
    finally:
        library.close()


def carry_out(quilt: OpenQuilt, command: c.Act) -> None:
    """Do `command`, reading a caution first where one is due."""
    try:
        quilt.do(command)
    except CautionFirst as caution:
        quilt.do(c.ReadCaution(caution.stage))
        quilt.do(command)


class Room:
    """The running app, with what a person can do to it and see of it."""

    def __init__(self, app: SewalongApp, pilot: Pilot[int], path: Path, key: str | None) -> None:
        self.app = app
        self.pilot = pilot
        self.path = path
        self.key = key

    async def press(self, *keys: str) -> None:
        """Press keys as somebody who looks: each when what the one before brought stands there."""
        for key in keys:
            await self.until(
                lambda: self.app.key_order.are_for_the_screen_in_front(events.Event().time), key
            )
            self.app.post_message(events.Key(key, _character(key)))
            # What the key does, such as leaving a screen, is done before the next one is for it.
            await self.pilot.pause()

    async def burst(self, *keys: str) -> None:
        """All keys at once, as out of a stalled connection, and whatever comes of them."""
        for key in keys:
            self.app.post_message(events.Key(key, _character(key)))
        await self.pilot.pause()
        await self.until(
            lambda: self.app.key_order.are_for_the_screen_in_front(events.Event().time), "the end"
        )
        await self.pilot.pause()

    async def write(self, text: str) -> None:
        """Type `text` letter by letter, as fast as a keyboard that repeats."""
        await self.press(*(_KEY_NAMES.get(letter, letter) for letter in text))

    async def write_over(self, text: str) -> None:
        """Clear the line that is being filled in and type `text` there."""
        await self.press("end", "ctrl+u")
        await self.write(text)

    async def until(self, true: Callable[[], bool], what: str = "") -> None:
        """Wait until `true()`; fails with the screen as it stands when it never comes."""
        deadline = time.monotonic() + PATIENCE
        while not true():
            assert time.monotonic() < deadline, f"never came: {what}\n{self.text}"
            await self.pilot.pause()

    async def sees(self, *texts: str) -> None:
        """Wait until every one of `texts` can be read on the screen."""
        for text in texts:
            await self.until(lambda text=text: text in self.flowing, text)  # type: ignore[misc]

    async def screen_is(self, kind: type[Screen[Any]]) -> None:
        """Wait until a screen or dialog of this kind is in front."""
        await self.until(lambda: isinstance(self.app.screen, kind), kind.__name__)
        if kind is SewingScreen:
            # What comes after the number: the session is open, the picture is there.
            picture = self.app.screen.query_one(PictureView)
            await self.until(lambda: picture.was_shown, "the picture")

    @property
    def lines(self) -> list[str]:
        """The screen line by line, as it is drawn."""
        return lines_of(self.app)

    @property
    def text(self) -> str:
        """The screen as it is drawn."""
        return "\n".join(self.lines)

    @property
    def flowing(self) -> str:
        """The screen without regard to where lines end: what stands beside is cut in."""
        return " ".join(" ".join(line.split()) for line in self.lines)

    @property
    def sewing(self) -> SewingScreen:
        """The sewing screen, which may lie below a dialog."""
        for screen in reversed(self.app.screen_stack):
            if isinstance(screen, SewingScreen):
                return screen
        raise AssertionError(f"no sewing screen\n{self.text}")

    @property
    def state(self) -> State:
        """Where the quilt stands, as the open window has it."""
        return self.sewing.quilt.state

    def on_disk(self) -> State:
        """Where the quilt stands for somebody who opens the record now."""
        library = Library(self.path, EVENING)
        try:
            (entry,) = [e for e in library.entries() if e.key == self.key]
            return OpenQuilt(library, entry).state
        finally:
            library.close()

    def seq(self) -> int:
        """How many events are on disk."""
        return self.on_disk().seq


def lines_of(app: SewalongApp) -> list[str]:
    """The rendered strips of the screen in front, as text, without trailing spaces."""
    width, height = app.size
    strips = app.screen._compositor.render_strips()
    lines = ["".join(segment.text for segment in strip).rstrip() for strip in strips]
    assert len(lines) == height
    assert all(len(line) <= width for line in lines)
    return lines


_KEY_NAMES = {
    " ": "space",
    "[": "left_square_bracket",
    "]": "right_square_bracket",
    "/": "slash",
    "?": "question_mark",
    ".": "full_stop",
    ",": "comma",
}
_CHARACTERS = {name: character for character, name in _KEY_NAMES.items()}


def _character(key: str) -> str | None:
    return key if len(key) == 1 else _CHARACTERS.get(key)


@asynccontextmanager
async def the_app(
    path: Path,
    clock: StandingClock,
    key: str | None = None,
    *,
    size: tuple[int, int] = LARGE,
    theme: str | None = None,
) -> AsyncIterator[Room]:
    """The app on the record at `path`, opened at the quilt `key` or at the list."""
    library = Library(path, clock())
    try:
        app = SewalongApp(library, quilt=key, clock=clock)
        app.animation_level = "none"
        if theme:
            app.theme = theme
        async with app.run_test(size=size) as pilot:
            yield Room(app, pilot, path, key)
    finally:
        library.close()


@asynccontextmanager
async def at_sewing(
    path: Path,
    *commands: c.Act,
    clock: StandingClock | None = None,
    quilt: Quilt | None = None,
    size: tuple[int, int] = LARGE,
    theme: str | None = None,
    every: timedelta = timedelta(0),
) -> AsyncIterator[Room]:
    """The sewing screen of a new quilt after `commands`, so long before each of them."""
    clock = clock or StandingClock()
    key = put_on_shelf(path, clock, c.OpenSession(), *commands, quilt=quilt, every=every)
    async with the_app(path, clock, key, size=size, theme=theme) as room:
        await room.screen_is(SewingScreen)
        yield room


def kinds(path: Path, key: str) -> Sequence[str]:
    """The kinds of the events on disk, in order."""
    library = Library(path, EVENING)
    try:
        (entry,) = [e for e in library.entries() if e.key == key]
        return [recorded.event.kind for recorded in library.since(entry, 0)]
    finally:
        library.close()

"""Twin quilts: one act done by keys on the one and by a plain command on the other.

Both begin with the same history at the same times and with everything said that is said on
sitting down, so that what is recorded from then on is what came of the act.
"""

from __future__ import annotations

import io
import shlex
from collections.abc import Awaitable, Callable, Iterator
from contextlib import contextmanager
from datetime import datetime
from pathlib import Path
from shutil import copytree

import pytest
from msgspec import Struct

from sewalong.cli.frame.context import Context
from sewalong.cli.frame.run import run
from sewalong.progress.acts.act import Act
from sewalong.progress.record.events.event import Event, Recorded
from sewalong.progress.record.state import Standing
from sewalong.quilt.quilt import Quilt
from sewalong.screens.prompts.dialogs import CautionDialog, FormDialog, LinesDialog, QuestionDialog
from sewalong.screens.sewing import SewingScreen
from sewalong.screens.wall.row_in_hand import RowInHandScreen
from sewalong.service.acting import sit_down
from sewalong.service.open_quilt import Follows, OpenQuilt, nothing_more
from sewalong.store.library import Library
from tests.screens.choosing import choose
from tests.screens.sewing_room import MINUTE, Room, StandingClock, a_quilt, put_on_shelf, the_app

Key = Callable[[Room], Awaitable[None]]
"""Something done with the keys."""


class Case(Struct, frozen=True):
    """One act by key and by command, after `history`.

    `gives` are the kinds of the events it gives; `typed` is what is typed at the command's
    questions. `by_key` is the act the key asks for where it is not the command's own.
    """

    what: str
    act: type[Act]
    keys: tuple[Key, ...]
    commands: tuple[str, ...]
    gives: tuple[str, ...]
    history: tuple[Act, ...] = ()
    quilt: Quilt = a_quilt()
    typed: str | None = None
    by_key: type[Act] | None = None


class Did(Struct, frozen=True):
    """What came of it on one of the twins: the events, and the acts asked for."""

    events: tuple[Event, ...]
    acts: frozenset[type[Act]]


# -- keys ----------------------------------------------------------------------


def press(*keys: str) -> Key:
    """Press keys of the sewing screen."""

    async def pressing(room: Room) -> None:
        await room.screen_is(SewingScreen)
        await room.press(*keys)

    return pressing


def pick(label: str) -> Key:
    """Take the line with `label` from a list."""

    async def picking(room: Room) -> None:
        await choose(room, label)

    return picking


def fill(*values: str | None) -> Key:
    """Fill in a form line by line; None leaves what is offered."""

    async def filling(room: Room) -> None:
        await room.screen_is(FormDialog)
        for value in values:
            if value is not None:
                await room.write_over(value)
            await room.press("enter")

    return filling


def answer(*keys: str) -> Key:
    """Answer questions one after the other: y, n or d."""

    async def answering(room: Room) -> None:
        for number, key in enumerate(keys, start=1):
            await room.screen_is(QuestionDialog)
            if len(keys) > 1:
                await room.sees(f"Before you go ({number} of {len(keys)})")
            await room.press(key)

    return answering


async def read_the_caution(room: Room) -> None:
    """Say by enter that the caution was read."""
    await room.screen_is(CautionDialog)
    await room.press("enter")


async def sew_one_on(room: Room) -> None:
    """Sew the next unit to the row in hand."""
    await room.screen_is(RowInHandScreen)
    await room.press("space")


async def leave_the_question(room: Room) -> None:
    """Leave a question without an answer."""
    await room.screen_is(QuestionDialog)
    await room.press("escape")


async def read_what_it_means(room: Room) -> None:
    """Leave the lines after a measurement."""
    await room.screen_is(LinesDialog)
    await room.press("enter")


# -- the twins -----------------------------------------------------------------


class Twins(Struct, frozen=True):
    """Two copies of one record, each in a folder of its own, and the clock that stands for both.

    `before` is how many events they have in common.
    """

    for_keys: Path
    for_commands: Path
    clock: StandingClock
    key: str
    before: int

    def since(self, path: Path) -> tuple[Event, ...]:
        """What was recorded in one of them since."""
        library = Library(path, self.clock())
        try:
            (entry,) = library.entries()
            return tuple(recorded.event for recorded in library.since(entry, self.before))
        finally:
            library.close()


def twins(case: Case, folder: Path) -> Twins:
    """Twin quilts with the history of a case, a minute for each act."""
    path, clock = folder / "keys" / "quilts.db", StandingClock()
    key = put_on_shelf(path, clock, *case.history, quilt=case.quilt, every=MINUTE)
    library = Library(path, clock())
    try:
        (entry,) = library.entries()
        quilt = OpenQuilt(library, entry, clock)
        before = -1
        while quilt.state.standing is Standing.IN_PROGRESS and before < len(quilt.record):
            before = len(quilt.record)
            sit_down(quilt)
    finally:
        library.close()
    copytree(path.parent, folder / "commands")
    return Twins(path, folder / "commands" / "quilts.db", clock, key, len(quilt.record))


async def by_key(case: Case, twins: Twins) -> Did:
    """Do it with the keys of the sewing screen."""
    path = twins.for_keys
    with _watched() as acts:
        async with the_app(path, twins.clock, twins.key) as room:
            await room.screen_is(SewingScreen)
            acts.clear()
            for step in case.keys:
                await step(room)
            await room.until(lambda: len(twins.since(path)) >= len(case.gives), case.what)
            await room.pilot.pause()
    return Did(twins.since(path), frozenset(acts))


def by_command(case: Case, twins: Twins, monkeypatch: pytest.MonkeyPatch) -> Did:
    """Do it with plain commands."""
    monkeypatch.setenv("SEWALONG_HOME", str(twins.for_commands.parent))
    interactive = case.typed is not None
    if interactive:
        monkeypatch.setattr("sys.stdin", io.StringIO(case.typed))
    with _watched() as acts:
        for line in case.commands:
            assert run(shlex.split(line), Context(twins.clock, interactive)) == 0
    return Did(twins.since(twins.for_commands), frozenset(acts))


@contextmanager
def _watched() -> Iterator[set[type[Act]]]:
    """The kinds of act that a quilt is asked for meanwhile."""
    acts: set[type[Act]] = set()
    do = OpenQuilt.do

    def watched(
        quilt: OpenQuilt,
        act: Act,
        follows: Follows = nothing_more,
        *,
        at: datetime | None = None,
    ) -> tuple[Recorded, ...]:
        acts.add(type(act))
        return do(quilt, act, follows, at=at)

    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(OpenQuilt, "do", watched)
        yield acts

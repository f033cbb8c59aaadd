"""What the tests of the service share: a quilt that is open, with a history, and its file."""

from __future__ import annotations

import sqlite3
from collections.abc import Iterator
from contextlib import closing, contextmanager
from pathlib import Path

from sewalong.progress.acts.act import Act
from sewalong.progress.record.events.event import Event
from sewalong.quilt.quilt import Quilt
from sewalong.service.open_quilt import OpenQuilt
from sewalong.store.library import Library
from tests.screens.sewing_room import EVENING, MINUTE, StandingClock, put_on_shelf


class Window:
    """One window on the quilt of a record."""

    def __init__(self, path: Path, clock: StandingClock, library: Library) -> None:
        self.path = path
        self.clock = clock
        self.library = library
        (entry,) = library.entries()
        self.quilt = OpenQuilt(library, entry, clock)

    def since(self, number: int) -> list[str]:
        """The kinds of the events after that number, as this window has them."""
        return [recorded.event.kind for recorded in self.quilt.record[number:]]

    def on_disk(self) -> tuple[Event, ...]:
        """Every event there is on disk."""
        with a_library(self.path) as library:
            (entry,) = library.entries()
            return tuple(recorded.event for recorded in library.since(entry, 0))


@contextmanager
def a_library(path: Path, kind: type[Library] = Library) -> Iterator[Library]:
    """The record at `path`, closed in the end."""
    with closing(kind(path, EVENING)) as library:
        yield library


@contextmanager
def a_window(
    folder: Path,
    *history: Act,
    quilt: Quilt | None = None,
    kind: type[Library] = Library,
) -> Iterator[Window]:
    """A window on a new quilt after `history`, a minute for each act."""
    path, clock = folder / "quilts.db", StandingClock()
    put_on_shelf(path, clock, *history, quilt=quilt, every=MINUTE)
    with another_window(path, clock, kind) as window:
        yield window


@contextmanager
def another_window(
    path: Path, clock: StandingClock, kind: type[Library] = Library
) -> Iterator[Window]:
    """One more window on the quilt at `path`."""
    with a_library(path, kind) as library:
        yield Window(path, clock, library)


def write(path: Path, sql: str, *values: str | int) -> None:
    """Change the file itself, behind the program's back."""
    with closing(sqlite3.connect(path)) as connection:
        connection.execute(sql, values)
        connection.commit()

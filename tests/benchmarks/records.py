"""Invented quilts with as long a record as is wanted, put on the shelf directly."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from datetime import datetime, timedelta, timezone
from fractions import Fraction
from pathlib import Path

from sewalong.lengths import Unit
from sewalong.progress.acts.counting import Count
from sewalong.progress.acts.notes import WriteNote
from sewalong.progress.record.events.every_kind import (
    Counted,
    Event,
    Found,
    Noted,
    SessionClosed,
    SessionOpened,
)
from sewalong.quilt.quilt import Quilt, StartPile, Target
from sewalong.service.acting import do, sit_down
from sewalong.service.open_quilt import OpenQuilt, local_now
from sewalong.store.home import FILE_NAME
from sewalong.store.library import Library, Shelved

FIRST_EVENING = datetime(2023, 11, 4, 19, 0, tzinfo=timezone(timedelta(hours=1)))
IN_A_SESSION = 50
STAGE = "pair"
COUNT = Count(STAGE, 1, caution_read=True)

Kind = Callable[[datetime, int], Event]
"""An event at a time in a session."""


def a_quilt(name: str = "Window seat") -> Quilt:
    """An invented quilt of 200 units."""
    return Quilt(
        name=name,
        method_id="stacked-four-patch",
        unit=Unit.INCH,
        seam=Fraction(1, 4),
        starts=(StartPile("square", Fraction(5), 400),),
        target=Target(20, 10),
    )


def counted(at: datetime, session: int) -> Event:
    """One pair."""
    return Counted(at=at, session=session, stage=STAGE, n=1)


def noted(at: datetime, session: int) -> Event:
    """A note of usual length."""
    return Noted(at=at, session=session, text=f"session {session}: press these towards row 1")


def evenings(events: int, kind: Kind = counted) -> Iterator[Event]:
    """So many events: a session an evening, with squares brought to it and then one kind of event."""
    for i in range(events):
        evening, place = divmod(i, IN_A_SESSION)
        at = FIRST_EVENING + timedelta(days=evening, seconds=20 * place)
        if place == 0:
            yield SessionOpened(at=at, session=evening + 1)
        elif place == 1:
            yield Found(at=at, session=evening + 1, pile="square", n=2 * IN_A_SESSION, how="bought")
        elif place == IN_A_SESSION - 1:
            yield SessionClosed(at=at, session=evening + 1, ended=at)
        else:
            yield kind(at, evening + 1)


@contextmanager
def shelf(home: Path) -> Iterator[Library]:
    """The quilts in `home`, where the installed command looks for them too."""
    library = Library(home / FILE_NAME, local_now())
    try:
        yield library
    finally:
        library.close()


def put(library: Library, events: int, kind: Kind = counted, name: str = "Window seat") -> Shelved:
    """A quilt with so many events."""
    return library.add(a_quilt(name), FIRST_EVENING, events=tuple(evenings(events, kind)))


def sat_down_after(library: Library, entry: Shelved) -> OpenQuilt:
    """The quilt the evening after its last event, and somebody sits at it."""
    (last_at,) = [one.last_at for one in library.entries() if one.id == entry.id]
    quilt = OpenQuilt(library, entry, lambda: last_at + timedelta(days=1))
    sit_down(quilt)
    return quilt


def sewing_now(home: Path) -> None:
    """One quilt, at which somebody sits and has just counted her first pair."""
    with shelf(home) as library:
        quilt = OpenQuilt(library, library.add(a_quilt(), local_now()))
        sit_down(quilt)
        do(quilt, COUNT)


def pairs_counted(home: Path) -> int:
    """How many pairs the record of the only quilt in `home` holds."""
    with shelf(home) as library:
        (entry,) = library.entries()
        return OpenQuilt(library, entry).state.done[STAGE]


def many_quilts(home: Path, quilts: int, events: int = 200) -> None:
    """So many quilts, each with its record and what is kept beside it for the list."""
    with shelf(home) as library:
        for i in range(quilts):
            entry = put(library, events, name=f"Quilt {i + 1}")
            do(OpenQuilt(library, entry), WriteNote("the blue ones next"))

"""An open quilt: its state kept true to the record, and commands carried out.

The way of an event: a command is decided on the state, the events are written to disk,
and only then does the state move on. When another window wrote first, the state is
brought up to date and the command is decided anew, so neither loses the other's events.
"""

from __future__ import annotations

from collections.abc import Callable
from datetime import datetime

from sewalong.progress.acts.commands import Command, Refused
from sewalong.progress.acts.decide import decide
from sewalong.progress.record.events import Recorded
from sewalong.progress.record.fold import advance, fold
from sewalong.progress.record.state import State
from sewalong.store.faults import Stale, StoreFault
from sewalong.store.library import Library, Shelved

Clock = Callable[[], datetime]
TRIES = 20
"""Times a command is decided anew when another window was faster; a try takes a millisecond."""


def local_now() -> datetime:
    """The wall clock with its offset; it goes on while a laptop sleeps."""
    return datetime.now().astimezone()


class OpenQuilt:
    """One open quilt. `state` is always what is on disk, as far as this window has read."""

    def __init__(self, library: Library, entry: Shelved, clock: Clock = local_now) -> None:
        self._library = library
        self._clock = clock
        self.entry = entry
        # Asked before reading: what is written meanwhile is then read at the next refresh.
        self._seen = library.version_seen()
        loaded = library.load(entry)
        self.record: tuple[Recorded, ...] = loaded.record
        self.state: State = fold(loaded.quilt, loaded.record)

    def now(self) -> datetime:
        """The time commands are carried out at."""
        return self._clock()

    def do(self, command: Command) -> tuple[Recorded, ...]:
        """Carry out a command; raises Refused or StoreFault, and then nothing was recorded.

        It is decided on what is on disk now, so what another window wrote is taken in first.
        """
        self.refresh()
        for _ in range(TRIES):
            events = decide(self.state, command, self.now())
            if not events:
                return ()
            try:
                new = self._library.append(self.entry, self._last_seq(), events)
            except Stale as stale:
                if not self.refresh(force=True):
                    raise StoreFault(
                        "The record on disk is older than what is open here: it was put back or "
                        "replaced. Nothing was recorded; leave and start again."
                    ) from stale
                continue
            self._take_in(new)
            return new
        raise Refused(
            "Another window keeps writing to this quilt. Nothing was recorded; try again."
        )

    def refresh(self, *, force: bool = False) -> bool:
        """Read what another window wrote since; True when there was something."""
        seen = self._library.version_seen()
        if seen == self._seen and not force:
            return False
        self._seen = seen
        new = self._library.since(self.entry, self._last_seq())
        if new:
            self._take_in(new)
        return bool(new)

    def _take_in(self, new: tuple[Recorded, ...]) -> None:
        self.state = advance(self.state, self.record, new)
        self.record = (*self.record, *new)

    def _last_seq(self) -> int:
        return self.record[-1].seq if self.record else 0

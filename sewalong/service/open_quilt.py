"""An open quilt: its state kept true to the record, and acts carried out.

An act is decided on the state, what follows from it is added, all of it is written in one
transaction, and only then does the state move on. When another window wrote first, the state
is brought up to date and the act is decided anew, so neither loses the other's events. What the
disk may have taken although it reported a fault is looked for, so it is never written twice.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from datetime import datetime
from typing import TYPE_CHECKING

from msgspec.structs import replace

from sewalong.owner.preferences import AS_USUAL, Preferences
from sewalong.progress.record.events.event import Event, Recorded
from sewalong.progress.record.history import History
from sewalong.progress.record.refused import Refused
from sewalong.progress.record.state import State
from sewalong.store.faults import InDoubt, Stale, StoreFault
from sewalong.store.library import Library, Shelved

if TYPE_CHECKING:
    from sewalong.progress.acts.act import Act

Clock = Callable[[], datetime]
Follows = Callable[[State, Sequence[Recorded], datetime], tuple[Sequence[Event], str]]
"""What follows from an act: from the state and the record after it, and the time, to the events
to record with it and the summary to keep beside the record."""


def nothing_more(
    state: State, record: Sequence[Recorded], at: datetime
) -> tuple[Sequence[Event], str]:
    """An act by itself; whoever lists the quilt works its summary out anew."""
    return (), ""


TRIES = 20
"""Times an act is decided anew when another window was faster, each behind a write of the other:
more in a row no two hands do."""


def local_now() -> datetime:
    """The wall clock with its offset; it goes on while a laptop sleeps."""
    return datetime.now().astimezone()


class OpenQuilt:
    """One open quilt. `state` is always what is on disk, as far as this window has read, and
    `begun_as` the plan it began with.

    `named` is false where nobody said which quilt, and the one last touched is meant. `damage` is
    empty, or says what is wrong with the first event that is not in `record`: then the quilt can be
    looked at as it was before, and nothing is written to it.
    """

    def __init__(
        self,
        library: Library,
        entry: Shelved,
        clock: Clock = local_now,
        *,
        named: bool = True,
        preferences: Preferences = AS_USUAL,
    ) -> None:
        self.named = named
        self.preferences = preferences
        self._library = library
        self._clock = clock
        self._in_doubt: list[tuple[Act, tuple[Recorded, ...]]] = []
        self.entry = entry
        # Asked before reading: what is written meanwhile is then read at the next refresh.
        self._seen = library.version_seen()
        loaded = library.load(entry)
        self.begun_as = loaded.quilt
        self.damage = loaded.damage
        self._history = History(loaded.quilt, loaded.record)
        self.state: State = self._history.state()

    @property
    def record(self) -> Sequence[Recorded]:
        """Every event there is, in order."""
        return self._history.record

    def now(self) -> datetime:
        """The time acts are carried out at."""
        return self._clock()

    def do(
        self, act: Act, follows: Follows = nothing_more, *, at: datetime | None = None
    ) -> tuple[Recorded, ...]:
        """Carry out an act; raises Refused or StoreFault, and then nothing was recorded.

        `at` is when it was done, where that is not now. It is decided on what is on disk now, so
        what another window wrote is taken in first. After InDoubt the same act can be done again:
        what is in the record of it is not written a second time.
        """
        from sewalong.progress.acts.decide import decide  # looking does without

        if self.damage:
            raise StoreFault(self.damage)
        self.refresh(force=bool(self._in_doubt))
        if taken := self._found_there(act):
            return taken
        for _ in range(TRIES):
            when = at or self.now()
            events = decide(self.state, act, when)
            if not events:
                return ()
            try:
                return self._write(act, events, follows, when)
            except InDoubt as doubt:
                return self._settled(act, doubt)
            except Stale as stale:
                if not self.refresh(force=True):
                    raise StoreFault(
                        "The record on disk is older than what is open here: it was put back or "
                        "replaced. Nothing was recorded; leave and start again."
                    ) from stale
        raise Refused(
            "Another window keeps writing to this quilt. Nothing was recorded; try again."
        )

    def _settled(self, act: Act, doubt: InDoubt) -> tuple[Recorded, ...]:
        """What the disk has of an act it failed at; raises StoreFault where that is nothing, and
        `doubt` again where it cannot be read now."""
        try:
            self.refresh(force=True)
        except StoreFault:
            raise doubt from None
        if taken := self._found_there(act):
            return taken
        raise StoreFault(doubt.if_not) from doubt

    def _found_there(self, act: Act) -> tuple[Recorded, ...]:
        """What was in doubt of an act and is in the record, which has just been read."""
        tries = [tried for doubted, tried in self._in_doubt if doubted is act]
        self._in_doubt = [one for one in self._in_doubt if one[0] is not act]
        there = (one for one in tries if self.record[one[0].seq - 1 : one[-1].seq] == list(one))
        return next(there, ())

    def _write(
        self, act: Act, events: Sequence[Event], follows: Follows, at: datetime
    ) -> tuple[Recorded, ...]:
        """Write the events of an act and what follows from it, and move on."""
        last = len(self.record)
        new = _numbered(events, last)
        try:
            self._history.add(new)
            after = self._history.state()
            more, summary = follows(after, self.record, at)
            name = after.quilt.name
            called = name if name != self.entry.name else None
            written = self._append(act, last, (*events, *more), summary, called)
            further = written[len(new) :]
            self._history.add(further)
            self._move_to(self._history.state() if further else after)
        except BaseException:
            # The history has moved on and the state has not: back to what was, until what is on
            # disk is read again.
            self._history.back_to(last)
            raise
        return written

    def _append(
        self, act: Act, after: int, events: Sequence[Event], summary: str, called: str | None
    ) -> tuple[Recorded, ...]:
        try:
            return self._library.append(self.entry, after, events, summary, called=called)
        except InDoubt:
            self._in_doubt.append((act, tuple(_numbered(events, after))))
            raise

    def refresh(self, *, force: bool = False) -> bool:
        """Read what another window wrote since; True when there was something."""
        seen = self._library.version_seen()
        if self.damage or (seen == self._seen and not force):
            return False
        self._seen = seen
        new = self._library.since(self.entry, len(self.record))
        if new:
            self._history.add(new)
            self._move_to(self._history.state())
        return bool(new)

    def _move_to(self, state: State) -> None:
        self.state = state
        if state.quilt.name != self.entry.name:
            self.entry = replace(self.entry, name=state.quilt.name)


def _numbered(events: Sequence[Event], after: int) -> list[Recorded]:
    return [Recorded(after + i, event) for i, event in enumerate(events, start=1)]

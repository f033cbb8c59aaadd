"""Records to test the pace with, written down event by event."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from datetime import datetime, timedelta, timezone
from typing import Literal

from sewalong.progress.pace.forecast import Forecast, forecast_from
from sewalong.progress.pace.paces import paces
from sewalong.progress.pace.sessions import SessionFacts, session_facts
from sewalong.progress.record.events import every_kind as e
from sewalong.progress.record.fold import fold
from sewalong.progress.record.state import State
from sewalong.quilt.quilt import Quilt
from tests.progress.building import a_quilt as a_quilt

MONDAY = datetime(2024, 1, 8, 19, 0, tzinfo=timezone(timedelta(hours=1)))
DAY = timedelta(days=1)


def forecast_of(
    state: State,
    record: Sequence[e.Recorded],
    now: datetime,
    session_minutes: float | None = None,
) -> Forecast:
    """What is left for `state`, the fold of `record`, as the screen and the command work it out."""
    known = paces(state, record, now)
    facts = session_facts(state, known.measured, now)
    return forecast_from(state, known, facts, now, session_minutes)


def session_of(
    hours: float, number: int = 1, opened: datetime = MONDAY, *, units: int = 0
) -> SessionFacts:
    """A closed session of so many hours, all of them measured."""
    return SessionFacts(
        number=number,
        opened=opened,
        length=timedelta(hours=hours),
        hours=hours,
        gaps=0,
        counts={"pair": 1},
        pieces=1,
        untimed=0,
        units=units,
        is_open=False,
    )


@dataclass
class Diary:
    """A quilt's record as it grows, and the time on the clock."""

    quilt: Quilt
    now: datetime = MONDAY
    record: list[e.Recorded] = field(default_factory=list)
    session: int = 0

    @property
    def state(self) -> State:
        """Where the quilt stands."""
        return fold(self.quilt, self.record)

    def sit_down(self, at: datetime | None = None) -> None:
        """Open a session."""
        if at is not None:
            self.now = at
        self.session += 1
        self.add(e.SessionOpened(at=self.now, session=self.session))

    def put_away(self) -> None:
        """Close it."""
        self.add(e.SessionClosed(at=self.now, session=self.session, ended=self.now))

    def pass_by(self, minutes: float) -> None:
        """Let time go by."""
        self.now += timedelta(minutes=minutes)

    def count(self, stage: str, n: int, minutes: float = 0.0) -> int:
        """Count `n` that took so many minutes; gives the number of the event."""
        self.pass_by(minutes)
        return self.add(e.Counted(at=self.now, session=self.session, stage=stage, n=n))

    def unpick(self, stage: str, n: int, minutes: float = 0.0) -> int:
        """Unpick `n`."""
        self.pass_by(minutes)
        return self.add(e.Unpicked(at=self.now, session=self.session, stage=stage, n=n))

    def undo(self, seq: int) -> None:
        """Take an event back."""
        self.add(e.Undone(at=self.now, session=self.session, of=seq))

    def change(self, tool: Literal["blade", "needle"]) -> None:
        """Put a new one in."""
        self.add(e.ToolChanged(at=self.now, session=self.session, tool=tool))

    def add(self, event: e.Event) -> int:
        """Write an event down; gives its number."""
        self.record.append(e.Recorded(len(self.record) + 1, event))
        return len(self.record)

    def evening(self, *counts: tuple[str, int, float], at: datetime | None = None) -> None:
        """A whole session of (stage, n, minutes); the next evening unless told when."""
        if at is None and self.session:
            at = MONDAY + self.session * DAY
        self.sit_down(at)
        for stage, n, minutes in counts:
            self.count(stage, n, minutes)
        self.put_away()

"""Where a quilt stands: what its events add up to. Shown, never stored."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import datetime
from enum import StrEnum

from sewalong.progress.events import Recorded, Settings
from sewalong.progress.road import Road
from sewalong.quilt.quilt import Quilt, Target


class Standing(StrEnum):
    """Whether the quilt is being worked on."""

    IN_PROGRESS = "in progress"
    LAID_ASIDE = "laid aside"
    DONE = "done"


@dataclass(frozen=True, slots=True)
class SessionRecord:
    """One stretch of sewing. `counts` is by stage, less what was unpicked in it."""

    number: int
    opened: datetime
    last_at: datetime
    counts: Mapping[str, int] = field(default_factory=dict)
    ended: datetime | None = None
    answers: Mapping[str, str] = field(default_factory=dict)
    next_step: str = ""
    forgotten: bool = False

    @property
    def is_open(self) -> bool:
        """Whether the person is still at it, as far as the record knows."""
        return self.ended is None


@dataclass(frozen=True, slots=True)
class Note:
    at: datetime
    session: int
    text: str


@dataclass(frozen=True, slots=True)
class Spoilage:
    at: datetime
    pile: str
    n: int
    reason: str


@dataclass(frozen=True, slots=True)
class State:
    """Everything the events say.

    `piles` counts what lies in each pile now; `done` counts each stage, less what was
    unpicked. For every pile: opening + made + `found` + `recounted` - taken - `spoiled`
    = now, where `recounted` is the sum of the differences found by hand (signed).
    """

    quilt: Quilt
    target: Target
    road: Road
    piles: Mapping[str, int]
    done: Mapping[str, int]
    spoiled: Mapping[str, int] = field(default_factory=dict)
    found: Mapping[str, int] = field(default_factory=dict)
    recounted: Mapping[str, int] = field(default_factory=dict)
    spoilage: tuple[Spoilage, ...] = ()
    places: Mapping[str, str] = field(default_factory=dict)
    settings: Settings | None = None
    settings_at: datetime | None = None
    notes: tuple[Note, ...] = ()
    sessions: tuple[SessionRecord, ...] = ()
    standing: Standing = Standing.IN_PROGRESS
    aside_reason: str = ""
    chosen: str | None = None
    """The stage last chosen or counted; None before the first."""
    chosen_by_hand: bool = False
    """True from choosing a stage until something is counted."""
    cautions_read: Mapping[str, datetime] = field(default_factory=dict)
    """By hazard: when its caution was last read in the open session."""
    blade_changed: datetime | None = None
    needle_changed: datetime | None = None
    iron_asked: bool = True
    """False while an iron stage was counted in this session and nobody asked since."""
    undoable: tuple[Recorded, ...] = ()
    seq: int = 0

    @property
    def session(self) -> SessionRecord | None:
        """The open session, or None."""
        if self.sessions and self.sessions[-1].is_open:
            return self.sessions[-1]
        return None

    @property
    def last_session(self) -> SessionRecord | None:
        """The last session in which something was counted, or the last of all."""
        for session in reversed(self.sessions):
            if session.counts:
                return session
        return self.sessions[-1] if self.sessions else None

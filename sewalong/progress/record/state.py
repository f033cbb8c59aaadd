"""Where a quilt stands: what its events add up to. Shown, never stored."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import datetime
from enum import StrEnum
from fractions import Fraction

from msgspec import Struct, field

from sewalong.progress.record.events import Recorded, Settings
from sewalong.progress.record.places import Places, in_words
from sewalong.progress.record.route import Route
from sewalong.quilt.quilt import Quilt, Target


class Standing(StrEnum):
    """Whether the quilt is being worked on."""

    IN_PROGRESS = "in progress"
    LAID_ASIDE = "laid aside"
    DONE = "done"


class SessionRecord(Struct, frozen=True):
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


class Note(Struct, frozen=True):
    at: datetime
    session: int
    text: str


class Spoilage(Struct, frozen=True):
    at: datetime
    pile: str
    n: int
    reason: str


class Check(Struct, frozen=True):
    """A measurement and the settings it was made with. Lengths are exact inches.

    `seq` is its number in the record; `piece` is as in `Checked`.
    """

    seq: int
    at: datetime
    session: int
    piece: str
    readings: tuple[Fraction, ...]
    expected: Fraction
    passed: bool
    settings: Settings | None


class State(Struct, frozen=True):
    """Everything the events say.

    `piles` counts what lies in each pile now; `done` counts each stage, less what was
    unpicked. For every pile: opening + made + `found` + `recounted` - taken - `spoiled`
    = now, where `recounted` is the sum of the differences found by hand (signed) that were
    not said to be made, found or spoiled. `missing` is what was made and cannot be found:
    it is no part of `piles`, and lies in `recounted` as a difference.
    """

    quilt: Quilt
    target: Target
    route: Route
    piles: Mapping[str, int]
    done: Mapping[str, int]
    spoiled: Mapping[str, int] = field(default_factory=dict)
    found: Mapping[str, int] = field(default_factory=dict)
    recounted: Mapping[str, int] = field(default_factory=dict)
    spoilage: tuple[Spoilage, ...] = ()
    missing: Mapping[str, int] = field(default_factory=dict)
    places: Mapping[str, Places] = field(default_factory=dict)
    """By pile: where its pieces lie and how many (see `lying`). An empty pile keeps its last."""
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
    changed: Mapping[str, datetime] = field(default_factory=dict)
    """By tool: when it was last changed (see `events.Tool`)."""
    checks: tuple[Check, ...] = ()
    proof_events: tuple[Recorded, ...] = ()
    """What bears on a proof, in order: settings, tools, checks and going on without one."""
    press: Mapping[str, str] = field(default_factory=dict)
    """By stage: which way its seams are pressed, in words."""
    joints: tuple[tuple[int, int], ...] = ()
    """Neighbouring rows joined by their numbers, in order of joining; never more than
    `done` has seams, for seams can also be counted without numbers."""
    mentioned: Mapping[str, datetime] = field(default_factory=dict)
    """By id: when something was last said, so that it is said once."""
    iron_asked: bool = True
    """False while an iron stage was counted in this session and nobody asked since."""
    undoable: tuple[Recorded, ...] = ()
    seq: int = 0

    @property
    def where(self) -> Mapping[str, str]:
        """By pile, in words: where it lies, or where it was last put."""
        return {
            pile: in_words(places, self.piles.get(pile, 0)) for pile, places in self.places.items()
        }

    @property
    def blade_changed(self) -> datetime | None:
        """When a blade last went in."""
        return self.changed.get("blade")

    @property
    def needle_changed(self) -> datetime | None:
        """When a needle last went in."""
        return self.changed.get("needle")

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

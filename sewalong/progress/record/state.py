"""Where a quilt stands: what its events add up to, frozen. Shown, never stored."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import datetime
from enum import StrEnum
from fractions import Fraction

from msgspec import Struct, field

from sewalong.progress.record.begun_rows import Begun
from sewalong.progress.record.places import Places, in_words
from sewalong.progress.record.route import Route
from sewalong.progress.record.sets.laid import SetsNow
from sewalong.progress.record.settings import Settings
from sewalong.progress.record.wall import WallNow
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
    """Something the person wrote for herself."""

    at: datetime
    session: int
    text: str


class Spoilage(Struct, frozen=True):
    """Pieces spoiled, and why; of which set, or squares of which fabric, where somebody said so."""

    at: datetime
    pile: str
    n: int
    reason: str
    set: int = 0
    fabric: str = ""


class Check(Struct, frozen=True):
    """A measurement and the settings it was made with. Lengths are exact inches.

    `seq` is its number in the record; `piece` and `by` are as in `Checked`.
    """

    seq: int
    at: datetime
    session: int
    piece: str
    readings: tuple[Fraction, ...]
    expected: Fraction
    passed: bool
    settings: Settings | None
    by: str = ""


class SeamChange(Struct, frozen=True):
    """Something at the machine that bears on a proof: settings written down, or a tool changed.

    `seq` is its number in the record. `settings` is None where a `tool` was changed.
    """

    seq: int
    at: datetime
    settings: Settings | None = None
    tool: str = ""


class State(Struct, frozen=True):
    """Everything the events say.

    `piles` counts what lies in each pile now; `done` counts each stage, less what was
    unpicked. For every pile: opening + made + `found` + `recounted` - taken - `spoiled`
    = now, where `recounted` is the sum of the differences found by hand (signed) that were
    not said to be made, found or spoiled, and units in rows `begun` are taken. `missing` is
    what was made and cannot be found: it is no part of `piles`, and lies in `recounted` as a
    difference.
    """

    quilt: Quilt
    target: Target
    route: Route
    piles: Mapping[str, int]
    done: Mapping[str, int]
    spoiled: Mapping[str, int]
    found: Mapping[str, int]
    recounted: Mapping[str, int]
    spoilage: tuple[Spoilage, ...]
    missing: Mapping[str, int]
    places: Mapping[str, Places]
    """By pile: where its pieces lie and how many (see `places`). An empty pile keeps its last."""
    elsewhere: Mapping[str, str]
    """By place from which counts came in: who sewed there last, each empty where nobody said."""
    settings: Settings | None
    settings_at: datetime | None
    notes: tuple[Note, ...]
    sessions: tuple[SessionRecord, ...]
    standing: Standing
    aside_reason: str
    chosen: str | None
    """The stage last chosen or counted; None before the first."""
    chosen_by_hand: bool
    """True from choosing a stage until something is counted."""
    last_lot: Mapping[str, int]
    """By stage: how many were counted at once the last time."""
    last_counted: str
    """The stage of the last count; empty before the first."""
    cautions_read: Mapping[str, datetime]
    """By hazard: when its caution was last read in the open session."""
    changed: Mapping[str, datetime]
    """By tool: when it was last changed (see `seam.Tool`)."""
    checks: tuple[Check, ...]
    seam_changes: tuple[SeamChange, ...]
    """What bears on a proof, in order."""
    went_on: int
    """The number of the last going on without a fresh proof; 0 when there was none."""
    press: Mapping[str, str]
    """By stage: which way its seams are pressed, in words."""
    joints: tuple[tuple[int, int], ...]
    """Neighbouring rows joined by their numbers, in order of joining; never more than
    `done` has seams, for seams can also be counted without numbers."""
    begun: Begun
    """Pieces of rows that are not whole yet. Their units are not in their pile any more."""
    mentioned: Mapping[str, datetime]
    """By id: when something was last said, so that it is said once."""
    seen_to: tuple[int, ...]
    """The numbers of failed measurements of which the pieces in doubt were looked through."""
    sets: SetsNow
    """The sets she accepted, empty where there are none."""
    wall: WallNow
    """What is laid on the wall, and how; empty where nothing is."""
    iron_asked: bool
    """False while an iron stage was counted in this session and nobody asked since."""
    last_act: tuple[int, ...]
    """The numbers of the events that one undo takes back, in order; empty when there are none."""
    last_undone: tuple[int, ...]
    """The numbers of the events that can be put back next, in order; empty when there are none."""
    seq: int

    @property
    def own_checks(self) -> tuple[Check, ...]:
        """The measurements of what the owner sewed herself, which alone tell of her own seam."""
        return tuple(check for check in self.checks if not check.by)

    @property
    def units_wanted(self) -> int:
        """Units the target holds, as they are set."""
        return self.quilt.units_for(self.target)

    @property
    def where(self) -> Mapping[str, str]:
        """By pile, in words: where it lies, or where it was last put."""
        return {pile: in_words(places, self.piles[pile]) for pile, places in self.places.items()}

    @property
    def blade_changed(self) -> datetime | None:
        """When a blade last went in."""
        return self.changed.get("blade")

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

"""What happened to a quilt: frozen records in the past tense, each with its time and session.

Events are the only truth. Piles, counts and places are what they add up to (`fold`).
Nothing here is ever edited; taking something back is an event too (`Undone`).
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import datetime
from typing import Literal


@dataclass(frozen=True, slots=True, kw_only=True)
class Settings:
    """How the machine was set, in the owner's words, and the test that proved it.

    A setting without the reason is not believed a year later, so `proof` says what
    was measured ("three 1 1/2 in strips came out at 3 1/2 in").
    """

    machine: str = ""
    foot: str = ""
    needle: str = ""
    needle_position: str = ""
    stitch_length: str = ""
    thread: str = ""
    proof: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Happened:
    """When it happened (with an offset from UTC) and in which session."""

    at: datetime
    session: int


@dataclass(frozen=True, slots=True, kw_only=True)
class SessionOpened(Happened):
    kind: Literal["session opened"] = "session opened"


@dataclass(frozen=True, slots=True, kw_only=True)
class SessionClosed(Happened):
    """Put away for today. `answers` holds what the person said of each thing asked about.

    `forgotten` is true when the session was never closed by hand: the program closed
    it later, `ended` is when it last heard from the person, and nothing was asked.
    """

    ended: datetime
    answers: Mapping[str, str] = field(default_factory=dict)
    next_step: str = ""
    forgotten: bool = False
    kind: Literal["session closed"] = "session closed"


@dataclass(frozen=True, slots=True, kw_only=True)
class StageChosen(Happened):
    stage: str
    kind: Literal["stage chosen"] = "stage chosen"


@dataclass(frozen=True, slots=True, kw_only=True)
class Counted(Happened):
    stage: str
    n: int
    kind: Literal["counted"] = "counted"


@dataclass(frozen=True, slots=True, kw_only=True)
class Unpicked(Happened):
    """`n` counts of a stage were taken apart again; the pieces went back to their pile."""

    stage: str
    n: int
    kind: Literal["unpicked"] = "unpicked"


@dataclass(frozen=True, slots=True, kw_only=True)
class Spoiled(Happened):
    pile: str
    n: int
    reason: str
    kind: Literal["spoiled"] = "spoiled"


@dataclass(frozen=True, slots=True, kw_only=True)
class Found(Happened):
    """More pieces came to a pile: found again, or bought or cut new."""

    pile: str
    n: int
    how: Literal["found", "bought"]
    kind: Literal["found"] = "found"


@dataclass(frozen=True, slots=True, kw_only=True)
class Recounted(Happened):
    """A pile was counted by hand. The count stands; the difference is kept."""

    pile: str
    recorded: int
    counted: int
    kind: Literal["recounted"] = "recounted"


@dataclass(frozen=True, slots=True, kw_only=True)
class PutAway(Happened):
    pile: str
    place: str
    kind: Literal["put away"] = "put away"


@dataclass(frozen=True, slots=True, kw_only=True)
class Noted(Happened):
    text: str
    kind: Literal["noted"] = "noted"


@dataclass(frozen=True, slots=True, kw_only=True)
class SettingsRecorded(Happened):
    settings: Settings
    kind: Literal["settings recorded"] = "settings recorded"


@dataclass(frozen=True, slots=True, kw_only=True)
class ToolChanged(Happened):
    """A new blade or needle went in."""

    tool: Literal["blade", "needle"]
    kind: Literal["tool changed"] = "tool changed"


@dataclass(frozen=True, slots=True, kw_only=True)
class TargetChanged(Happened):
    rows: int
    columns: int
    kind: Literal["target changed"] = "target changed"


@dataclass(frozen=True, slots=True, kw_only=True)
class CautionRead(Happened):
    """The person acknowledged the cautions for these hazards."""

    hazards: tuple[str, ...]
    kind: Literal["caution read"] = "caution read"


@dataclass(frozen=True, slots=True, kw_only=True)
class Answered(Happened):
    """What the person said when asked about the iron on leaving a pressing stage."""

    question: str
    answer: str
    kind: Literal["answered"] = "answered"


@dataclass(frozen=True, slots=True, kw_only=True)
class LaidAside(Happened):
    reason: str
    kind: Literal["laid aside"] = "laid aside"


@dataclass(frozen=True, slots=True, kw_only=True)
class PickedUp(Happened):
    kind: Literal["picked up"] = "picked up"


@dataclass(frozen=True, slots=True, kw_only=True)
class MarkedDone(Happened):
    kind: Literal["marked done"] = "marked done"


@dataclass(frozen=True, slots=True, kw_only=True)
class Undone(Happened):
    """The event numbered `of` no longer counts."""

    of: int
    kind: Literal["undone"] = "undone"


Event = (
    SessionOpened
    | SessionClosed
    | StageChosen
    | Counted
    | Unpicked
    | Spoiled
    | Found
    | Recounted
    | PutAway
    | Noted
    | SettingsRecorded
    | ToolChanged
    | TargetChanged
    | CautionRead
    | Answered
    | LaidAside
    | PickedUp
    | MarkedDone
    | Undone
)

UNDOABLE = (
    Counted,
    Unpicked,
    Spoiled,
    Found,
    Recounted,
    PutAway,
    Noted,
    SettingsRecorded,
    ToolChanged,
    TargetChanged,
    LaidAside,
    PickedUp,
    MarkedDone,
)
"""Kinds a person can take back. Sessions, cautions and answers stay as they were said."""


@dataclass(frozen=True, slots=True)
class Recorded:
    """An event in its place in the record; `seq` counts from 1 within a quilt."""

    seq: int
    event: Event

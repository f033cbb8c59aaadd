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


Accepted = Literal["stands", "made", "found", "lost", "spoiled", "missing"]
"""What the person says the difference of a recount is.

stands: nothing is said of it. made: it was counted wrongly at the stage that makes the
pile. missing: made, whereabouts unknown, until found. lost: given up, and with it what was
missing of this pile before.
"""


@dataclass(frozen=True, slots=True, kw_only=True)
class Recounted(Happened):
    """A pile was counted by hand. The count stands; the difference is kept.

    With a `place`, only what lies there was counted, and `recorded` is what the record
    said of that place.
    """

    pile: str
    recorded: int
    counted: int
    how: Accepted = "stands"
    place: str = ""
    kind: Literal["recounted"] = "recounted"


@dataclass(frozen=True, slots=True, kw_only=True)
class PutAway(Happened):
    """A pile, or `n` of it, was put somewhere."""

    pile: str
    place: str
    n: int | None = None
    kind: Literal["put away"] = "put away"


@dataclass(frozen=True, slots=True, kw_only=True)
class Noted(Happened):
    text: str
    kind: Literal["noted"] = "noted"


@dataclass(frozen=True, slots=True, kw_only=True)
class SettingsRecorded(Happened):
    settings: Settings
    kind: Literal["settings recorded"] = "settings recorded"


Tool = Literal["blade", "needle", "foot", "bobbin", "power"]
"""What was changed; "power" is the machine switched off and on again."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ToolChanged(Happened):
    """A new blade, needle, foot or bobbin went in, or the machine was switched off and on."""

    tool: Tool
    kind: Literal["tool changed"] = "tool changed"


@dataclass(frozen=True, slots=True, kw_only=True)
class Checked(Happened):
    """A piece was measured. Lengths are exact inches as text: "7/2".

    `piece` is what was measured, as `measuring.pieces.read_piece` reads it. `expected` is
    what it should come to with the owner's seam.
    """

    piece: str
    readings: tuple[str, ...]
    expected: str
    passed: bool
    kind: Literal["checked"] = "checked"


@dataclass(frozen=True, slots=True, kw_only=True)
class WentOn(Happened):
    """The person goes on at a stage without a fresh proof. `why` is why the old one is stale."""

    stage: str
    why: str
    kind: Literal["went on"] = "went on"


@dataclass(frozen=True, slots=True, kw_only=True)
class PressNoted(Happened):
    """Which way the seams of a stage are pressed, in the owner's words."""

    stage: str
    direction: str
    kind: Literal["press noted"] = "press noted"


@dataclass(frozen=True, slots=True, kw_only=True)
class RowsJoined(Happened):
    """One seam between two neighbouring rows, `first` the one nearer row 1."""

    first: int
    second: int
    kind: Literal["rows joined"] = "rows joined"


@dataclass(frozen=True, slots=True, kw_only=True)
class BobbinRanOut(Happened):
    """The last `unsewn` counted at a machine stage were never sewn; a full bobbin went in."""

    stage: str
    unsewn: int
    kind: Literal["bobbin ran out"] = "bobbin ran out"


@dataclass(frozen=True, slots=True, kw_only=True)
class Mentioned(Happened):
    """Something was said once, so that it is not said again. `what` is a short id of it."""

    what: str
    kind: Literal["mentioned"] = "mentioned"


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
    | Checked
    | WentOn
    | PressNoted
    | RowsJoined
    | BobbinRanOut
    | Mentioned
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
    Checked,
    WentOn,
    PressNoted,
    RowsJoined,
    BobbinRanOut,
    TargetChanged,
    LaidAside,
    PickedUp,
    MarkedDone,
)
"""Kinds a person can take back. Sessions, cautions, answers and mentions stay as they were."""


@dataclass(frozen=True, slots=True)
class Recorded:
    """An event in its place in the record; `seq` counts from 1 within a quilt."""

    seq: int
    event: Event

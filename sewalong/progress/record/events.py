"""What happened to a quilt: frozen records in the past tense, each with its time and session.

Events are the only truth. Piles, counts and places are what they add up to (`fold`).
Nothing here is ever edited; taking something back is an event too (`Undone`).
"""

from __future__ import annotations

from collections.abc import Mapping
from datetime import datetime
from typing import Literal

from msgspec import Struct, field


class Settings(Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
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


class Happened(Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """When it happened (with an offset from UTC) and in which session."""

    at: datetime
    session: int


class SessionOpened(Happened, frozen=True, kw_only=True, forbid_unknown_fields=True):
    kind: Literal["session opened"] = "session opened"


class SessionClosed(Happened, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """Put away for today. `answers` holds what the person said of each thing asked about.

    `forgotten` is true when the session was never closed by hand: the program closed
    it later, `ended` is when it last heard from the person, and nothing was asked.
    """

    ended: datetime
    answers: Mapping[str, str] = field(default_factory=dict)
    next_step: str = ""
    forgotten: bool = False
    kind: Literal["session closed"] = "session closed"


class StageChosen(Happened, frozen=True, kw_only=True, forbid_unknown_fields=True):
    stage: str
    kind: Literal["stage chosen"] = "stage chosen"


class Counted(Happened, frozen=True, kw_only=True, forbid_unknown_fields=True):
    stage: str
    n: int
    kind: Literal["counted"] = "counted"


class Unpicked(Happened, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """`n` counts of a stage were taken apart again; the pieces went back to their pile."""

    stage: str
    n: int
    kind: Literal["unpicked"] = "unpicked"


class Spoiled(Happened, frozen=True, kw_only=True, forbid_unknown_fields=True):
    pile: str
    n: int
    reason: str
    kind: Literal["spoiled"] = "spoiled"


class Found(Happened, frozen=True, kw_only=True, forbid_unknown_fields=True):
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


class Recounted(Happened, frozen=True, kw_only=True, forbid_unknown_fields=True):
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


class PutAway(Happened, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """A pile, or `n` of it, was put somewhere."""

    pile: str
    place: str
    n: int | None = None
    kind: Literal["put away"] = "put away"


class Noted(Happened, frozen=True, kw_only=True, forbid_unknown_fields=True):
    text: str
    kind: Literal["noted"] = "noted"


class SettingsRecorded(Happened, frozen=True, kw_only=True, forbid_unknown_fields=True):
    settings: Settings
    kind: Literal["settings recorded"] = "settings recorded"


Tool = Literal["blade", "needle", "foot", "bobbin", "power"]
"""What was changed; "power" is the machine switched off and on again."""


class ToolChanged(Happened, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """A new blade, needle, foot or bobbin went in, or the machine was switched off and on."""

    tool: Tool
    kind: Literal["tool changed"] = "tool changed"


class Checked(Happened, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """A piece was measured. Lengths are exact inches as text: "7/2".

    `piece` is what was measured, as `measuring.pieces.read_piece` reads it. `expected` is
    what it should come to with the owner's seam.
    """

    piece: str
    readings: tuple[str, ...]
    expected: str
    passed: bool
    kind: Literal["checked"] = "checked"


class WentOn(Happened, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """The person goes on at a stage without a fresh proof. `why` is why the old one is stale."""

    stage: str
    why: str
    kind: Literal["went on"] = "went on"


class PressNoted(Happened, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """Which way the seams of a stage are pressed, in the owner's words."""

    stage: str
    direction: str
    kind: Literal["press noted"] = "press noted"


class RowsJoined(Happened, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """One seam between two neighbouring rows, `first` the one nearer row 1."""

    first: int
    second: int
    kind: Literal["rows joined"] = "rows joined"


class BobbinRanOut(Happened, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """The last `unsewn` counted at a machine stage were never sewn; a full bobbin went in."""

    stage: str
    unsewn: int
    kind: Literal["bobbin ran out"] = "bobbin ran out"


class Mentioned(Happened, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """Something was said once, so that it is not said again. `what` is a short id of it."""

    what: str
    kind: Literal["mentioned"] = "mentioned"


class TargetChanged(Happened, frozen=True, kw_only=True, forbid_unknown_fields=True):
    rows: int
    columns: int
    kind: Literal["target changed"] = "target changed"


class CautionRead(Happened, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """The person acknowledged the cautions for these hazards."""

    hazards: tuple[str, ...]
    kind: Literal["caution read"] = "caution read"


class Answered(Happened, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """What the person said when asked about the iron on leaving a pressing stage."""

    question: str
    answer: str
    kind: Literal["answered"] = "answered"


class LaidAside(Happened, frozen=True, kw_only=True, forbid_unknown_fields=True):
    reason: str
    kind: Literal["laid aside"] = "laid aside"


class PickedUp(Happened, frozen=True, kw_only=True, forbid_unknown_fields=True):
    kind: Literal["picked up"] = "picked up"


class MarkedDone(Happened, frozen=True, kw_only=True, forbid_unknown_fields=True):
    kind: Literal["marked done"] = "marked done"


class Undone(Happened, frozen=True, kw_only=True, forbid_unknown_fields=True):
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


class Recorded(Struct, frozen=True):
    """An event in its place in the record; `seq` counts from 1 within a quilt."""

    seq: int
    event: Event

"""Every kind of event there is: the registry that the fold, the codec and the log go by."""

from __future__ import annotations

from sewalong.progress.record.begun import RowsBegun
from sewalong.progress.record.counting import BobbinRanOut, Counted, Unpicked
from sewalong.progress.record.event import Event, Recorded
from sewalong.progress.record.joining import RowsJoined
from sewalong.progress.record.notes import Noted, PressNoted
from sewalong.progress.record.piles import Found, PutAway, Spoiled
from sewalong.progress.record.recounting import Recounted
from sewalong.progress.record.replanning import PlanChanged
from sewalong.progress.record.said import Answered, CautionRead, Mentioned
from sewalong.progress.record.seam import Checked, SettingsRecorded, ToolChanged, WentOn
from sewalong.progress.record.sessions import SessionClosed, SessionOpened
from sewalong.progress.record.sizing import UnitDecided
from sewalong.progress.record.standing import LaidAside, MarkedDone, PickedUp
from sewalong.progress.record.steering import StageChosen, TargetChanged
from sewalong.progress.record.undoing import Undone

__all__ = [
    "EVENTS",
    "Answered",
    "BobbinRanOut",
    "CautionRead",
    "Checked",
    "Counted",
    "Event",
    "Found",
    "LaidAside",
    "MarkedDone",
    "Mentioned",
    "Noted",
    "PickedUp",
    "PlanChanged",
    "PressNoted",
    "PutAway",
    "Recorded",
    "Recounted",
    "RowsBegun",
    "RowsJoined",
    "SessionClosed",
    "SessionOpened",
    "SettingsRecorded",
    "Spoiled",
    "StageChosen",
    "TargetChanged",
    "ToolChanged",
    "Undone",
    "UnitDecided",
    "Unpicked",
    "WentOn",
]

EVENTS: tuple[type[Event], ...] = (
    SessionOpened,
    SessionClosed,
    StageChosen,
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
    Mentioned,
    TargetChanged,
    CautionRead,
    Answered,
    LaidAside,
    PickedUp,
    MarkedDone,
    Undone,
    UnitDecided,
    PlanChanged,
    RowsBegun,
)
"""Add a new kind at the end; what is here stays for ever, because records name it."""

"""Every kind of event there is: the registry that the fold, the codec and the log go by."""

from __future__ import annotations

from sewalong.progress.record.events.begun import RowsBegun
from sewalong.progress.record.events.counting import BobbinRanOut, Counted, Unpicked
from sewalong.progress.record.events.elsewhere import MadeElsewhere
from sewalong.progress.record.events.event import Event, Recorded
from sewalong.progress.record.events.joining import RowsJoined
from sewalong.progress.record.events.notes import Noted, PressNoted
from sewalong.progress.record.events.piles import Found, PutAway, Spoiled
from sewalong.progress.record.events.recounting import Recounted
from sewalong.progress.record.events.replanning import PlanChanged
from sewalong.progress.record.events.said import Answered, CautionRead, Mentioned
from sewalong.progress.record.events.seam import (
    Checked,
    SeenTo,
    SettingsRecorded,
    ToolChanged,
    WentOn,
)
from sewalong.progress.record.events.sessions import SessionClosed, SessionOpened
from sewalong.progress.record.events.sets import SetMarked, SetsAccepted, SetsLaid, SetTakenUp
from sewalong.progress.record.events.sizing import UnitDecided
from sewalong.progress.record.events.standing import LaidAside, MarkedDone, PickedUp
from sewalong.progress.record.events.steering import StageChosen, TargetChanged
from sewalong.progress.record.events.undoing import Redone, Undone
from sewalong.progress.record.events.wall import (
    PlacesLocked,
    RowsReordered,
    UnitsMoved,
    WallLaid,
)

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
    "MadeElsewhere",
    "MarkedDone",
    "Mentioned",
    "Noted",
    "PickedUp",
    "PlacesLocked",
    "PlanChanged",
    "PressNoted",
    "PutAway",
    "Recorded",
    "Recounted",
    "Redone",
    "RowsBegun",
    "RowsJoined",
    "RowsReordered",
    "SeenTo",
    "SessionClosed",
    "SessionOpened",
    "SetMarked",
    "SetTakenUp",
    "SetsAccepted",
    "SetsLaid",
    "SettingsRecorded",
    "Spoiled",
    "StageChosen",
    "TargetChanged",
    "ToolChanged",
    "Undone",
    "UnitDecided",
    "UnitsMoved",
    "Unpicked",
    "WallLaid",
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
    Redone,
    SeenTo,
    SetsAccepted,
    SetsLaid,
    SetMarked,
    SetTakenUp,
    WallLaid,
    UnitsMoved,
    PlacesLocked,
    RowsReordered,
    MadeElsewhere,
)
"""Add a new kind at the end; what is here stays for ever, because records name it."""

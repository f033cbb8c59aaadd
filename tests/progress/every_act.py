"""Every act there is, to tell histories with."""

from __future__ import annotations

from sewalong.progress.acts.act import Act, Now
from sewalong.progress.acts.begun import BeginRows
from sewalong.progress.acts.counting import BobbinEmpty, Count, Unpick
from sewalong.progress.acts.elsewhere import CountElsewhere
from sewalong.progress.acts.joining import JoinRows
from sewalong.progress.acts.notes import NotePress, WriteNote
from sewalong.progress.acts.piles import Find, PutPileAway, Spoil
from sewalong.progress.acts.recounting import Recount
from sewalong.progress.acts.replanning import ChangePlan
from sewalong.progress.acts.said import Answer, Mention
from sewalong.progress.acts.seam import ChangeTool, GoOn, Measure, RecordSettings, SeeTo
from sewalong.progress.acts.sessions import CloseSession, OpenSession
from sewalong.progress.acts.sets import AcceptSets, LayOwn, MarkSet, SwapSquares, TakeUp
from sewalong.progress.acts.sizing import DecideUnit
from sewalong.progress.acts.standing import LayAside, MarkDone, PickUp
from sewalong.progress.acts.steering import ChangeTarget, ChooseStage
from sewalong.progress.acts.undoing import Redo, Undo
from sewalong.progress.acts.wall import (
    ClearWall,
    ExchangeRows,
    LayWall,
    LockPlaces,
    MoveMany,
    OrderRows,
    PutSpare,
    SwapPlaces,
    TurnRow,
    TurnUnit,
)
from sewalong.progress.record.events.event import Event
from sewalong.progress.record.events.said import CautionRead
from sewalong.progress.record.limits import a_stage
from sewalong.progress.record.refused import Refused
from sewalong.progress.record.state import State
from sewalong.progress.safety.cautions import caution_at

__all__ = [
    "AcceptSets",
    "Act",
    "Answer",
    "BeginRows",
    "BobbinEmpty",
    "ChangePlan",
    "ChangeTarget",
    "ChangeTool",
    "ChooseStage",
    "ClearWall",
    "CloseSession",
    "Count",
    "CountElsewhere",
    "DecideUnit",
    "ExchangeRows",
    "Find",
    "GoOn",
    "JoinRows",
    "LayAside",
    "LayOwn",
    "LayWall",
    "LockPlaces",
    "MarkDone",
    "MarkSet",
    "Measure",
    "Mention",
    "MoveMany",
    "NotePress",
    "OpenSession",
    "OrderRows",
    "PickUp",
    "PutPileAway",
    "PutSpare",
    "ReadCaution",
    "RecordSettings",
    "Recount",
    "Redo",
    "Refused",
    "SeeTo",
    "Spoil",
    "SwapPlaces",
    "SwapSquares",
    "TakeUp",
    "TurnRow",
    "TurnUnit",
    "Undo",
    "Unpick",
    "WriteNote",
]


class ReadCaution(Act, frozen=True):
    """The caution now due at a stage is read, and nothing else: as the first version recorded it."""

    stage: str

    def decide(self, state: State, now: Now) -> tuple[Event, ...]:
        caution = caution_at(state, a_stage(state, self.stage), now.at)
        if caution is None:
            return ()
        hazards = tuple(hazard.value for hazard in caution.hazards)
        return (CautionRead(at=now.at, session=now.session, hazards=hazards),)

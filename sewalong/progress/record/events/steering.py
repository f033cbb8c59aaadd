"""Where to go: the stage to work at, and the layout wanted."""

from __future__ import annotations

from collections.abc import Sequence
from typing import ClassVar

from sewalong.progress.record.events.event import Event, Recorded, label_of
from sewalong.progress.record.layouts_in_reach import must_be_within_reach
from sewalong.progress.record.limits import a_stage
from sewalong.progress.record.state import State
from sewalong.progress.record.tally import Tally
from sewalong.quilt.quilt import Target


class StageChosen(Event, frozen=True, kw_only=True, tag="stage chosen"):
    """The person turned to another stage."""

    undoable: ClassVar[bool] = False

    stage: str

    def check(self, state: State) -> None:
        a_stage(state, self.stage)

    def apply(self, tally: Tally, seq: int) -> None:
        # The change of target that brought this stage may have been undone since.
        if tally.route.stage(self.stage) is not None:
            tally.chosen, tally.chosen_by_hand = self.stage, True

    def words(self, state: State, record: Sequence[Recorded]) -> str:
        return f"Working at {label_of(state, self.stage)}."


class TargetChanged(Event, frozen=True, kw_only=True, tag="target changed"):
    """Other rows and columns are wanted."""

    rows: int
    columns: int

    def check(self, state: State) -> None:
        must_be_within_reach(state, self.rows, self.columns)

    def apply(self, tally: Tally, seq: int) -> None:
        tally.retarget(Target(self.rows, self.columns))
        tally.can_undo(seq)

    def words(self, state: State, record: Sequence[Recorded]) -> str:
        return f"The target is now {self.rows} × {self.columns}."

"""Turning to another stage, and wanting another layout."""

from __future__ import annotations

from typing import ClassVar

from sewalong.progress.acts.act import Act, Now
from sewalong.progress.record.events.event import Event
from sewalong.progress.record.events.steering import StageChosen, TargetChanged
from sewalong.progress.record.state import State


class ChooseStage(Act, frozen=True):
    """Turn to another stage."""

    needs_progress: ClassVar[bool] = True

    stage: str

    def decide(self, state: State, now: Now) -> tuple[Event, ...]:
        chosen = StageChosen(at=now.at, session=now.session, stage=self.stage)
        chosen.check(state)
        return (chosen,)


class ChangeTarget(Act, frozen=True):
    """Want other rows and columns."""

    needs_progress: ClassVar[bool] = True

    rows: int
    columns: int

    def decide(self, state: State, now: Now) -> tuple[Event, ...]:
        changed = TargetChanged(
            at=now.at, session=now.session, rows=self.rows, columns=self.columns
        )
        changed.check(state)
        return (changed,)

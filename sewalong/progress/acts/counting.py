"""Counting at a stage, taking apart, and the bobbin that was empty."""

from __future__ import annotations

from typing import ClassVar

from sewalong.progress.acts.act import Act, Now
from sewalong.progress.measuring.proof import goes_on_unproved, proof
from sewalong.progress.record.events.counting import BobbinRanOut, Counted, Unpicked
from sewalong.progress.record.events.event import Event
from sewalong.progress.record.events.said import CautionRead
from sewalong.progress.record.events.seam import WentOn
from sewalong.progress.record.limits import a_stage
from sewalong.progress.record.route import RouteStage
from sewalong.progress.record.state import State
from sewalong.progress.safety.cautions import CautionFirst, caution_at


class Count(Act, frozen=True):
    """`n` were done at a stage. `caution_read` says that the caution now due was read."""

    needs_progress: ClassVar[bool] = True

    stage: str
    n: int = 1
    caution_read: bool = False

    def decide(self, state: State, now: Now) -> tuple[Event, ...]:
        counted = Counted(at=now.at, session=now.session, stage=self.stage, n=self.n)
        counted.check(state)
        stage = a_stage(state, self.stage)
        return (*before_a_count(state, stage, now, caution_read=self.caution_read), counted)


class Unpick(Act, frozen=True):
    """`n` counts of a stage are taken apart again."""

    needs_progress: ClassVar[bool] = True

    stage: str
    n: int = 1

    def decide(self, state: State, now: Now) -> tuple[Event, ...]:
        unpicked = Unpicked(at=now.at, session=now.session, stage=self.stage, n=self.n)
        unpicked.check(state)
        return (unpicked,)


class BobbinEmpty(Act, frozen=True):
    """The bobbin was empty: the last `unsewn` counted at the stage were never sewn."""

    needs_progress: ClassVar[bool] = True

    stage: str
    unsewn: int

    def decide(self, state: State, now: Now) -> tuple[Event, ...]:
        ran_out = BobbinRanOut(at=now.at, session=now.session, stage=self.stage, unsewn=self.unsewn)
        ran_out.check(state)
        return (ran_out,)


def before_a_count(
    state: State, stage: RouteStage, now: Now, *, caution_read: bool
) -> tuple[Event, ...]:
    """What is recorded before a count: the caution read, and going on with an unproved seam.

    Raises CautionFirst where a caution is due that was not read. Counting on at the machine
    after it was said that the seam is not proved means going on without a proof.
    """
    events: list[Event] = []
    caution = caution_at(state, stage, now.at)
    if caution is not None:
        if not caution_read:
            raise CautionFirst(caution, stage.id)
        hazards = tuple(hazard.value for hazard in caution.hazards)
        events.append(CautionRead(at=now.at, session=now.session, hazards=hazards))
    if goes_on_unproved(state, stage.id, now.at):
        why = proof(state, now.at).why
        events.append(WentOn(at=now.at, session=now.session, stage=stage.id, why=why))
    return tuple(events)

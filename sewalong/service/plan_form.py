"""The plan of a quilt under way as the questions a quilt begins with, to be changed by them."""

from __future__ import annotations

from collections.abc import Mapping

from sewalong.progress.acts.replanning import ChangePlan
from sewalong.progress.plan.plan import plan
from sewalong.progress.record.events.replanning import planned
from sewalong.quilt.beginning.answers import Answers
from sewalong.quilt.beginning.filled_in import FilledIn, UnderWay, fill_in
from sewalong.quilt.quilt import Quilt
from sewalong.service.beginning import fault_of, in_full, load_method, quilt_of
from sewalong.service.open_quilt import OpenQuilt
from sewalong.service.plan_change import WouldChange, would_change


class PlanForm:
    """The plan of a quilt under way as questions, each answered as it stands.

    `as_sewn`: what is made already was made by the new plan.
    """

    def __init__(self, quilt: OpenQuilt) -> None:
        self._quilt = quilt
        self.was = planned(quilt.state)
        self.as_sewn = False
        self._under_way = UnderWay(self.was, plan(quilt.state).units.possible)
        self.filled = self.with_all(Answers(self.was.unit))

    def with_all(self, answers: Answers) -> FilledIn:
        """What these answers come to."""
        return fill_in(answers, load=load_method, under_way=self._under_way)

    def with_answer(self, id: str, text: str) -> FilledIn:
        """What the answers and this one would come to."""
        return self.with_all(self.filled.answers.answered(id, in_full(id, text)))

    def answer(self, id: str, text: str) -> str:
        """Take an answer; an empty one is as the plan stands. The sentence why it will not do is
        returned, and then nothing has changed; else empty."""
        filled = self.with_answer(id, text)
        if why := fault_of(filled, id):
            return why
        self.filled = filled
        return ""

    def act(self) -> ChangePlan:
        """The change, to be carried out. Raises ValueError for an answer that will not do."""
        return ChangePlan(self.was, quilt_of(self.filled), self.as_sewn)

    def would_change_to(self, now: Quilt) -> WouldChange:
        """What would change were that the plan."""
        return would_change(self._quilt, ChangePlan(self.was, now, self.as_sewn))

    @property
    def fixed(self) -> Mapping[str, str]:
        """What cannot be answered otherwise here, by question, with the reason."""
        return self._under_way.fixed

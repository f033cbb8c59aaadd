"""The plan changed after the start: what was wanted, and what is wanted from now on.

What plans come to is loaded only when it is asked for: it takes the geometry of the method.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from msgspec.structs import replace

from sewalong.progress.record.events.event import Event, Recorded
from sewalong.progress.record.refused import Refused
from sewalong.progress.record.state import SeamChange, State
from sewalong.progress.record.tally import Tally
from sewalong.quilt.quilt import Quilt

PLANNED_SEAM = "planned seam"
"""What is changed by another seam in the plan, as `SeamChange` names it."""


class PlanChanged(Event, frozen=True, kw_only=True, tag="plan changed"):
    """Parts of the plan are others from now on; everything that follows from them follows.

    `was` and `now` hold the keys of the stored plan (`quilt.stored_plan`) that differ, as they
    were and as they are; None where nothing is said. `as_sewn`: the pieces made so far are as
    the new plan has them; the old one had it wrong.
    """

    was: dict[str, Any]
    now: dict[str, Any]
    as_sewn: bool = False

    def check(self, state: State) -> None:
        from sewalong.progress.record.fabrics_in_use import refuse_taking_out_of_sets
        from sewalong.progress.record.sewn_already import refuse_what_is_sewn_otherwise
        from sewalong.quilt.plan_faults import why_not_a_plan
        from sewalong.quilt.plan_parts import NEVER_CHANGES, parts_that_differ, with_parts

        if not NEVER_CHANGES.isdisjoint(self.now):
            raise Refused(
                "The method of a quilt under way stays as it is, for every count is of one of its "
                "stages. Begin another quilt for another method."
            )
        current = planned(state)
        try:
            wanted = with_parts(current, self.now)
        except ValueError as error:
            raise Refused(f"The plan cannot be changed to that. {error}") from None
        if wanted == current:
            raise Refused("The plan is so already. Nothing was changed.")
        if [start.pile for start in wanted.starts] != [start.pile for start in current.starts]:
            raise Refused(
                "The piles a quilt under way begins with are those of its method. Keep them, and "
                "change what there is of each."
            )
        if parts_that_differ(current, wanted) != (self.was, self.now):
            raise Refused(
                "The plan was changed in another window meanwhile. Look at it again first."
            )
        if why := why_not_a_plan(wanted):
            raise Refused(why)
        refuse_what_is_sewn_otherwise(state, wanted, as_sewn=self.as_sewn)
        refuse_taking_out_of_sets(state, wanted)

    def apply(self, tally: Tally, seq: int) -> None:
        from sewalong.quilt.plan_parts import with_parts

        # It was checked when it happened, and a record is never read more strictly than that.
        current = replace(tally.quilt, target=tally.target)
        tally.replan(with_parts(current, self.now, checked=False))
        if "seam" in self.now:
            tally.seam_changes.append(SeamChange(seq, self.at, tool=PLANNED_SEAM))
        tally.can_undo(seq)

    def words(self, state: State, record: Sequence[Recorded]) -> str:
        so = f" {_SO}" if self.as_sewn else ""
        return f"Plan changed: {'; '.join(self._changes(state))}.{so}"

    def facts(self, state: State, record: Sequence[Recorded]) -> tuple[str, ...]:
        changes = (f"Plan changed: {one}." for one in self._changes(state))
        return (*changes, _SO) if self.as_sewn else tuple(changes)

    def _changes(self, state: State) -> tuple[str, ...]:
        from sewalong.quilt.plan_parts import with_parts
        from sewalong.quilt.plan_words import differences

        current = planned(state)
        was, now = (with_parts(current, one, checked=False) for one in (self.was, self.now))
        return differences(was, now)


_SO = "What is made already was made so."


def planned(state: State) -> Quilt:
    """The plan as it stands now, with the layout now wanted."""
    return replace(state.quilt, target=state.target)

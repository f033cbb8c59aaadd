"""What somebody did elsewhere, brought home as a number: it is no sewing of the owner's own."""

from __future__ import annotations

from collections.abc import Sequence

from sewalong.piecing.method import Stage
from sewalong.progress.record.events.counting import can_count
from sewalong.progress.record.events.event import Event, Recorded, counts_of, label_of, noun_of
from sewalong.progress.record.limits import a_number, a_stage, lie, quoted
from sewalong.progress.record.places import held_at
from sewalong.progress.record.refused import Refused
from sewalong.progress.record.route import RouteStage
from sewalong.progress.record.state import State
from sewalong.progress.record.tally import Tally
from sewalong.quilt.rules import a_name


class MadeElsewhere(Event, frozen=True, kw_only=True, tag="made elsewhere", omit_defaults=True):
    """`n` of a stage were done elsewhere: no time at the owner's machine, no seam of hers.

    `place` is where, as a pile was put there (empty: nobody said); what was made lies there too.
    `by` is who did it (empty: nobody said).
    """

    stage: str
    n: int
    place: str = ""
    by: str = ""

    def check(self, state: State) -> None:
        if self.by:
            try:
                a_name(self.by)
            except ValueError as error:
                raise Refused(f"That is no name of a person. {error}") from None
        stage, n = a_stage(state, self.stage), a_number(self.n)
        can_count(state, stage, n)
        if self.place and (why := why_not_there(state, stage, self.place, self.n)):
            raise Refused(why)

    def apply(self, tally: Tally, seq: int) -> None:
        stage = tally.route.stage(self.stage)
        if stage is None:
            return
        for taken in stage.takes:
            if self.place:
                tally.lies_at(taken.pile, self.place, -self.n * taken.count)
            else:
                tally.taken_anywhere(taken.pile, self.n * taken.count)
        if self.place and isinstance(stage, Stage):
            tally.lies_at(stage.makes.pile, self.place, self.n * stage.makes.count)
        # What was sewn at another place was sewn of what lay there.
        tally.pass_on(stage, self.n, of_begun=not self.place)
        tally.sets_unseen(stage, self.n)
        before = tally.elsewhere.pop(self.place, "")
        tally.elsewhere[self.place] = self.by or before
        tally.can_undo(seq)

    def words(self, state: State, record: Sequence[Recorded]) -> str:
        counts, label = counts_of(state, self.stage), label_of(state, self.stage)
        what = counts.count(self.n) + ("" if label == counts.one else f" at {label}")
        by = f", by {self.by}" if self.by else ""
        where = f" – {self.place} –" if self.place else ""
        return f"Made elsewhere{where}{by}: {what}."


def why_not_there(state: State, stage: RouteStage, place: str, n: int = 1) -> str:
    """Why `n` of a stage cannot have been done with what was put at a place; empty where they can, or
    nobody can say."""
    for taken in stage.takes:
        places = state.places.get(taken.pile, {})
        held = held_at(places, place, state.piles[taken.pile]) if place in places else 0
        if held is not None and held < n * taken.count:
            noun = noun_of(state, taken.pile)
            return (
                f"Only {noun.count(held)} {lie(held)} at {quoted(place)}, as far as was said, and "
                f"{n * taken.count} would have been used. Say first with put away that more "
                f"{noun.many} went there, or leave the place out."
            )
    return ""

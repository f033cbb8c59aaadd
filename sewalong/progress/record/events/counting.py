"""Counts at a stage: counted, unpicked, or never sewn because the bobbin was empty."""

from __future__ import annotations

from collections.abc import Sequence

from sewalong.piecing.method import Stage, Station
from sewalong.progress.record.begun_rows import units_in
from sewalong.progress.record.events.event import Event, Recorded, counts_of, label_of
from sewalong.progress.record.limits import a_number, a_stage, are, lie
from sewalong.progress.record.on_the_top import last_on_the_top, loose, loose_sashes
from sewalong.progress.record.readiness import ready, room_in_the_web, sashes_that_fit
from sewalong.progress.record.refused import Refused
from sewalong.progress.record.route import (
    ADD_SASHES,
    JOIN_ROWS,
    ROW,
    SEW_ROWS,
    RouteStage,
    TopStage,
)
from sewalong.progress.record.rows_sewn import rows_sewn
from sewalong.progress.record.state import State
from sewalong.progress.record.tally import Tally
from sewalong.progress.record.web_rows import next_seam, rows_sewn_on
from sewalong.quilt.web import START_WEB, WEB_PILES


class Counted(Event, frozen=True, kw_only=True, tag="counted"):
    """`n` were done at a stage."""

    stage: str
    n: int

    def check(self, state: State) -> None:
        can_count(state, a_stage(state, self.stage), a_number(self.n))

    def apply(self, tally: Tally, seq: int) -> None:
        tally.count(self.stage, self.n)
        tally.last_lot[self.stage], tally.last_counted = self.n, self.stage
        count_after_going_on(self, tally, seq)

    def words(self, state: State, record: Sequence[Recorded]) -> str:
        counts, label = counts_of(state, self.stage), label_of(state, self.stage)
        # "1 pair at pair" says the same word twice.
        at = "" if label == counts.one else f" at {label}"
        return f"Counted {counts.count(self.n)}{at}."


class Unpicked(Event, frozen=True, kw_only=True, tag="unpicked"):
    """`n` counts of a stage were taken apart again; the pieces went back to their pile."""

    stage: str
    n: int

    def check(self, state: State) -> None:
        stage, n = a_stage(state, self.stage), a_number(self.n)
        if stage.station is Station.MAT:
            raise Refused(
                f"What {stage.label} did is cut and cannot be taken apart again. "
                "If it was counted by mistake, undo it or recount the pile."
            )
        possible = still_whole(state, stage)
        if n > possible:
            some = f"Only {stage.counts.count(possible)}" if possible else f"No {stage.counts.one}"
            begun = " Of rows begun, say what is still sewn." if _only_begun(state, stage) else ""
            raise Refused(
                f"{some} from {stage.label} can be taken apart now. "
                f"What went further already has to be unpicked there first.{begun}"
            )

    def apply(self, tally: Tally, seq: int) -> None:
        tally.count(self.stage, -self.n)
        tally.can_undo(seq)

    def words(self, state: State, record: Sequence[Recorded]) -> str:
        counts = counts_of(state, self.stage).count(self.n)
        return f"Unpicked {counts} from {label_of(state, self.stage)}."


class BobbinRanOut(Event, frozen=True, kw_only=True, tag="bobbin ran out"):
    """The last `unsewn` counted at a machine stage were never sewn; a full bobbin went in."""

    stage: str
    unsewn: int

    def check(self, state: State) -> None:
        stage, unsewn = a_stage(state, self.stage), a_number(self.unsewn)
        if stage.station is not Station.MACHINE:
            raise Refused(
                f"No bobbin runs out at {stage.label}. Name the stage at the machine that was "
                "sewn with the empty bobbin."
            )
        possible = still_whole(state, stage)
        if unsewn > possible:
            raise Refused(
                f"Only {stage.counts.count(possible)} from {stage.label} "
                f"{lie(possible)} there that nothing was made of yet, so {unsewn} cannot be "
                "unsewn. Count what is really sewn and recount that pile."
            )

    def apply(self, tally: Tally, seq: int) -> None:
        tally.count(self.stage, -self.unsewn)
        tally.changed["bobbin"] = self.at
        tally.can_undo(seq)

    def words(self, state: State, record: Sequence[Recorded]) -> str:
        return (
            f"The bobbin was empty: the last {counts_of(state, self.stage).count(self.unsewn)} "
            f"at {label_of(state, self.stage)} not sewn after all. A full one went in."
        )

    def facts(self, state: State, record: Sequence[Recorded]) -> tuple[str, ...]:
        empty, full = self.words(state, record).rsplit(". ", 1)
        return f"{empty}.", full


def _only_begun(state: State, stage: RouteStage) -> bool:
    return stage.id == SEW_ROWS and bool(state.begun)


def count_after_going_on(event: Event, tally: Tally, seq: int) -> None:
    """A count can be taken back, in one with the going on without a proof that came with it."""
    tally.can_undo(seq)
    if tally.went_on == seq - 1 and tally.last_at == event.at:
        tally.one_act(2)


def can_count(state: State, stage: RouteStage, n: int) -> None:
    """Raise Refused where fewer than `n` of a stage can be done with what waits."""
    possible = ready(state, stage)
    if n > possible:
        raise Refused(_not_enough(state, stage, n, possible))


def can_be_unpicked(state: State, stage: RouteStage) -> bool:
    """Whether anything of a stage can be taken apart now."""
    try:
        return stage.station is not Station.MAT and still_whole(state, stage) > 0
    except Refused:
        return False


def may_not_be_sewn(state: State) -> tuple[RouteStage, ...]:
    """The stages at the machine where something counted may turn out never to have been sewn."""
    return tuple(
        stage
        for stage in state.route.stages
        if stage.station is Station.MACHINE and can_be_unpicked(state, stage)
    )


def still_whole(state: State, stage: RouteStage) -> int:
    """Counts of a stage that nothing was made of yet; raises Refused when the top holds them."""
    if isinstance(stage, Stage):
        made = stage.makes
        if state.quilt.is_web and stage.id == START_WEB:
            alone = state.piles[made.pile] - rows_sewn_on(state)
            return max(0, min(alone, loose(state, made.pile), state.done[stage.id]))
        return min(loose(state, made.pile) // made.count, state.done[stage.id])
    later_on = last_on_the_top(state, after=stage)
    if stage.id == ADD_SASHES and later_on is not None and later_on.id == JOIN_ROWS:
        return loose_sashes(state)
    if later_on is not None:
        raise Refused(f"What was done at {later_on.label} holds it. Unpick that first.")
    return state.done[stage.id]


def _not_enough(state: State, stage: RouteStage, n: int, possible: int) -> str:
    if isinstance(stage, TopStage):
        return _top_not_ready(state, stage, n, possible)
    in_the_web = state.quilt.is_web and stage.makes.pile in WEB_PILES
    if in_the_web and (sentence := _no_such_seam(state, stage, n)):
        return sentence
    piles = state.route.piles
    wants = " and ".join(piles[taken.pile].noun.count(taken.count) for taken in stage.takes)
    there = " and ".join(
        piles[taken.pile].noun.count(state.piles[taken.pile]) for taken in stage.takes
    )
    if _only_begun(state, stage):
        there += f" and {units_in(state.begun)} in rows begun"
    wait = "waits" if len(stage.takes) == 1 and there.startswith("1 ") else "wait"
    enough = f"enough for {possible}" if possible else "not enough for one"
    return (
        f"{stage.counts.count(n).capitalize()} at {stage.label} cannot be: each takes {wants}, "
        f"and {there} {wait}, {enough}. If more lie there, recount that pile first."
    )


def _no_such_seam(state: State, stage: Stage, n: int) -> str:
    """Why the web has no place for `n` seams at a stage of it; empty where it has."""
    left = room_in_the_web(state, stage)
    if n <= left:
        return ""
    if left:
        return f"Only {stage.counts.count(left)} {are(left)} left at {stage.label}."
    if stage.id != START_WEB and next_seam(state) is not None:
        rows = state.target.rows
        return (
            f"{stage.counts.count(n).capitalize()} at {stage.label} cannot be: not all of the "
            f"{rows} rows are started. Start the web in every row first."
        )
    return (
        f"{stage.label.capitalize()} is done: {stage.counts.count(state.done[stage.id])}. "
        "To go further, change the target."
    )


def _top_not_ready(state: State, stage: TopStage, n: int, possible: int) -> str:
    left = stage.steps - state.done[stage.id]
    if left == 0:
        return (
            f"{stage.label.capitalize()} is done: {stage.counts.count(stage.steps)} in all. "
            "To go further, change the target."
        )
    if stage.id == JOIN_ROWS:
        rows = ROW.noun.count(rows_sewn(state))
        sashes, first = "", "Sew more rows first."
        on = state.done.get(ADD_SASHES)
        if on is not None and on < min(rows_sewn(state) - 1, stage.steps):
            sashes = f" with {on} of their sashes on"
            first = "Add the sash between two rows first."
        return (
            f"{stage.counts.count(n).capitalize()} cannot be: {rows} sewn so far{sashes} and "
            f"{stage.counts.count(state.done[stage.id])} joined leave {possible} to join now. "
            f"{first}"
        )
    if stage.id == ADD_SASHES and possible < left:
        return _no_sashes(state, stage, n, possible)
    if possible == 0:
        return f"The top is not ready to {stage.label}: do the stages before it first."
    return f"Only {stage.counts.count(possible)} left at {stage.label}."


def _no_sashes(state: State, stage: TopStage, n: int, possible: int) -> str:
    """Why `n` sashes cannot go on: too few of them, or too few rows to take them."""
    (taken,) = stage.takes
    there = state.route.piles[taken.pile].noun.count(state.piles[taken.pile])
    rows = ROW.noun.count(rows_sewn(state))
    few = sashes_that_fit(state, stage) - state.done[stage.id] < n
    first = "Sew more rows first." if few else "Make more of them first, or recount that pile."
    return (
        f"{stage.counts.count(n).capitalize()} at {stage.label} cannot be: {there} there and "
        f"{rows} sewn, {state.done[stage.id]} sashes on already, leave {possible} to sew now. "
        f"{first}"
    )

"""Whether pieces may be taken apart, spoiled, counted again or put away."""

from __future__ import annotations

from datetime import datetime

from sewalong.piecing.method import Stage, Station
from sewalong.progress.acts import commands as c
from sewalong.progress.acts.commands import Refused
from sewalong.progress.acts.validation import (
    MOST_AT_ONCE,
    a_number,
    a_pile,
    a_stage,
    maybe_words,
    words,
)
from sewalong.progress.plan.plan import ready
from sewalong.progress.record import events as e
from sewalong.progress.record.on_the_top import joined_rows, last_on_the_top, loose_rows
from sewalong.progress.record.recount_rules import can_be_made, maker, recorded_there
from sewalong.progress.record.route import ROW, RouteStage
from sewalong.progress.record.state import State


def unpick(state: State, command: c.Unpick, at: datetime, session: int) -> e.Unpicked:
    """Counts of a stage taken apart; raises Refused for what cannot be or went further."""
    stage, n = a_stage(state, command.stage), a_number(command.n)
    if isinstance(stage, Stage) and stage.station not in (Station.MACHINE, Station.TABLE):
        raise Refused(
            f"What {stage.label} did cannot be taken apart again. "
            "If it was counted by mistake, undo it or recount the pile."
        )
    possible = _still_whole(state, stage)
    if n > possible:
        some = f"Only {stage.counts.count(possible)}" if possible else f"No {stage.counts.one}"
        raise Refused(
            f"{some} from {stage.label} can be taken apart now. "
            "What went further already has to be unpicked there first."
        )
    return e.Unpicked(at=at, session=session, stage=stage.id, n=n)


def _still_whole(state: State, stage: RouteStage) -> int:
    """Counts of a stage that nothing was made of yet; raises Refused when the top holds them."""
    if isinstance(stage, Stage):
        made = stage.makes
        there = loose_rows(state) if made.pile == ROW.id else state.piles[made.pile] // made.count
        return min(there, state.done[stage.id])
    later_on = last_on_the_top(state, after=stage)
    if later_on is not None:
        raise Refused(f"What was done at {later_on.label} holds it. Unpick that first.")
    return state.done[stage.id]


def bobbin_empty(
    state: State, command: c.BobbinEmpty, at: datetime, session: int
) -> e.BobbinRanOut:
    """The last counts at a machine stage were never sewn; raises Refused where none can be."""
    stage, unsewn = a_stage(state, command.stage), a_number(command.unsewn)
    if stage.station is not Station.MACHINE:
        raise Refused(
            f"No bobbin runs out at {stage.label}. Name the stage at the machine that was "
            "sewn with the empty bobbin."
        )
    possible = _still_whole(state, stage)
    if unsewn > possible:
        raise Refused(
            f"Only {stage.counts.count(possible)} from {stage.label} "
            f"{_lie(possible)} there that nothing was made of yet, so {unsewn} cannot be unsewn. "
            "Count what is really sewn and recount that pile."
        )
    return e.BobbinRanOut(at=at, session=session, stage=stage.id, unsewn=unsewn)


def spoil(state: State, command: c.Spoil, at: datetime, session: int) -> e.Spoiled:
    """Pieces that cannot be used; raises Refused when fewer lie there."""
    pile, n = a_pile(state, command.pile), a_number(command.n)
    there = loose_rows(state) if pile == ROW.id else state.piles[pile]
    if n > there:
        noun = state.route.piles[pile].noun
        raise Refused(
            f"Only {noun.count(there)} {_lie(there)} there, "
            f"so {n} cannot be spoiled. "
            "If more lie there, recount that pile first."
        )
    reason = words(command.reason, "a reason, so that it can be seen later what went wrong")
    return e.Spoiled(at=at, session=session, pile=pile, n=n, reason=reason)


def put_away(state: State, command: c.PutPileAway, at: datetime, session: int) -> e.PutAway:
    """A pile or part of it put somewhere; raises Refused for more than there is."""
    pile, place = a_pile(state, command.pile), words(command.place, "a place")
    if command.n is not None:
        there, noun = state.piles[pile], state.route.piles[pile].noun
        if a_number(command.n) > there:
            raise Refused(
                f"Only {noun.count(there)} {_lie(there)} there, so {command.n} cannot be put "
                "away. If more lie there, recount that pile first."
            )
    return e.PutAway(at=at, session=session, pile=pile, place=place, n=command.n)


def recount(state: State, command: c.Recount, at: datetime, session: int) -> e.Recounted:
    """A count by hand; raises Refused when its difference cannot be what it is said to be."""
    pile, how = a_pile(state, command.pile), command.how
    place = maybe_words(command.place)
    if not 0 <= command.counted <= MOST_AT_ONCE:
        raise Refused(f"A recount is a number from 0 to {MOST_AT_ONCE}.")
    recorded = recorded_there(state, pile, command.counted, how, place)
    difference = command.counted - recorded
    if pile == ROW.id:
        joined = joined_rows(state)
        if state.piles[pile] + difference < joined:
            are = "is" if joined == 1 else "are"
            raise Refused(
                f"{ROW.noun.count(joined)} {are} in the top already, so there "
                f"{are} at least that many. Count the rows in the top too."
            )
    if difference == 0 and how != "lost":
        how = "stands"
    elif how == "found" and difference < 0:
        raise Refused(
            f"{command.counted} are fewer than the {recorded} recorded, so none were found. "
            "Say made, lost, spoiled or missing, or let the count stand."
        )
    elif how in ("lost", "spoiled", "missing") and difference > 0:
        raise Refused(
            f"{command.counted} are more than the {recorded} recorded, so none are {how}. "
            "Say made or found, or let the count stand."
        )
    elif how == "made" and not can_be_made(state, pile, difference):
        raise Refused(_not_made(state, pile, difference))
    return e.Recounted(
        at=at,
        session=session,
        pile=pile,
        recorded=recorded,
        counted=command.counted,
        how=how,
        place=place,
    )


def _not_made(state: State, pile: str, difference: int) -> str:
    """Why a difference cannot be counts at the stage that fills the pile."""
    stage, noun = maker(state.route, pile), state.route.piles[pile].noun
    if stage is None:
        return f"{noun.many.capitalize()} are not made here. Say found or lost instead."
    if difference % stage.makes.count:
        return (
            f"{noun.count(abs(difference)).capitalize()} cannot be made: "
            f"each {stage.counts.one} gives {stage.makes.count}. Count again, or say found or lost."
        )
    if difference < 0:
        return (
            f"Only {stage.counts.count(state.done[stage.id])} counted at {stage.label} so far. "
            "Say lost, spoiled or missing instead."
        )
    possible = ready(state, stage)
    waits = f"only enough for {possible} waits" if possible else "nothing waits"
    return (
        f"{noun.count(difference).capitalize()} cannot have been made at {stage.label}: {waits} "
        "there. Recount the pile before it first, or say found."
    )


def _lie(n: int) -> str:
    return "lies" if n == 1 else "lie"

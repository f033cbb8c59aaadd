"""Phrases of where a quilt stands, said alike on coming back, on closing and after an act."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import datetime, timedelta

from msgspec.structs import fields

from sewalong.progress.joining.web import web_begun_facts
from sewalong.progress.measuring.check_words import check_in_words
from sewalong.progress.measuring.proof import proof
from sewalong.progress.plan.plan import Plan, StageLine
from sewalong.progress.record.begun_rows import begun_in_words, rows_begun, units_across
from sewalong.progress.record.events.event import Recorded
from sewalong.progress.record.events.sessions import is_over
from sewalong.progress.record.route import JOIN_ROWS, TopStage
from sewalong.progress.record.rows_sewn import units_in_rows
from sewalong.progress.record.settings import Settings
from sewalong.progress.record.state import State
from sewalong.progress.record.time_words import ago
from sewalong.progress.resuming.concerns import missing_facts

AWAY = timedelta(days=1)
"""After this long without a word the return screen comes first."""


def was_away(state: State, now: datetime) -> bool:
    """Whether it is time to say where the person was."""
    last = state.sessions[-1] if state.sessions else None
    if last is None:
        return True
    if last.is_open:
        return is_over(last, now)
    return now - last.last_at >= AWAY


def was_begun_today(record: Sequence[Recorded], started: datetime, now: datetime) -> bool:
    """Whether nothing has happened to a quilt since it was begun, a while ago at most: then there
    is nothing to come back to."""
    return not record and now - started < AWAY


def next_thing(line: StageLine) -> str:
    """The next thing to do with the hands, in one sentence."""
    return f"{'; '.join(fact.removesuffix('.') for fact in next_facts(line))}."


def next_facts(line: StageLine) -> tuple[str, ...]:
    """The same, one fact a sentence."""
    stage = line.stage
    to_go = f"{stage.counts.count(line.to_do)} to go."
    where = f"{stage.label.capitalize()} ({_at(stage.station)})"
    of_the_top = isinstance(stage, TopStage) and stage.id != JOIN_ROWS
    if of_the_top or line.from_cloth:
        return (f"{where}: {to_go}",)
    waiting = line.waiting_noun.count(line.waiting)
    verb = "waits" if line.waiting == 1 else "wait"
    return f"{where}: {waiting} {verb}.", to_go


def rows_begun_in_words(state: State) -> str:
    """What is sewn of rows that are not whole yet; empty when nothing is."""
    return " ".join(rows_begun_facts(state))


def rows_begun_facts(state: State) -> tuple[str, ...]:
    """The same, one fact a sentence."""
    laid = _row_in_hand(state)
    if state.quilt.is_web:
        return (*web_begun_facts(state), *laid[1:])
    across = units_across(state.route, state.quilt.method.unit)
    if len(laid) > 1 and len(rows_begun(state.begun, across)) == 1:
        return laid  # the row that is begun is the one in hand
    words = begun_in_words(state.begun, across)
    return (*((words,) if words else ()), *laid)


def _row_in_hand(state: State) -> tuple[str, ...]:
    """The row in hand of a top that is laid, once rows are being sewn."""
    if not state.wall.is_laid or not units_in_rows(state):
        return ()
    from sewalong.progress.joining.row_in_hand import row_facts  # only where something is laid

    return row_facts(state)


def _at(station: str) -> str:
    return f"at the {station}"


def shortfall_in_words(state: State, now_plan: Plan) -> str:
    """What is short and the ways out; empty when the target can be reached."""
    return " ".join(shortfall_facts(state, now_plan))


def shortfall_facts(state: State, now_plan: Plan) -> tuple[str, ...]:
    """The same, one fact a sentence."""
    short = now_plan.shortfall
    if short is None:
        return ()
    unit = state.route.piles[state.quilt.method.unit].noun
    more = " and ".join(
        f"{state.route.piles[pieces.pile].noun.count(pieces.count)} more" for pieces in short.pieces
    )
    spare = f" ({short.spare_after} spare then)" if short.spare_after else ""
    layouts = " or ".join(str(layout) for layout in short.layouts)
    instead = f", or take {layouts}" if layouts else ""
    missing = [f"{one}." for one in missing_facts(state)]
    if missing:
        missing[0] = f"Look for what is missing first: {missing[0]}"
    return (
        f"{state.target} is {unit.count(short.units)} short.",
        f"Find or buy {more}{spare}{instead}.",
        *missing,
    )


def proved_by(state: State, now: datetime) -> str:
    """What last proved the seam and when: a check that passed, or what the owner wrote with
    the settings, whichever is later; empty when nothing did."""
    told = proof(state, now)
    settings, at = state.settings, state.settings_at
    if settings and settings.proof and at and (told.last is None or at > told.last.at):
        return f"{settings.proof} ({ago(at, now)})"
    if told.last is None:
        return ""
    return f"{check_in_words(state, told.last)} ({ago(told.last.at, now)})"


def press_in_words(state: State, now_plan: Plan) -> tuple[str, ...]:
    """Which way seams are pressed, for the stages that still have something to do."""
    return tuple(
        f"{line.stage.label.capitalize()}: {state.press[line.stage.id]}"
        for line in now_plan.lines
        if line.to_do and line.stage.id in state.press
    )


def settings_in_words(settings: Settings) -> str:
    """The settings that were given: which machine, then each other with its name."""
    others = [
        f"{field.name.replace('_', ' ')} {value}"
        for field in fields(settings)
        if field.name not in ("machine", "proof") and (value := getattr(settings, field.name))
    ]
    return ", ".join([settings.machine, *others] if settings.machine else others)

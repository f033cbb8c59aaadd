"""Where was I? What a person coming back needs, as one answer for every face."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import datetime

from msgspec import Struct

from sewalong.piecing.method import Station
from sewalong.progress.plan.plan import Plan, plan
from sewalong.progress.record.events import every_kind as e
from sewalong.progress.record.events.event import noun_of
from sewalong.progress.record.events.sessions import session_length
from sewalong.progress.record.route import SEW_ROWS
from sewalong.progress.record.state import State
from sewalong.progress.record.time_words import ago, spoken
from sewalong.progress.record.web_rows import lies_in_the_web
from sewalong.progress.resuming.concerns import Concern, Kind, concerns, worst_first
from sewalong.progress.resuming.look_first import look_first
from sewalong.progress.resuming.own_words import own_words
from sewalong.progress.resuming.pick_up import PickUp, pick_up
from sewalong.progress.resuming.recount_advice import offer_in_words
from sewalong.progress.resuming.resume_facts import (
    next_facts,
    press_in_words,
    proved_by,
    rows_begun_facts,
    settings_in_words,
    shortfall_facts,
)

AT_MOST = 3
"""Concerns said before the work goes on: more at once are passed over. The rest is not lost."""

RECENT = 2
"""Notes and spoilages told on coming back: one screen holds all that matters; `log` has the rest."""

Facts = tuple[tuple[str, str], ...]
"""A label of a word or two and a sentence each."""


class LastTime(Struct, frozen=True):
    """`when` and for how long it was, and what was done then, stage by stage."""

    when: str
    did: tuple[str, ...] = ()

    @property
    def text(self) -> str:
        """All of it in one sentence."""
        return f"{self.when}: {', '.join(self.did)}." if self.did else f"{self.when}."

    @property
    def facts(self) -> tuple[str, ...]:
        """The same, one fact a sentence."""
        return tuple(f"{one}." for one in (self.when, *self.did))


class PileRow(Struct, frozen=True):
    """A pile that holds something: how many, of what, and where, in her own words; `place` is empty
    where nobody wrote it down."""

    pile: str
    n: int
    noun: str
    place: str


class ComingBack(Struct, frozen=True):
    """What to pick up, what is wrong, her own words, and what is left.

    What holds several facts is a tuple of them: her own words stand in some, and nothing may be
    taken apart that she wrote.

    `away` says how long ago it was ("24 days away"), empty on the same day. `concerns` are all
    there are, the worst first. `left` is the stages with something to do and how many counts.
    `begun` is what is sewn of rows that are not whole yet. `machine` is its settings and how they were tested, empty where nothing is left to sew, and
    `at_machine` whether they are wanted next. `last_time` is what was done then, `units` how many
    units are left, `notes` the last notes, spoilages and ways of pressing, `elsewhere` what lies and is to be
    done at the places counts came in from.
    """

    away: str
    pick_up: PickUp
    next_thing: tuple[str, ...]
    begun: tuple[str, ...]
    concerns: tuple[Concern, ...]
    own_words: str
    last_time: LastTime
    units: tuple[str, ...]
    left: tuple[tuple[str, int], ...]
    at_machine: bool
    machine: Facts
    piles: tuple[PileRow, ...]
    notes: Facts
    elsewhere: tuple[tuple[str, tuple[str, ...]], ...] = ()

    @property
    def other_piles(self) -> tuple[PileRow, ...]:
        """The piles whose place is not told with what to pick up."""
        return tuple(one for one in self.piles if one.pile not in self.pick_up.piles)


def coming_back(state: State, record: Sequence[e.Recorded], now: datetime) -> ComingBack:
    """Where `state`, the fold of `record`, stands for a person who comes back at `now`."""
    now_plan = plan(state)
    first = pick_up(state, now_plan)
    last = state.last_session
    suggested = now_plan.suggestion and now_plan.line(now_plan.suggestion.stage)
    thing = next_facts(suggested) if suggested else ()
    return ComingBack(
        away=_away(last.last_at, now) if last else "",
        pick_up=first,
        next_thing=thing,
        begun=rows_begun_facts(state),
        concerns=_concerns(state, record, now, now_plan),
        own_words=own_words(state, " ".join((*first.facts, *thing))),
        last_time=_last_time(state, now),
        units=_units(state, now_plan),
        left=tuple((line.stage.label, line.to_do) for line in now_plan.lines if line.to_do),
        at_machine=bool(suggested and suggested.stage.station is Station.MACHINE),
        machine=tuple(_machine(state, now, now_plan)),
        piles=tuple(_piles(state)),
        notes=tuple(_notes(state, now, now_plan)),
        elsewhere=tuple(_elsewhere(state, now_plan)),
    )


def _away(then: datetime, now: datetime) -> str:
    when = ago(then, now)
    return {"today": "", "yesterday": "1 day away"}.get(when, f"{when.removesuffix(' ago')} away")


def _concerns(
    state: State, record: Sequence[e.Recorded], now: datetime, now_plan: Plan
) -> tuple[Concern, ...]:
    found = [*look_first(state, now), *concerns(state, record, now, now_plan)]
    if short := shortfall_facts(state, now_plan):
        found.append(Concern(Kind.SHORT, "Short", None, short))
    if offer := offer_in_words(state, now, now_plan):
        found.append(Concern(Kind.COUNT_FIRST, "Count first", None, (offer,)))
    return worst_first(found)


def _last_time(state: State, now: datetime) -> LastTime:
    last = state.last_session
    if last is None:
        return LastTime("Not begun yet")
    length = spoken(session_length(last, now))
    did = [
        f"{n} at {stage.label}" if n > 0 else f"{-n} unpicked at {stage.label}"
        for stage_id, n in last.counts.items()
        if n and (stage := state.route.stage(stage_id)) is not None
    ]
    if state.begun and last.counts.get(SEW_ROWS) == 0:
        did.append("rows begun")
    when = f"{ago(last.last_at, now).capitalize()}, for {length}"
    return LastTime(when, tuple(did) or ("nothing counted",))


def _units(state: State, now_plan: Plan) -> tuple[str, ...]:
    units = now_plan.units
    unit = state.route.piles[state.quilt.method.unit].noun
    spare = f", {units.spare} spare" if units.spare else ""
    return (
        f"{unit.count(units.to_go)} to go of {state.units_wanted} ({state.target}){spare}.",
        f"Work done: {now_plan.work_done:.0%}.",
    )


def _machine(state: State, now: datetime, now_plan: Plan) -> Iterator[tuple[str, str]]:
    if not any(line.to_do and line.stage.station is Station.MACHINE for line in now_plan.lines):
        return
    if state.settings is not None:
        yield "Machine", settings_in_words(state.settings)
    proved = proved_by(state, now)
    if proved:
        yield "Tested by", proved
    elif state.settings is not None:
        yield "Tested by", "Nothing. Sew three strips and measure before you go on."
    if any(check.by for check in state.checks):
        from sewalong.progress.measuring.by_others import others_in_words  # only where others sew

        yield from others_in_words(state, now)


def _piles(state: State) -> Iterator[PileRow]:
    for id, pile in state.route.piles.items():
        if (n := state.piles[id]) and not lies_in_the_web(state, id):
            yield PileRow(id, n, pile.noun.of(n), state.where.get(id, ""))


def _elsewhere(state: State, now_plan: Plan) -> Iterator[tuple[str, tuple[str, ...]]]:
    if state.elsewhere:
        from sewalong.progress.resuming.by_place import elsewhere_in_words  # only where others sew

        yield from elsewhere_in_words(state, now_plan)


def _notes(state: State, now: datetime, now_plan: Plan) -> Iterator[tuple[str, str]]:
    """Ways of pressing, the last notes, and of the last few spoilages those of the last session, or
    all of those few where the quilt is short."""
    for text in press_in_words(state, now_plan):
        yield "Press", text
    for note in state.notes[-RECENT:]:
        yield "Note", f"{note.text} ({ago(note.at, now)})"
    last = state.last_session
    for spoilage in state.spoilage[-RECENT:]:
        recent = last is None or spoilage.at >= last.opened
        if recent or now_plan.shortfall is not None:
            noun = noun_of(state, spoilage.pile)
            when = ago(spoilage.at, now)
            yield "Spoiled", f"{noun.count(spoilage.n)}: {spoilage.reason} ({when})"


def in_lines(back: ComingBack) -> tuple[str, ...]:
    """All of it, one fact a line."""
    return tuple(f"{label}: {text}" if label else text for label, text in facts(back))


def facts(back: ComingBack) -> Iterator[tuple[str, str]]:
    """All of it, one fact each with its label, which is empty where it goes on from the one before:
    what to pick up (without a label), what is wrong, her words, what is left, the places, the
    machine, the notes."""
    yield from _under(back.pick_up.label, back.pick_up.facts)
    yield from _under("Next", back.next_thing)
    yield from _under("Begun", back.begun)
    for one in back.concerns:
        yield from _under(one.label, one.facts)
    yield from _if_any("You wrote", back.own_words)
    yield from (("Last time", fact) for fact in back.last_time.facts)
    yield from _under("Still to do", back.units)
    for row in back.piles:
        yield from _if_any("Put away", row.place and f"{row.n} {row.noun}: {row.place}")
    loose = ", ".join(f"{row.n} {row.noun}" for row in back.piles if not row.place)
    if loose:
        yield from _under("Also there", (f"{loose}.", "Nobody wrote down where."))
    for label, there in back.elsewhere:
        yield from _under(label, there)
    yield from back.machine
    yield from back.notes


def _under(label: str, facts: Sequence[str]) -> Iterator[tuple[str, str]]:
    for place, fact in enumerate(facts):
        yield "" if place else label, fact


def _if_any(label: str, text: str) -> Iterator[tuple[str, str]]:
    if text:
        yield label, text

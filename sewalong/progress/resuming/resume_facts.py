"""Where was I? The facts that matter on coming back, the most pressing first."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import datetime, timedelta

from msgspec import Struct
from msgspec.structs import fields

from sewalong.piecing.method import Hazard, Station
from sewalong.progress.measuring.length_words import plainly
from sewalong.progress.measuring.proof import proof
from sewalong.progress.plan.plan import Plan, StageLine, plan
from sewalong.progress.record.begun_rows import begun_in_words, units_across
from sewalong.progress.record.events import every_kind as e
from sewalong.progress.record.events.event import noun_of
from sewalong.progress.record.events.sessions import is_over, session_length
from sewalong.progress.record.route import JOIN_ROWS, SEW_ROWS, TopStage
from sewalong.progress.record.settings import Settings
from sewalong.progress.record.state import Check, SessionRecord, Standing, State
from sewalong.progress.record.time_words import ago, spoken
from sewalong.progress.resuming.concerns import concerns, missing_in_words
from sewalong.progress.resuming.recount_advice import offer_in_words

AWAY = timedelta(days=1)
"""After this long without a word the return screen comes first."""

RECENT_NOTES = 2
"""Notes and spoilages told on coming back: one screen holds all that matters; `log` has the rest."""


class Fact(Struct, frozen=True):
    """A label of a word or two and one sentence."""

    label: str
    text: str


def was_away(state: State, now: datetime) -> bool:
    """Whether it is time to say where the person was."""
    last = state.sessions[-1] if state.sessions else None
    if last is None:
        return True
    if last.is_open:
        return is_over(last, now)
    return now - last.last_at >= AWAY


def facts(state: State, now: datetime, record: Sequence[e.Recorded] = ()) -> tuple[Fact, ...]:
    """What a person coming back needs, one fact each, in the order to read them.

    What was left unsafe comes first, then the concerns, the oldest first; what does not matter
    for the work still to do is left out. `record` is where pieces at risk are looked up.
    """
    now_plan = plan(state)
    return tuple(
        Fact(label, text)
        for label, text in (
            *_left_open(state, now),
            *_standing(state),
            *_concerns(state, now, record, now_plan),
            *_last_time(state, now),
            *_next(state, now_plan),
            *(("Begun", text) for text in [rows_begun_in_words(state)] if text),
            *_short(state, now_plan),
            *_left(state, now_plan),
            *_count_first(state, now, now_plan),
            *_piles(state),
            *_machine(state, now, now_plan),
            *(("Press", text) for text in press_in_words(state, now_plan)),
            *_notes(state, now),
            *_spoiled(state, now, now_plan),
        )
    )


Facts = Iterator[tuple[str, str]]


def _left_open(state: State, now: datetime) -> Facts:
    last = state.last_session
    if last is None or not last.counts:
        return
    if last.forgotten or (last.is_open and is_over(last, now)):
        asked = _never_asked(state, last)
        if asked:
            yield "Not asked", f"That session was never closed, so nobody asked about the {asked}."
    for thing, answer in last.answers.items():
        if answer != "yes":
            said = "no" if answer == "no" else "you did not look"
            yield "Look first", f"Asked about the {thing} at the end, you said: {said}."


def _never_asked(state: State, session: SessionRecord) -> str:
    hazards = {
        hazard
        for stage_id in session.counts
        if (stage := state.route.stage(stage_id)) is not None
        for hazard in stage.hazards
    }
    things = [
        word
        for hazard, word in (
            (Hazard.IRON, "iron"),
            (Hazard.CUTTER, "blade"),
            (Hazard.NEEDLE, "machine"),
            (Hazard.PINS, "pins"),
        )
        if hazard in hazards
    ]
    return " or the ".join(things)


def _standing(state: State) -> Facts:
    if state.standing is Standing.LAID_ASIDE:
        reason = f": {state.aside_reason}" if state.aside_reason else "."
        yield "Laid aside", f"This quilt is laid aside{reason}"
    elif state.standing is Standing.DONE:
        yield "Done", "This quilt is marked done."


def _concerns(state: State, now: datetime, record: Sequence[e.Recorded], now_plan: Plan) -> Facts:
    for one in concerns(state, record, now, now_plan):
        yield one.label, one.text


def _count_first(state: State, now: datetime, now_plan: Plan) -> Facts:
    offer = offer_in_words(state, now, now_plan)
    if offer:
        yield "Count first", offer


def _last_time(state: State, now: datetime) -> Facts:
    last = state.last_session
    if last is None:
        yield "Last time", "Not begun yet."
        return
    length = spoken(session_length(last, now))
    did = ", ".join(
        f"{n} at {stage.label}" if n > 0 else f"{-n} unpicked at {stage.label}"
        for stage_id, n in last.counts.items()
        if n and (stage := state.route.stage(stage_id)) is not None
    )
    if state.begun and last.counts.get(SEW_ROWS) == 0:
        did = ", ".join(filter(None, (did, "rows begun")))
    text = f"{ago(last.last_at, now).capitalize()}, for {length}: {did or 'nothing counted'}."
    yield "Last time", text


def _next(state: State, now_plan: Plan) -> Facts:
    last = state.last_session
    if last is not None and last.next_step:
        yield "You wrote", last.next_step
    if now_plan.suggestion is not None:
        line = now_plan.line(now_plan.suggestion.stage)
        yield "Next", next_thing(line)
    elif now_plan.complete and state.standing is Standing.IN_PROGRESS:
        yield "Next", "Every stage is done. Mark the quilt done, or change the target."


def next_thing(line: StageLine) -> str:
    """The next thing to do with the hands, in one sentence."""
    stage = line.stage
    to_go = f"{stage.counts.count(line.to_do)} to go"
    of_the_top = isinstance(stage, TopStage) and stage.id != JOIN_ROWS
    if of_the_top or line.from_cloth:
        return f"{stage.label.capitalize()} ({_at(stage.station)}): {to_go}."
    waiting = line.waiting_noun.count(line.waiting)
    verb = "waits" if line.waiting == 1 else "wait"
    return f"{stage.label.capitalize()} ({_at(stage.station)}): {waiting} {verb}; {to_go}."


def rows_begun_in_words(state: State) -> str:
    """What is sewn of rows that are not whole yet; empty when nothing is."""
    return begun_in_words(state.begun, units_across(state.route, state.quilt.method.unit))


def _at(station: str) -> str:
    return f"at the {station}"


def _short(state: State, now_plan: Plan) -> Facts:
    text = shortfall_in_words(state, now_plan)
    if text:
        yield "Short", text


def shortfall_in_words(state: State, now_plan: Plan) -> str:
    """What is short and the ways out; empty when the target can be reached."""
    short = now_plan.shortfall
    if short is None:
        return ""
    unit = state.route.piles[state.quilt.method.unit].noun
    more = " and ".join(
        f"{state.route.piles[pieces.pile].noun.count(pieces.count)} more" for pieces in short.pieces
    )
    spare = f" ({short.spare_after} spare then)" if short.spare_after else ""
    layouts = " or ".join(str(layout) for layout in short.layouts)
    instead = f", or take {layouts}" if layouts else ""
    missing = missing_in_words(state)
    look = f" Look for what is missing first: {missing}." if missing else ""
    return (
        f"{state.target} is {unit.count(short.units)} short. "
        f"Find or buy {more}{spare}{instead}.{look}"
    )


def _piles(state: State) -> Facts:
    unplaced = []
    for pile_id, pile in state.route.piles.items():
        n = state.piles[pile_id]
        place = state.where.get(pile_id)
        if n and place:
            yield "Put away", f"{pile.noun.count(n)} in: {place}."
        elif n:
            unplaced.append(pile.noun.count(n))
    if unplaced:
        yield "Also there", f"{', '.join(unplaced)}; nobody wrote down where."


def _machine(state: State, now: datetime, now_plan: Plan) -> Facts:
    if not any(line.to_do and line.stage.station is Station.MACHINE for line in now_plan.lines):
        return
    if state.settings is not None:
        yield "Machine", settings_in_words(state.settings)
    proved = proved_by(state, now)
    if proved:
        yield "Tested by", proved
    elif state.settings is not None:
        yield "Tested by", "Nothing. Sew three strips and measure before you go on."


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


def check_in_words(state: State, check: Check) -> str:
    """What was measured and what it read: "unit measured 6 3/8 in"."""
    from sewalong.progress.record.measurable import Unmeasurable, read_piece

    unit = state.quilt.unit
    read = " and ".join(dict.fromkeys(plainly(reading, unit) for reading in check.readings))
    try:
        words = read_piece(state.quilt, state.target, check.piece).words
    except Unmeasurable:
        words = check.piece
    return f"{words} measured {read}"


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


def _notes(state: State, now: datetime) -> Facts:
    for note in state.notes[-RECENT_NOTES:]:
        yield "Note", f"{note.text} ({ago(note.at, now)})"


def _spoiled(state: State, now: datetime, now_plan: Plan) -> Facts:
    """Of the last few spoilages those of the last session; all of those few where the quilt is
    short."""
    last = state.last_session
    for spoilage in state.spoilage[-RECENT_NOTES:]:
        recent = last is None or spoilage.at >= last.opened
        if recent or now_plan.shortfall is not None:
            noun = noun_of(state, spoilage.pile)
            when = ago(spoilage.at, now)
            yield "Spoiled", f"{noun.count(spoilage.n)}: {spoilage.reason} ({when})"


def _left(state: State, now_plan: Plan) -> Facts:
    units = now_plan.units
    unit = state.route.piles[state.quilt.method.unit].noun
    spare = f", {units.spare} spare" if units.spare else ""
    yield (
        "Still to do",
        f"{unit.count(units.to_go)} to go of {state.units_wanted} "
        f"({state.target}){spare}. Work done: {now_plan.work_done:.0%}.",
    )

"""Whether a record from outside could have happened: read before it is taken in."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from datetime import datetime

from msgspec import Struct
from msgspec.structs import fields

from sewalong.lengths import LONGEST
from sewalong.progress.acts.decide import NO_SESSION
from sewalong.progress.acts.decide_proof import MOST_READINGS
from sewalong.progress.acts.validation import LONGEST_TEXT, MOST_AT_ONCE, MOST_ROWS
from sewalong.progress.record import events as e
from sewalong.progress.record.fold import opening, step
from sewalong.progress.record.joined_rows import joined, neighbours
from sewalong.progress.record.measurable import Unmeasurable, read_fraction, read_piece
from sewalong.progress.record.recount_rules import can_be_made, recorded_there
from sewalong.progress.record.route import JOIN_ROWS, ROW, road_for
from sewalong.progress.record.state import State
from sewalong.quilt.quilt import Quilt
from sewalong.quilt.rules import a_text

MOST_TEXTS = 100
"""Texts in one event; there are at most a dozen settings, answers or hazards."""

YEARS = range(1900, 9000)
"""Years a clock may show; outside them times cannot be reckoned with in every time zone."""


def audit(quilt: Quilt, record: Sequence[e.Recorded]) -> str | None:
    """None when plan and record hold together, else what is wrong with the first that does not.

    Checked: the method is known, numbers run from 1 without gaps, stages and piles are the
    method's, what was undone could be undone, sessions follow each other, amounts and texts
    are within what can be recorded, and at no moment were there fewer pieces than nothing.
    Whatever `decide` allows passes.
    """
    trouble = _misfit_of_plan(quilt)
    if trouble:
        return trouble
    known = _Known(quilt)
    kept: list[int] = []
    sessions = _Sessions()
    for place, recorded in enumerate(record, start=1):
        event = recorded.event
        if recorded.seq != place:
            return f"event {place} carries the number {_short(recorded.seq)}"
        if isinstance(event, e.Undone):
            if not kept or kept[-1] != event.of:
                return f"event {place} undoes number {_short(event.of)}, which was not the last"
            kept.pop()
        elif isinstance(event, e.UNDOABLE):
            kept.append(place)
        trouble = _misfit_of_time(event) or sessions.misfit(event) or known.misfit(event)
        if trouble:
            return f"event {place} {trouble}"
    return _replay(quilt, record)


def _misfit_of_plan(quilt: Quilt) -> str | None:
    try:
        method = quilt.method
        road_for(quilt, quilt.target)
    except (ValueError, KeyError) as error:
        return f"its plan cannot be worked by this sewalong ({error})"
    for start in quilt.starts:
        if start.pile not in method.starts:
            return f"it begins with a pile “{start.pile}”, and its method does not"
    return None


def _misfit_of_time(event: e.Event) -> str | None:
    times = (event.at, event.ended) if isinstance(event, e.SessionClosed) else (event.at,)
    for time in times:
        if time.tzinfo is None:
            return "has a time without its offset"
        if time.year not in YEARS:
            return f"is dated to the year {time.year}"
    return None


class _Sessions:
    """Sessions are numbered from 1, one at a time; what is between them belongs to none."""

    def __init__(self) -> None:
        self._last = 0
        self._open = False

    def misfit(self, event: e.Event) -> str | None:
        if isinstance(event, e.SessionOpened):
            if self._open or event.session != self._last + 1:
                return f"opens session {_short(event.session)} out of turn"
            self._last, self._open = event.session, True
            return None
        if event.session != (self._last if self._open else NO_SESSION):
            return f"belongs to session {_short(event.session)}, which was not open"
        if isinstance(event, e.SessionClosed):
            if not self._open:
                return "closes a session, and none was open"
            self._open = False
        return None


class _Known:
    """What an event of this quilt may name and how much it may say."""

    def __init__(self, quilt: Quilt) -> None:
        road = road_for(quilt, quilt.target)
        self._quilt = quilt
        self._piles = set(road.piles)
        # Another target may have more rows to join than the plan had.
        self._stages = {stage.id for stage in road.stages} | {JOIN_ROWS}

    def misfit(self, event: e.Event) -> str | None:
        return self._name(event) or self._amount(event) or _misfit_of_texts(event)

    def _name(self, event: e.Event) -> str | None:
        match event:
            case (
                e.Counted(stage=stage)
                | e.Unpicked(stage=stage)
                | e.StageChosen(stage=stage)
                | e.WentOn(stage=stage)
                | e.PressNoted(stage=stage)
                | e.BobbinRanOut(stage=stage)
            ):
                if stage not in self._stages:
                    return f"names a stage “{stage:.40}” this method has not"
            case (
                e.Spoiled(pile=pile)
                | e.Found(pile=pile)
                | e.Recounted(pile=pile)
                | e.PutAway(pile=pile)
            ) if pile not in self._piles:
                return f"names a pile “{pile:.40}” this method has not"
        return None

    def _amount(self, event: e.Event) -> str | None:
        match event:
            case (
                e.Counted(n=n)
                | e.Unpicked(n=n)
                | e.Spoiled(n=n)
                | e.Found(n=n)
                | e.BobbinRanOut(unsewn=n)
            ):
                if not 1 <= n <= MOST_AT_ONCE:
                    return f"counts {_short(n)}; it must be from 1 to {MOST_AT_ONCE}"
            case e.Recounted(counted=n):
                if not 0 <= n <= MOST_AT_ONCE:
                    return f"recounts {_short(n)}; it must be from 0 to {MOST_AT_ONCE}"
            case e.PutAway(n=int(n)) if not 1 <= n <= MOST_AT_ONCE:
                return f"puts {_short(n)} away; it must be from 1 to {MOST_AT_ONCE}"
            case e.RowsJoined(first=first, second=second):
                if not 1 <= first < second <= MOST_ROWS or not neighbours(first, second):
                    return f"joins rows {_short(first)} and {_short(second)}, no neighbours"
            case e.Checked():
                return self._measured(event)
            case e.TargetChanged(rows=rows, columns=columns):
                if not (1 <= rows <= MOST_ROWS and 1 <= columns <= MOST_ROWS):
                    return f"sets a target of {_short(rows)} × {_short(columns)}"
        return None

    def _measured(self, event: e.Checked) -> str | None:
        try:
            read_piece(self._quilt, self._quilt.target, event.piece)
        except Unmeasurable:
            return f"measures “{event.piece:.40}”, which cannot be measured in this quilt"
        if not 1 <= len(event.readings) <= MOST_READINGS:
            return f"has {len(event.readings)} readings; there are from 1 to {MOST_READINGS}"
        for text in (*event.readings, event.expected):
            length = read_fraction(text)
            if length is None or not 0 < length <= LONGEST:
                return f"has a reading “{text:.40}” that is no length"
        return None


def _misfit_of_texts(event: e.Event) -> str | None:
    for i, text in enumerate(_texts(event), start=1):
        if i > MOST_TEXTS:
            return f"says more than {MOST_TEXTS} things"
        try:
            a_text(text, LONGEST_TEXT)
        except ValueError as error:
            return f"has a text that cannot be kept. {str(error).rstrip('.')}"
    return None


def _texts(value: object) -> Iterator[str]:
    if isinstance(value, str):
        yield value
    elif isinstance(value, Mapping):
        for key, held in value.items():
            yield from _texts(key)
            yield from _texts(held)
    elif isinstance(value, tuple):
        for held in value:
            yield from _texts(held)
    elif isinstance(value, Struct):
        for field in fields(value):
            yield from _texts(getattr(value, field.name))


def _replay(quilt: Quilt, record: Sequence[e.Recorded]) -> str | None:
    """What still counts is replayed once; it must hold at every moment."""
    undone = {r.event.of for r in record if isinstance(r.event, e.Undone)}
    state = opening(quilt)
    for recorded in record:
        if recorded.seq in undone:
            continue
        event = recorded.event
        trouble = _misfit_now(state, event)
        if trouble is None:
            state = step(state, recorded)
            trouble = _broken(state)
        if trouble:
            return f"event {recorded.seq} {trouble}"
    return None


def _misfit_now(state: State, event: e.Event) -> str | None:
    match event:
        case e.Counted(stage=stage) | e.Unpicked(stage=stage) | e.BobbinRanOut(stage=stage):
            if state.road.stage(stage) is None:
                return f"counts at {stage}, which there was not at that target"
        case e.RowsJoined(first=first, second=second):
            if state.road.stage(JOIN_ROWS) is None or second > state.target.rows:
                return f"joins rows {first} and {second}, which there were not at that target"
            if joined(state, first, second):
                return f"joins rows {first} and {second} again"
        case e.Recounted():
            return _misfit_of_recount(state, event)
    return None


def _misfit_of_recount(state: State, event: e.Recounted) -> str | None:
    pile, recorded = event.pile, event.recorded
    there = recorded_there(state, pile, event.counted, event.how, event.place)
    if there != recorded:
        return f"recounts a pile of {there} as if it were {_short(recorded)}"
    difference = event.counted - recorded
    if difference < 0 and event.how == "found":
        return "finds fewer pieces than there were"
    if difference > 0 and event.how in ("lost", "spoiled", "missing"):
        return f"says that pieces over are {event.how}"
    if event.how == "made" and (difference == 0 or not can_be_made(state, pile, difference)):
        return "makes pieces at a recount that could not be made"
    return None


def _broken(state: State) -> str | None:
    for pile, n in state.piles.items():
        if n < 0:
            return f"takes more {state.road.piles[pile].noun.many} than there were"
    for stage in state.road.stages:
        if state.done[stage.id] < 0:
            return f"takes apart more than was done at {stage.label}"
    for top in state.road.of_the_top:
        if state.done[top.id] > top.steps:
            return f"does more at {top.label} than there is to do"
    joined = state.done.get(JOIN_ROWS, 0)
    if joined and joined >= state.piles[ROW.id]:
        return "leaves more seams between rows than the rows have"
    return None


def _short(n: int) -> str:
    """A number fit for a sentence: a tampered file can hold one of thousands of digits."""
    return str(n) if abs(n) < 10**9 else "far too many"


def reckonable(time: datetime) -> bool:
    """Whether a time from outside has its offset and a year that can be reckoned with."""
    return time.tzinfo is not None and time.year in YEARS

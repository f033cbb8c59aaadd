"""What happened, in one line of the trade's words."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import fields
from typing import assert_never

from sewalong.cli.when import day_and_time
from sewalong.piecing.method import Noun
from sewalong.progress import events as e
from sewalong.progress.road import Road
from sewalong.progress.state import State
from sewalong.progress.telling import TOOLS, told

_UNKNOWN = Noun("piece", "pieces")


def event_words(event: e.Event, state: State, record: Sequence[e.Recorded] = ()) -> str:
    """The event as a short sentence; `record` is where an undone event is looked up."""
    road = state.road
    match event:
        case e.SessionOpened():
            return f"Session {event.session} opened."
        case e.SessionClosed():
            return _closed(event)
        case e.StageChosen():
            return f"Turned to {_label(road, event.stage)}."
        case e.Counted():
            return f"Counted {_counts(road, event.stage, event.n)}."
        case e.Unpicked():
            return f"Unpicked {_counts(road, event.stage, event.n)}."
        case e.Spoiled():
            return f"Spoiled {_noun(road, event.pile).count(event.n)}: {event.reason}"
        case e.Found():
            return f"{event.how.capitalize()} {_noun(road, event.pile).count(event.n)}."
        case e.Recounted():
            return _recounted(event, _noun(road, event.pile))
        case e.PutAway():
            noun = _noun(road, event.pile)
            pieces = f"the {noun.many}" if event.n is None else noun.count(event.n)
            return f"Put {pieces} away: {event.place}"
        case e.Noted():
            return f"Note: {event.text}"
        case e.SettingsRecorded():
            return f"Settings: {_settings(event.settings)}"
        case e.ToolChanged():
            return TOOLS[event.tool]
        case (
            e.Checked()
            | e.WentOn()
            | e.PressNoted()
            | e.RowsJoined()
            | e.BobbinRanOut()
            | e.Mentioned()
        ):
            return told(state, event, record)
        case e.TargetChanged():
            return f"Target changed to {event.rows} × {event.columns}."
        case e.CautionRead():
            return f"Caution read: {', '.join(event.hazards)}."
        case e.Answered():
            return f"Asked about the {event.question}: {event.answer}."
        case e.LaidAside():
            return f"Laid aside: {event.reason}" if event.reason else "Laid aside."
        case e.PickedUp():
            return "Picked up again."
        case e.MarkedDone():
            return "Marked done."
        case e.Undone():
            return _undone(event, state, record)
        case _:
            assert_never(event)


def _closed(event: e.SessionClosed) -> str:
    if event.forgotten:
        when = day_and_time(event.ended)
        return f"Session {event.session} was never closed; last heard from {when}."
    said = "; ".join(f"{thing}: {answer}" for thing, answer in event.answers.items())
    asked = f" Asked about {said}." if said else ""
    next_step = f" Next time: {event.next_step}" if event.next_step else ""
    return f"Session {event.session} closed.{asked}{next_step}"


def _recounted(event: e.Recounted, noun: Noun) -> str:
    difference = event.counted - event.recorded
    than = "as recorded"
    if difference:
        more = "more" if difference > 0 else "fewer"
        than = f"{abs(difference)} {more} than recorded{_ACCEPTED[event.how]}"
    elif event.how == "lost":
        than = "as recorded; what was missing is given up"
    there = f" in: {event.place}" if event.place else ""
    return f"Recounted: {noun.count(event.counted)}{there}, {than}."


_ACCEPTED: Mapping[e.Accepted, str] = {
    "stands": "",
    "made": ", put right where they are made",
    "found": ", found",
    "lost": ", lost",
    "spoiled": ", spoiled",
    "missing": ", whereabouts unknown",
}


def _undone(event: e.Undone, state: State, record: Sequence[e.Recorded]) -> str:
    for recorded in record:
        if recorded.seq == event.of:
            return f"Undid number {event.of}: {event_words(recorded.event, state)}"
    return f"Undid number {event.of}."


def _settings(settings: e.Settings) -> str:
    return ", ".join(
        f"{'proved by' if field.name == 'proof' else field.name.replace('_', ' ')} {value}"
        for field in fields(settings)
        if (value := getattr(settings, field.name))
    )


def _counts(road: Road, stage_id: str, n: int) -> str:
    stage = road.stage(stage_id)
    return f"{(stage.counts if stage else _UNKNOWN).count(n)} at {_label(road, stage_id)}"


def _label(road: Road, stage_id: str) -> str:
    stage = road.stage(stage_id)
    return stage.label if stage else stage_id


def _noun(road: Road, pile_id: str) -> Noun:
    return road.piles[pile_id].noun if pile_id in road.piles else _UNKNOWN

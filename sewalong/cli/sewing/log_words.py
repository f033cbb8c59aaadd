"""What happened, in one line of the trade's words."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec.structs import fields

from sewalong.progress.record import events as e
from sewalong.progress.record.event_words import told
from sewalong.progress.record.state import State
from sewalong.progress.record.time_words import day_and_time


def event_words(event: e.Event, state: State, record: Sequence[e.Recorded] = ()) -> str:
    """The event as a short sentence, with all it holds; `record` is where an undone event is
    looked up. The screens' shorter words stand in `telling`."""
    match event:
        case e.SessionOpened():
            return f"Session {event.session} opened."
        case e.SessionClosed():
            return _closed(event)
        case e.SettingsRecorded():
            return f"Settings: {_settings(event.settings)}"
        case e.Undone():
            return _undone(event, state, record)
        case _:
            return told(state, event, record)


def _closed(event: e.SessionClosed) -> str:
    if event.forgotten:
        when = day_and_time(event.ended)
        return f"Session {event.session} was never closed; last heard from {when}."
    said = "; ".join(f"{thing}: {answer}" for thing, answer in event.answers.items())
    asked = f" Asked about {said}." if said else ""
    next_step = f" Next time: {event.next_step}" if event.next_step else ""
    return f"Session {event.session} closed.{asked}{next_step}"


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

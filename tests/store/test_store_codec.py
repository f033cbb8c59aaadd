"""Every kind of event goes to JSON and comes back the same; nothing else is let through."""

from __future__ import annotations

import json
from datetime import timedelta, timezone
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from msgspec.structs import replace

from sewalong.progress.record.events import every_kind as e
from sewalong.progress.record.settings import Settings
from sewalong.store.codec import event_from_json, event_to_json
from sewalong.store.faults import StoreFault
from tests.store.shelf import EVENING

KINDS = e.EVENTS
TIMES = st.datetimes(
    timezones=st.integers(-14 * 60, 14 * 60).map(lambda m: timezone(timedelta(minutes=m)))
)
SETTINGS = Settings.__struct_fields__
PARTS = st.dictionaries(
    st.text(),
    st.recursive(
        st.none() | st.integers(-(2**53), 2**53) | st.text(),
        lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.text(), inner, max_size=3),
        max_leaves=5,
    ),
    max_size=3,
)
ANSWERS = st.dictionaries(st.text(), st.text(), max_size=3)


@pytest.mark.parametrize("kind", KINDS, ids=lambda kind: kind.__name__)
@given(data=st.data())
@settings(max_examples=25)
def test_every_kind_comes_back_as_it_went(kind: type[e.Event], data: st.DataObject) -> None:
    parts: dict[str, st.SearchStrategy[Any]] = {"at": TIMES}
    if kind is e.SessionClosed:
        parts |= {"ended": TIMES, "answers": ANSWERS, "next_step": st.text()}
    elif kind is e.PlanChanged:
        parts |= {"was": PARTS, "now": PARTS}
    elif kind is e.SettingsRecorded:
        parts |= {"settings": st.builds(Settings, **dict.fromkeys(SETTINGS, st.text()))}
    event: Any = data.draw(st.builds(kind, **parts))
    text = event_to_json(event)
    again = event_from_json(text)
    assert again == event
    assert type(again) is kind
    assert "\n" not in text


def test_no_two_kinds_have_one_name() -> None:
    names = {kind.__struct_config__.tag for kind in KINDS}
    assert len(names) == len(KINDS)


def test_a_time_keeps_the_offset_it_was_said_with() -> None:
    event = event_from_json(event_to_json(e.PickedUp(at=EVENING, session=0)))
    assert event.at.isoformat() == "2023-11-04T19:00:00+01:00"


COUNTED = e.Counted(at=EVENING, session=1, stage="pair", n=2)

UNREADABLE = {
    "a kind of a later version": {"kind": "dyed"},
    "a key of a later version": {"hand": "which"},
    "a number as text": {"n": "2"},
    "a number with a point": {"n": 2.0},
    "yes for a number": {"n": True},
    "a time as seconds": {"at": 1699120800},
    "no stage": {"stage": None},
}


@pytest.mark.parametrize("change", UNREADABLE.values(), ids=UNREADABLE.keys())
def test_an_event_that_does_not_fit_is_refused(change: dict[str, object]) -> None:
    body = {**json.loads(event_to_json(COUNTED)), **change}
    with pytest.raises(StoreFault, match="nothing was changed"):
        event_from_json(json.dumps(body))


@pytest.mark.parametrize("text", ["", "null", "[]", "{}", '{"kind": "counted"}', "[" * 5000])
def test_what_is_no_event_at_all_is_refused(text: str) -> None:
    with pytest.raises(StoreFault, match="cannot be read"):
        event_from_json(text)


def test_a_missing_key_is_refused() -> None:
    for key in ("at", "session", "stage", "n", "kind"):
        body = json.loads(event_to_json(COUNTED))
        del body[key]
        with pytest.raises(StoreFault, match="cannot be read"):
            event_from_json(json.dumps(body))


@pytest.mark.parametrize(
    "event",
    [
        e.Noted(at=EVENING, session=1, text="half a \ud800 character"),
        e.Noted(at=EVENING.replace(tzinfo=timezone(timedelta(seconds=30))), session=1, text="x"),
        replace(COUNTED, n="two"),
        replace(COUNTED, n=2.5),
        e.ToolChanged(at=EVENING, session=1, tool="presser foot"),  # type: ignore[arg-type]
        e.Found(at=EVENING, session=1, pile="square", n=1, how="stolen"),  # type: ignore[arg-type]
    ],
    ids=["half a character", "odd offset", "text", "half", "tool", "how"],
)
def test_what_could_not_be_read_back_is_not_written(event: e.Event) -> None:
    """One unreadable line would cost the whole quilt."""
    with pytest.raises(StoreFault, match="cannot be kept"):
        event_to_json(event)

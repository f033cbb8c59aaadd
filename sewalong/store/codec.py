"""Events as JSON and back. Both ways are strict: what could not be read back is not written."""

from __future__ import annotations

import json
from collections.abc import Mapping
from functools import cache
from typing import Any, get_args, get_type_hints

import msgspec

from sewalong.progress.record.events import Event
from sewalong.store.faults import StoreFault

_KINDS: Mapping[str, type[Event]] = {
    get_args(get_type_hints(kind)["kind"])[0]: kind for kind in get_args(Event)
}


@cache
def _decoder(kind: str) -> msgspec.json.Decoder[Any]:
    return msgspec.json.Decoder(_KINDS[kind])


def event_to_json(event: Event) -> str:
    """One event as one line of JSON; times are ISO text with their offset.

    Raises StoreFault when the line would not give the same event again: a record that
    cannot be read back would cost the whole quilt.
    """
    try:
        text = msgspec.json.encode(event).decode()
        same = _decoder(event.kind).decode(text) == event
    except (ValueError, KeyError, TypeError):
        same = False
    if not same:
        raise StoreFault(
            f"What was to be recorded ({event.kind}) has something in it that cannot be kept, "
            "such as half a character. Nothing was recorded; write it again."
        )
    return text


def event_from_json(text: str) -> Event:
    """The event in `text`; raises StoreFault when it is not one this version knows."""
    kind = _kind_of(text)
    if kind not in _KINDS:
        raise _unreadable("kind", f"there is no kind {kind!r:.40}" if kind else "it has none")
    try:
        event: Event = _decoder(kind).decode(text)
    except ValueError as error:
        raise _unreadable("as a whole", f"{error!s:.200}") from error
    return event


def _kind_of(text: str) -> str:
    try:
        plain = json.loads(text)
    except (ValueError, RecursionError) as error:
        raise _unreadable("as a whole", f"{error!s:.200}") from error
    kind = plain.get("kind") if isinstance(plain, dict) else None
    return kind if isinstance(kind, str) else ""


def _unreadable(where: str, why: str) -> StoreFault:
    return StoreFault(
        f"An event cannot be read ({where}: {why}). "
        "It may come from a newer sewalong; nothing was changed."
    )

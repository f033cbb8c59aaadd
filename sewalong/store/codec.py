"""Events as JSON and back. Both ways are strict: what could not be read back is not written."""

from __future__ import annotations

import json
import warnings
from collections.abc import Mapping
from functools import cache
from typing import Any, get_args

from pydantic import ConfigDict, TypeAdapter, ValidationError

from sewalong.progress.events import Event
from sewalong.store.faults import StoreFault

_KINDS: Mapping[str, type[Event]] = {
    kind.__dataclass_fields__["kind"].default: kind for kind in get_args(Event)
}


@cache
def _adapter(kind: str) -> TypeAdapter[Any]:
    """The reader and writer of one kind; made when first met, as all of them cost start-up time."""
    # These settings are refused for a bare dataclass, but taken for a choice: so a choice of one.
    shape: Any = _KINDS[kind]
    return TypeAdapter(shape | None, config=ConfigDict(strict=True, extra="forbid"))


def event_to_json(event: Event) -> str:
    """One event as one line of JSON; times are ISO text with their offset.

    Raises StoreFault when the line would not give the same event again: a record that
    cannot be read back would cost the whole quilt.
    """
    try:
        # A value of the wrong type only makes a warning; reading it back tells for certain.
        with warnings.catch_warnings():
            warnings.simplefilter("ignore")
            text = _adapter(event.kind).dump_json(event).decode()
        same = _adapter(event.kind).validate_json(text) == event
    except (ValueError, KeyError):
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
        event: Event = _adapter(kind).validate_json(text)
    except ValidationError as error:
        first = error.errors(include_url=False)[0]
        where = ".".join(str(part) for part in first["loc"])[:80]
        raise _unreadable(where, f"{first['msg']:.200}") from error
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

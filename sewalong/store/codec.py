"""Events as JSON and back. Both ways are strict: what could not be read back is not written."""

from __future__ import annotations

import warnings
from functools import cache
from typing import Annotated

from pydantic import ConfigDict, Field, TypeAdapter, ValidationError

from sewalong.progress.events import Event
from sewalong.store.faults import StoreFault


@cache
def _adapter() -> TypeAdapter[Event]:
    return TypeAdapter(
        Annotated[Event, Field(discriminator="kind")],
        config=ConfigDict(strict=True, extra="forbid"),
    )


def event_to_json(event: Event) -> str:
    """One event as one line of JSON; times are ISO text with their offset.

    Raises StoreFault when the line would not give the same event again: a record that
    cannot be read back would cost the whole quilt.
    """
    try:
        # A value of the wrong type only makes a warning; reading it back tells for certain.
        with warnings.catch_warnings():
            warnings.simplefilter("ignore")
            text = _adapter().dump_json(event).decode()
        same = _adapter().validate_json(text) == event
    except ValueError:
        same = False
    if not same:
        raise StoreFault(
            f"What was to be recorded ({event.kind}) has something in it that cannot be kept, "
            "such as half a character. Nothing was recorded; write it again."
        )
    return text


def event_from_json(text: str) -> Event:
    """The event in `text`; raises StoreFault when it is not one this version knows."""
    try:
        return _adapter().validate_json(text)
    except ValidationError as error:
        first = error.errors(include_url=False)[0]
        where = ".".join(str(part) for part in first["loc"])[:80]
        raise StoreFault(
            f"An event cannot be read ({where}: {first['msg']:.200}). "
            "It may come from a newer sewalong; nothing was changed."
        ) from error

"""Events as JSON and back. Reading is strict: a record that does not fit is refused."""

from __future__ import annotations

from functools import cache
from typing import Annotated

from pydantic import Field, TypeAdapter, ValidationError

from sewalong.progress.events import Event
from sewalong.store.faults import StoreFault


@cache
def _adapter() -> TypeAdapter[Event]:
    return TypeAdapter(Annotated[Event, Field(discriminator="kind")])


def event_to_json(event: Event) -> str:
    """One event as one line of JSON; times are ISO text with their offset."""
    return _adapter().dump_json(event).decode()


def event_from_json(text: str) -> Event:
    """The event in `text`; raises StoreFault when it is not one this version knows."""
    try:
        return _adapter().validate_json(text)
    except ValidationError as error:
        first = error.errors(include_url=False)[0]
        where = ".".join(str(part) for part in first["loc"])
        raise StoreFault(
            f"An event cannot be read ({where}: {first['msg']}). "
            "It may come from a newer sewalong; nothing was changed."
        ) from error

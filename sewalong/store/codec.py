"""Events as JSON and back. Both ways are strict: what could not be read back is not written."""

from __future__ import annotations

import re
from functools import cache
from typing import Any, Union

import msgspec

from sewalong.misfit import dotted, misfit
from sewalong.progress.record.events.every_kind import EVENTS, Event
from sewalong.store.faults import StoreFault


class Unreadable(StoreFault):
    """An event that this sewalong cannot read, and `why`.

    `well_formed`: it is JSON, so that a newer sewalong may know what to make of it.
    """

    def __init__(self, why: str, *, well_formed: bool) -> None:
        super().__init__(f"An event cannot be read ({why}); nothing was changed.")
        self.why = why
        self.well_formed = well_formed


_encoder = msgspec.json.Encoder()


@cache
def _decoder() -> msgspec.json.Decoder[Any]:
    """The one reader of all kinds; made when first needed, as it looks at every one."""
    return msgspec.json.Decoder(Union[EVENTS])  # noqa: UP007  # from a tuple of kinds


def event_to_json(event: Event) -> str:
    """One event as one line of JSON, its kind last; times are ISO text with their offset.

    Raises StoreFault when the line would not give the same event again: a record that
    cannot be read back would cost the whole quilt.
    """
    try:
        text = _encoder.encode(event).decode()
        same = _decoder().decode(text) == event
    except (ValueError, TypeError):
        same = False
    if not same:
        raise StoreFault(
            f"What was to be recorded ({event.kind}) has something in it that cannot be kept, "
            "such as half a character. Nothing was recorded; write it again."
        )
    # The library writes the kind first; in every record so far it stands last.
    kind = f'"kind":"{event.kind}"'
    return f"{{{text[len(kind) + 2 : -1]},{kind}}}"


def event_from_json(text: str | bytes) -> Event:
    """The event in `text`; raises Unreadable when it is not one this version knows."""
    try:
        event: Event = _decoder().decode(text)
    except (ValueError, TypeError, RecursionError) as error:
        well_formed = isinstance(error, msgspec.ValidationError)
        raise Unreadable(_plainly(error), well_formed=well_formed) from error
    return event


_TYPES = {
    "int": "a whole number",
    "float": "a number with a point",
    "str": "a text",
    "bool": "yes or no",
    "array": "a list",
    "object": "a table of keys and values",
    "null": "nothing",
    "datetime": "a time",
}


def _plainly(error: Exception) -> str:
    """What the reader said, in plain words: the key first, then what should stand there."""
    if not isinstance(error, msgspec.ValidationError):
        return str(error)[:200]
    found = misfit(error)
    key, what = dotted(found.path), found.why
    if unfit := re.fullmatch(r"Expected `([a-z]+)(?: \| [a-z]+)?`, got `([a-z]+)`", what):
        should, stands = (_TYPES.get(name, name) for name in unfit.groups())
        what = f"it should be {should} and is {stands}"
    elif found.missing is not None:
        key, what = found.missing, "it is missing"
    elif found.unknown is not None:
        key, what = found.unknown, "nothing of this name is known"
    elif "datetime" in what:
        what = "it should be a time with its offset"
    elif key == "kind":
        what = what.replace("Invalid value", "there is no kind")
    return f"{key[:80]}: {what[:200]}" if key else what[:200]

"""One quilt in one readable JSON file, out and in again without loss."""

from __future__ import annotations

import json
import re
from collections.abc import Mapping
from datetime import datetime
from typing import Any, NoReturn

from msgspec import Struct
from msgspec.structs import replace

from sewalong.progress.record.auditing.audit import audit, reckonable
from sewalong.progress.record.events.event import Recorded
from sewalong.progress.record.events.replanning import PlanChanged
from sewalong.progress.record.fold import fold
from sewalong.quilt.json_codec import quilt_from_dict, quilt_to_dict
from sewalong.quilt.quilt import Quilt
from sewalong.quilt.rules import a_name
from sewalong.store.codec import event_from_json, event_to_json
from sewalong.store.faults import StoreFault
from sewalong.store.library import Library, Loaded, Shelved

FORMAT = "sewalong quilt"
VERSION = 1

LONGEST_NUMBER = 40
"""Characters of one number. What the program writes has ten at most."""

DEEPEST = 20
"""Lists and tables within each other. What the program writes goes seven deep."""

_KEYS = ("format", "version", "key", "started", "quilt", "events")
_KEY = re.compile(r"[0-9A-Za-z-]{1,64}")


class Archive(Struct, frozen=True):
    """What a file held: the quilt's key anywhere, when it began, its plan and its record."""

    key: str
    started: datetime
    quilt: Quilt
    record: tuple[Recorded, ...]


def to_text(loaded: Loaded) -> str:
    """The file for a quilt: its plan, then its events in order, indented for reading."""
    content = {
        "format": FORMAT,
        "version": VERSION,
        "key": loaded.entry.key,
        "started": loaded.entry.started.isoformat(),
        "quilt": quilt_to_dict(loaded.quilt),
        "events": [
            {"seq": recorded.seq, **json.loads(event_to_json(recorded.event))}
            for recorded in loaded.record
        ],
    }
    return json.dumps(content, ensure_ascii=False, indent=1) + "\n"


def from_text(text: str) -> Archive:
    """Read such a file and check that its record holds together; raises StoreFault if not.

    Strict: a key that is unknown, missing or there twice, a number that is none, and a
    record that could not have happened are all refused, and then nothing was taken in.
    """
    content = _read(text)
    try:
        archive = Archive(
            key=_key(content["key"]),
            started=_started(content["started"]),
            quilt=quilt_from_dict(content["quilt"]),
            record=_record(content["events"]),
        )
    except ValueError as error:
        raise StoreFault(
            f"The exported quilt cannot be read: {error} Nothing was taken in."
        ) from error
    _refuse_method(archive.quilt)
    trouble = audit(archive.quilt, archive.record)
    if trouble:
        raise StoreFault(f"The record does not hold together: {trouble}. Nothing was taken in.")
    return archive


def _refuse_method(quilt: Quilt) -> None:
    """Raises StoreFault unless the method file that came with the quilt, if one did, is one."""
    if quilt.method_text is None:
        return
    from sewalong.quilt.file.faults import MethodFileFaults
    from sewalong.quilt.file.method_file import read_method

    try:
        read_method("its method", quilt.method_text)
    except MethodFileFaults as error:
        raise StoreFault(
            f"The method that came with the quilt has a fault: {error.faults[0]} "
            "Nothing was taken in."
        ) from error


def take_in(
    library: Library, archive: Archive, now: datetime, *, name: str | None = None
) -> Shelved:
    """Put an archive on the shelf; under another `name` it becomes a quilt of its own."""
    quilt, record = archive.quilt, archive.record
    if name is not None:
        try:
            name = a_name(name.strip())
        except ValueError as error:
            raise StoreFault(f"The quilt cannot be called that. {error}") from error
        quilt, record = _called(name, quilt, record)
    now_called = fold(quilt, record).quilt.name
    return library.add(
        quilt,
        now,
        key=archive.key if name is None else None,
        events=[recorded.event for recorded in record],
        started=archive.started,
        called=now_called if now_called != quilt.name else None,
    )


def _called(
    name: str, quilt: Quilt, record: tuple[Recorded, ...]
) -> tuple[Quilt, tuple[Recorded, ...]]:
    """The quilt and its record as if the name it has now had been `name` whenever it had it.

    Of the names it had at other times, one that is the same changes places with that, so that what
    was two names stays two. Undo takes back what it did before, and no act is added.
    """
    had = fold(quilt, record).quilt.name
    other = {had: name, name: had}

    def renamed(parts: dict[str, Any]) -> dict[str, Any]:
        return parts | {"name": other.get(parts["name"], parts["name"])}

    def told(recorded: Recorded) -> Recorded:
        event = recorded.event
        if not isinstance(event, PlanChanged) or "name" not in event.now:
            return recorded
        event = replace(event, was=renamed(event.was), now=renamed(event.now))
        return Recorded(recorded.seq, event)

    begun_as = replace(quilt, name=other.get(quilt.name, quilt.name))
    return begun_as, tuple(map(told, record))


def _read(text: str) -> Mapping[str, object]:
    """The outermost keys of the file, exactly those there should be."""
    try:
        # A byte order mark is what some editors leave in front.
        content = json.loads(
            text.removeprefix("\ufeff"),
            object_pairs_hook=_once,
            parse_int=_whole,
            parse_float=_decimal,
            parse_constant=_no_number,
        )
        _refuse_if_deep(content)
    except json.JSONDecodeError as error:
        raise StoreFault(
            f"This is not a quilt exported by sewalong, or not the whole of it: line "
            f"{error.lineno:,} is not as it was written. Nothing was taken in."
        ) from error
    except ValueError as error:
        raise StoreFault(
            f"This is not a quilt exported by sewalong: {error}. Nothing was taken in."
        ) from error
    except RecursionError:
        raise StoreFault(
            f"This is not a quilt exported by sewalong: {_TOO_DEEP}. Nothing was taken in."
        ) from None
    if not isinstance(content, dict) or content.get("format") != FORMAT:
        raise StoreFault(
            f"This is not a quilt exported by sewalong (its format is not “{FORMAT}”). "
            "Nothing was taken in."
        )
    version = content.get("version")
    if type(version) is not int or version != VERSION:
        raise StoreFault(
            f"This quilt was exported in version {version!s:.20} of the file; "
            f"this sewalong reads version {VERSION}. Install the sewalong that wrote it."
        )
    for key in _KEYS:
        if key not in content:
            raise StoreFault(
                f"The exported quilt lacks “{key}”. It may be cut short. Nothing was taken in."
            )
    for key in content:
        if key not in _KEYS:
            raise StoreFault(
                f"The exported quilt has something unknown in it ({key!a:.40}). "
                "Nothing was taken in. Export it again with the sewalong it was exported with, "
                "or take it in there."
            )
    return content


def _once(pairs: list[tuple[str, object]]) -> dict[str, object]:
    table: dict[str, object] = {}
    for key, value in pairs:
        if key in table:
            raise ValueError(f"the key {key!a:.40} stands in it twice in one place")
        table[key] = value
    return table


_TOO_DEEP = f"lists and tables stand more than {DEEPEST} deep within each other"


def _refuse_if_deep(content: object) -> None:
    level = [content] if isinstance(content, dict | list) else []
    for _ in range(DEEPEST):
        inner = (held.values() if isinstance(held, dict) else held for held in level)
        level = [one for held in inner for one in held if isinstance(one, dict | list)]
        if not level:
            return
    raise ValueError(_TOO_DEEP)


def _whole(written: str) -> int:
    return int(_short_enough(written))


def _decimal(written: str) -> float:
    return float(_short_enough(written))


def _short_enough(written: str) -> str:
    if len(written) > LONGEST_NUMBER:
        raise ValueError(f"a number in it has {len(written):,} digits")
    return written


def _no_number(word: str) -> NoReturn:
    raise ValueError(f"it says {word} where a number should be")


def _key(value: object) -> str:
    if not isinstance(value, str) or _KEY.fullmatch(value) is None:
        raise ValueError("Its key is not a short text of letters and digits.")
    return value


def _started(value: object) -> datetime:
    try:
        started = datetime.fromisoformat(value) if isinstance(value, str) else None
    except ValueError:
        started = None
    if started is None or not reckonable(started):
        raise ValueError("Its start is not a time with an offset from UTC.")
    return started


def _record(value: object) -> tuple[Recorded, ...]:
    if not isinstance(value, list):
        raise ValueError("Its events are not a list.")
    return tuple(_recorded(entry) for entry in value)


def _recorded(entry: object) -> Recorded:
    if not isinstance(entry, dict) or type(entry.get("seq")) is not int:
        raise ValueError("An event has no number.")
    body = {key: value for key, value in entry.items() if key != "seq"}
    return Recorded(entry["seq"], event_from_json(json.dumps(body)))

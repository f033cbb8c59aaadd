"""One quilt in one readable JSON file, out and in again without loss."""

from __future__ import annotations

import json
from dataclasses import dataclass, replace
from datetime import datetime
from typing import Any

from sewalong.progress.audit import audit
from sewalong.progress.events import Recorded
from sewalong.quilt.plain import quilt_from_dict, quilt_to_dict
from sewalong.quilt.quilt import Quilt
from sewalong.store.codec import event_from_json, event_to_json
from sewalong.store.faults import StoreFault
from sewalong.store.library import Library, Loaded, Shelved

FORMAT = "sewalong quilt"
VERSION = 1


@dataclass(frozen=True, slots=True)
class Archive:
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
    """Read such a file and check that its record holds together; raises StoreFault if not."""
    try:
        content = json.loads(text)
    except (ValueError, RecursionError) as error:
        raise StoreFault(f"This is not a quilt exported by sewalong: {error}.") from error
    if not isinstance(content, dict) or content.get("format") != FORMAT:
        raise StoreFault(
            f"This is not a quilt exported by sewalong (its format is not “{FORMAT}”)."
        )
    if content.get("version") != VERSION:
        raise StoreFault(
            f"This quilt was exported in version {content.get('version')!s:.20} of the file; "
            f"this sewalong reads version {VERSION}. Install the sewalong that wrote it."
        )
    try:
        archive = Archive(
            key=_key(content["key"]),
            started=datetime.fromisoformat(content["started"]),
            quilt=quilt_from_dict(content["quilt"]),
            record=tuple(_recorded(entry) for entry in content["events"]),
        )
    except KeyError as error:
        raise StoreFault(f"The exported quilt lacks {error}. It may be cut short.") from error
    except (ValueError, TypeError) as error:
        raise StoreFault(f"The exported quilt cannot be read: {error}") from error
    if archive.started.tzinfo is None:
        raise StoreFault("The exported quilt cannot be read: its start has no offset from UTC.")
    trouble = audit(archive.quilt, archive.record)
    if trouble:
        raise StoreFault(f"The record does not hold together: {trouble}. Nothing was taken in.")
    return archive


def take_in(
    library: Library, archive: Archive, now: datetime, *, name: str | None = None
) -> Shelved:
    """Put an archive on the shelf; under another `name` it becomes a quilt of its own."""
    quilt = archive.quilt if name is None else replace(archive.quilt, name=name)
    return library.add(
        quilt,
        now,
        key=archive.key if name is None else None,
        events=[recorded.event for recorded in archive.record],
        started=archive.started,
    )


def _key(value: Any) -> str:
    if not isinstance(value, str) or not 1 <= len(value) <= 64:
        raise ValueError("its key is not a short text")
    return value


def _recorded(entry: Any) -> Recorded:
    if not isinstance(entry, dict) or not isinstance(entry.get("seq"), int):
        raise ValueError("an event has no number")
    body = {key: value for key, value in entry.items() if key != "seq"}
    return Recorded(entry["seq"], event_from_json(json.dumps(body)))

"""Marks that show what was changed or lost: one for each plan, one for each event.

The mark of an event is a CRC-32 of the event that goes on from the mark of the one before it, and
the first goes on from the mark of the plan: so each vouches for all before it. CRC-32 is a
published checksum (ITU-T V.42, and `zlib`) that reads the same for ever, finds every damage of up
to 32 bits in a row and all but one in four thousand million others, and costs half a microsecond
an event. It holds against disks and synchronising programs, not against somebody who would deceive.
"""

from __future__ import annotations

import sqlite3
from collections.abc import Iterable
from zlib import crc32

PLANS = (
    "SELECT id, CAST(key AS BLOB), CAST(name AS BLOB), CAST(plan AS BLOB), CAST(started AS BLOB)"
)
"""A plan as its mark is worked out of; `FROM quilt` and which follow."""

EVENTS = "SELECT seq, CAST(at || session || kind AS BLOB), CAST(body AS BLOB) FROM event"
"""An event as its mark is worked out of, and with its number."""


def mark_of_plan(*parts: bytes | None) -> int:
    """The mark of a plan: of its key, name, plan and start, as bytes."""
    mark = 0
    for part in parts:
        mark = crc32(b"\0", crc32(part or b"", mark))
    return mark


def mark_of_event(columns: bytes | None, body: bytes | None, before: int) -> int:
    """The mark of an event whose predecessor, or plan, has the mark `before`."""
    return crc32(body or b"", crc32(columns or b"", before))


def columns_of(at: str, session: int, kind: str) -> bytes:
    """The columns of an event beside its body, as `EVENTS` reads them."""
    return f"{at}{session}{kind}".encode()


def marks_after(before: int, events: Iterable[tuple[bytes | None, bytes | None]]) -> list[int]:
    """The marks of `events`, each its columns and its body, behind the mark `before`."""
    marks = []
    for columns, body in events:
        before = mark_of_event(columns, body, before)
        marks.append(before)
    return marks


def mark_all(connection: sqlite3.Connection) -> None:
    """Mark every plan and every event there is, as they are."""
    for id, *parts in connection.execute(f"{PLANS} FROM quilt").fetchall():
        mark = mark_of_plan(*parts)
        connection.execute(PLAN_MARK, (id, mark))
        rows = connection.execute(f"{EVENTS} WHERE quilt = ? ORDER BY seq", (id,)).fetchall()
        marks = marks_after(mark, (row[1:] for row in rows))
        connection.executemany(
            EVENT_MARK, [(id, row[0], mark) for row, mark in zip(rows, marks, strict=True)]
        )


PLAN_MARK = "INSERT INTO plan_mark (quilt, mark) VALUES (?, ?)"

EVENT_MARK = "INSERT INTO event_mark (quilt, seq, mark) VALUES (?, ?, ?)"


def sealed(text: str) -> str:
    """`text` with its checksum before it: what is derived has no place in the chain."""
    return f"{crc32(text.encode()):08x}{text}"


def unsealed(kept: bytes | None) -> str | None:
    """The text `sealed` gave as `kept`, read as bytes; None where that is not what it gave."""
    if kept is None or kept[:8] != b"%08x" % crc32(kept[8:]):
        return None
    return kept[8:].decode(errors="replace")

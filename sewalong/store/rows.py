"""Writing quilts and events as rows of the database, each with its mark.

The list of quilts does without it, and so without all that an event knows.
"""

from __future__ import annotations

from collections.abc import Sequence
from datetime import datetime
from sqlite3 import Connection

from sewalong import __version__
from sewalong.progress.record.events.event import Event, Recorded
from sewalong.quilt.json_codec import quilt_to_json
from sewalong.quilt.quilt import Quilt
from sewalong.store.chain import (
    EVENT_MARK,
    PLAN_MARK,
    columns_of,
    mark_of_plan,
    marks_after,
    sealed,
)
from sewalong.store.codec import event_to_json
from sewalong.store.database import Database
from sewalong.store.faults import Stale, StoreFault
from sewalong.store.shelved import CALLED, SUMMARY, TOUCHED, Shelved, damaged_quilt, folded


def add(
    db: Database,
    quilt: Quilt,
    now: datetime,
    *,
    key: str | None = None,
    events: Sequence[Event] = (),
    started: datetime | None = None,
    called: str | None = None,
    touched: bool = True,
) -> Shelved:
    """Put a new quilt on the shelf, with a record if it brings one, in one transaction.

    `called` is its name now, where its record gave it another than it began with; without a record
    it is the one last `touched`, unless nobody touched it.
    """
    name = called or quilt.name
    key = key or _new_key()
    begun = started or now
    # Put into words before the lock is taken, so that no other window waits for it.
    bodies = [event_to_json(event) for event in events]
    plan = quilt_to_json(quilt).decode()
    if damage := db.damage(anywhere=False):
        raise damage
    db.back_up_before(now.date())
    with db.writing() as connection:
        if connection.execute("SELECT 1 FROM quilt WHERE key = ?", (key,)).fetchone():
            raise StoreFault(f"“{name}” is here already. Nothing was changed.")
        _refuse_name_taken(connection, name, db)
        cursor = connection.execute(
            "INSERT INTO quilt (key, name, plan, started) VALUES (?, ?, ?, ?)",
            (key, quilt.name, plan, begun.isoformat()),
        )
        id = int(cursor.lastrowid or 0)
        connection.executemany(_INSERT, _rows(id, 0, events, bodies))
        if db.has_derived:
            parts = (part.encode() for part in (key, quilt.name, plan, begun.isoformat()))
            mark = mark_of_plan(*parts)
            connection.execute(PLAN_MARK, (id, mark))
            connection.executemany(EVENT_MARK, _marks(id, 0, mark, events, bodies))
        if touched and not events and db.has_derived:
            connection.execute(TOUCHED, (id,))
        if called is not None:
            connection.execute(CALLED, (id, called))
    last_at = events[-1].at if events else begun
    return Shelved(id, key, name, begun, last_at)


def _refuse_name_taken(
    connection: Connection, name: str, db: Database, *, besides: int | None = None
) -> None:
    """Raise StoreFault where a quilt other than `besides` is called that."""
    names = connection.execute(_NAMES if db.has_derived else "SELECT id, name FROM quilt")
    if any(folded(name) == folded(str(there)) for id, there in names if id != besides):
        # Undo can bring a name back, and then no other name of this one would do.
        instead = "Give this one another name, or open that one."
        if besides is not None:
            instead = "Choose another name, or give that one another first."
        raise StoreFault(f"There is a quilt called “{name}” already. {instead}")


def append(
    db: Database,
    entry: Shelved,
    after: int,
    events: Sequence[Event],
    summary: str = "",
    *,
    called: str | None = None,
) -> tuple[Recorded, ...]:
    """Write `events` after number `after`, all or none; they are on disk on return.

    `summary` says how the quilt stands after them, and `called` its name where they changed it.
    Raises Stale when the record has gone on past `after` meanwhile, and StoreFault where another
    quilt has that name.
    """
    bodies = [event_to_json(event) for event in events]
    if events:
        db.back_up_before(events[0].at.date())
    with db.writing() as connection:
        (last,) = connection.execute(
            "SELECT COALESCE(MAX(seq), 0) FROM event WHERE quilt = ?", (entry.id,)
        ).fetchone()
        if not connection.execute("SELECT 1 FROM quilt WHERE id = ?", (entry.id,)).fetchone():
            raise StoreFault(f"“{entry.name}” is no longer in the record. Look at the list again.")
        if last != after:
            raise Stale("The record went on in another window.")
        connection.executemany(_INSERT, _rows(entry.id, after, events, bodies))
        if db.has_derived:
            mark = _last_mark(connection, entry, after)
            connection.executemany(EVENT_MARK, _marks(entry.id, after, mark, events, bodies))
            connection.execute(TOUCHED, (entry.id,))
        if called is not None:
            _refuse_name_taken(connection, called, db, besides=entry.id)
            connection.execute(CALLED, (entry.id, called))
        if summary and db.has_derived:
            last = after + len(events)
            connection.execute(SUMMARY, (entry.id, last, __version__, sealed(summary)))
    return tuple(Recorded(after + i, event) for i, event in enumerate(events, start=1))


def _last_mark(connection: Connection, entry: Shelved, last: int) -> int:
    """The mark of event `last`, or of the plan; raises Damaged where it is not the last mark."""
    sql = "SELECT seq, mark FROM event_mark WHERE quilt = ? ORDER BY seq DESC LIMIT 1"
    row = connection.execute(sql, (entry.id,)).fetchone()
    if row is None:
        sql = "SELECT 0, mark FROM plan_mark WHERE quilt = ?"
        row = connection.execute(sql, (entry.id,)).fetchone()
    if row is None or row[0] != last or not isinstance(row[1], int):
        raise damaged_quilt(entry, f"events after number {last} are missing")
    return row[1]


def _marks(
    quilt: int, after: int, before: int, events: Sequence[Event], bodies: Sequence[str]
) -> list[tuple[int, int, int]]:
    written = (
        (columns_of(event.at.isoformat(), event.session, event.kind), body.encode())
        for event, body in zip(events, bodies, strict=True)
    )
    marks = marks_after(before, written)
    return [(quilt, after + i, mark) for i, mark in enumerate(marks, start=1)]


def _new_key() -> str:
    # Loaded only for a new quilt: it costs a good part of a start.
    from uuid import uuid4

    return uuid4().hex


_NAMES = "SELECT q.id, COALESCE(c.name, q.name) FROM quilt q LEFT JOIN called c ON c.quilt = q.id"

_INSERT = "INSERT INTO event (quilt, seq, at, session, kind, body) VALUES (?, ?, ?, ?, ?, ?)"


def _rows(
    quilt: int, after: int, events: Sequence[Event], bodies: Sequence[str]
) -> list[tuple[int, int, str, int, str, str]]:
    return [
        (quilt, after + i, event.at.isoformat(), event.session, event.kind, body)
        for i, (event, body) in enumerate(zip(events, bodies, strict=True), start=1)
    ]

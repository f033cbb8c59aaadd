"""Quilts and events as rows of the database: what reading and writing one quilt takes.

The list of quilts does without it, and so without all that an event knows.
"""

from __future__ import annotations

from collections.abc import Sequence
from datetime import datetime
from itertools import zip_longest
from sqlite3 import Connection
from typing import Any

from sewalong import __version__
from sewalong.piecing.catalogue import remember
from sewalong.piecing.kept_method import fingerprint, method_from_json, method_to_json
from sewalong.progress.record.event import Event, Recorded
from sewalong.quilt.json_codec import quilt_from_json, quilt_to_json
from sewalong.quilt.quilt import Quilt
from sewalong.store.chain import (
    EVENT_MARK,
    EVENTS,
    PLAN_MARK,
    PLANS,
    columns_of,
    mark_of_event,
    mark_of_plan,
    marks_after,
    sealed,
    unsealed,
)
from sewalong.store.codec import Unreadable, event_from_json, event_to_json
from sewalong.store.database import Database
from sewalong.store.faults import WAY_OUT, Damaged, Stale, StoreFault
from sewalong.store.shelved import CALLED, SUMMARY, TOUCHED, Shelved, folded, keep


def add(
    db: Database,
    quilt: Quilt,
    now: datetime,
    *,
    key: str | None = None,
    events: Sequence[Event] = (),
    started: datetime | None = None,
    called: str | None = None,
) -> Shelved:
    """Put a new quilt on the shelf, with a record if it brings one, in one transaction.

    `called` is its name now, where its record gave it another than it began with.
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
        if not events and db.has_derived:
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
        raise StoreFault(
            f"There is a quilt called “{name}” already. "
            "Give this one another name, or open that one."
        )


def load(db: Database, entry: Shelved) -> tuple[Quilt, tuple[Recorded, ...], str]:
    """The quilt, its record, and what is wrong with the event after it; empty where it is whole.

    Raises StoreFault where the plan cannot be read.
    """
    rows = db.readable_rows(f"{PLANS} FROM quilt WHERE id = ?", entry.id)
    mark = _plan_mark(db, entry)
    if not rows:
        if mark is not None:
            raise _damaged(entry, "its plan is missing")
        raise StoreFault(f"“{entry.name}” is no longer in the record. Look at the list again.")
    parts = rows[0][1:]
    if db.has_derived and mark != mark_of_plan(*parts):
        raise _damaged(entry, "its plan is not as it was written")
    try:
        quilt = quilt_from_json(str(parts[2], "utf-8"))
        # A method that this version has not would otherwise come to light half way.
        _know_method(db, quilt)
    except (ValueError, TypeError, RecursionError) as error:
        if not db.has_derived:
            raise _damaged(entry, "its plan cannot be read") from error
        raise StoreFault(
            f"The plan of “{entry.name}” is as it was written, and this sewalong cannot read it: "
            f"{error} Open it with the sewalong that wrote it. Nothing was changed."
        ) from error
    return quilt, *_read(db, entry, 0, mark)


def _plan_mark(db: Database, entry: Shelved) -> int | None:
    if not db.has_derived:
        return None
    rows = db.readable_rows("SELECT mark FROM plan_mark WHERE quilt = ?", entry.id)
    return int(rows[0][0]) if rows and isinstance(rows[0][0], int) else None


def _know_method(db: Database, quilt: Quilt) -> None:
    """Have the quilt's method ready, its counts as kept here or worked out and kept.

    Raises UnknownMethod or SizeRefused where they cannot be worked out.
    """
    if not db.has_derived:
        _ = quilt.method
        return
    key = quilt.method_key
    mark = fingerprint(key)
    sql = "SELECT CAST(body AS BLOB) FROM kept_method WHERE mark = ?"
    for (body,) in db.readable_rows(sql, mark):
        kept = unsealed(body)
        if kept is None:
            break  # what was kept is of no use
        try:
            remember(key, method_from_json(kept))
            return
        except ValueError:
            break
    body = sealed(method_to_json(quilt.method).decode())
    keep(db, "INSERT OR REPLACE INTO kept_method (mark, body) VALUES (?, ?)", mark, body)


def since(db: Database, entry: Shelved, seq: int) -> tuple[Recorded, ...]:
    """The events after number `seq`, in order; raises Damaged where not all can be read."""
    mark: int | None = None
    if db.has_derived:
        mark = _plan_mark(db, entry)
        if seq:
            sql = "SELECT mark FROM event_mark WHERE quilt = ? AND seq = ?"
            mark = next((mark for (mark,) in db.readable_rows(sql, entry.id, seq)), None)
    events, damage = _read(db, entry, seq, mark)
    if damage:
        raise Damaged(damage)
    return events


def _read(
    db: Database, entry: Shelved, after: int, before: int | None
) -> tuple[tuple[Recorded, ...], str]:
    """The events after number `after`, whose mark is `before`, up to the first that is damaged,
    and what is wrong with that one.

    A record that has no marks yet is only read on as far as its events can be.
    """
    behind = " WHERE quilt = ? AND seq > ? ORDER BY seq"
    rows = db.readable_rows(f"{EVENTS}{behind}", entry.id, after)
    if not db.has_derived:
        last = int(
            db.rows("SELECT COALESCE(MAX(seq), 0) FROM event WHERE quilt = ?", entry.id)[0][0]
        )
        marks: list[tuple[Any, ...]] = [(seq, None) for seq in range(after + 1, last + 1)]
    else:
        marks = db.readable_rows(f"SELECT seq, mark FROM event_mark{behind}", entry.id, after)
    events: list[Recorded] = []
    wrong = ""
    for n, (row, marked) in enumerate(zip_longest(rows, marks, fillvalue=None), after + 1):
        if row is None or row[0] != n:
            wrong = "it is missing"
        elif marked is None or marked[0] != n:
            wrong = "the mark it was written with is missing"
        else:
            _, columns, body = row
            if db.has_derived:
                before = mark_of_event(columns, body, before or 0)
            if before != marked[1]:
                wrong = "it is not as it was written"
            else:
                try:
                    events.append(Recorded(n, event_from_json(body)))
                    continue
                except Unreadable as error:
                    if db.has_derived and error.well_formed:
                        return tuple(events), _of_a_newer(entry, n, error)
                    wrong = f"it cannot be read: {error.why}"
        return tuple(events), str(_damaged(entry, f"at event {n}, {wrong}"))
    return tuple(events), ""


def _damaged(entry: Shelved, what: str) -> Damaged:
    return Damaged(
        f"The record of “{entry.name}” is damaged: {what}. What comes before is whole, and nothing "
        f"was changed. {WAY_OUT}"
    )


def _of_a_newer(entry: Shelved, n: int, error: Unreadable) -> str:
    return (
        f"Event {n} of “{entry.name}” is as it was written, and this sewalong does not know it "
        f"({error.why}). Open it with the sewalong that wrote it. Nothing was changed."
    )


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
        raise _damaged(entry, f"events after number {last} are missing")
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

"""Quilts and events as rows of the database: what reading and writing one quilt takes.

The list of quilts does without it, and so without all that an event knows.
"""

from __future__ import annotations

from collections.abc import Sequence
from datetime import datetime
from sqlite3 import Connection

from sewalong import __version__
from sewalong.piecing.catalogue import remember
from sewalong.piecing.kept_method import fingerprint, method_from_json, method_to_json
from sewalong.progress.record.event import Event, Recorded
from sewalong.quilt.json_codec import quilt_from_json, quilt_to_json
from sewalong.quilt.quilt import Quilt
from sewalong.store.codec import event_from_json, event_to_json
from sewalong.store.database import Database
from sewalong.store.faults import Stale, StoreFault
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
    with db.writing() as connection:
        if connection.execute("SELECT 1 FROM quilt WHERE key = ?", (key,)).fetchone():
            raise StoreFault(f"“{name}” is here already. Nothing was changed.")
        _refuse_name_taken(connection, name, db)
        plan = quilt_to_json(quilt).decode()
        cursor = connection.execute(
            "INSERT INTO quilt (key, name, plan, started) VALUES (?, ?, ?, ?)",
            (key, quilt.name, plan, begun.isoformat()),
        )
        id = int(cursor.lastrowid or 0)
        connection.executemany(_INSERT, _rows(id, 0, events, bodies))
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


def load(db: Database, entry: Shelved) -> tuple[Quilt, tuple[Recorded, ...]]:
    """The quilt and its whole record."""
    rows = db.rows("SELECT plan FROM quilt WHERE id = ?", entry.id)
    if not rows:
        raise StoreFault(f"“{entry.name}” is no longer in the record. Look at the list again.")
    try:
        quilt = quilt_from_json(str(rows[0][0]))
        # A method that this version has not would otherwise come to light half way.
        _know_method(db, quilt)
    except (ValueError, RecursionError) as error:
        raise StoreFault(
            f"The plan of “{entry.name}” cannot be read: {error} "
            "It may come from a newer sewalong; nothing was changed."
        ) from error
    return quilt, since(db, entry, 0)


def _know_method(db: Database, quilt: Quilt) -> None:
    """Have the quilt's method ready, its counts as kept here or worked out and kept.

    Raises UnknownMethod or SizeRefused where they cannot be worked out.
    """
    if not db.has_derived:
        _ = quilt.method
        return
    key = quilt.method_key
    mark = fingerprint(key)
    for (body,) in db.rows("SELECT body FROM kept_method WHERE mark = ?", mark):
        try:
            remember(key, method_from_json(str(body)))
            return
        except ValueError:
            break  # what was kept is of no use
    body = method_to_json(quilt.method).decode()
    keep(db, "INSERT OR REPLACE INTO kept_method (mark, body) VALUES (?, ?)", mark, body)


def since(db: Database, entry: Shelved, seq: int) -> tuple[Recorded, ...]:
    """The events after number `seq`, in order."""
    rows = db.rows(
        "SELECT seq, body FROM event WHERE quilt = ? AND seq > ? ORDER BY seq", entry.id, seq
    )
    for expected, (there, _) in enumerate(rows, start=seq + 1):
        if there != expected:
            raise StoreFault(
                f"Event {expected} of “{entry.name}” is missing, so the record is damaged. "
                "It was left untouched: put back a backup or import an exported quilt."
            )
    return tuple(Recorded(int(seq), event_from_json(str(body))) for seq, body in rows)


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
            connection.execute(TOUCHED, (entry.id,))
        if called is not None:
            _refuse_name_taken(connection, called, db, besides=entry.id)
            connection.execute(CALLED, (entry.id, called))
        if summary and db.has_derived:
            last = after + len(events)
            connection.execute(SUMMARY, (entry.id, last, __version__, summary))
    return tuple(Recorded(after + i, event) for i, event in enumerate(events, start=1))


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

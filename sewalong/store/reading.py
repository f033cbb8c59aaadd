"""Reading one quilt: its plan and its events, each held against the mark it was written with.

The list of quilts does without it, and so without all that an event knows.
"""

from __future__ import annotations

from itertools import zip_longest
from typing import Any

from sewalong.piecing.catalogue import remember
from sewalong.piecing.kept_method import fingerprint, method_from_json, method_to_json
from sewalong.progress.record.events.event import Recorded
from sewalong.quilt.json_codec import quilt_from_json
from sewalong.quilt.quilt import Quilt
from sewalong.store.chain import EVENTS, PLANS, mark_of_event, mark_of_plan, sealed, unsealed
from sewalong.store.codec import Unreadable, event_from_json
from sewalong.store.database import Database
from sewalong.store.faults import Damaged, StoreFault
from sewalong.store.shelved import Shelved, damaged_quilt, keep


def load(db: Database, entry: Shelved) -> tuple[Quilt, tuple[Recorded, ...], str]:
    """The quilt, its record, and what is wrong with the event after it; empty where it is whole.

    Raises StoreFault where the plan cannot be read.
    """
    rows = db.readable_rows(f"{PLANS} FROM quilt WHERE id = ?", entry.id)
    mark = _plan_mark(db, entry)
    if not rows:
        if mark is not None:
            raise damaged_quilt(entry, "its plan is missing")
        raise StoreFault(f"“{entry.name}” is no longer in the record. Look at the list again.")
    parts = rows[0][1:]
    if db.has_derived and mark != mark_of_plan(*parts):
        raise damaged_quilt(entry, "its plan is not as it was written")
    try:
        quilt = quilt_from_json(str(parts[2], "utf-8"))
        # A method that this version has not would otherwise come to light half way.
        _know_method(db, quilt)
    except (ValueError, TypeError, RecursionError) as error:
        if not db.has_derived:
            raise damaged_quilt(entry, "its plan cannot be read") from error
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
    rows, marks = _rows_and_marks(db, entry, after)
    events: list[Recorded] = []
    for n, (row, marked) in enumerate(zip_longest(rows, marks), after + 1):
        if row is None or row[0] != n:
            return tuple(events), _at(entry, n, "it is missing")
        if marked is None or marked[0] != n:
            return tuple(events), _at(entry, n, "the mark it was written with is missing")
        _, columns, body = row
        if db.has_derived:
            before = mark_of_event(columns, body, before or 0)
            if before != marked[1]:
                return tuple(events), _at(entry, n, "it is not as it was written")
        try:
            events.append(Recorded(n, event_from_json(body)))
        except Unreadable as error:
            return tuple(events), _why_unreadable(entry, n, error, marked=db.has_derived)
    return tuple(events), ""


def _rows_and_marks(
    db: Database, entry: Shelved, after: int
) -> tuple[list[tuple[Any, ...]], list[tuple[Any, ...]]]:
    """The events after number `after`, and their numbers with their marks, as of one moment."""
    behind = " WHERE quilt = ? AND seq > ? ORDER BY seq"
    with db.steady():
        rows = db.readable_rows(f"{EVENTS}{behind}", entry.id, after)
        if db.has_derived:
            sql = f"SELECT seq, mark FROM event_mark{behind}"
            return rows, db.readable_rows(sql, entry.id, after)
        sql = "SELECT COALESCE(MAX(seq), 0) FROM event WHERE quilt = ?"
        ((last,),) = db.rows(sql, entry.id)
        return rows, [(seq, None) for seq in range(after + 1, int(last) + 1)]


def _at(entry: Shelved, n: int, wrong: str) -> str:
    return str(damaged_quilt(entry, f"at event {n}, {wrong}"))


def _why_unreadable(entry: Shelved, n: int, error: Unreadable, *, marked: bool) -> str:
    if not (marked and error.well_formed):
        return _at(entry, n, f"it cannot be read: {error.why}")
    return (
        f"Event {n} of “{entry.name}” is as it was written, and this sewalong does not know it "
        f"({error.why}). Open it with the sewalong that wrote it. Nothing was changed."
    )

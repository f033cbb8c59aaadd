"""The quilts on disk: listing, adding, reading and appending. Nothing is edited or deleted."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import datetime
from pathlib import Path

from msgspec import Struct

from sewalong import __version__
from sewalong.piecing.catalogue import remember
from sewalong.piecing.kept_method import fingerprint, method_from_json, method_to_json
from sewalong.progress.record.event import Event, Recorded
from sewalong.quilt.json_codec import quilt_from_json, quilt_to_json
from sewalong.quilt.quilt import Quilt
from sewalong.store.codec import event_from_json, event_to_json
from sewalong.store.database import Database
from sewalong.store.faults import Stale, StoreFault


class Shelved(Struct, frozen=True):
    """A quilt's entry: `id` on this machine, `key` anywhere, when it was last touched.

    `summary` is what was kept beside the record of how it stands, by this version of the
    program and after the last event; empty when there is none such.
    """

    id: int
    key: str
    name: str
    started: datetime
    last_at: datetime
    summary: str = ""


class Loaded(Struct, frozen=True):
    """A quilt with its whole record, as it was when read."""

    entry: Shelved
    quilt: Quilt
    record: tuple[Recorded, ...]


class Library:
    """All quilts in one record. `close()` it when done."""

    def __init__(self, path: Path, now: datetime) -> None:
        self._db = Database(path, now)

    def close(self) -> None:
        self._db.close()

    def version_seen(self) -> int:
        """Changes whenever another window has written."""
        return self._db.version_seen()

    def entries(self) -> tuple[Shelved, ...]:
        """Every quilt, the last touched first."""
        entries = [
            Shelved(int(id), str(key), str(name), _time(begun), _time(last or begun), str(summary))
            for id, key, name, begun, last, summary in self._entry_rows()
        ]
        return tuple(sorted(entries, key=lambda entry: entry.last_at, reverse=True))

    def _entry_rows(self) -> list[tuple[str | int, ...]]:
        if self._db.has_derived:
            return self._db.rows(_ENTRIES, __version__)
        return [(*row, "") for row in self._db.rows(_ENTRIES_ALONE)]

    def find(self, wanted: str) -> Shelved:
        """The quilt called or numbered `wanted`; raises StoreFault when none or several fit."""
        entries = self.entries()
        folded = _folded(wanted)
        by_name = [entry for entry in entries if _folded(entry.name) == folded]
        by_number = [entry for entry in entries if str(entry.id) == folded]
        by_start = [entry for entry in entries if folded and _folded(entry.name).startswith(folded)]
        for fitting in (by_name, by_number, by_start):
            if len(fitting) == 1:
                return fitting[0]
        if by_start:
            names = ", ".join(f"“{entry.name}”" for entry in by_start)
            raise StoreFault(f"“{wanted[:80]}” fits several quilts: {names}. Give the whole name.")
        if not entries:
            raise StoreFault("There is no quilt yet. Begin one with: sewalong start FILE")
        names = ", ".join(f"“{entry.name}”" for entry in entries)
        raise StoreFault(f"There is no quilt “{wanted[:80]}”. There are: {names}.")

    def add(
        self,
        quilt: Quilt,
        now: datetime,
        *,
        key: str | None = None,
        events: Sequence[Event] = (),
        started: datetime | None = None,
    ) -> Shelved:
        """Put a new quilt on the shelf, with a record if it brings one, in one transaction."""
        key = key or _new_key()
        begun = started or now
        # Put into words before the lock is taken, so that no other window waits for it.
        bodies = [event_to_json(event) for event in events]
        with self._db.writing() as connection:
            names = connection.execute("SELECT key, name FROM quilt").fetchall()
            if any(key == there for there, _ in names):
                raise StoreFault(f"“{quilt.name}” is here already. Nothing was changed.")
            if any(_folded(quilt.name) == _folded(str(name)) for _, name in names):
                raise StoreFault(
                    f"There is a quilt called “{quilt.name}” already. "
                    "Give this one another name, or open that one."
                )
            plan = quilt_to_json(quilt).decode()
            cursor = connection.execute(
                "INSERT INTO quilt (key, name, plan, started) VALUES (?, ?, ?, ?)",
                (key, quilt.name, plan, begun.isoformat()),
            )
            id = int(cursor.lastrowid or 0)
            connection.executemany(_INSERT, _rows(id, 0, events, bodies))
        last_at = events[-1].at if events else begun
        return Shelved(id, key, quilt.name, begun, last_at)

    def load(self, entry: Shelved) -> Loaded:
        """The quilt and its whole record."""
        rows = self._db.rows("SELECT plan FROM quilt WHERE id = ?", entry.id)
        if not rows:
            raise StoreFault(f"“{entry.name}” is no longer in the record. Look at the list again.")
        try:
            quilt = quilt_from_json(str(rows[0][0]))
            # A method that this version has not would otherwise come to light half way.
            self._know_method(quilt)
        except (ValueError, RecursionError) as error:
            raise StoreFault(
                f"The plan of “{entry.name}” cannot be read: {error} "
                "It may come from a newer sewalong; nothing was changed."
            ) from error
        return Loaded(entry, quilt, self.since(entry, 0))

    def _know_method(self, quilt: Quilt) -> None:
        """Have the quilt's method ready, its counts as kept here or worked out and kept.

        Raises UnknownMethod or SizeRefused where they cannot be worked out.
        """
        if not self._db.has_derived:
            _ = quilt.method
            return
        key = quilt.method_key
        mark = fingerprint(key)
        for (body,) in self._db.rows("SELECT body FROM kept_method WHERE mark = ?", mark):
            try:
                remember(key, method_from_json(str(body)))
                return
            except ValueError:
                break  # what was kept is of no use
        body = method_to_json(quilt.method).decode()
        self._keep("INSERT OR REPLACE INTO kept_method (mark, body) VALUES (?, ?)", mark, body)

    def since(self, entry: Shelved, seq: int) -> tuple[Recorded, ...]:
        """The events after number `seq`, in order."""
        rows = self._db.rows(
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
        self, entry: Shelved, after: int, events: Sequence[Event], summary: str = ""
    ) -> tuple[Recorded, ...]:
        """Write `events` after number `after`, all or none; they are on disk on return.

        `summary` says how the quilt stands after them. Raises Stale when the record has gone
        on past `after` meanwhile.
        """
        bodies = [event_to_json(event) for event in events]
        with self._db.writing() as connection:
            (last,) = connection.execute(
                "SELECT COALESCE(MAX(seq), 0) FROM event WHERE quilt = ?", (entry.id,)
            ).fetchone()
            if not connection.execute("SELECT 1 FROM quilt WHERE id = ?", (entry.id,)).fetchone():
                raise StoreFault(
                    f"“{entry.name}” is no longer in the record. Look at the list again."
                )
            if last != after:
                raise Stale("The record went on in another window.")
            connection.executemany(_INSERT, _rows(entry.id, after, events, bodies))
            if summary and self._db.has_derived:
                last = after + len(events)
                connection.execute(_SUMMARY, (entry.id, last, __version__, summary))
        return tuple(Recorded(after + i, event) for i, event in enumerate(events, start=1))

    def keep_summary(self, entry: Shelved, seq: int, summary: str) -> None:
        """Keep how the quilt stands after event `seq`."""
        self._keep(_SUMMARY, entry.id, seq, __version__, summary)

    def _keep(self, sql: str, *values: str | int) -> None:
        """Keep something derived; a record that cannot be written does without."""
        if not self._db.has_derived:
            return
        try:
            with self._db.writing() as connection:
                connection.execute(sql, values)
        except StoreFault:
            return


def _folded(name: str) -> str:
    """Names that read alike are alike, however their letters are put together."""
    if name.isascii():
        return name.strip().casefold()
    import unicodedata  # loaded only for letters that can be put together in several ways

    return unicodedata.normalize("NFC", unicodedata.normalize("NFC", name.strip()).casefold())


def _new_key() -> str:
    # Loaded only for a new quilt: it costs a good part of a start.
    from uuid import uuid4

    return uuid4().hex


def _time(value: str | int) -> datetime:
    try:
        return datetime.fromisoformat(str(value))
    except ValueError as error:
        raise StoreFault(
            f"A time in the record cannot be read ({error}), so the record is damaged. It was "
            "left untouched: put back a backup or import an exported quilt."
        ) from error


_ENTRIES = """
    SELECT q.id, q.key, q.name, q.started, last.at, COALESCE(s.body, '')
    FROM quilt q
    LEFT JOIN event last ON last.quilt = q.id
        AND last.seq = (SELECT MAX(e.seq) FROM event e WHERE e.quilt = q.id)
    LEFT JOIN summary s ON s.quilt = q.id
        AND s.seq = COALESCE(last.seq, 0) AND s.version = ?
"""

_ENTRIES_ALONE = """
    SELECT q.id, q.key, q.name, q.started,
        (SELECT e.at FROM event e WHERE e.quilt = q.id ORDER BY e.seq DESC LIMIT 1)
    FROM quilt q
"""

_SUMMARY = "INSERT OR REPLACE INTO summary (quilt, seq, version, body) VALUES (?, ?, ?, ?)"

_INSERT = "INSERT INTO event (quilt, seq, at, session, kind, body) VALUES (?, ?, ?, ?, ?, ?)"


def _rows(
    quilt: int, after: int, events: Sequence[Event], bodies: Sequence[str]
) -> list[tuple[int, int, str, int, str, str]]:
    return [
        (quilt, after + i, event.at.isoformat(), event.session, event.kind, body)
        for i, (event, body) in enumerate(zip(events, bodies, strict=True), start=1)
    ]

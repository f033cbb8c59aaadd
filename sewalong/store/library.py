"""The quilts on disk: listing, adding, reading and appending. Nothing is edited or deleted."""

from __future__ import annotations

import os
from collections.abc import Sequence
from datetime import UTC, datetime
from typing import TYPE_CHECKING, Any

from msgspec import Struct

from sewalong import __version__
from sewalong.store.chain import sealed, unsealed
from sewalong.store.database import Database
from sewalong.store.faults import WAY_OUT, StoreFault
from sewalong.store.shelved import SUMMARY, Shelved, folded, keep

if TYPE_CHECKING:
    from sewalong.progress.record.events.event import Event, Recorded
    from sewalong.quilt.quilt import Quilt

__all__ = ["Library", "Loaded", "Shelved"]


class Loaded(Struct, frozen=True):
    """A quilt with its whole record, as it was when read.

    `damage` is empty, or says what is wrong with the event after the last of `record`.
    """

    entry: Shelved
    quilt: Quilt
    record: tuple[Recorded, ...]
    damage: str = ""


class Library:
    """All quilts in one record. `close()` it when done."""

    def __init__(self, path: str | os.PathLike[str], now: datetime) -> None:
        self._db = Database(path, now)

    def close(self) -> None:
        self._db.close()

    @property
    def file(self) -> str:
        """The file all of it is kept in."""
        return self._db.path

    @property
    def folder(self) -> str:
        """The folder that file is in, and its backups and drafts."""
        return os.path.dirname(self._db.path)

    def version_seen(self) -> int:
        """Changes whenever another window has written."""
        return self._db.version_seen()

    def entries(self) -> tuple[Shelved, ...]:
        """Every quilt, the last touched first.

        That goes by the order of writing, since a clock can be wrong; and by the clock where
        nothing was written here yet.
        """
        turns: dict[int, int] = {}
        entries = []
        for id, key, name, begun, last, summary, turn in self._entry_rows():
            turns[id] = turn if isinstance(turn, int) else 0
            began, last_at = _time(begun), _time(last or begun)
            kept = unsealed(summary) or ""
            entries.append(Shelved(id, _text(key), _text(name), began, last_at, kept))
        last_first = sorted(entries, key=lambda one: (turns[one.id], one.last_at), reverse=True)
        return tuple(last_first)

    def refuse_damage(self) -> None:
        """Raise Damaged where anything is wrong with the record: asked where there is no quilt in
        it, which may be what damage does."""
        if damage := self._db.damage():
            raise damage

    def missing(self) -> str:
        """What to say where the record has lost whole quilts, and the one meant may be among them;
        empty where it has not."""
        gone = self._db.rows(_MISSING) if self._db.has_derived else []
        if not gone:
            return ""
        numbers = " and ".join(str(id) for (id,) in gone)
        said = f"number {numbers} is" if len(gone) == 1 else f"numbers {numbers} are"
        return (
            f"The record is damaged: the quilt with the {said} missing from it. The others can be "
            f"opened by their names. Nothing was changed. {WAY_OUT}"
        )

    def _entry_rows(self) -> list[tuple[Any, ...]]:
        if self._db.has_derived:
            return self._db.rows(_ENTRIES, __version__)
        return [(*row, None, 0) for row in self._db.rows(_ENTRIES_ALONE)]

    def find(self, wanted: str) -> Shelved:
        """The quilt called or numbered `wanted`; raises StoreFault when none or several fit."""
        entries = self.entries()
        sought = folded(wanted)
        by_name = [entry for entry in entries if folded(entry.name) == sought]
        by_number = [entry for entry in entries if str(entry.id) == sought]
        by_start = [entry for entry in entries if sought and folded(entry.name).startswith(sought)]
        for fitting in (by_name, by_number, by_start):
            if len(fitting) == 1:
                return fitting[0]
        if by_start:
            names = ", ".join(f"“{entry.name}”" for entry in by_start)
            raise StoreFault(f"“{wanted[:80]}” fits several quilts: {names}. Give the whole name.")
        # Damage may be why: a quilt can be lost, or its name.
        damage = self._db.damage()
        if not entries:
            raise damage or StoreFault("There is no quilt yet. Begin one with: sewalong new")
        names = ", ".join(f"“{entry.name}”" for entry in entries)
        said = f"There is no quilt “{wanted[:80]}”. There are: {names}."
        raise StoreFault(f"{said} {damage}" if damage else said)

    def add(
        self,
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

        `called` is its name now, where its record gave it another than it began with; without a
        record it is the one last `touched`, unless nobody touched it.
        """
        from sewalong.store import rows

        return rows.add(
            self._db,
            quilt,
            now,
            key=key,
            events=events,
            started=started,
            called=called,
            touched=touched,
        )

    def load(self, entry: Shelved) -> Loaded:
        """The quilt and its record: the whole of it, or what there is before an event that is
        damaged. Raises StoreFault where its plan cannot be read."""
        from sewalong.store import reading

        return Loaded(entry, *reading.load(self._db, entry))

    def since(self, entry: Shelved, seq: int) -> tuple[Recorded, ...]:
        """The events after number `seq`, in order; raises Damaged where not all can be read."""
        from sewalong.store import reading

        return reading.since(self._db, entry, seq)

    def append(
        self,
        entry: Shelved,
        after: int,
        events: Sequence[Event],
        summary: str = "",
        *,
        called: str | None = None,
    ) -> tuple[Recorded, ...]:
        """Write `events` after number `after`, all or none; they are on disk on return.

        `summary` says how the quilt stands after them, and `called` its name where they changed
        it. Raises Stale when the record has gone on past `after` meanwhile, and StoreFault where
        another quilt has that name.
        """
        from sewalong.store import rows

        return rows.append(self._db, entry, after, events, summary, called=called)

    def keep_summary(self, entry: Shelved, seq: int, summary: str) -> None:
        """Keep how the quilt stands after event `seq`."""
        keep(self._db, SUMMARY, entry.id, seq, __version__, sealed(summary))


NO_TIME = datetime(1970, 1, 1, tzinfo=UTC)
"""Stands for a time that cannot be read; whoever opens that quilt is told what is damaged."""


def _text(value: bytes | None) -> str:
    """Text that may be damaged, and then is shown as far as it is text."""
    return (value or b"?").decode(errors="replace")


def _time(value: bytes | None) -> datetime:
    try:
        time = datetime.fromisoformat(_text(value))
    except ValueError:
        return NO_TIME
    return time if time.tzinfo else NO_TIME


_MISSING = "SELECT quilt FROM plan_mark EXCEPT SELECT id FROM quilt"

_ENTRIES = """
    SELECT q.id, CAST(q.key AS BLOB), CAST(COALESCE(c.name, q.name) AS BLOB),
        CAST(q.started AS BLOB), CAST(last.at AS BLOB), CAST(s.body AS BLOB), COALESCE(t.turn, 0)
    FROM quilt q
    LEFT JOIN event last ON last.quilt = q.id
        AND last.seq = (SELECT MAX(e.seq) FROM event e WHERE e.quilt = q.id)
    LEFT JOIN summary s ON s.quilt = q.id
        AND s.seq = COALESCE(last.seq, 0) AND s.version = ?
    LEFT JOIN touched t ON t.quilt = q.id
    LEFT JOIN called c ON c.quilt = q.id
"""

_ENTRIES_ALONE = """
    SELECT q.id, CAST(q.key AS BLOB), CAST(q.name AS BLOB), CAST(q.started AS BLOB),
        (SELECT CAST(e.at AS BLOB) FROM event e WHERE e.quilt = q.id ORDER BY e.seq DESC LIMIT 1)
    FROM quilt q
"""

"""A record looked through from end to end: by its bytes, by reading it, by what can have happened.

Nothing is written, whatever state it is in.
"""

from __future__ import annotations

import os
import sqlite3
from contextlib import closing

from msgspec import Struct

from sewalong.progress.record.auditing.audit import audit
from sewalong.progress.record.events.event import Recorded
from sewalong.quilt.json_codec import quilt_from_json
from sewalong.store.begun import is_there
from sewalong.store.chain import EVENTS
from sewalong.store.codec import event_from_json
from sewalong.store.faults import StoreFault, Trouble, fault_from, means_damage
from sewalong.store.schema import STEPS, version_of
from sewalong.store.soundness import as_of_one_moment, faults_of, trouble_of


class ExaminedQuilt(Struct, frozen=True):
    """A quilt of a record: its number there, its name, how many events there are, and what is
    wrong with it; empty for nothing."""

    number: int
    name: str
    events: int
    wrong: str


class Examined(Struct, frozen=True):
    """A record: `there` is false where nothing was begun; `wrong` is what is wrong with the file
    as a whole, a sentence or a few words, empty for nothing, and `detail` what SQLite says of it."""

    path: str
    there: bool
    size: int = 0
    wrong: str = ""
    detail: str = ""
    quilts: tuple[ExaminedQuilt, ...] = ()

    @property
    def sound(self) -> bool:
        """Whether nothing is wrong anywhere in it."""
        return not self.wrong and not any(quilt.wrong for quilt in self.quilts)

    @property
    def events(self) -> int:
        """How many events there are in all."""
        return sum(quilt.events for quilt in self.quilts)


def examine(path: str) -> Examined:
    """Look through the record at `path`. Raises StoreFault where another window has it locked."""
    try:
        if not is_there(path):
            return Examined(path, there=False)
    except StoreFault as fault:
        return Examined(path, there=True, wrong=str(fault))
    size = os.path.getsize(path)
    try:
        with (
            closing(sqlite3.connect(path, isolation_level=None)) as connection,
            as_of_one_moment(connection),
        ):
            faults = faults_of(connection, path)
            if whole := trouble_of(faults):
                detail = faults[0].detail
                return Examined(path, there=True, size=size, wrong=whole, detail=detail)
            wrong = {fault.quilt: fault.what for fault in reversed(faults)}
            named = dict(connection.execute("SELECT id, name FROM quilt ORDER BY id").fetchall())
            if version_of(connection) == len(STEPS):
                named |= dict(connection.execute(_CALLED_OTHERWISE).fetchall())
            quilts = tuple(
                _examined(connection, id, str(named.get(id, "")), wrong.get(id, ""))
                for id in sorted({*named, *(id for id in wrong if id is not None)})
            )
    except Trouble as error:
        if not means_damage(error):
            raise fault_from(error, path) from error
        return Examined(path, there=True, size=size, wrong="it cannot be read", detail=str(error))
    return Examined(path, there=True, size=size, quilts=quilts)


_CALLED_OTHERWISE = "SELECT id, c.name FROM called c JOIN quilt ON id = c.quilt"
"""Quilts whose record gave them another name than they began with."""


def _examined(connection: sqlite3.Connection, id: int, name: str, wrong: str) -> ExaminedQuilt:
    rows = connection.execute(f"{EVENTS} WHERE quilt = ? ORDER BY seq", (id,)).fetchall()
    return ExaminedQuilt(
        id, name or f"number {id}", len(rows), wrong or _unreadable(connection, id, rows)
    )


def _unreadable(
    connection: sqlite3.Connection, id: int, rows: list[tuple[int, bytes, bytes]]
) -> str:
    """What cannot be read of a quilt, or cannot have happened; empty for nothing."""
    (plan,) = connection.execute("SELECT plan FROM quilt WHERE id = ?", (id,)).fetchone()
    try:
        quilt = quilt_from_json(str(plan))
    except (ValueError, RecursionError) as error:
        return f"its plan cannot be read: {error}"
    record = []
    for seq, _, body in rows:
        try:
            record.append(Recorded(seq, event_from_json(body)))
        except StoreFault as fault:
            return f"event {seq}: {fault}"
    return audit(quilt, record) or ""

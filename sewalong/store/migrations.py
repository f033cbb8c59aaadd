"""The shape of the database, as steps in order. A released step is never changed.

`PRAGMA user_version` holds how many steps a database has had. To change the shape, add a
step at the end of `STEPS` and a test that takes an old database through it.
"""

from __future__ import annotations

import sqlite3
from collections.abc import Sequence
from datetime import datetime
from pathlib import Path

from sewalong.store.faults import StoreFault

STEPS: tuple[tuple[str, ...], ...] = (
    (
        """
        CREATE TABLE quilt (
            id INTEGER PRIMARY KEY,
            key TEXT NOT NULL UNIQUE,
            name TEXT NOT NULL,
            plan TEXT NOT NULL,
            started TEXT NOT NULL
        )
        """,
        """
        CREATE TABLE event (
            quilt INTEGER NOT NULL REFERENCES quilt (id),
            seq INTEGER NOT NULL CHECK (seq > 0),
            at TEXT NOT NULL,
            session INTEGER NOT NULL CHECK (session >= 0),
            kind TEXT NOT NULL,
            body TEXT NOT NULL,
            PRIMARY KEY (quilt, seq)
        ) WITHOUT ROWID
        """,
        """
        CREATE TRIGGER event_is_never_edited BEFORE UPDATE ON event
        BEGIN SELECT RAISE (ABORT, 'an event is never edited'); END
        """,
        """
        CREATE TRIGGER event_is_never_deleted BEFORE DELETE ON event
        BEGIN SELECT RAISE (ABORT, 'an event is never deleted'); END
        """,
        """
        CREATE TRIGGER plan_is_never_edited BEFORE UPDATE ON quilt
        BEGIN SELECT RAISE (ABORT, 'a plan is never edited'); END
        """,
    ),
)


def migrate(
    connection: sqlite3.Connection,
    path: Path,
    now: datetime,
    steps: Sequence[Sequence[str]] = STEPS,
) -> None:
    """Bring the database up to `steps`, each step in its own transaction.

    An older database with something in it is copied to the folder `backups` beside it
    first. Raises StoreFault, with the file untouched, when it comes from a newer version.
    """
    version = _version(connection)
    if version > len(steps):
        raise StoreFault(
            f"The record at {path} was written by a newer sewalong. It was left untouched: "
            "install the newer version to open it."
        )
    if 0 < version < len(steps):
        _back_up(connection, path, version, now)
    while (version := _version(connection)) < len(steps):
        connection.execute("BEGIN IMMEDIATE")
        try:
            # Another window may have taken this step while we waited for the lock.
            if _version(connection) == version:
                for statement in steps[version]:
                    connection.execute(statement)
                connection.execute(f"PRAGMA user_version = {version + 1}")
            connection.execute("COMMIT")
        except BaseException:
            connection.execute("ROLLBACK")
            raise


def _version(connection: sqlite3.Connection) -> int:
    (version,) = connection.execute("PRAGMA user_version").fetchone()
    return int(version)


def _back_up(connection: sqlite3.Connection, path: Path, version: int, now: datetime) -> None:
    folder = path.parent / "backups"
    folder.mkdir(exist_ok=True)
    copy = sqlite3.connect(folder / f"{path.stem}-v{version}-{now:%Y%m%dT%H%M%S}.db")
    try:
        connection.backup(copy)
    finally:
        copy.close()

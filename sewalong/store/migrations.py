"""The shape of the database, as steps in order. A released step is never changed.

`PRAGMA user_version` holds how many steps a database has had, `PRAGMA application_id` says
that it is ours. To change the shape, add a step at the end of `STEPS` and a test that takes
an old database through it.
"""

from __future__ import annotations

import os
import sqlite3
from collections.abc import Sequence
from datetime import datetime

from sewalong.store.faults import StoreFault, not_ours

APPLICATION_ID = 0x53455741
"""Marks a database as ours: the letters SEWA."""

STEPS: tuple[tuple[str, ...], ...] = (
    (
        f"PRAGMA application_id = {APPLICATION_ID}",
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
        """
        CREATE TRIGGER plan_is_never_deleted BEFORE DELETE ON quilt
        BEGIN SELECT RAISE (ABORT, 'a plan is never deleted'); END
        """,
        # REPLACE would delete a row unseen by the triggers above; here it meets a wall.
        """
        CREATE TRIGGER plan_is_never_replaced BEFORE INSERT ON quilt
        WHEN EXISTS (SELECT 1 FROM quilt WHERE id = NEW.id OR key = NEW.key)
        BEGIN SELECT RAISE (ABORT, 'a plan is never replaced'); END
        """,
        """
        CREATE TRIGGER event_follows_the_last BEFORE INSERT ON event
        WHEN NEW.seq IS NOT
            (SELECT COALESCE(MAX(seq), 0) + 1 FROM event WHERE quilt = NEW.quilt)
        BEGIN SELECT RAISE (ABORT, 'an event follows the last one'); END
        """,
    ),
    # Derived and never trusted over their sources: what a quilt's events add up to, in short,
    # and methods with their counts worked out.
    (
        """
        CREATE TABLE summary (
            quilt INTEGER PRIMARY KEY REFERENCES quilt (id),
            seq INTEGER NOT NULL,
            version TEXT NOT NULL,
            body TEXT NOT NULL
        )
        """,
        "CREATE TABLE kept_method (mark TEXT PRIMARY KEY, body TEXT NOT NULL) WITHOUT ROWID",
        # Which quilt was touched last goes by the order of writing: a clock can be wrong.
        """
        CREATE TABLE touched (
            quilt INTEGER PRIMARY KEY REFERENCES quilt (id),
            turn INTEGER NOT NULL
        )
        """,
    ),
    # What a quilt is called now, where its plan was changed to another name: written with the
    # event that says so. Derived too.
    (
        """
        CREATE TABLE called (
            quilt INTEGER PRIMARY KEY REFERENCES quilt (id),
            name TEXT NOT NULL
        )
        """,
    ),
)


def migrate(
    connection: sqlite3.Connection,
    path: str | os.PathLike[str],
    now: datetime,
    steps: Sequence[Sequence[str]] = STEPS,
) -> None:
    """Bring the database up to `steps`, each step in its own transaction.

    An older database with something in it is copied to the folder `backups` beside it
    first. Raises StoreFault, with the file untouched, when it is not ours or newer.
    """
    refuse_unknown(connection, path, len(steps))
    if 0 < version_of(connection) < len(steps):
        _probe(connection)
        _back_up(connection, path, version_of(connection), now)
    while version_of(connection) < len(steps):
        connection.execute("BEGIN IMMEDIATE")
        try:
            # Another window may have taken this step while we waited for the lock.
            version = version_of(connection)
            for statement in steps[version] if version < len(steps) else ():
                connection.execute(statement)
            if version < len(steps):
                connection.execute(f"PRAGMA user_version = {version + 1}")
            connection.execute("COMMIT")
        except BaseException:
            if connection.in_transaction:
                connection.execute("ROLLBACK")
            raise
    refuse_unknown(connection, path, len(steps))


def _probe(connection: sqlite3.Connection) -> None:
    """Raise sqlite3.Error where the database cannot be written to; nothing is changed.

    Beginning succeeds on a read-only database; only a write tells.
    """
    connection.execute("BEGIN IMMEDIATE")
    try:
        connection.execute(f"PRAGMA user_version = {version_of(connection)}")
    finally:
        connection.execute("ROLLBACK")


def refuse_unknown(
    connection: sqlite3.Connection, path: str | os.PathLike[str], newest: int
) -> None:
    """Raise StoreFault if the file is another program's, or had more than `newest` steps.

    Only reads, so the file stays as it is. An empty file is a record that has yet to begin.
    """
    (application,) = connection.execute("PRAGMA application_id").fetchone()
    (tables,) = connection.execute("SELECT COUNT(*) FROM sqlite_master").fetchone()
    version = version_of(connection)
    if application != APPLICATION_ID and (application or tables or version):
        raise StoreFault(not_ours(path))
    if version > newest:
        raise StoreFault(
            f"The record at {path} was written by a newer sewalong. It was left untouched: "
            "install the newer version to open it."
        )


def version_of(connection: sqlite3.Connection) -> int:
    (version,) = connection.execute("PRAGMA user_version").fetchone()
    return int(version)


def _back_up(
    connection: sqlite3.Connection, path: str | os.PathLike[str], version: int, now: datetime
) -> None:
    """Copy the database whole or not at all: to a temporary file first, then renamed."""
    import tempfile  # loaded only for the rare copy

    from sewalong.store.writing import sync_folder

    folder = os.path.join(os.path.dirname(path), "backups")
    stem = os.path.splitext(os.path.basename(path))[0]
    try:
        if not os.path.isdir(folder):
            os.mkdir(folder, mode=0o700)
        handle, name = tempfile.mkstemp(dir=folder, prefix=".backup-", suffix=".db")
        os.close(handle)
        try:
            copy = sqlite3.connect(name)
            try:
                connection.backup(copy)
            finally:
                copy.close()
            os.replace(name, os.path.join(folder, f"{stem}-v{version}-{now:%Y%m%dT%H%M%S}.db"))
        except BaseException:
            if os.path.exists(name):
                os.unlink(name)
            raise
        sync_folder(folder)
    except OSError as error:
        raise StoreFault(
            f"No backup could be made in {folder} ({error.strerror}), so the record was left as "
            "it was. Make room or move what is in the way, then try again."
        ) from error

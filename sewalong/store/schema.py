"""The shape of the database, as steps in order. A released step is never changed.

`PRAGMA user_version` holds how many steps a database has had, `PRAGMA application_id` says
that it is ours. To change the shape, add a step at the end of `STEPS` and a test that takes
an old database through it.
"""

from __future__ import annotations

import os
import sqlite3
from collections.abc import Callable, Iterable, Sequence

from sewalong.store.chain import mark_all
from sewalong.store.faults import Newer, damaged, not_ours

APPLICATION_ID = 0x53455741
"""Marks a database as ours: the letters SEWA."""

MOST_STEPS = 999
"""More than any sewalong will ever have: a number beyond is damage and no newer version."""

Statement = str | Callable[[sqlite3.Connection], None]
"""One part of a step: SQL, or what SQL cannot say."""

STEPS: tuple[tuple[Statement, ...], ...] = (
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
    # A mark for each plan and each event, chained from event to event: what is changed or missing
    # shows. Worked out once for what is there, and from then on written with each event.
    (
        """
        CREATE TABLE plan_mark (
            quilt INTEGER PRIMARY KEY REFERENCES quilt (id),
            mark INTEGER NOT NULL
        )
        """,
        """
        CREATE TABLE event_mark (
            quilt INTEGER NOT NULL REFERENCES quilt (id),
            seq INTEGER NOT NULL,
            mark INTEGER NOT NULL,
            PRIMARY KEY (quilt, seq)
        ) WITHOUT ROWID
        """,
        mark_all,
    ),
)


def checked_version(
    connection: sqlite3.Connection,
    path: str | os.PathLike[str],
    steps: Sequence[Sequence[Statement]] = STEPS,
) -> int:
    """How many steps the database has had; 0 for one that has yet to begin.

    Raises StoreFault if the file is another program's or had more than `steps`, and Damaged
    where its shape is not the one those steps gave it. Only reads, so the file stays as it is.
    """
    (application,) = connection.execute("PRAGMA application_id").fetchone()
    rows = connection.execute("SELECT sql FROM sqlite_master WHERE sql IS NOT NULL").fetchall()
    there = {_words(str(sql)) for (sql,) in rows}
    version = version_of(connection)
    if application != APPLICATION_ID:
        if not (application or there or version):
            return 0
        if _made_by(STEPS[:1]) & there:
            raise damaged(path, "it no longer says which program wrote it")
        raise not_ours(path)
    if len(steps) < version <= MOST_STEPS:
        raise Newer(
            f"The record at {path} was written by a newer sewalong. It was left untouched: "
            "install the newer version to open it."
        )
    wanted = _made_by(steps[:version])
    if version not in range(1, len(steps) + 1) or (_made_by(steps) - wanted) & there:
        raise damaged(path, "the number of its version is not the one it had")
    if not wanted <= there:
        raise damaged(path, "the description of its tables is not as it was written")
    return version


def _made_by(steps: Iterable[Sequence[Statement]]) -> set[str]:
    """The words of whatever `steps` create and no later one of them changes."""
    made: dict[str, str] = {}
    for step in steps:
        for statement in step:
            if isinstance(statement, str):
                verb, _, name, *_ = [*statement.split(maxsplit=3), "", ""]
                if verb == "CREATE":
                    made[name] = _words(statement)
                elif verb in ("ALTER", "DROP"):
                    made.pop(name, None)
    return set(made.values())


def _words(sql: str) -> str:
    """SQL as SQLite keeps it, whatever lines it was broken into."""
    return " ".join(sql.split())


def version_of(connection: sqlite3.Connection) -> int:
    (version,) = connection.execute("PRAGMA user_version").fetchone()
    return int(version)

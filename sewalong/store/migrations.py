"""Bringing an older record up to date, step by step, each step whole or not at all."""

from __future__ import annotations

import os
import sqlite3
from collections.abc import Sequence
from datetime import datetime

from sewalong.store.schema import STEPS, Statement, checked_version, version_of


def migrate(
    connection: sqlite3.Connection,
    path: str | os.PathLike[str],
    now: datetime,
    steps: Sequence[Sequence[Statement]] = STEPS,
) -> None:
    """Bring the database up to `steps`, each step in its own transaction; a new one gets all at once.

    An older database with something in it is copied to the folder `backups` beside it
    first. Raises StoreFault, with the file untouched, when it is not ours, newer or damaged.
    """
    before = checked_version(connection, path, steps)
    if 0 < before < len(steps):
        from sewalong.store.backups import back_up  # loaded only for the rare copy

        _probe(connection)
        back_up(connection, path, now, why=f"v{before}-")
    while version_of(connection) < len(steps):
        connection.execute("BEGIN IMMEDIATE")
        try:
            # Another window may have taken this step while we waited for the lock.
            version = version_of(connection)
            for step in steps[version:] if version == 0 else steps[version : version + 1]:
                for statement in step:
                    if callable(statement):
                        statement(connection)
                    else:
                        connection.execute(statement)
                version += 1
                connection.execute(f"PRAGMA user_version = {version}")
            connection.execute("COMMIT")
        except BaseException:
            if connection.in_transaction:
                connection.execute("ROLLBACK")
            raise
    checked_version(connection, path, steps)


def _probe(connection: sqlite3.Connection) -> None:
    """Raise sqlite3.Error where the database cannot be written to; nothing is changed.

    Beginning succeeds on a read-only database; only a write tells.
    """
    connection.execute("BEGIN IMMEDIATE")
    try:
        connection.execute(f"PRAGMA user_version = {version_of(connection)}")
    finally:
        connection.execute("ROLLBACK")

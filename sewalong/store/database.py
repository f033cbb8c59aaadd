"""One SQLite connection, set so that what was acknowledged is on disk.

`journal_mode=TRUNCATE` with `synchronous=FULL` lost no acknowledged commit in simulated
power cuts; a write-ahead log loses rows when a sync tool replaces the file.
"""

from __future__ import annotations

import os
import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager
from datetime import datetime

from sewalong.store.faults import StoreFault, fault_from
from sewalong.store.migrations import STEPS, migrate, refuse_unknown, version_of

PATIENCE = 0.25
"""Seconds to wait for another window's write; longer would freeze the screen."""


_PRAGMAS = ("foreign_keys = ON", "recursive_triggers = ON", "synchronous = FULL", "fullfsync = 1")


class Database:
    """An open record. Raises StoreFault with a plain sentence for whatever goes wrong."""

    def __init__(self, path: str | os.PathLike[str], now: datetime) -> None:
        self.path = path = os.fspath(path)
        folder = os.path.dirname(path) or "."
        try:
            _make_folder(folder)
        except OSError as error:
            raise StoreFault(
                f"The folder {folder} cannot be made ({error.strerror}). "
                "Set SEWALONG_HOME to a folder that is yours."
            ) from error
        try:
            self._connection = sqlite3.connect(path, timeout=PATIENCE, isolation_level=None)
        except sqlite3.Error as error:
            raise fault_from(error, path) from error
        try:
            for pragma in _PRAGMAS:
                self._connection.execute(f"PRAGMA {pragma}").fetchall()
            # A file that is not ours must not even have its journal mode changed.
            refuse_unknown(self._connection, path, len(STEPS))
            (mode,) = self._connection.execute("PRAGMA journal_mode = TRUNCATE").fetchone()
            if mode != "truncate":
                raise StoreFault(
                    f"The record at {path} cannot be kept safely on this disk (it stays in "
                    f"{mode} mode). Set SEWALONG_HOME to a folder on another one."
                )
            self.has_derived = self._migrated(now)
        except sqlite3.Error as error:
            self.close()
            raise fault_from(error, path) from error
        except BaseException:
            self.close()
            raise

    def _migrated(self, now: datetime) -> bool:
        """Bring the record up to date; False where it is older and can only be read.

        What is derived from it has no place there then, and is worked out each time.
        """
        try:
            migrate(self._connection, self.path, now)
        except sqlite3.Error as error:
            if not error.sqlite_errorname.startswith("SQLITE_READONLY"):
                raise
            if version_of(self._connection) == 0:
                raise
            return False
        return True

    def close(self) -> None:
        """Close the connection; the record is complete on disk already."""
        self._connection.close()

    def rows(self, sql: str, *values: str | int) -> list[tuple[str | int, ...]]:
        """All rows of a question."""
        try:
            return self._connection.execute(sql, values).fetchall()
        except sqlite3.Error as error:
            raise fault_from(error, self.path) from error

    @contextmanager
    def writing(self) -> Iterator[sqlite3.Connection]:
        """One transaction: all of it is on disk when the block ends, or none of it."""
        try:
            self._connection.execute("BEGIN IMMEDIATE")
            try:
                # A newer sewalong in another window may have changed the shape meanwhile.
                if self.has_derived and version_of(self._connection) != len(STEPS):
                    raise StoreFault(
                        f"The record at {self.path} was changed by another sewalong while it was "
                        "open. Nothing was recorded; leave and start again."
                    )
                yield self._connection
                self._connection.execute("COMMIT")
            except BaseException:
                if self._connection.in_transaction:
                    self._connection.execute("ROLLBACK")
                raise
        except sqlite3.Error as error:
            raise fault_from(error, self.path) from error

    def version_seen(self) -> int:
        """Changes whenever another connection has written."""
        ((version,),) = self.rows("PRAGMA data_version")
        return int(version)


def _make_folder(folder: str) -> None:
    """Make a folder, and those above it, where they are not there; it is for its owner alone."""
    if os.path.isdir(folder):
        return
    above = os.path.dirname(folder)
    if above and above != folder:
        os.makedirs(above, exist_ok=True)
    os.mkdir(folder, mode=0o700)

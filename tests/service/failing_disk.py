"""A disk that fails at the very end of a write, when all of it is there or nothing."""

from __future__ import annotations

import sqlite3
from typing import Any

from sewalong.store.chain import EVENTS
from sewalong.store.library import Library


class FailingDisk:
    """Stands between a library and its connection; SQLite reports so where the last sync fails.

    `takes`: what was to be written is there all the same. `unreadable`: nothing can be read either.
    """

    def __init__(self, library: Library, *, takes: bool, unreadable: bool = False) -> None:
        self.connection = library._db._connection
        self.takes = takes
        self.fails = True
        self._unreadable = unreadable
        library._db._connection = self  # type: ignore[assignment]

    def __getattr__(self, name: str) -> Any:
        return getattr(self.connection, name)

    def execute(self, sql: str, *values: Any) -> sqlite3.Cursor:
        """What SQLite does, and then its error."""
        if self.fails and sql == "COMMIT":
            self.connection.execute("COMMIT" if self.takes else "ROLLBACK")
            raise _io_error()
        if self.fails and self._unreadable and sql.startswith(EVENTS):
            raise _io_error()
        return self.connection.execute(sql, *values)


def _io_error() -> sqlite3.OperationalError:
    error = sqlite3.OperationalError("disk I/O error")
    error.sqlite_errorname = "SQLITE_IOERR_FSYNC"
    return error

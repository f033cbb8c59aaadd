"""One SQLite connection, set so that what was acknowledged is on disk.

`journal_mode=TRUNCATE` with `synchronous=FULL` lost no acknowledged commit in simulated
power cuts; a write-ahead log loses rows when a sync tool replaces the file.
"""

from __future__ import annotations

import os
import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from datetime import date, datetime
from typing import Any

from sewalong.store import begun
from sewalong.store.faults import (
    Damaged,
    NotOurs,
    StoreFault,
    Trouble,
    damaged,
    fault_from,
    in_doubt,
    lost,
    means_damage,
)
from sewalong.store.schema import STEPS, checked_version, version_of
from sewalong.store.writing import make_folder

PATIENCE = 0.25
"""Seconds to wait for another window's write; longer would freeze the screen."""


_PRAGMAS = ("foreign_keys = ON", "recursive_triggers = ON", "synchronous = FULL", "fullfsync = 1")


class Database:
    """An open record. Raises StoreFault with a plain sentence for whatever goes wrong."""

    def __init__(self, path: str | os.PathLike[str], now: datetime) -> None:
        self.path = path = os.fspath(path)
        self._kept_day: date | None = None
        was_begun = begun.was_begun(path)
        if not begun.is_there(path):
            _make_private(path)
        try:
            self._connection = sqlite3.connect(path, timeout=PATIENCE, isolation_level=None)
        except sqlite3.Error as error:
            raise fault_from(error, path) from error
        try:
            for pragma in _PRAGMAS:
                self._connection.execute(f"PRAGMA {pragma}").fetchall()
            # A file that is not ours must not even have its journal mode changed.
            version = checked_version(self._connection, path)
            if version == 0 and was_begun:
                raise lost(path, "there is no quilt and no table in it now")
            (mode,) = self._connection.execute("PRAGMA journal_mode = TRUNCATE").fetchone()
            if mode != "truncate":
                raise StoreFault(
                    f"The record at {path} cannot be kept safely on this disk (it stays in "
                    f"{mode} mode). Set SEWALONG_HOME to a folder on another one."
                )
            self._check_size()
            self.has_derived = version == len(STEPS) or self._migrated(now)
        except (NotOurs, *Trouble) as error:
            self.close()
            fault = error if isinstance(error, NotOurs) else fault_from(error, path)
            if was_begun and isinstance(fault, NotOurs):
                fault = lost(path, "what lies there now is no record of quilts")
            raise fault from error
        except BaseException:
            self.close()
            raise
        if not was_begun:
            begun.mark(path, now)

    def _check_size(self) -> None:
        """Raise Damaged where the file is longer or shorter than it says it is."""
        # Asked in one transaction, or another window's write would come between.
        self._connection.execute("BEGIN")
        try:
            (pages,) = self._connection.execute("PRAGMA page_count").fetchone()
            (size,) = self._connection.execute("PRAGMA page_size").fetchone()
            there = os.stat(self.path).st_size
        finally:
            self._connection.execute("COMMIT")
        if there != pages * size:
            raise damaged(self.path, f"it should have {pages * size} bytes and has {there}")

    def _migrated(self, now: datetime) -> bool:
        """Bring the record up to date; False where it is older and can only be read.

        What is derived from it has no place there then, and is worked out each time.
        """
        from sewalong.store.migrations import migrate  # not every opening needs it

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

    def rows(self, sql: str, *values: str | int) -> list[tuple[Any, ...]]:
        """All rows of a question."""
        try:
            return self._connection.execute(sql, values).fetchall()
        except Trouble as error:
            raise fault_from(error, self.path) from error

    def readable_rows(self, sql: str, *values: str | int) -> list[tuple[Any, ...]]:
        """The rows of a question up to the first that cannot be read because of damage."""
        rows: list[tuple[Any, ...]] = []
        try:
            rows.extend(self._connection.execute(sql, values))
        except Trouble as error:
            if not means_damage(error):
                raise fault_from(error, self.path) from error
        return rows

    @contextmanager
    def steady(self) -> Iterator[None]:
        """Several questions answered as of one moment, whatever other windows write meanwhile."""
        try:
            self._connection.execute("BEGIN")
            try:
                yield
            finally:
                if self._connection.in_transaction:
                    self._connection.execute("ROLLBACK")
        except Trouble as error:
            raise fault_from(error, self.path) from error

    def damage(self, *, anywhere: bool = True) -> Damaged | None:
        """The first thing that is wrong with the file: in any quilt, or with `anywhere` false only
        with the file as a whole. Looks through all of it, so it is asked only of what is rare."""
        from sewalong.store.soundness import faults_of, faults_of_whole

        look = faults_of if anywhere else faults_of_whole
        faults = look(self._connection, self.path)
        return damaged(self.path, faults[0].what) if faults else None

    def back_up_before(self, day: date) -> None:
        """Make the backup of `day`, if there is none yet: before the first write of a day.

        Raises Damaged where the file is damaged, and then nothing may be written to it; where
        no backup can be made for another reason, work goes on and `sewalong examine` says so.
        """
        if self._kept_day == day or not self.has_derived:
            return
        if not os.path.exists(begun.backup_of_day(self.path, day)):
            from sewalong.store.backups import before_first_write

            before_first_write(self._connection, self.path, day)
        self._kept_day = day

    @contextmanager
    def writing(self) -> Iterator[sqlite3.Connection]:
        """One transaction: all of it is on disk when the block ends, or none of it.

        Raises InDoubt where the disk fails at the end, and which of both is not known.
        """
        fault = fault_from
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
                fault = in_doubt
                self._connection.execute("COMMIT")
            except BaseException:
                if self._connection.in_transaction:
                    self._connection.execute("ROLLBACK")
                raise
        except Trouble as error:
            raise fault(error, self.path) from error

    def version_seen(self) -> int:
        """Changes whenever another connection has written."""
        ((version,),) = self.rows("PRAGMA data_version")
        return int(version)


def _make_private(path: str) -> None:
    """Make an empty file for a new record, and its folder: for their owner alone."""
    folder = os.path.dirname(path) or "."
    try:
        make_folder(folder)
    except OSError as error:
        raise StoreFault(
            f"The folder {folder} cannot be made ({error.strerror}). "
            "Set SEWALONG_HOME to a folder that is yours."
        ) from error
    # Where this fails SQLite fails too, and has a sentence for it.
    with suppress(OSError):
        os.close(os.open(path, os.O_CREAT | os.O_EXCL | os.O_RDWR, 0o600))

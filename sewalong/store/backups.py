"""Backups of the whole record, beside it: made by SQLite's own copying, read back when made.

One is made before the first write of a day, and before anything changes the record as a whole.
Those of days are thinned out; all others stay.
"""

from __future__ import annotations

import os
import re
import shutil
import sqlite3
import tempfile
from collections.abc import Collection, Iterator
from contextlib import closing, suppress
from datetime import date, datetime

from msgspec import Struct

from sewalong.store.begun import backup_folder, backup_of_day, stem_of
from sewalong.store.faults import Damaged, StoreFault, Trouble, damaged, fault_from
from sewalong.store.soundness import Fault, as_of_one_moment, faults_of_file, trouble_of
from sewalong.store.writing import free_name, make_folder, sync_file, sync_folder

DAYS = 14
"""Backups of days that are kept, counted in days of use: a clock set wrong drops none of them.
Single days for a time and then single months is common practice; how many is from memory."""

MONTHS = 12
"""Months before those days of which the first backup is kept."""

PATIENCE = 1.0
"""Seconds to wait for another window's write where no screen stands still meanwhile: from memory,
more than any write of ours takes."""

_NAME = re.compile(
    r"-(?:(?P<day>\d{4}-\d\d-\d\d)|(?:(?P<why>v\d+|before-restore)-)?(?P<at>\d{8}T\d{6})(?:-\d+)?)\.db"
)
_WHY = {"v": "before a newer sewalong took over", "b": "before a restore", "": "on request"}


class Backup(Struct, frozen=True):
    """A backup: where it lies, when it was made, in words, and what for."""

    path: str
    made: str
    why: str


def backups_of(path: str) -> tuple[Backup, ...]:
    """The backups in the folder beside the record at `path`, the newest first."""
    found: list[tuple[str, Backup]] = []
    for where, parts in _named(path):
        day, why, at = parts.group("day", "why", "at")
        if day:
            # Before the first write of its day, so before all else that was made on it.
            key = day.replace("-", "")
            found.append((key, Backup(where, day, "before the first write of the day")))
        else:
            made = f"{at[:4]}-{at[4:6]}-{at[6:8]} {at[9:11]}:{at[11:13]}"
            found.append((at, Backup(where, made, _WHY[(why or "")[:1]])))
    return tuple(backup for _, backup in sorted(found, key=lambda one: one[0], reverse=True))


def before_first_write(connection: sqlite3.Connection, path: str, day: date) -> None:
    """The backup of a day. Raises Damaged where SQLite finds the file damaged.

    Whatever else stands in the way is no reason to stop sewing: `examine` tells how old the last
    backup is.
    """
    try:
        (quilts,) = connection.execute("SELECT COUNT(*) FROM quilt").fetchone()
        if not quilts or shutil.disk_usage(os.path.dirname(path) or ".").free < _room(path):
            return
        faults = _back_up(connection, path, backup_of_day(path, day))
        if not faults:
            # One that has damage in it takes the place of none that has not.
            _thin(path)
    except Damaged:
        raise
    except (StoreFault, OSError, *Trouble):
        return


def _room(path: str) -> int:
    """Bytes that must be free for the backup of a day: it must not take the room for counts.
    Three times the record besides the copy is a rule of thumb."""
    return 4 * os.path.getsize(path)


def back_up(
    connection: sqlite3.Connection,
    path: str | os.PathLike[str],
    now: datetime,
    *,
    folder: str | None = None,
    why: str = "",
) -> str:
    """Copy the record whole or not at all, to `folder` or where backups lie; where it is then.

    `why` stands in its name: "v3-" of a record that had three steps, before the next.

    Raises StoreFault, and Damaged where the copy is not sound: then there is none.
    """
    path = os.fspath(path)
    folder = folder or backup_folder(path)
    begins = f"{stem_of(path)}-{why}{now:%Y%m%dT%H%M%S}"
    free = free_name(os.path.join(folder, begins), ".db")
    try:
        _back_up(connection, path, free)
    except OSError as error:
        raise StoreFault(
            f"No backup could be made in {folder} ({error.strerror}), so the record was left as "
            "it was. Make room or move what is in the way, then try again."
        ) from error
    except Trouble as error:
        raise fault_from(error, path) from error
    return free


def back_up_record(path: str, now: datetime, folder: str | None, *, why: str = "") -> str:
    """`back_up` of a record that is not open here."""
    try:
        with closing(sqlite3.connect(path, timeout=PATIENCE, isolation_level=None)) as connection:
            return back_up(connection, path, now, folder=folder, why=why)
    except Trouble as error:
        raise fault_from(error, path) from error


def _back_up(connection: sqlite3.Connection, path: str, to: str) -> tuple[Fault, ...]:
    """To a temporary file first, which is synced, read back and then renamed.

    What is wrong in single quilts is returned; with more than that there is no backup.
    """
    folder = os.path.dirname(to)
    make_folder(folder)
    if not os.path.isdir(folder):
        raise FileExistsError(17, "a file lies where its folder should be")
    handle, name = tempfile.mkstemp(dir=folder, prefix=".backup-", suffix=".db")
    os.close(handle)
    try:
        with (
            closing(sqlite3.connect(name, isolation_level=None)) as copy,
            as_of_one_moment(connection),
        ):
            # Synced once, below: until then it is nothing yet.
            copy.execute("PRAGMA journal_mode = OFF").fetchall()
            copy.execute("PRAGMA synchronous = OFF").fetchall()
            # Takes the lock for reading: copying would wait for it without end.
            connection.execute("SELECT 1 FROM sqlite_master").fetchone()
            connection.backup(copy)
        sync_file(name)
        faults = faults_of_file(name)
        if trouble := trouble_of(faults):
            raise damaged(path, trouble)
        os.replace(name, to)
    except BaseException:
        for left in (name, f"{name}-journal"):
            if os.path.exists(left):
                os.unlink(left)
        raise
    sync_folder(folder)
    return faults


def days_to_drop(days: Collection[date]) -> set[date]:
    """Of the days with a backup those whose backup may go: all but the last `DAYS`, and but the
    first of each of the last `MONTHS` months before them."""
    older = sorted(days)[:-DAYS]
    firsts: dict[tuple[int, int], date] = {}
    for day in older:
        firsts.setdefault((day.year, day.month), day)
    kept = sorted(firsts.values())[-MONTHS:]
    return set(older) - set(kept)


def _thin(path: str) -> None:
    days: set[date] = set()
    for _, parts in _named(path):
        with suppress(ValueError):  # no day of the calendar
            days.add(date.fromisoformat(parts["day"] or ""))
    for day in days_to_drop(days):
        os.unlink(backup_of_day(path, day))


def _named(path: str) -> Iterator[tuple[str, re.Match[str]]]:
    """Each backup of the record at `path`, and what its name says."""
    folder, stem = backup_folder(path), stem_of(path)
    try:
        names = sorted(os.listdir(folder))
    except OSError:
        return
    for name in names:
        parts = _NAME.fullmatch(name.removeprefix(stem)) if name.startswith(stem) else None
        if parts is not None:
            yield os.path.join(folder, name), parts

"""Putting a backup in the place of the record; what lies there is kept, whatever it is."""

from __future__ import annotations

import os
import shutil
import sqlite3
import tempfile
from contextlib import closing, suppress
from datetime import datetime

from msgspec import Struct

from sewalong.store.backups import back_up
from sewalong.store.begun import mark
from sewalong.store.database import Database
from sewalong.store.faults import StoreFault, Trouble, fault_from
from sewalong.store.rescue import Rescued, rescue
from sewalong.store.soundness import faults_of, faults_of_file, trouble_of
from sewalong.store.writing import make_folder, sync_file, sync_folder


class Restored(Struct, frozen=True):
    """What became of what lay there: a sound record is in the backup `before`, anything else was
    put `aside`; None where there was no such thing."""

    before: str | None
    aside: str | None
    rescued: tuple[Rescued, ...]


def put_back(path: str, backup: str, now: datetime) -> Restored:
    """Put `backup` in the place of the record at `path`, all or nothing; raises StoreFault.

    One in which single quilts are damaged can be all there is, and is put back as it is.
    """
    if wrong := trouble_of(faults_of_file(backup)):
        raise StoreFault(
            f"{backup} is not sound ({wrong}), so nothing was changed. Choose another: "
            "sewalong restore lists them."
        )
    return _put_in_place(path, backup, now)


def begin_empty(path: str, now: datetime) -> Restored:
    """Put an empty record in the place of what lies at `path`; raises StoreFault."""
    with tempfile.TemporaryDirectory() as folder:
        empty = os.path.join(folder, "empty.db")
        Database(empty, now).close()
        return _put_in_place(path, empty, now)


def _put_in_place(path: str, backup: str, now: datetime) -> Restored:
    # A record that is a link to another disk stays one.
    place = os.path.realpath(path) if os.path.exists(path) else path
    try:
        make_folder(os.path.dirname(place) or ".")
        before = _back_up_sound(place, path, now)
        aside = None if before else _set_aside(place, path, now)
        rescued: tuple[Rescued, ...] = ()
        if aside and os.path.isfile(aside):
            rescued = rescue(aside, backup, _folder(path, "rescued"), now)
        _replace(place, backup)
    except OSError as error:
        raise StoreFault(
            f"The record could not be put back ({error.strerror}). What lay there lies there "
            "still. Make room or look at the rights of the folder, then try again."
        ) from error
    mark(path, now)
    return Restored(before, aside, rescued)


def _back_up_sound(place: str, path: str, now: datetime) -> str | None:
    """A backup of what lies there, if that is a sound record; else None."""
    if not os.path.isfile(place) or not os.path.getsize(place):
        return None
    try:
        with closing(sqlite3.connect(place, timeout=1, isolation_level=None)) as connection:
            if faults_of(connection, place):
                return None
            return back_up(connection, path, now, why="before-restore-")
    except Trouble as error:
        raise fault_from(error, path) from error


def _set_aside(place: str, path: str, now: datetime) -> str | None:
    """Keep what lies there, with its journal, in a folder of its own."""
    journal = f"{place}-journal"
    if not os.path.lexists(place) and not (os.path.isfile(journal) and os.path.getsize(journal)):
        return None
    folder = _folder(path, "set-aside")
    make_folder(folder)
    aside = os.path.join(folder, f"{now:%Y%m%dT%H%M%S}-{os.path.basename(path)}")
    n = 1
    while os.path.lexists(aside):
        n += 1
        aside = os.path.join(folder, f"{now:%Y%m%dT%H%M%S}-{n}-{os.path.basename(path)}")
    if os.path.lexists(place) and not os.path.isfile(place):
        os.rename(place, aside)  # a folder, or a link that leads nowhere
        return aside
    # Copied, so that it lies in its place still should the power fail before all is done.
    for ending in ("-journal", ""):
        if os.path.isfile(f"{place}{ending}"):
            shutil.copyfile(f"{place}{ending}", f"{aside}{ending}")
            os.chmod(f"{aside}{ending}", 0o600)
            sync_file(f"{aside}{ending}")
    sync_folder(folder)
    return aside


def _replace(place: str, backup: str) -> None:
    folder = os.path.dirname(place) or "."
    handle, name = tempfile.mkstemp(dir=folder, prefix=".restore-", suffix=".db")
    os.close(handle)
    try:
        shutil.copyfile(backup, name)
        sync_file(name)
        # A journal belongs to the file that goes: played back into another it would ruin that.
        with suppress(FileNotFoundError):
            os.unlink(f"{place}-journal")
        os.replace(name, place)
    except BaseException:
        if os.path.exists(name):
            os.unlink(name)
        raise
    sync_folder(folder)


def _folder(path: str, name: str) -> str:
    return os.path.join(os.path.dirname(path), name)

"""Putting a backup in the place of the record; what lies there is kept, whatever it is."""

from __future__ import annotations

import os
import shutil
import sqlite3
import tempfile
from collections.abc import Iterator
from contextlib import closing, contextmanager, suppress
from datetime import datetime

from msgspec import Struct

from sewalong.store.backups import PATIENCE, back_up_record
from sewalong.store.begun import backup_folder, mark
from sewalong.store.database import Database
from sewalong.store.faults import StoreFault, Trouble, fault_from, means_damage
from sewalong.store.rescue import Rescued, rescue
from sewalong.store.soundness import faults_of, faults_of_file, trouble_of
from sewalong.store.writing import free_name, make_folder, sync_file, sync_folder


class Restored(Struct, frozen=True):
    """What became of what lay there: a sound record is in the backup `before`, anything else was
    put `aside`; None where there was no such thing. `unsaved` says why nothing was `rescued`, if
    that was for a reason."""

    before: str | None
    aside: str | None
    rescued: tuple[Rescued, ...] = ()
    unsaved: str = ""


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
        with _held(place) as connection:
            before = None
            if connection is not None and not faults_of(connection, place):
                before = back_up_record(place, now, backup_folder(path), why="before-restore-")
            aside = None if before else _set_aside(place, path, now)
            _replace(place, backup)
    except OSError as error:
        raise StoreFault(
            f"The record could not be put back ({error.strerror}). What lay there lies there "
            "still. Make room or look at the rights of the folder, then try again."
        ) from error
    mark(path, now)
    if aside is None or not os.path.isfile(aside):
        return Restored(before, aside)
    try:
        rescued = rescue(aside, backup, os.path.join(os.path.dirname(path), "rescued"), now)
    except (StoreFault, OSError) as error:
        return Restored(before, aside, unsaved=str(error))
    return Restored(before, aside, rescued)


@contextmanager
def _held(place: str) -> Iterator[sqlite3.Connection | None]:
    """The record that lies there, with nobody else writing to it; None where it is too damaged
    for that. Raises StoreFault where another window does not let go."""
    if not os.path.isfile(place) or not os.path.getsize(place):
        yield None
        return
    with closing(sqlite3.connect(place, timeout=PATIENCE, isolation_level=None)) as connection:
        try:
            connection.execute("BEGIN IMMEDIATE")
        except Trouble as error:
            if not means_damage(error):
                raise fault_from(error, place) from error
            yield None
            return
        yield connection


def _set_aside(place: str, path: str, now: datetime) -> str | None:
    """Keep what lies there, with its journal, in a folder of its own; None where nothing does.

    A file gets a second name there and loses the first only when the backup takes its place: so
    it lies there still should the power fail, and what another window has open is what is kept.
    """
    journal = f"{place}-journal"
    hot = os.path.isfile(journal) and os.path.getsize(journal) > 0
    if not os.path.lexists(place) and not hot:
        return None
    folder = os.path.join(os.path.dirname(path), "set-aside")
    make_folder(folder)
    begins = os.path.join(folder, f"{now:%Y%m%dT%H%M%S}")
    aside = free_name(begins, f"-{os.path.basename(path)}")
    if hot:
        _name_too(journal, f"{aside}-journal")
    if os.path.isfile(place):
        _name_too(place, aside)
    elif os.path.lexists(place):
        os.rename(place, aside)  # a folder, or a link that leads nowhere
    sync_folder(folder)
    return aside


def _name_too(file: str, name: str) -> None:
    try:
        os.link(file, name)
    except OSError:  # another disk, or one that has no second names
        shutil.copyfile(file, name)
        sync_file(name)
    os.chmod(name, 0o600)


def _replace(place: str, backup: str) -> None:
    folder = os.path.dirname(place) or "."
    handle, name = tempfile.mkstemp(dir=folder, prefix=".restore-", suffix=".db")
    os.close(handle)
    try:
        shutil.copyfile(backup, name)
        sync_file(name)
        # A journal belongs to the file that goes: played back into another it would ruin that. So
        # it is gone for good, whenever the power fails, before the other comes.
        with suppress(FileNotFoundError):
            os.unlink(f"{place}-journal")
            sync_folder(folder)
        os.replace(name, place)
    except BaseException:
        if os.path.exists(name):
            os.unlink(name)
        raise
    sync_folder(folder)

"""What a damaged record still has and a backup lacks, saved as files that can be read."""

from __future__ import annotations

import os
import re
import shutil
import sqlite3
import tempfile
from contextlib import closing
from datetime import datetime

from msgspec import Struct

from sewalong.progress.record.events.event import Recorded
from sewalong.store.archive import to_text
from sewalong.store.codec import event_to_json
from sewalong.store.faults import StoreFault, Trouble
from sewalong.store.library import Library
from sewalong.store.writing import file_stem, free_name, make_folder, write_whole

# An event as it is written: its time first, its kind last, and no control character anywhere. So
# it is found in the bytes of a file that SQLite can make nothing of any more. One longer than a page
# (4,096 bytes) never lies there in one piece; the bound is well above that.
_BODY = re.compile(rb'\{"at":"[^\x00-\x1f]{1,20000}?"kind":"[a-z ]{1,40}"\}')


class Rescued(Struct, frozen=True):
    """A file with `events` that the backup lacks: of `quilt`, to be imported, or with None single
    events in no order that can be proved, to be read."""

    file: str
    events: int
    quilt: str | None


def rescue(damaged: str, backup: str, folder: str, now: datetime) -> tuple[Rescued, ...]:
    """Save what can be read in the file `damaged` and is not in `backup`, into `folder`.

    Neither file is changed; both are looked at in a copy. Raises StoreFault where nothing can be
    saved.
    """
    with tempfile.TemporaryDirectory() as scratch:
        sound = _copied(backup, scratch, "backup.db")
        known = {key: len(record) for key, _, record, _ in _quilts_in(sound, now)}
        copy = _copied(damaged, scratch, "damaged.db")
        left = _bodies_in(copy) - _bodies_in(sound)
        saved = []
        for key, name, record, text in _quilts_in(copy, now):
            more = len(record) - known.get(key, 0)
            # One that the backup has not at all is saved also where nothing happened to it yet.
            if more > 0 or key not in known:
                file = _free(folder, name, f"-{now:%Y%m%dT%H%M%S}.json")
                write_whole(file, text)
                saved.append(Rescued(file, more, name))
            left -= {event_to_json(one.event).encode() for one in record}
        if left:
            file = _free(folder, "events", f"-{now:%Y%m%dT%H%M%S}.txt")
            # By their time, which stands first in each.
            write_whole(
                file, "".join(f"{body.decode(errors='replace')}\n" for body in sorted(left))
            )
            saved.append(Rescued(file, len(left), None))
    return tuple(saved)


def _copied(file: str, scratch: str, name: str) -> str:
    copy = os.path.join(scratch, name)
    shutil.copyfile(file, copy)
    if os.path.isfile(f"{file}-journal"):
        shutil.copyfile(f"{file}-journal", f"{copy}-journal")
    return copy


def _quilts_in(copy: str, now: datetime) -> list[tuple[str, str, tuple[Recorded, ...], str]]:
    """Of each quilt that can be read: key, name, its record as far as it is whole, its archive."""
    found: list[tuple[str, str, tuple[Recorded, ...], str]] = []
    try:
        with closing(Library(copy, now)) as library:
            for entry in library.entries():
                try:
                    loaded = library.load(entry)
                except (StoreFault, ValueError):
                    continue
                found.append((entry.key, entry.name, loaded.record, to_text(loaded)))
    except StoreFault:
        return found
    return found


def _bodies_in(copy: str) -> set[bytes]:
    """Every event that stands in the bytes of a file or can be asked of it."""
    with open(copy, "rb") as file:
        bodies = set(_BODY.findall(file.read()))
    try:
        with closing(sqlite3.connect(copy)) as connection:
            for (body,) in connection.execute("SELECT CAST(body AS BLOB) FROM event"):
                bodies |= set(_BODY.findall(body or b""))
    except Trouble:
        pass
    return bodies


def _free(folder: str, name: str, ends: str) -> str:
    """A name in `folder` that no file has yet, with letters and digits of `name` in it."""
    try:
        make_folder(folder)
    except OSError as error:
        raise StoreFault(f"The folder {folder} cannot be made ({error.strerror}).") from error
    return free_name(os.path.join(folder, file_stem(name)), ends)

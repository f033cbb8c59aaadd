"""Whether a record was begun here: a small file beside it tells a first start from a loss.

An emptied file, one byte, or nothing at all would otherwise look like a record that has yet to
begin, and a new one would be written over what can still be put back.
"""

from __future__ import annotations

import os
import stat
from contextlib import suppress
from datetime import date, datetime

from sewalong.store.faults import StoreFault, cannot_open, lost, not_ours

SMALLEST = 512
"""Bytes of the smallest page of a database: what is shorter is none, or what is left of one."""


def marker_of(path: str) -> str:
    """The file that says that a record was begun at `path`."""
    return f"{path}-begun"


def backup_of_day(path: str, day: date) -> str:
    """The file that the backup of a day lies in."""
    return os.path.join(backup_folder(path), f"{stem_of(path)}-{day.isoformat()}.db")


def stem_of(path: str) -> str:
    """What the names of all backups of a record begin with."""
    return os.path.splitext(os.path.basename(path))[0]


def backup_folder(path: str) -> str:
    """The folder of the backups, beside the record."""
    return os.path.join(os.path.dirname(path), "backups")


def is_there(path: str) -> bool:
    """Whether something lies at `path` that can be opened; False where nothing was ever begun.

    Raises Lost for a record that was begun and is gone or emptied, and StoreFault for what
    can be no record. Nothing is written.
    """
    # Asked first: whoever begins a record writes the marker last, and the journal after the file.
    marked, journal = os.path.exists(marker_of(path)), os.path.exists(f"{path}-journal")
    try:
        found = os.stat(path)
    except (FileNotFoundError, NotADirectoryError):
        _refuse_odd_folder(os.path.dirname(path))
        if os.path.islink(path):
            raise lost(path, "it is a link now to what is not there") from None
        if marked or journal or _has_backups(path):
            raise lost(path, "the file is gone") from None
        return False
    except OSError as error:
        raise StoreFault(
            f"The record at {path} cannot be looked at ({error.strerror}). Look at the rights of "
            "its folder, then try again."
        ) from error
    if not stat.S_ISREG(found.st_mode):
        if marked:
            raise lost(path, "what lies there now is no file")
        raise cannot_open(path)
    if found.st_size < SMALLEST:
        if marked or (found.st_size == 0 and _has_backups(path)):
            raise lost(path, f"the file has {_bytes(found.st_size)} in it now")
        if found.st_size:
            raise not_ours(path)
    _keep_private(path, found.st_mode)
    return True


def was_begun(path: str) -> bool:
    """Whether the marker is there."""
    return os.path.exists(marker_of(path))


def mark(path: str, now: datetime) -> None:
    """Write the marker; where nothing can be written the record does without."""
    from sewalong.store.writing import write_whole

    with suppress(StoreFault):
        write_whole(
            marker_of(path),
            f"A record of quilts lies in {os.path.basename(path)} since {now:%Y-%m-%d} or before. "
            "This file tells a loss of it from a first start: leave it here.\n",
        )


def _bytes(size: int) -> str:
    return {0: "nothing", 1: "one byte"}.get(size, f"{size} bytes")


def _has_backups(path: str) -> bool:
    try:
        names = os.listdir(backup_folder(path))
    except OSError:
        return False
    return any(name.startswith(f"{stem_of(path)}-") for name in names)


def _refuse_odd_folder(folder: str) -> None:
    """Raise StoreFault where the folder of the record is something else than a folder."""
    if not folder or os.path.isdir(folder) or not os.path.lexists(folder):
        return
    if os.path.exists(folder):
        raise StoreFault(
            f"{folder} should be the folder of your quilts and is a file. Nothing was written. "
            "Move it elsewhere, or set SEWALONG_HOME to the folder your quilts are in."
        )
    raise StoreFault(
        f"{folder} should be the folder of your quilts and is a link to what is not there. "
        "Nothing was written. If it leads to another disk, connect that; else put the link right "
        "or set SEWALONG_HOME to the folder your quilts are in."
    )


def _keep_private(path: str, mode: int) -> None:
    """Take from others what they may do with the record; what its owner may not do stays so."""
    if os.name == "posix" and mode & 0o077:
        with suppress(OSError):
            os.chmod(path, mode & 0o700)
            os.chmod(f"{path}-journal", mode & 0o700)

"""What can go wrong with the disk, each as a plain sentence with what to do next."""

from __future__ import annotations

import os
import sqlite3


class StoreFault(Exception):
    """The record could not be read or written. Nothing was half done. `str()` says it plainly."""


class Stale(StoreFault):
    """Somebody else wrote to this quilt since it was read; read it again and decide anew."""


_SENTENCES = {
    "SQLITE_FULL": "The disk is full, so nothing was recorded. Make some room, then try again.",
    "SQLITE_READONLY": "The record at {path} cannot be written to. Check who owns the file and "
    "its folder, or set SEWALONG_HOME to a folder that can be written.",
    "SQLITE_READONLY_DBMOVED": "The record at {path} was moved or replaced while it was open. "
    "Leave, look at the folder, and start again.",
    "SQLITE_CANTOPEN": "The record at {path} cannot be opened. Check that the folder is there "
    "and is yours, and that no folder of that name stands in its place.",
    "SQLITE_BUSY": "Another window is writing to the record just now. Nothing was recorded; "
    "try again.",
    "SQLITE_NOTADB": "The file at {path} is not a sewalong record. It was left untouched: move "
    "it elsewhere, or set SEWALONG_HOME to another folder.",
    "SQLITE_CORRUPT": "The record at {path} is damaged. It was left untouched: copy it somewhere "
    "safe, then put back a backup from the folder beside it or import an exported quilt.",
    "SQLITE_IOERR": "The disk did not answer as it should, so nothing was recorded. Check the "
    "disk, then try again.",
}


def not_ours(path: str | os.PathLike[str]) -> str:
    """What is said of a file that is no record of ours."""
    return _SENTENCES["SQLITE_NOTADB"].format(path=path)


def fault_from(error: sqlite3.Error, path: str | os.PathLike[str]) -> StoreFault:
    """The plain sentence for an SQLite error; the longest matching error name decides."""
    name = getattr(error, "sqlite_errorname", "") or ""
    for known in sorted(_SENTENCES, key=len, reverse=True):
        if name.startswith(known):
            return StoreFault(_SENTENCES[known].format(path=path))
    return StoreFault(f"The record at {path} could not be used ({error}). Nothing was recorded.")

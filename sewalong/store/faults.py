"""What can go wrong with the disk, each as a plain sentence with what to do next."""

from __future__ import annotations

import os
import sqlite3

WAY_OUT = "See what is whole with sewalong examine, and put a backup back with sewalong restore."
"""What there is to do about a record that is damaged or lost."""


class StoreFault(Exception):
    """The record could not be read or written. Nothing was half done. `str()` says it plainly."""


class Stale(StoreFault):
    """Somebody else wrote to this quilt since it was read; read it again and decide anew."""


class Damaged(StoreFault):
    """What is in the record is not what was written there; `what` of it, in a few words."""

    what = ""


class Newer(StoreFault):
    """The record had more steps than this sewalong knows."""


class Lost(StoreFault):
    """A record was begun here and is gone, or something else lies in its place."""


class InDoubt(StoreFault):
    """The disk failed at the end of a write, which may be in the record all the same; `if_not` is
    what there is to say where it turns out not to be."""

    if_not = ""


class NotOurs(StoreFault):
    """The file is no record of ours, or no longer one."""


Trouble = (sqlite3.Error, UnicodeDecodeError)
"""What the library raises: also where its own words about a damaged file are no text."""

_SENTENCES = {
    "SQLITE_FULL": "The disk is full, so nothing was recorded. Make some room, then try again.",
    "SQLITE_READONLY": "The record at {path} cannot be written to. Check who owns the file and "
    "its folder, or set SEWALONG_HOME to a folder that can be written.",
    "SQLITE_READONLY_DBMOVED": "The record at {path} was moved or replaced while it was open. "
    "Put it back where it was; or leave, look at the folder, and start again.",
    "SQLITE_CANTOPEN": "The record at {path} cannot be opened. Check that the folder is there "
    "and is yours, and that no folder of that name stands in its place.",
    "SQLITE_BUSY": "Another window is writing to the record just now. Nothing was recorded; "
    "try again.",
    "SQLITE_NOTADB": "The file at {path} is not a sewalong record, or no longer one. It was left "
    "untouched. If it is none of yours, move it elsewhere or set SEWALONG_HOME to another folder; "
    "if your quilts were in it, put a backup back with sewalong restore.",
    "SQLITE_IOERR": "The disk did not answer as it should, so nothing was recorded. Check the "
    "disk, then try again.",
}


def not_ours(path: str | os.PathLike[str]) -> NotOurs:
    """A file that nothing shows to be a record of ours."""
    return NotOurs(_SENTENCES["SQLITE_NOTADB"].format(path=path))


def cannot_open(path: str | os.PathLike[str]) -> StoreFault:
    """Something that cannot be opened lies where the record should."""
    return StoreFault(_SENTENCES["SQLITE_CANTOPEN"].format(path=path))


def damaged(path: str | os.PathLike[str], what: str = "") -> Damaged:
    """A record of ours in which `what` is wrong, if that is known."""
    known = f" ({what})" if what else ""
    fault = Damaged(f"The record at {path} is damaged{known}. It was left untouched. {WAY_OUT}")
    fault.what = what or "it cannot be read"
    return fault


def lost(path: str | os.PathLike[str], what: str) -> Lost:
    """A record that was begun at `path`, where now `what` is true of the file."""
    return Lost(
        f"A record of quilts was begun at {path}, and {what}. Nothing was written. If you moved "
        "it, move it back; see what can be put back with sewalong restore."
    )


def in_doubt(error: Exception, path: str | os.PathLike[str]) -> StoreFault:
    """The sentence for an error at the end of a write. A disk can fail when nothing is left to be
    written but that all of it is; with any other error SQLite has written nothing."""
    known = fault_from(error, path)
    if not str(getattr(error, "sqlite_errorname", "")).startswith("SQLITE_IOERR"):
        return known
    fault = InDoubt(
        "The disk did not answer as it should, so it is not known whether this was recorded. Check "
        "the disk, then look with sewalong log."
    )
    fault.if_not = str(known)
    return fault


def means_damage(error: Exception) -> bool:
    """Whether an error says that bytes of the file are not what they were."""
    if isinstance(error, UnicodeDecodeError):
        return True
    name = getattr(error, "sqlite_errorname", None)
    if name is None:
        # The one thing Python itself says of a row: a text in it is no text.
        return "decode" in str(error)
    return str(name).startswith(("SQLITE_CORRUPT", "SQLITE_NOTADB", "SQLITE_ERROR"))


def fault_from(error: Exception, path: str | os.PathLike[str]) -> StoreFault:
    """The plain sentence for an error of SQLite's; the longest matching error name decides."""
    name = getattr(error, "sqlite_errorname", "") or ""
    if name == "SQLITE_NOTADB":
        return not_ours(path)
    for known in sorted(_SENTENCES, key=len, reverse=True):
        if name.startswith(known):
            return StoreFault(_SENTENCES[known].format(path=path))
    if means_damage(error):
        return damaged(path)
    return StoreFault(f"The record at {path} could not be used ({error}). Nothing was recorded.")

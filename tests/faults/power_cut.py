"""A disk that promises no more than it must, and what can be left on it when the power is cut.

What was synced is there. Of what was not, each sector of a file, its length, and each name in a
folder is as it was at any moment since the last sync: so writes are dropped, reordered and torn,
and a name can be lost although the file was synced. It is more than real disks do, and much what
SQLite's own crash tests do (src/test6.c in its source).
"""

from __future__ import annotations

import os
from collections.abc import Callable, Iterable
from pathlib import Path
from random import Random

from tests.faults.recording import Call

SECTOR = 512
"""Bytes that are written whole or not at all."""


class File:
    """What a file had in it at each moment since it was synced; the first of them lasts."""

    def __init__(self, content: bytes = b"") -> None:
        self.moments = [content]

    def write(self, at: int, data: bytes) -> None:
        was = self.moments[-1].ljust(at, b"\0")
        self.moments.append(was[:at] + data + was[at + len(data) :])

    def truncate(self, size: int) -> None:
        self.moments.append(self.moments[-1][:size].ljust(size, b"\0"))

    def sync(self) -> None:
        del self.moments[:-1]


class Folder:
    """What lay in a folder at each moment since it was synced; the first of them lasts."""

    def __init__(self, lies: dict[str, File | Folder]) -> None:
        self.moments = [lies]

    def set(self, name: str, lies: File | Folder | None) -> None:
        now = dict(self.moments[-1])
        if lies is None:
            del now[name]
        else:
            now[name] = lies
        self.moments.append(now)

    def sync(self) -> None:
        del self.moments[:-1]


def folder_as_it_is(path: Path) -> Folder:
    """The folder at `path` with all that is in it, synced."""
    return Folder(
        {
            one.name: folder_as_it_is(one) if one.is_dir() else File(one.read_bytes())
            for one in path.iterdir()
        }
    )


class Opened:
    """A file or folder that a process holds open, and where in it the next write goes."""

    def __init__(self, what: File | Folder) -> None:
        self.what = what
        self.at = 0


class Disk:
    """The folder at `root` as it was when `was` was copied, to which recorded calls are done.

    `said` is what the process had printed by then.
    """

    def __init__(self, root: Path, was: Path) -> None:
        self._root = root
        self.top = folder_as_it_is(was)
        self._open: dict[int, Opened] = {}
        self.said: list[bytes] = []

    def do(self, call: Call) -> bool:
        """Do what was done; whether it concerned this folder."""
        if call.result < 0:
            return False
        match call.name.removesuffix("2").removesuffix("at"):
            case "open":
                return self._opened(call)
            case "close":
                return self._open.pop(int(call.rest[0]), None) is None and False
            case "rename" | "link" | "unlink" | "mkdir":
                return self._named(call)
            case "write" if call.rest[0] == "1":
                self.said.append(call.texts[0])
                return True
            case _:
                opened = self._open.get(int(call.rest[0]))
                return opened is not None and self._done_to(opened, call)

    def _opened(self, call: Call) -> bool:
        where = self._place(call.texts[0])
        if where is None:
            return False
        folder, name = where
        there: File | Folder | None = folder.moments[-1].get(name) if name else folder
        made = there is None
        if there is None:
            there = File()
            folder.set(name, there)
        elif "O_TRUNC" in "".join(call.rest) and isinstance(there, File):
            there.truncate(0)
        self._open[call.result] = Opened(there)
        return made

    def _named(self, call: Call) -> bool:
        places = [self._place(text) for text in call.texts]
        if None in places:
            return False
        (folder, name), (to, new) = places[0] or (self.top, ""), places[-1] or (self.top, "")
        if call.name.startswith("mkdir"):
            folder.set(name, Folder({}))
            return True
        lies = folder.moments[-1][name]
        if len(places) == 2:
            to.set(new, lies)
        if not call.name.startswith("link"):
            folder.set(name, None)
        return True

    def _done_to(self, opened: Opened, call: Call) -> bool:
        what = opened.what
        if call.name in ("fsync", "fdatasync"):
            what.sync()
            return True
        assert isinstance(what, File)
        match call.name:
            case "pwrite64":
                what.write(int(call.rest[2]), call.texts[0][: call.result])
            case "write":
                what.write(opened.at, call.texts[0][: call.result])
                opened.at += call.result
            case "ftruncate":
                what.truncate(int(call.rest[1]))
            case "lseek":
                opened.at = call.result
                return False
            case "sendfile":
                source = self._open[int(call.rest[1])].what
                assert isinstance(source, File)
                data = source.moments[-1][opened.at : opened.at + call.result]
                what.write(opened.at, data)
                opened.at += call.result
        return True

    def _place(self, path: bytes) -> tuple[Folder, str] | None:
        """The folder in which a path is a name, and the name; "" is the folder itself."""
        try:
            parts = Path(os.fsdecode(path)).relative_to(self._root).parts
        except ValueError:
            return None
        folder = self.top
        for place, part in enumerate(parts):
            lies = folder.moments[-1].get(part)
            if not isinstance(lies, Folder):
                assert place == len(parts) - 1, path
                return folder, part
            folder = lies
        return folder, ""


Cut = Callable[[Random, "list[bytes]"], bytes]
"""What is left of a file, of what was in it at each moment since it was synced."""


def nothing_unsynced(chance: Random, moments: list[bytes]) -> bytes:
    return moments[0]


def all_of_it(chance: Random, moments: list[bytes]) -> bytes:
    return moments[-1]


def some_moment(chance: Random, moments: list[bytes]) -> bytes:
    return chance.choice(moments)


def torn(chance: Random, moments: list[bytes]) -> bytes:
    size = len(chance.choice(moments))
    sectors = (chance.choice(sector(moments, at)) for at in range(0, size, SECTOR))
    return b"".join(sectors)[:size]


def sector(moments: list[bytes], at: int) -> list[bytes]:
    """What can be in the sector at `at`: what was there, or zeros where the file had grown to it
    and what was written had not come yet. What was cut off is not zeros: it is there or gone."""
    can_be, shorter = [], False
    for content in moments:
        if len(content) <= at:
            shorter = True
            continue
        if shorter:
            can_be.append(bytes(SECTOR))
        can_be.append(content[at : at + SECTOR].ljust(SECTOR, b"\0"))
    return can_be


CUTS: tuple[Cut, ...] = (nothing_unsynced, all_of_it, some_moment, torn)


def leave(folder: Folder, to: Path, cut: Cut, chance: Random) -> None:
    """Write out what is left of a folder at `to`."""
    to.mkdir(parents=True)
    names: Iterable[str] = dict.fromkeys(name for lay in folder.moments for name in lay)
    for name in names:
        moments = folder.moments
        if cut is not nothing_unsynced and cut is not all_of_it:
            moments = [chance.choice(moments)]
        lies = moments[0 if cut is nothing_unsynced else -1].get(name)
        if isinstance(lies, Folder):
            leave(lies, to / name, cut, chance)
        elif isinstance(lies, File):
            content = cut(chance, lies.moments) if len(lies.moments) > 1 else lies.moments[0]
            (to / name).write_bytes(content)

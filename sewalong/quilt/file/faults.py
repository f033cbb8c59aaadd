"""What is wrong with a quilt file: every fault with its key, its line and what would be right."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from msgspec import Struct

if TYPE_CHECKING:
    from collections.abc import Sequence

    from sewalong.quilt.file.toml_lines import Path

FAULTS_AT_MOST = 100
"""More faults than this are counted, not listed: such a file is not a quilt file."""

_BARE_KEY = r"[A-Za-z0-9_-]{1,60}"
_KEY_AT_MOST = 60


class Fault(Struct, frozen=True):
    """One thing to put right.

    `key` is dotted as it is written, the tables of an array counted from 1: `border[2].cut`; it
    is empty for what is wrong with the file as a whole. `line` counts from 1; it is the line of
    the key, for a missing key that of the table it belongs in, and None where there is none.
    `sentence` says what is wrong and what would be right, and stands without the key.
    """

    key: str
    line: int | None
    sentence: str

    def __str__(self) -> str:
        place = f"line {self.line}" if self.line is not None else ""
        where = ", ".join(part for part in (place, self.key) if part)
        return f"{where}: {self.sentence}" if where else self.sentence


class FileFaults(ValueError):
    """A file that cannot be taken, with all its faults in the order of their lines.

    Those with no line stand last. `str()` gives one fault a line.
    """

    def __init__(self, faults: tuple[Fault, ...]) -> None:
        super().__init__("\n".join(str(fault) for fault in faults))
        self.faults = faults


class QuiltFileFaults(FileFaults):
    """A quilt file that cannot be taken."""


class MethodFileFaults(FileFaults):
    """A method file that cannot be taken."""


class FaultList:
    """Gathers the faults of one file, whose text is `text`."""

    def __init__(self, text: str) -> None:
        self._text = text
        self._found: list[tuple[Path, str]] = []
        self._paths: set[Path] = set()
        self._unlisted = 0

    def add(self, path: Path, sentence: str) -> None:
        """Note that what stands at `path`, or should stand there, is wrong."""
        self._paths.add(path)
        self._found.append((path, sentence))

    def missing(self, path: Path, sentence: str) -> None:
        """Note that `path` is missing, unless it or what it is in has been faulty already."""
        if not self.is_faulty(path):
            self.add(path, sentence)

    def is_faulty(self, path: Path) -> bool:
        """Whether `path`, or what it is in, has a fault."""
        return any(path[: depth + 1] in self._paths for depth in range(len(path)))

    def leave_unlisted(self, count: int) -> None:
        """Note that there are `count` more faults than were given."""
        self._unlisted += count

    def refuse_if_any(self) -> None:
        """Raise QuiltFileFaults with all that was gathered, each once, if anything was."""
        if self._found:
            raise QuiltFileFaults(self.listed())

    def listed(self) -> tuple[Fault, ...]:
        """All that was gathered, each once, with its line."""
        # Only a file with a fault has its lines looked for.
        from sewalong.quilt.file.toml_lines import key_lines

        lines = key_lines(self._text)
        found = [Fault(dotted(path), lines.of(path), sentence) for path, sentence in self._found]
        faults = sorted(
            dict.fromkeys(found), key=lambda fault: (fault.line is None, fault.line or 0)
        )
        unlisted = self._unlisted + len(faults[FAULTS_AT_MOST:])
        faults = faults[:FAULTS_AT_MOST]
        if unlisted:
            more = "is 1 more fault" if unlisted == 1 else f"are {unlisted:,} more faults"
            faults.append(Fault("", None, f"There {more} than these. Is this a quilt file?"))
        return tuple(faults)


def dotted(path: Path) -> str:
    """`("border", 1, "cut")` as `border[2].cut`; keys that need quotes have them."""
    text = ""
    for part in path:
        if isinstance(part, int):
            text += f"[{part + 1}]"
        else:
            text += f".{_key(part)}" if text else _key(part)
    return text


def _key(key: str) -> str:
    if re.fullmatch(_BARE_KEY, key):
        return key
    shown = "".join(_escaped(character) for character in key[:_KEY_AT_MOST])
    return f'"{shown}..."' if len(key) > _KEY_AT_MOST else f'"{shown}"'


def _escaped(character: str) -> str:
    """No control code may reach a terminal by way of a key."""
    if character in '"\\':
        return f"\\{character}"
    return character if character.isprintable() else f"\\U{ord(character):08x}"


def how_many(faults: Sequence[Fault]) -> str:
    """`1 fault`, `3 faults`."""
    n = len(faults)
    return f"{n} fault{'' if n == 1 else 's'}"

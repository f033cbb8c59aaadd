"""The look the owner chose, light or dark, in a small file beside the record."""

from __future__ import annotations

from pathlib import Path

from sewalong.store.faults import StoreFault
from sewalong.store.writing import write_whole

FILE_NAME = "look"


def read_look(folder: Path) -> str | None:
    """The name of the look, or None when none was chosen or it cannot be read."""
    try:
        return (folder / FILE_NAME).read_text(encoding="utf-8").strip()
    except (OSError, ValueError):
        return None


def remember_look(folder: Path, look: str) -> None:
    """Keep `look` for next time. Not being able to is no reason to stop sewing."""
    try:
        write_whole(folder / FILE_NAME, look + "\n")
    except StoreFault:
        return

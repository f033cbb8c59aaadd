"""The look the owner chose, light or dark, in a small file beside the record."""

from __future__ import annotations

import os

from sewalong.store.faults import StoreFault
from sewalong.store.writing import write_whole

FILE_NAME = "look"


def read_look(folder: str | os.PathLike[str]) -> str | None:
    """The name of the look, or None when none was chosen or it cannot be read."""
    try:
        with open(os.path.join(folder, FILE_NAME), encoding="utf-8") as file:
            return file.read().strip()
    except (OSError, ValueError):
        return None


def remember_look(folder: str | os.PathLike[str], look: str) -> None:
    """Keep `look` for next time. Not being able to is no reason to stop sewing."""
    try:
        write_whole(os.path.join(folder, FILE_NAME), look + "\n")
    except StoreFault:
        return

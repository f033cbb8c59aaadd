"""The owner's preferences, read from their file where there is one."""

from __future__ import annotations

import os
from functools import lru_cache

from sewalong.owner.preferences import AS_USUAL, Preferences
from sewalong.store.home import preferences_path


def own_preferences() -> tuple[Preferences, str]:
    """What she prefers, and in a sentence why not all of it holds: a faulty file holds nothing.

    A fault in it never keeps her from her quilts. Asked again, it is read again only if it changed.
    """
    path = preferences_path()
    try:
        found = os.stat(path)
    except OSError:
        return AS_USUAL, ""
    return _as_of(path, found.st_mtime_ns, found.st_size)


@lru_cache(maxsize=1)
def _as_of(path: str, changed: int, size: int) -> tuple[Preferences, str]:
    # Only who has such a file pays for reading it.
    from sewalong.owner.reader import read_preferences
    from sewalong.quilt.file.faults import QuiltFileFaults, how_many

    try:
        with open(path, "rb") as file:
            return read_preferences(file.read()), ""
    except QuiltFileFaults as faults:
        what = f"{how_many(faults.faults)} in it"
    except OSError as error:
        what = error.strerror or "it cannot be read"
    return AS_USUAL, (
        f"The preferences do not hold, there is a problem with their file ({what}), so all is as "
        "usual. See: sewalong preferences"
    )

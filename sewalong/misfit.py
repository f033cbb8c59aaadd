"""What did not fit when msgspec read something, and where: the parts of its one line.

Each border puts them into its own words; only this file knows how msgspec says them.
"""

from __future__ import annotations

import re

from msgspec import Struct, ValidationError

Path = tuple[str | int, ...]
"""Where a value is: keys, and in lists the index, from 0: `("starts", 1, "count")`. What stands in
a table of free keys is at `SOMEWHERE`, for msgspec doesn't say which key it was."""

SOMEWHERE = "..."

_PLACED = r"(.*?)(?: - at `\$((?:\.\w+|\[(?:\d+|\.\.\.)\])*)`)?"
_STEP = r"\.(\w+)|\[(\d+)\]|\[(\.\.\.)\]"
_KEY = r"Object (missing required|contains unknown) field `(.*)`"


class Misfit(Struct, frozen=True):
    """One thing that did not fit.

    `path` leads to the value, or to the table that a key is missing from or unknown in. `why` is
    msgspec's reason, or the sentence that a hook or a check of ours refused the value with.
    """

    path: Path
    why: str
    missing: str | None = None
    unknown: str | None = None


def misfit(error: ValidationError) -> Misfit:
    """The parts of `error`, which came of reading into Structs."""
    placed = re.fullmatch(_PLACED, str(error), re.DOTALL)
    assert placed is not None  # Any text is a reason without a place.
    why = placed[1]
    steps = re.findall(_STEP, placed[2] or "")
    path = tuple(key or free or int(index) for key, index, free in steps)
    key = re.fullmatch(_KEY, why, re.DOTALL)
    if key is None:
        return Misfit(path, why)
    if key[1] == "missing required":
        return Misfit(path, why, missing=key[2])
    return Misfit(path, why, unknown=key[2])


def dotted(path: Path) -> str:
    """`("starts", 1, "count")` as `starts[2].count`: what is listed is counted from 1."""
    said = ""
    for step in path:
        if isinstance(step, int):
            said += f"[{step + 1}]"
        else:
            said += f"[{step}]" if step == SOMEWHERE else f".{step}"
    return said.removeprefix(".")

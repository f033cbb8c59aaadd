"""Words taken apart: one fact a line, in the order they are read."""

from __future__ import annotations

import re
from collections.abc import Iterable

_BETWEEN_SENTENCES = re.compile(r"(?<=[.?!]) (?=[A-Z“])")


def sentences(text: str) -> list[str]:
    """Sentences of the program's own, one a line. Never for what a person wrote."""
    return _BETWEEN_SENTENCES.split(text) if text else []


def each(label: str, facts: Iterable[str]) -> list[str]:
    """Every fact with what it is of before it: "Press: 6 of 16 done"."""
    return [f"{label}: {fact}" for fact in facts]

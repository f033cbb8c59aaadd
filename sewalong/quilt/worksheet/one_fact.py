"""Words of the program's own taken apart, one fact each, in the order they are read."""

from __future__ import annotations

import re

_BETWEEN = re.compile(r"(?:(?<=[.?!]) (?=[A-Z“])|; )(?![^()]*\))")
"""Where a sentence or a part of one ends, but for what stands in brackets."""


def apart(text: str) -> list[str]:
    """Sentences, and parts of them that semicolons part. Never for what a person wrote."""
    return _BETWEEN.split(text) if text else []

"""Several whole numbers, letters or pairs of numbers in one word of the line."""

from __future__ import annotations

import re

from sewalong.cli.frame.errors import CommandError


def several(typed: str, option: str) -> tuple[int, ...]:
    """ "5,6,7" or "5 6 7"; raises CommandError for what is none."""
    words = typed.replace(",", " ").split()
    if not all(re.fullmatch("[0-9]{1,6}", word, re.ASCII) for word in words):
        raise CommandError(f"{option} takes whole numbers, such as 5,6")
    return tuple(map(int, words))

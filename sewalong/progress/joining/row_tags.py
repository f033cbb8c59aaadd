"""Tags on rows that read the same thing whichever way up the row lies.

A number alone does not: 6 and 9, 16 and 91, 66 and 99 turn into one another. So a tag has
the letter R first and its number underlined. Held upside down the letter comes last,
standing on its head, and the line runs above the number.
"""

from __future__ import annotations

import re

from sewalong.progress.record.refused import Refused

ROW_LETTER = "R"
"""Turned upside down R is no letter and no digit; M and W, N and Z, d and p would be traps."""

HOW_TO_TAG = (
    "Pin a tag on the first unit of every row: R, then the row's number, underlined. "
    "Upside down the letter comes last."
)

_UPSIDE_DOWN = {"0": "0", "1": "1", "6": "9", "8": "8", "9": "6"}
_TAG = r"(?i)(?:rows?|r)?[ .:_-]*([0-9]{1,6})[ ._]*"
_LETTER_LAST = r"(?i)[ ._]*([0-9]{1,6})[ ._-]*(?:r|Я|ʁ)"


def upside_down(number: int) -> int | None:
    """What `number` reads as when its digits are turned half way round.

    None when it reads as no number a person would write: some digit is none upside down, or
    a nought comes first.
    """
    turned = [_UPSIDE_DOWN.get(digit) for digit in reversed(str(number))]
    if None in turned or turned[0] == "0":
        return None
    return int("".join(digit for digit in turned if digit))


def trap_pairs(upto: int) -> tuple[tuple[int, int], ...]:
    """The numbers from 1 to `upto` that read as one another upside down, the smaller first."""
    pairs = []
    for number in range(1, upto + 1):
        other = upside_down(number)
        if other is not None and number < other <= upto:
            pairs.append((number, other))
    return tuple(pairs)


def row_label(row: int) -> str:
    """What to write on the tag of a row: "R6"; the number is underlined."""
    return f"{ROW_LETTER}{row}"


def read_label(text: str) -> int:
    """The row a tag means: "R6", "r 6", "row 6", or the number alone.

    Raises Refused for no tag, and for one read upside down, where the letter comes last.
    """
    said = text.strip()
    tag = re.fullmatch(_TAG, said)
    if tag is not None:
        return int(tag[1])
    turned = re.fullmatch(_LETTER_LAST, said)
    if turned is not None:
        other = upside_down(int(turned[1]))
        perhaps = f"; it may say {row_label(other)}" if other is not None else ""
        raise Refused(
            f"“{said[:20]}” has its letter last: the tag is upside down. "
            f"Turn the row and read it again{perhaps}."
        )
    raise Refused(
        f"“{said[:20]}” is no row. Read the tag on its first unit, such as {row_label(6)}."
    )

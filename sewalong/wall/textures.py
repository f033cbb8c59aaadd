"""A picture with no colour: each key signs of its own, all plain ASCII."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping
from itertools import groupby

from sewalong.wall.keys import (
    CORNERSTONE,
    CUT,
    GAP,
    LIT,
    MARK,
    OUTLINE,
    SASH,
    SETTING,
    SEWN,
    SEWN_NEXT,
    STITCHES,
    TRIMMED,
    UNKNOWN,
    Key,
    border_number,
    cloth_letter,
    is_wrong_side,
    undimmed,
)
from sewalong.wall.picture import Picture

_FABRICS = dict(zip("ABCDEFGHIJ", "#+.%/=@:*~", strict=True))
"""Unlike in weight for the fabrics that meet in one unit; later letters stand for themselves."""

_OTHERS = {
    STITCHES: "-",
    SASH: "_",
    CORNERSTONE: "$",
    SETTING: "'",
    OUTLINE: ",",
    GAP: ";",
    SEWN: '"',
    SEWN_NEXT: "?",
    LIT: "&",
    MARK: "!",
    CUT: "|",
    TRIMMED: "^",
    UNKNOWN: "\\",
}
_LINES = (STITCHES, CUT, MARK, GAP)
"""Drawn over the cloth and one pixel thick: never lost beside it."""

DIM = "`"
"""All that is dim looks alike: it is not what is in hand."""

_SPARE = "?;<>(){}[]"
"""For keys that only the caller knows, dealt out in alphabetical order."""

NOTHING = " "


def texture_of(key: Key) -> str | None:
    """The character a key always has, wherever it is shown; None for keys not of `wall.keys`.

    Fabrics have signs and wrong sides their small letters. Borders have their number, from the
    tenth on the last digit of it. Her own fabrics have her letters for them, "AB" as "Ab": these
    stand by turns wherever it begins anew, so that A, AA and AB are told apart.
    """
    letter = cloth_letter(key)
    if letter is not None:
        return letter if is_wrong_side(key) else letter.capitalize()
    number = border_number(key)
    if number is not None:
        return str(number % 10)
    if undimmed(key) is not None:
        return DIM
    if is_wrong_side(key) or (len(key) == 1 and key not in _FABRICS):
        return key
    return _FABRICS.get(key) or _OTHERS.get(key)


def legend(picture: Picture) -> dict[Key, str]:
    """The character of every key that shows, for `textures` and for explaining it; of her fabrics
    there may be more, which stand by turns."""
    known = {key: texture_of(key) for key in picture.keys}
    spare = iter(_SPARE)
    return {key: mark or next(spare, "?") for key, mark in known.items()}


def textures(picture: Picture) -> list[str]:
    """One line of text for each row of cells, one character for each cell.

    A cell whose halves differ gets the mark of one of them: a line before anything, anything
    before nothing, a key that shows less than half as much in the whole picture before the
    other, so that thin borders and small corners are not lost; else the upper half.
    What each mark stands for is in `legend(picture)`.
    """
    found = legend(picture)
    shown = Counter(key for row in picture.pixels for key in row)

    def chosen(upper: Key | None, lower: Key | None) -> Key | None:
        if upper == lower or lower is None:
            return upper
        if upper is None or lower in _LINES:
            return lower
        return lower if upper not in _LINES and 2 * shown[lower] < shown[upper] else upper

    lines: list[str] = []
    for pair in picture.pairs:
        keys = (chosen(*cell) for cell in zip(*pair, strict=True))
        lines.append("".join(_run(found, key, sum(1 for _ in run)) for key, run in groupby(keys)))
    return lines


def _run(found: Mapping[Key, str], key: Key | None, length: int) -> str:
    marks = NOTHING if key is None else found[key]
    return (marks * length)[:length]

"""What a picture is made of: the keys that stand for what lies at a place.

The right side of what the method calls by a letter is that letter, "A"; its wrong side the small
letter, "a". A fabric of hers, whose letters are her own, has a key of its own, and so has its back.
"""

from __future__ import annotations

Key = str

STITCHES = "stitches"
SASH = "sash"
CORNERSTONE = "cornerstone"
SETTING = "setting triangle"
OUTLINE = "outline"
"""The edge of what is not sewn yet."""
GAP = "gap"
"""Between rows that are not joined yet: the ground of the screen, drawn."""
SEWN = "sewn"
"""What is sewn, where there is no room for its fabrics."""
SEWN_NEXT = "sewn, next row"
"""The same in every other row, so that rows are told apart."""
LIT = "in hand"
"""What is in hand, where there is no room for its fabrics."""
MARK = "marked line"
CUT = "cut"
TRIMMED = "trimmed off"
UNKNOWN = "unknown"
"""Cloth of which it is not known which fabric it is."""

_BORDER = "border "
_CLOTH = "cloth "
_DIM = "dim "


def wrong_side(fabric: Key) -> Key:
    """The key for the back of a fabric: the method's, or one of hers."""
    letter = cloth_letter(fabric)
    return fabric.lower() if letter is None else cloth_key(letter.lower())


def is_wrong_side(key: Key) -> bool:
    """Whether the key is for the back of a fabric."""
    letter = cloth_letter(key)
    return (len(key) == 1 if letter is None else True) and (letter or key).islower()


def right_side(key: Key) -> Key:
    """The key for the face of the fabric that `key` is the face or the back of."""
    letter = cloth_letter(key)
    return key.upper() if letter is None else cloth_key(letter.upper())


def border_key(number: int) -> Key:
    """The key of a border; 1 is the innermost. Raises ValueError below 1."""
    if number < 1:
        raise ValueError("borders are numbered from 1, the innermost")
    return f"{_BORDER}{number}"


def border_number(key: Key) -> int | None:
    """Which border the key is for, 1 the innermost; None for anything else."""
    number = key.removeprefix(_BORDER)
    return int(number) if number != key and number.isdecimal() else None


def cloth_key(letter: str) -> Key:
    """The key of the fabric that she calls by this letter, such as "A" or "AB"."""
    return f"{_CLOTH}{letter}"


def cloth_letter(key: Key) -> str | None:
    """Her letter for the fabric the key is of; None for anything else."""
    letter = key.removeprefix(_CLOTH)
    return letter if letter != key else None


def dim(key: Key) -> Key:
    """The same key further back, beside what is in hand."""
    return key if key in (OUTLINE, LIT, SEWN, SEWN_NEXT) else f"{_DIM}{key}"


def undimmed(key: Key) -> Key | None:
    """The key that was made dim; None for one that was not."""
    plain = key.removeprefix(_DIM)
    return plain if plain != key else None

"""The colours a picture has until the owner gives her own."""

from __future__ import annotations

from collections.abc import Mapping

from sewalong.fabrics.colours import Colour, parse_colour
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
    right_side,
    undimmed,
)

# Twenty-six steps of lightness from L* 25 to 90, dealt out so that the first nine letters
# (the most that meet in one unit) are three steps apart; hues were then searched for the
# largest least CIEDE2000 difference. A is dark, B medium and C light, as strip methods use
# their letters. The tests hold the differences.
_FABRICS = (
    "#363668 #ea9c93 #d8e37b #326b47 #328adf #8c2a2a #7fd2df #9b682e #a195bd "
    "#145a73 #fcdfa2 #09a267 #4f4012 #cbb754 #32858c #82dfb5 #646b13 #a0a584 "
    "#8d0c43 #f6cbb9 #9a768a #7e4671 #afbfdf #b58d5f #616c8d #e489dc"
)

FABRICS: Mapping[Key, Colour] = {
    chr(ord("A") + place): parse_colour(text) for place, text in enumerate(_FABRICS.split())
}
"""A colour for each of the letters A to Z."""

_WRONG_SIDE = parse_colour("#b9b2a6")
"""Printed cloth shows its back greyer and nearer the middle than its face."""

_BORDERS = tuple(map(parse_colour, ("#dcd2c0", "#4a4f63", "#b3a58e", "#6d5f57")))
"""Borders are nearly grey, pale and dark by turns, so that none is taken for a fabric."""

_OTHERS: Mapping[Key, Colour] = {
    STITCHES: parse_colour("#ffffff"),
    SASH: parse_colour("#9a9183"),
    CORNERSTONE: parse_colour("#453d52"),
    SETTING: parse_colour("#878d86"),
    OUTLINE: parse_colour("#7a8096"),
    GAP: parse_colour("#171c2b"),
    SEWN: parse_colour("#8f8a7d"),
    SEWN_NEXT: parse_colour("#a39d8e"),
    LIT: parse_colour("#e0a030"),
    MARK: parse_colour("#e0a030"),
    CUT: parse_colour("#e0a030"),
    TRIMMED: parse_colour("#6b6f80"),
    UNKNOWN: parse_colour("#6b6f80"),
}

_FAR = parse_colour("#7d7d80")
"""What is dim goes towards a middle grey, so that it steps back on a dark ground and a light one."""


def colour_of(key: Key, own: Mapping[Key, Colour] | None = None) -> Colour:
    """The colour for a key of a picture: the owner's own where she gave one.

    `own` may colour any key; the wrong side of a fabric follows its right side. Raises
    KeyError for a key that is neither in `own` nor one of `wall.keys`.
    """
    if own and key in own:
        return own[key]
    plain = undimmed(key)
    if plain is not None:
        return colour_of(plain, own).mixed(_FAR, 0.6)
    if is_wrong_side(key):
        return colour_of(right_side(key), own).mixed(_WRONG_SIDE, 0.6)
    number = border_number(key)
    if number is not None:
        return _BORDERS[(number - 1) % len(_BORDERS)]
    letter = cloth_letter(key)
    if letter is not None:
        # Of two letters the last: neighbours in the alphabet are told apart.
        return FABRICS[letter[-1]]
    return FABRICS[key] if key in FABRICS else _OTHERS[key]

"""What one value of a quilt file says, whatever key it stands behind.

Each takes a value as TOML gave it, gives back what it means, and raises ValueError with a plain
sentence when it will not do. Rules that hold for a quilt from wherever are in `quilt.rules`.
"""

from __future__ import annotations

import re
from fractions import Fraction
from typing import TYPE_CHECKING

from sewalong.lengths import LengthFault, Unit, parse, parse_across_and_down
from sewalong.quilt import rules
from sewalong.quilt.file.toml_errors import Decimals

if TYPE_CHECKING:
    from pydantic_core.core_schema import ValidationInfo

_NOTHING = r"\s*0(?:\.0*)?\s*(?:in|cm|mm)?\s*"


def length(value: object, info: ValidationInfo[Unit]) -> Fraction:
    """A length in inches; a bare number, and text with no unit, is in the owner's unit."""
    if isinstance(value, Decimals):
        value = value.written.replace("_", "").removeprefix("+")
    elif isinstance(value, int) and not isinstance(value, bool):
        value = str(value)
    if not isinstance(value, str):
        raise ValueError('This must be a length, such as "2 1/2", "6.35 cm" or 2.5.')
    try:
        return parse(value, info.context or Unit.INCH)
    except LengthFault as fault:
        raise ValueError(fault.sentence) from None


def length_or_nothing(value: object, info: ValidationInfo[Unit]) -> Fraction:
    """As `length`, for what may also be left out altogether: "0", "0 in" or a bare 0."""
    said = value.written if isinstance(value, Decimals) else value
    if not isinstance(said, bool) and re.fullmatch(_NOTHING, str(said)):
        return Fraction(0)
    return length(value, info)


def across_and_down(value: object, info: ValidationInfo[Unit]) -> tuple[Fraction, Fraction]:
    """Width and height in inches: "4 1/2 x 2 1/2", or one length for a square."""
    if not isinstance(value, str):
        side = length(value, info)
        return side, side
    try:
        return parse_across_and_down(value, info.context or Unit.INCH)
    except LengthFault as fault:
        raise ValueError(fault.sentence) from None


def name(value: object) -> str:
    """A name, without the blanks around it."""
    return rules.a_name(value.strip() if isinstance(value, str) else value)


def notes(value: object) -> str:
    """The notes, without the blanks around them."""
    return rules.notes(value.strip() if isinstance(value, str) else value)


def colour(value: object) -> str:
    """A colour as "#rrggbb" in small letters, from that or from a name that CSS has for it."""
    if isinstance(value, str) and value.strip().isalpha() and (found := _named(value.strip())):
        return found
    try:
        return rules.colour(value)
    except ValueError:
        raise ValueError(
            'This must be a colour: # and six digits 0 to 9 or a to f, such as "#243b6b", or a name '
            'that CSS has, such as "navy".'
        ) from None


def _named(name: str) -> str | None:
    """The colour of a CSS name. Source: CSS Color Module Level 4, named colors."""
    from coloraide import Color  # only where a name is written: it takes long to load

    try:
        found = Color(name)
    except ValueError:
        return None
    return found.to_string(hex=True, compress=False) if found.alpha() == 1 else None


def pieces(value: object) -> int:
    """How many pieces, packs, or pieces in a pack."""
    return rules.whole(value, rules.MOST_PIECES)


def rows(value: object) -> int:
    """How many rows, or columns."""
    return rules.whole(value, rules.MOST_ROWS)

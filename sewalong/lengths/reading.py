"""Lengths as people write them, read exactly, or refused with what was understood.

A length is one number and, behind it, at most one unit. The number is whole (`3`), a decimal
with a point or a comma (`2.5`, `2,5`), a fraction (`1/2`, `½`), or a whole number with a fraction
(`2 1/2`, `2-1/2`, `2½`). Any of these may stand before any unit: `5 1/2 mm` can only mean one
thing. A hyphen may join number and unit (`5-inch`). A point is always the decimal point.

Refused because they may mean two things, or one thing that was not meant:

- `1,000`: a thousand, or one. Three digits behind a comma are taken as decimals only where they
  cannot be thousands (`0,125`).
- `21/2`: ten and a half, or two and a half with the space forgotten. A fraction above one is
  taken only where no space can have been forgotten (`3/2`).
- `2 3/2`, `2 - 1/2`, `2-3`, `1.5 1/2`, `1/2/3`, `2 1/2 1/4`.
- `1 yd 3 in`, `2 ft`: only one unit at a time, and no feet.
"""

import re
from fractions import Fraction

from sewalong.lengths.fault import LengthFault, quoted
from sewalong.lengths.number import read_number
from sewalong.lengths.printing import show
from sewalong.lengths.rounding import Rounding
from sewalong.lengths.shared_unit import unit_behind
from sewalong.lengths.units import (
    CENTIMETRE,
    LONGEST,
    METRE,
    MILLIMETRE,
    YARD,
    Length,
    Unit,
)

_UNITS: dict[str, Length] = {
    **dict.fromkeys(("in", "ins", "inch", "inches"), Fraction(1)),
    **dict.fromkeys(('"', "″", "”", "“", "„", "''", "’’", "′′"), Fraction(1)),
    **dict.fromkeys(("yd", "yds", "yard", "yards"), YARD),
    **dict.fromkeys(("mm", "millimetre", "millimetres", "millimeter", "millimeters"), MILLIMETRE),
    **dict.fromkeys(("cm", "centimetre", "centimetres", "centimeter", "centimeters"), CENTIMETRE),
    **dict.fromkeys(("m", "metre", "metres", "meter", "meters"), METRE),
}
_FEET = frozenset(("ft", "foot", "feet", "'", "′", "’", "‘"))
_HYPHENS = ("-", "‐", "‑")
_MINUS = (*_HYPHENS, "−", "–", "—")
_NOT_NUMBER = r"[^0-9.,/⁄∕ \-‐‑–—−½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅐⅛⅜⅝⅞⅑⅒]"
_LONGEST_TEXT = 100


def parse(text: str, unit: Unit = Unit.INCH) -> Length:
    """The length that `text` states, in inches. A number with no unit is in `unit`.

    Raises `LengthFault`, and nothing else, for what is not one length above zero and at most
    1,000 in; its sentence says what was understood and what would be right.
    """
    said = quoted(text)
    if len(text) > _LONGEST_TEXT:
        raise LengthFault(f"{said} is too long to be one length. {_write_like(unit)}")
    line = " ".join(text.split())
    if not line:
        raise LengthFault(f"No length is given. {_write_like(unit)}")
    if any(c.isnumeric() and not c.isascii() and re.match(_NOT_NUMBER, c) for c in line):
        raise LengthFault(
            f"{said} has a digit other than 0 to 9. Write it with plain digits, "
            f"such as {_example(unit)}."
        )
    number_text, unit_text = _split(line)
    if not any(c.isnumeric() for c in number_text):
        if any(c.isnumeric() for c in line):
            raise LengthFault(f"{said} does not begin with its number. {_write_like(unit)}")
        raise LengthFault(f"No number was found in {said}. {_write_like(unit)}")
    if number_text.startswith(_MINUS):
        raise LengthFault(
            f"{said} was read as less than zero. A length is above zero, such as {_example(unit)}."
        )
    one = _one_unit(number_text, unit_text, unit, said)
    length = read_number(number_text, said) * one
    if length == 0:
        raise LengthFault(
            f"{said} was read as zero. A length is above zero, such as {_example(unit)}."
        )
    if length > LONGEST:
        raise LengthFault(
            f"{said} was read as {_about(length, unit)}, which is too long. "
            f"A length is at most {_limit(unit)}."
        )
    return length


def unit_typed(text: str) -> Unit | None:
    """The unit to work in that a length was typed in; None where it has none of its own."""
    one = _UNITS.get(unit_behind(text).lower())
    if one is None:
        return None
    return Unit.CM if one in (MILLIMETRE, CENTIMETRE, METRE) else Unit.INCH


def _split(line: str) -> tuple[str, str]:
    """The number in front and whatever stands behind it."""
    start = re.search(_NOT_NUMBER, line)
    if start is None:
        return line, ""
    number, rest = line[: start.start()], line[start.start() :]
    if rest[0].isalpha() and number.endswith(_HYPHENS):
        number = number[:-1]
    return number.rstrip(), rest


def _one_unit(number_text: str, unit_text: str, unit: Unit, said: str) -> Length:
    """One of the unit written, in inches; of the owner's `unit` when none is written."""
    if not unit_text:
        return unit.length
    word = unit_text.lower().removesuffix(".").rstrip()
    if word in _UNITS:
        return _UNITS[word]
    if word in _FEET:
        raise LengthFault(
            f"{said} was read as feet, which are not used here. Write it in inches or yards: "
            "2 feet are 24 in."
        )
    first = re.match(r"[^\W\d_]+|['\"′″’”]+", word)
    known = first is not None and (first[0] in _UNITS or first[0] in _FEET)
    if known and any(c.isnumeric() for c in word):
        raise LengthFault(
            f"{said} has more than one number with a unit. Give one length in one unit, "
            "as 39 in for 1 yd 3 in."
        )
    raise LengthFault(
        f"In {said}, {quoted(number_text)} was understood, but {quoted(unit_text)} behind it is "
        "not a unit known here. Use in, cm, mm, yd or m."
    )


def _about(length: Length, unit: Unit) -> str:
    """A length too long, in few enough digits to be read. Up, so that it never reads as 1000 in."""
    text = show(length, unit, rounding=Rounding.UP)
    return text if len(text) <= 16 else f"far more than {_limit(unit)}"


def _limit(unit: Unit) -> str:
    return "1,000 in" if unit is Unit.INCH else "2,540 cm"


def _example(unit: Unit) -> str:
    return "2 1/2 in" if unit is Unit.INCH else "6.4 cm"


def _write_like(unit: Unit) -> str:
    return f"Write one such as {_example(unit)}."

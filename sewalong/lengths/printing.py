"""Lengths as a person reads them: `2 1/2 in`, `6.4 cm`, and which way they were rounded."""

from fractions import Fraction

from sewalong.lengths.rounding import FLOAT_NOISE, Rounding, round_to
from sewalong.lengths.units import Unit


def show(
    length: Fraction | float,
    unit: Unit = Unit.INCH,
    *,
    fineness: Fraction | None = None,
    rounding: Rounding = Rounding.NEAREST,
    symbol: bool = True,
) -> str:
    """A length in inches as text in `unit`, such as `2 1/2 in` or `6.4 cm`.

    `fineness` is the step it is printed at, in `unit` (inches or centimetres): an eighth of an
    inch or a millimetre unless told otherwise. `symbol=False` leaves off the unit.

    Differences may be below zero: `-1/8 in`. A length other than zero that rounds to no step at
    all prints as `0 in`, never as `-0 in`; ask `direction` or `show_stated` for what was lost.

    Raises `ValueError` as `round_to` does.
    """
    rounded = _rounded(length, unit, fineness, rounding)
    text = mixed(rounded) if unit is Unit.INCH else decimal(rounded / unit.length)
    return f"{text} {unit.symbol}" if symbol else text


def direction(
    length: Fraction | float,
    unit: Unit = Unit.INCH,
    *,
    fineness: Fraction | None = None,
    rounding: Rounding = Rounding.NEAREST,
) -> str:
    """Which way `show` goes with the same arguments: `exact`, `rounded up` or `rounded down`.

    A float as near as 1e-9 in to the length shown is exact (see `round_to`).
    """
    moved = _rounded(length, unit, fineness, rounding) - Fraction(length)
    if moved == 0 or (isinstance(length, float) and abs(moved) <= FLOAT_NOISE):
        return "exact"
    return "rounded up" if moved > 0 else "rounded down"


def show_stated(
    length: Fraction | float,
    unit: Unit = Unit.INCH,
    *,
    fineness: Fraction | None = None,
    rounding: Rounding = Rounding.NEAREST,
    symbol: bool = True,
) -> str:
    """`show`, with the way it was rounded behind it: `5 7/8 in (rounded up)`.

    Nothing stands behind a length that is exact: `5 7/8 in`.
    """
    text = show(length, unit, fineness=fineness, rounding=rounding, symbol=symbol)
    way = direction(length, unit, fineness=fineness, rounding=rounding)
    return text if way == "exact" else f"{text} ({way})"


def show_some(length: Fraction, unit: Unit, fineness: Fraction) -> str:
    """`show`, but what is more than nothing never reads as nought: `less than 1/64 in`."""
    least = fineness * unit.length
    if 0 < abs(length) < least / 2:
        return f"less than {show(least, unit, fineness=fineness)}"
    return show(length, unit, fineness=fineness)


def as_given(length: Fraction | float, unit: Unit = Unit.INCH, *, symbol: bool = True) -> str:
    """A length as a person writes it: `2 9/16 in`, `7 1/3 in`, `2.533 in`, `6.35 cm`.

    Quotes what was typed, where `show` would round it to the lines of a ruler: fractions of an
    inch to the 64th or with a denominator of one figure, and decimals to the thousandth. Anything
    finer was worked out, and is printed as by `show`. A float, which always was, is quoted to the
    64th or the tenth of a millimetre.
    """
    if isinstance(length, float):
        fine = Fraction(1, 64 if unit is Unit.INCH else 100)
        exact = direction(length, unit, fineness=fine) == "exact"
        return show(length, unit, fineness=fine if exact else None, symbol=symbol)
    number = length / unit.length
    below = number.denominator
    if unit is Unit.INCH and (64 % below == 0 or below in _THIRDS_AND_SUCH):
        text = mixed(number)
    elif 1000 % below == 0:
        text = decimal(number)
    else:
        return show(length, unit, symbol=symbol)
    return f"{text} {unit.symbol}" if symbol else text


_THIRDS_AND_SUCH = (3, 6, 7, 9)
"""What people divide an inch by besides its halves, and besides what a decimal ends on."""


def mixed(number: Fraction) -> str:
    """An exact number as a whole and a fraction: `2 1/2`, `7/8`, `-1/8`, `3`, `0`."""
    sign = "-" if number < 0 else ""
    whole, over = divmod(abs(number), 1)
    if over == 0:
        return f"{sign}{whole}"
    part = f"{over.numerator}/{over.denominator}"
    return f"{sign}{whole} {part}" if whole else f"{sign}{part}"


def decimal(number: Fraction) -> str:
    """An exact number with a decimal point and no needless noughts: `6.4`, `6`, `0.25`.

    A number that no decimal ends on, such as a third, is written `6 1/3` instead: nothing is
    rounded here.
    """
    places = _decimal_places(number.denominator)
    if places is None:
        return mixed(number)
    if places == 0:
        return str(number.numerator)
    sign = "-" if number < 0 else ""
    digits = str(abs(number) * 10**places).rjust(places + 1, "0")
    return f"{sign}{digits[:-places]}.{digits[-places:]}"


def _decimal_places(denominator: int) -> int | None:
    """How many decimals a fraction with this denominator takes, or None when it never ends."""
    twos = fives = 0
    while denominator % 2 == 0:
        denominator, twos = denominator // 2, twos + 1
    while denominator % 5 == 0:
        denominator, fives = denominator // 5, fives + 1
    return max(twos, fives) if denominator == 1 else None


def _rounded(
    length: Fraction | float, unit: Unit, fineness: Fraction | None, rounding: Rounding
) -> Fraction:
    """The length that will be shown, in inches. The step is turned into inches, not the length,
    so that the guard against the noise of floats is the same in both units."""
    step = unit.step if fineness is None else fineness * unit.length
    return round_to(length, step, rounding)

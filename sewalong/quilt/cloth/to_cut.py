"""A size to be cut, decided once: what a ruler shows, and everything after it reckoned from that.

A cutting ruler in inches is marked to a sixteenth, and half of one can be laid between two lines;
a metric one is marked in millimetres, and half of one likewise. A size finer than that cannot be
cut as it stands, so it goes up to the next line. What is then cut is what cloth is reckoned from.
"""

from fractions import Fraction

from msgspec import Struct

from sewalong.lengths import (
    MILLIMETRE,
    Length,
    Rounding,
    Unit,
    as_given,
    direction,
    round_to,
    show,
)
from sewalong.quilt.as_fraction import exactly
from sewalong.quilt.size import Size

SIXTEENTH = Fraction(1, 16)


class ToCut(Struct, frozen=True):
    """`length` is what to cut, in inches; `text` is that in words, with how it came about.

    `rounded` says that it is more than what was asked for, `between` that it lies half-way between
    two lines of the ruler.
    """

    length: Length
    rounded: bool
    between: bool
    text: str


def ruler_line(unit: Unit) -> Length:
    """The distance of two lines on a cutting ruler, in inches: 1/16 in, or a millimetre."""
    return SIXTEENTH if unit is Unit.INCH else MILLIMETRE


def to_cut(length: Fraction | float, unit: Unit = Unit.INCH) -> ToCut:
    """`length` inches as they are cut: `2 9/16 in`, `2 17/32 in, between the lines of the ruler`,
    `2 3/8 in, rounded up from 2.333 in`."""
    line = ruler_line(unit)
    for step, between in ((line, False), (line / 2, True)):
        if direction(length, unit, fineness=step / unit.length) == "exact":
            cut = round_to(length, step, Rounding.NEAREST)
            behind = ", between the lines of the ruler" if between else ""
            return ToCut(cut, False, between, f"{as_given(cut, unit)}{behind}")
    cut = round_to(length, line, Rounding.UP)
    text = f"{as_given(cut, unit)}, rounded up from {_asked(length, unit)}"
    return ToCut(cut, True, False, text)


def cut_down(length: Fraction, unit: Unit = Unit.INCH) -> Length:
    """The largest size on the ruler that a piece of this length can be cut down to, in inches."""
    cut = to_cut(length, unit)
    return round_to(length, ruler_line(unit), Rounding.DOWN) if cut.rounded else cut.length


def cut_size(size: Size, unit: Unit = Unit.INCH) -> Size:
    """A piece as it is cut, each side as `to_cut` has it."""
    return Size(to_cut(size.width, unit).length, to_cut(size.length, unit).length)


def size_to_cut(size: Size, unit: Unit = Unit.INCH) -> str:
    """A piece in words: `2 1/2 × 6 in`, with what `to_cut` says of a side that is not as asked."""
    across, down = to_cut(size.width, unit), to_cut(size.length, unit)
    bare = f"{as_given(across.length, unit, symbol=False)} × {as_given(down.length, unit)}"
    noted = dict.fromkeys(
        one.text.replace(", ", " ", 1) for one in (across, down) if one.rounded or one.between
    )
    return f"{bare} ({'; '.join(noted)})" if noted else bare


def _asked(length: Fraction | float, unit: Unit) -> str:
    """The size asked for: as typed if it was typed, with decimals when it was worked out."""
    given = as_given(length, unit)
    return exactly(length, unit) if given == show(length, unit) else given

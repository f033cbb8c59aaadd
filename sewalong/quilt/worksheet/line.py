"""One number as a person reads it, and the sections such numbers stand in.

A number that cannot be worked out is a line too, with the sentence that says why in its place.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from fractions import Fraction

from msgspec import Struct

from sewalong.lengths import Rounding, Unit, as_given, direction, round_to, show
from sewalong.piecing.faults import MethodFault, SizeRefused, UnknownMethod
from sewalong.quilt.as_fraction import exactly
from sewalong.quilt.cloth.to_cut import ruler_line
from sewalong.quilt.refusal import NumbersFault
from sewalong.quilt.size import Size
from sewalong.quilt.worksheet.one_fact import apart

CANNOT_BE_HAD = (NumbersFault, SizeRefused, MethodFault, UnknownMethod)
"""What says in a sentence why there is no number."""


class Line(Struct, frozen=True):
    """`label` says what it is of, `text` the number in the owner's unit with any rounding said.

    `reason` is how it came about, or empty. `inches` is the length itself and None where the
    number is none; of a size it is the width, and `inches_down` the length of that. `rounded` is
    what `text` says at its end, in brackets, of how the number was rounded.
    """

    label: str
    text: str
    reason: str = ""
    inches: float | None = None
    inches_down: float | None = None
    rounded: str = ""

    @property
    def number(self) -> str:
        """The number alone, without what is said of its rounding."""
        return self.text.removesuffix(_in_brackets(self.rounded))

    @property
    def why(self) -> tuple[str, ...]:
        """How it came about and how it was rounded, a sentence each."""
        parts = [part for part in (*self.reason.split("; "), self.rounded) if part]
        return tuple(f"{part[:1].upper()}{part[1:].rstrip('.')}." for part in parts)

    def __str__(self) -> str:
        said = f"{self.label}: {self.text}" if self.label else self.text
        return f"{said} ({self.reason})" if self.reason else said

    @property
    def facts(self) -> tuple[str, ...]:
        """One fact a line: the number, then how it came about, part by part.

        A reason of a word or two stands in brackets behind the number.
        """
        said, why = apart(self.text), apart(self.reason)
        if len(said) == 1 and _is_short(self.reason):
            return (str(self),)
        label = f"{self.label}: " if self.label else ""
        return (*(f"{label}{one}" for one in said), *(f"why: {one}" for one in why))


def _is_short(reason: str) -> bool:
    return reason.count(",") < 2 and not any(sign in reason for sign in ";:(")


class Section(Struct, frozen=True):
    """Lines under a title. `id` is a short word for it that never changes."""

    id: str
    title: str
    lines: tuple[Line, ...]


def _in_brackets(rounded: str) -> str:
    return f" ({rounded})" if rounded else ""


def length_text(inches: Fraction | float, unit: Unit) -> str:
    """`6 3/8 in (rounded up from 6.364 in)`; nothing behind a length that a ruler shows."""
    return _on_a_ruler(inches, unit)[0] + _in_brackets(_length_rounded(inches, unit))


def _length_rounded(inches: Fraction | float, unit: Unit) -> str:
    _, way = _on_a_ruler(inches, unit)
    return "" if way == "exact" else rounded_from(way, inches, unit)


def _on_a_ruler(inches: Fraction | float, unit: Unit) -> tuple[str, str]:
    """The length as it can be laid by a ruler, and which way it was rounded to that."""
    if direction(inches, unit, fineness=ruler_line(unit) / 2 / unit.length) == "exact":
        return as_given(inches, unit), "exact"
    return show(inches, unit), direction(inches, unit)


def rounded_from(way: str, inches: Fraction | float, unit: Unit) -> str:
    """`rounded up from 6.364 in`; only the way where more decimals would tell nothing more."""
    exact = exactly(inches, unit)
    shown = exactly(round_to(inches, unit.step, Rounding.NEAREST), unit)
    return way if exact == shown else f"{way} from {exact}"


def size_text(size: Size, unit: Unit) -> str:
    """`65 3/4 in across × 65 3/4 in down (rounded down from 65.776 × 65.776 in)`."""
    across, down = (_on_a_ruler(side, unit)[0] for side in (size.width, size.length))
    return f"{across} across × {down} down{_in_brackets(_size_rounded(size, unit))}"


def _size_rounded(size: Size, unit: Unit) -> str:
    way_across, way_down = (_on_a_ruler(side, unit)[1] for side in (size.width, size.length))
    if way_across == way_down == "exact":
        return ""
    way = way_across if way_across == way_down else "rounded"
    exactly_across = exactly(size.width, unit).removesuffix(f" {unit.symbol}")
    return f"{way} from {exactly_across} × {exactly(size.length, unit)}"


def length_line(label: str, inches: Fraction | float, unit: Unit, reason: str = "") -> Line:
    """A line of one length."""
    text, rounded = length_text(inches, unit), _length_rounded(inches, unit)
    return Line(label, text, reason, float(inches), rounded=rounded)


def size_line(label: str, size: Size, unit: Unit, reason: str = "") -> Line:
    """A line of a size, across and down."""
    text, rounded = size_text(size, unit), _size_rounded(size, unit)
    return Line(label, text, reason, float(size.width), float(size.length), rounded)


def attempt(label: str, lines: Callable[[], Iterable[Line]]) -> tuple[Line, ...]:
    """What `lines` gives, or one line with the sentence that says why it cannot be had."""
    try:
        return tuple(lines())
    except CANNOT_BE_HAD as fault:
        return (Line(label, str(fault)),)


def plural(count: int, one: str, many: str | None = None) -> str:
    """`1 strip`, `6 strips`."""
    return f"{count:,} {one if count == 1 else many or one + 's'}"

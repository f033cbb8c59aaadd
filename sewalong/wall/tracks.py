"""How many pixels each row and column of a top gets: units, sashes and borders."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import accumulate, pairwise
from math import floor

from msgspec import Struct

from sewalong.wall.unit_pixels import high_for

SMALLER = 0.7
"""A top may be drawn this much smaller than its room so that its units keep their shape."""

SKEW = 0.04
"""How much out of shape a unit is drawn that keeps its shape, as a share of its height."""


class Side(Struct, frozen=True):
    """One way across a top: how wide each track is in inches, and which are units.

    All units are equally wide. The tracks read the same from both ends.
    """

    inches: tuple[float, ...]
    is_unit: tuple[bool, ...]

    @property
    def total(self) -> float:
        """Inches of all tracks."""
        return sum(self.inches)

    @property
    def unit(self) -> float:
        """Inches of one unit."""
        return self.inches[self.is_unit.index(True)]

    @property
    def units(self) -> int:
        """How many units lie side by side."""
        return sum(self.is_unit)


class Tracks(Struct, frozen=True):
    """Pixels of the tracks that are shown, and which is the first of them."""

    pixels: tuple[int, ...]
    first: int = 0


def shared(total: int, parts: int) -> list[int]:
    """`total` pixels over `parts` as evenly as can be, the same read from both ends.

    With an even number of parts and an odd total the middle one keeps the odd pixel.
    """
    bounds = [floor(place * total / parts + 0.5) for place in range(parts // 2 + 1)]
    bounds += [total - bound for bound in reversed(bounds[: (parts + 1) // 2])]
    return [b - a for a, b in pairwise(bounds)]


def tracks(
    across: Side, down: Side, wide: int, high: int, least: int
) -> tuple[Tracks, Tracks, bool]:
    """Pixels for the tracks across and down, in a room of `wide` x `high` pixels, and whether
    they are all of them.

    All units are the same size, as large as the room allows and in their shape if that costs no
    more than a third of it. Borders and sashes are to scale within a pixel, but never thinner than
    one. Where units would be fewer than `least` pixels across, they are that large and fewer of
    them are shown, from the first on.
    """
    found = whole_tracks(across, down, wide, high, least)
    if found is not None:
        return (*found, True)
    unit = (across.unit, down.unit)
    least, tall = min(least, wide), min(high_for(unit, min(least, wide)), high)
    scale = least / across.unit
    return (
        _part(_filled(across, scale, [least] * across.units), across.is_unit, wide),
        _part(_filled(down, scale, [tall] * down.units), down.is_unit, high),
        False,
    )


def whole_tracks(
    across: Side, down: Side, wide: int, high: int, least: int
) -> tuple[Tracks, Tracks] | None:
    """As `tracks`, or None where not all units have `least` pixels."""
    scale = min(wide / across.total, high / down.total)
    largest: tuple[Tracks, Tracks] | None = None
    for pixels in range(floor(across.unit * scale + 1e-9), least - 1, -1):
        finer = pixels / across.unit
        tall = down.unit * finer
        in_shape = abs(round(tall) - tall) <= SKEW * tall
        if largest is not None and (finer < SMALLER * scale or not in_shape):
            continue
        for up in (0.5, 0.0):
            columns = _filled(across, finer, [pixels] * across.units, up)
            rows = _filled(down, finer, [max(1, round(tall))] * down.units, up)
            if sum(columns) <= wide and sum(rows) <= high:
                found = Tracks(tuple(columns)), Tracks(tuple(rows))
                if in_shape:
                    return found
                largest = largest or found
                break
    return largest


def even_tracks(across: Side, down: Side, wide: int, high: int) -> tuple[Tracks, Tracks]:
    """All tracks, sharing the room evenly however small the units get: for tops whose units are
    drawn without their pattern."""
    scale = min(wide / across.total, high / down.total)
    for percent in range(100, 0, -2):
        finer = scale * percent / 100
        columns, rows = _evenly(across, finer), _evenly(down, finer)
        if sum(columns) <= wide and sum(rows) <= high:
            return Tracks(tuple(columns)), Tracks(tuple(rows))
    return Tracks((1,)), Tracks((1,))


def _evenly(side: Side, scale: float) -> list[int]:
    total = max(1, round(side.units * side.unit * scale))
    return _filled(side, scale, shared(total, side.units))


def _filled(side: Side, scale: float, units: Sequence[int], up: float = 0.5) -> list[int]:
    """The units' pixels with the others' between; `up` 0.5 rounds to the nearest, 0 down."""
    sizes = iter(units)
    return [
        next(sizes) if unit else max(1, floor(inches * scale + up))
        for inches, unit in zip(side.inches, side.is_unit, strict=True)
    ]


def _part(pixels: Sequence[int], is_unit: Sequence[bool], room: int) -> Tracks:
    """The tracks that fit, from the first on; one unit at the least, from which on they then are."""
    for first in (0, is_unit.index(True)):
        fit = sum(end <= room for end in accumulate(pixels[first:]))
        if any(is_unit[first : first + fit]):
            return Tracks(tuple(pixels[first : first + fit]), first)
    raise AssertionError("no unit is larger than the room")

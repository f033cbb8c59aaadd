"""How many pixels each row and column of a top gets: units, sashes and borders."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise
from math import floor

from msgspec import Struct

CRISP = 3
"""From so many pixels on, all units are drawn the same size; below it they share what there is."""

SMALLER = 0.7
"""A top may be drawn this much smaller than its room so that all its units are the same size."""

SKEW = 0.04
"""And its units may be this much out of shape, as a share of their height."""


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


def shared(total: int, parts: int) -> list[int]:
    """`total` pixels over `parts` as evenly as can be, the same read from both ends.

    With an even number of parts and an odd total the middle one keeps the odd pixel.
    """
    bounds = [floor(place * total / parts + 0.5) for place in range(parts // 2 + 1)]
    bounds += [total - bound for bound in reversed(bounds[: (parts + 1) // 2])]
    return [b - a for a, b in pairwise(bounds)]


def tracks(across: Side, down: Side, wide: int, high: int) -> tuple[list[int], list[int]]:
    """Pixels for every track across and down, in a room of `wide` x `high` pixels.

    Borders and sashes are to scale within a pixel, but never thinner than one while there is
    room for it. Units are all the same size if that costs no more than a third of
    the room and they are `CRISP` or more; else they share their room evenly.
    """
    scale = min(wide / across.total, high / down.total)
    for candidate in _candidates(across, down, scale):
        columns, rows = candidate
        if sum(columns) <= wide and sum(rows) <= high:
            return columns, rows
    return [1], [1]


def _candidates(across: Side, down: Side, scale: float) -> Iterator[tuple[list[int], list[int]]]:
    """Ways to draw the top, the best first."""
    for pixels in range(floor(across.unit * scale + 1e-9), CRISP - 1, -1):
        finer = pixels / across.unit
        high = down.unit * finer
        if finer >= SMALLER * scale and abs(round(high) - high) <= SKEW * high and high >= CRISP:
            for up in (0.5, 0.0):
                yield (
                    _filled(across, finer, [pixels] * across.units, 1, up),
                    _filled(down, finer, [round(high)] * down.units, 1, up),
                )
    for thinnest in (1, 0):
        for percent in range(100, 0, -2):
            finer = scale * percent / 100
            if thinnest and percent < 50:
                break
            yield _evenly(across, finer, thinnest), _evenly(down, finer, thinnest)


def _evenly(side: Side, scale: float, thinnest: int) -> list[int]:
    total = max(1, round(side.units * side.unit * scale))
    return _filled(side, scale, shared(total, side.units), thinnest)


def _filled(
    side: Side, scale: float, units: Sequence[int], thinnest: int, up: float = 0.5
) -> list[int]:
    """The units' pixels with the others' between; `up` 0.5 rounds to the nearest, 0 down."""
    sizes = iter(units)
    return [
        next(sizes) if unit else max(thinnest, floor(inches * scale + up))
        for inches, unit in zip(side.inches, side.is_unit, strict=True)
    ]

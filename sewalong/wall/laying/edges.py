"""What a unit shows along its four sides and at its corners, however it is turned."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from enum import StrEnum
from functools import lru_cache
from typing import NamedTuple

from sewalong.piecing.cloth import Flat
from sewalong.piecing.edges import Side
from sewalong.piecing.one_way import ways_up

SIDES = (Side.TOP, Side.FAR, Side.BOTTOM, Side.NEAR_START)
"""Round a unit, as a quarter turn takes each side to the next: what was at the top shows at FAR."""

SAME_PLACE = 1e-4
"""Inches along a side nearer than this are one place: far under a thread, over float noise
(own choice)."""


class TouchRule(StrEnum):
    """What counts as a touch of like fabrics."""

    EDGE = "along a seam"
    CORNER = "along a seam or at a point"


class Span(NamedTuple):
    """A fabric's part of a side, in inches from where the side begins.

    A side at the top or the bottom is read from column 1 on, the two others from row 1 down. What
    only touches the side with a point starts and ends in one place.
    """

    start: float
    end: float
    fabric: str


Spans = tuple[Span, ...]
Sides = tuple[Spans, Spans, Spans, Spans]
"""What shows at each of SIDES."""


def shown_sides(unit: Flat, seam: float, fabrics: Mapping[str, str] | None = None) -> Sides:
    """What shows along the sides of a unit once `seam` inches are taken all round.

    `fabrics` has the fabric of each of the unit's letters; a letter that is not there stands for
    itself.
    """
    shown = unit.finished(seam)
    width, height = Flat(shown).size
    named = fabrics or {}

    def side(axis: int, at: float) -> Spans:
        found = []
        for patch in shown:
            on = [point[1 - axis] for point in patch.points if abs(point[axis] - at) < SAME_PLACE]
            if on:
                found.append(Span(min(on), max(on), named.get(patch.letter, patch.letter)))
        return _joined(found)

    return (side(1, 0.0), side(0, width), side(1, height), side(0, 0.0))


def plain_sides(fabric: str, width: float = 1.0, height: float = 1.0) -> Sides:
    """The sides of a unit that is all of one fabric."""
    across, down = (Span(0.0, width, fabric),), (Span(0.0, height, fabric),)
    return (across, down, across, down)


def _joined(spans: Sequence[Span]) -> Spans:
    """In order, what adjoins of one fabric made one, so that like sides are equal."""
    joined: list[Span] = []
    for span in sorted(Span(round(s.start, 5), round(s.end, 5), s.fabric) for s in spans):
        before = [n for n, one in enumerate(joined) if one.fabric == span.fabric]
        if before and span.start <= joined[before[-1]].end + SAME_PLACE:
            last = joined[before[-1]]
            joined[before[-1]] = last._replace(end=max(last.end, span.end))
        else:
            joined.append(span)
    return tuple(sorted(joined))


def length(spans: Spans) -> float:
    """Inches of a whole side."""
    return max((span.end for span in spans), default=0.0)


@lru_cache(maxsize=1 << 14)
def turned_sides(sides: Sides, quarters: int) -> Sides:
    """The sides after so many quarter turns, from 0 on, each taking the top to the side FAR."""
    if quarters == 0:
        return sides
    top, far, bottom, near = turned_sides(sides, quarters - 1)
    return (_reversed(near), top, _reversed(far), bottom)


def _reversed(spans: Spans) -> Spans:
    whole = length(spans)
    return tuple(
        sorted(
            Span(round(whole - end, 5), round(whole - start, 5), fabric)
            for start, end, fabric in spans
        )
    )


def turns_allowed(sides: Sides) -> tuple[int, ...]:
    """Quarter turns with which a unit fits its place: a square one in all four, another in two."""
    square = abs(length(sides[0]) - length(sides[1])) < SAME_PLACE
    return (0, 1, 2, 3) if square else (0, 2)


@lru_cache(maxsize=1 << 14)
def corners(sides: Sides) -> tuple[frozenset[str], ...]:
    """The fabrics that meet each corner: at the top by column 1, at the top at FAR, and on round."""
    top, _, bottom, _ = sides
    return (_at_start(top), _at_end(top), _at_end(bottom), _at_start(bottom))


def _at_start(spans: Spans) -> frozenset[str]:
    return frozenset(span.fabric for span in spans if span.start < SAME_PLACE)


def _at_end(spans: Spans) -> frozenset[str]:
    whole = length(spans)
    return frozenset(span.fabric for span in spans if span.end > whole - SAME_PLACE)


def meeting(one: Spans, other: Spans, rule: TouchRule) -> dict[str, float]:
    """Fabrics that meet themselves where two sides are joined, and for how many inches.

    By the corner rule also those that meet at a point, for 0 inches.
    """
    found: dict[str, float] = {}
    for a in one:
        for b in other:
            if a.fabric == b.fabric:
                shared = min(a.end, b.end) - max(a.start, b.start)
                if shared > SAME_PLACE:
                    found[a.fabric] = found.get(a.fabric, 0.0) + shared
                elif rule is TouchRule.CORNER and shared >= -SAME_PLACE:
                    found.setdefault(a.fabric, 0.0)
    return found


def print_ways(unit: Flat, seam: float, quarters: int) -> Mapping[str, frozenset[int]]:
    """Which way the print of each letter stands once the unit is turned: degrees from up, 0 for
    upright. To be said of one-way prints; it forbids no turn."""
    (ways,) = ways_up([unit], seam)
    return {
        letter: frozenset((way + 90 * quarters) % 360 for way in each)
        for letter, each in ways.items()
    }

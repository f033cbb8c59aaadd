"""Boxes to tick for what is left of a stage, in groups that can be counted at a glance."""

from __future__ import annotations

from itertools import count

from msgspec import Struct

MOST_BOXES = 200
"""In one stage; for more, each box stands for several, so that a stage stays on a page (own
choice)."""

FIVES_UP_TO = 50
"""Boxes up to which they stand in fives, above it in tens (own choice)."""


class Group(Struct, frozen=True):
    """So many boxes side by side, and how many counts all boxes up to the last of them are."""

    boxes: int
    up_to: int


class TickBoxes(Struct, frozen=True):
    """Each box is `each` counts, and the very last `last`, which may be fewer."""

    each: int
    last: int
    groups: tuple[Group, ...]


def tick_boxes(to_do: int) -> TickBoxes:
    """The boxes for so many counts; no group for none."""
    steps = (step * 10**power for power in count() for step in (1, 5))
    each = next(step for step in steps if -(-to_do // step) <= MOST_BOXES)
    boxes = -(-to_do // each)
    size = 5 if boxes <= FIVES_UP_TO else 10
    groups = tuple(
        Group(min(size, boxes - first), min(to_do, each * (first + size)))
        for first in range(0, boxes, size)
    )
    return TickBoxes(each, to_do - each * (boxes - 1) if boxes else 0, groups)

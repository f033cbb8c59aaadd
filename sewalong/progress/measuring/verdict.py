"""Whether a measured piece passes, can be blocked to shape, or is to be made again."""

from __future__ import annotations

from collections.abc import Sequence
from enum import StrEnum
from fractions import Fraction

from sewalong.lengths import Length
from sewalong.progress.measuring.pieces import Measured
from sewalong.quilt.ease import REMAKE_LIMIT, most_off

TAPE = (
    (Length(12), Length(1, 32)),
    (Length(36), Length(1, 16)),
)
LONG_TAPE = Length(1, 8)
"""How near a reading can be believed, by the length measured: half a sixteenth up to a foot,
a sixteenth up to a yard, an eighth beyond. Common practice."""


class Outcome(StrEnum):
    """What becomes of a piece."""

    PASS = "pass"
    BLOCK = "block to shape"
    REMAKE = "remake"


def near_enough(length: Length) -> Length:
    """How far off a piece of this length may read and still be right."""
    for upto, near in TAPE:
        if length <= upto:
            return near
    return LONG_TAPE


def outcome(piece: Measured, reading: Length, limit: Fraction = REMAKE_LIMIT) -> Outcome:
    """What becomes of a piece that reads so, in inches.

    It passes when it is right as near as a tape is read, or when it is trimmed later and
    still has all that is wanted of it; it is steamed and blocked to shape up to `limit` of
    its size (3 %: a French workshop's rule, 4.5 mm on 15 cm,
    boutsdechiffons.logipatch.com), and made again beyond that.
    """
    off = abs(reading - piece.expected)
    most = most_off(piece.expected, limit)
    if off <= near_enough(piece.expected):
        return Outcome.PASS
    if piece.at_least is not None and reading >= piece.at_least and off <= most:
        return Outcome.PASS
    return Outcome.BLOCK if off <= most else Outcome.REMAKE


def passes(piece: Measured, readings: Sequence[Length]) -> bool:
    """Whether every reading passes."""
    return all(outcome(piece, reading) is Outcome.PASS for reading in readings)

"""Whether a measured piece passes, can be blocked to shape, or is to be made again."""

from __future__ import annotations

from collections.abc import Sequence
from enum import StrEnum
from fractions import Fraction

from sewalong.lengths import Length
from sewalong.progress.measuring.tape import near_enough
from sewalong.progress.record.measurable import Measured
from sewalong.quilt.cloth.ease import EASE_LIMIT, REMAKE_LIMIT, most_off


class Outcome(StrEnum):
    """What becomes of a piece."""

    PASS = "pass"
    BLOCK = "block to shape"
    REMAKE = "remake"


def limit_for(piece: Measured) -> Fraction:
    """The share of its size a piece may be off before it is made again.

    For pieces 3 %: a French workshop's rule, 4.5 mm on 15 cm (boutsdechiffons.logipatch.com);
    a row or a top is not steamed to shape but eased, so what can be eased (`EASE_LIMIT`).
    """
    return EASE_LIMIT if piece.is_long else REMAKE_LIMIT


def outcome(piece: Measured, reading: Length) -> Outcome:
    """What becomes of a piece that reads so, in inches.

    It passes when it is right as near as a tape is read, or when it is trimmed later and
    still has all that is wanted of it; it is steamed and blocked to shape (a row: eased) up
    to `limit_for` of its size, and made again beyond that.
    """
    off = abs(reading - piece.expected)
    most = most_off(piece.expected, limit_for(piece))
    if off <= near_enough(piece.expected):
        return Outcome.PASS
    if piece.at_least is not None and reading >= piece.at_least and off <= most:
        return Outcome.PASS
    return Outcome.BLOCK if off <= most else Outcome.REMAKE


def passes(piece: Measured, readings: Sequence[Length]) -> bool:
    """Whether every reading passes."""
    return all(outcome(piece, reading) is Outcome.PASS for reading in readings)

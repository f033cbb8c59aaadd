"""What a tape can show: how near a reading is believed, and how far readings of alike pieces lie
apart though nothing is wrong."""

from __future__ import annotations

from math import hypot, sqrt

from sewalong.lengths import Length

TAPE = (
    (Length(12), Length(1, 32)),
    (Length(36), Length(1, 16)),
)
LONG_TAPE = Length(1, 8)
"""How near a reading can be believed, by the length measured: half a sixteenth up to a foot,
a sixteenth up to a yard, an eighth beyond. Common practice."""

HAND = 0.01
"""Inches by which an edge laid or a seam sewn with care differs from the next, as a standard
deviation: a thread or two. From memory."""

PROVED = 1 / 128 / sqrt(3)
"""Inches by which an allowance may be off all along though it proved right, as a standard
deviation: anything within half of a 64th."""


def near_enough(length: Length) -> Length:
    """How far off a piece of this length may read and still be right."""
    for upto, near in TAPE:
        if length <= upto:
            return near
    return LONG_TAPE


def reading_noise(length: Length) -> float:
    """The standard deviation, in inches, of one reading: anything between two marks is as likely."""
    return float(near_enough(length)) / sqrt(3)


def hand_noise(allowances: float, pieces: int = 1) -> float:
    """The standard deviation, in inches, of so many pieces, at least 1, that cross so many
    allowances: what is off by chance adds up by squares."""
    return HAND * sqrt(max(abs(allowances), pieces))


def seam_noise(allowances: float) -> float:
    """What a seam that proves right may still add in all."""
    return PROVED * abs(allowances)


def together(*noises: float) -> float:
    """Independent noises added up."""
    return hypot(*noises)

"""How likely each cause is before anything fits it: common practice, in one table."""

from __future__ import annotations

from enum import StrEnum

from msgspec import Struct


class Why(StrEnum):
    """What a measurement points to."""

    RIGHT = "as it should be"
    WIDE = "the seam is too wide"
    NARROW = "the seam is too narrow"
    MISSING = "a piece is missing"
    TOO_MANY = "a piece too many"
    MISCUT = "a piece is mis-cut"
    SWAPPED = "another kind of piece"
    STRETCHED = "the cloth is stretched"
    SLIP = "measured to the seams"
    OTHER = "nothing that is known fits"


class Prior(Struct, frozen=True):
    """Of a hundred wrong measurements so many come of it: of one reading `alone`, of several that
    are wrong `alike`, and of `some` wrong ones among right ones."""

    alone: float
    alike: float
    some: float
    reason: str


PRIORS = {
    Why.WIDE: Prior(66, 74, 6, "the seam is what is wrong first and mostly; it is wrong in all"),
    Why.MISSING: Prior(4, 2, 33, "a row is miscounted now and then, hardly every row alike"),
    Why.TOO_MANY: Prior(3, 1, 17, "less often: it takes a piece that is missed elsewhere"),
    Why.MISCUT: Prior(12, 8, 27, "a ruler is misread now and then; packs are cut small"),
    Why.SWAPPED: Prior(5, 7, 12, "piles lie side by side; the wrong one is taken up"),
    Why.STRETCHED: Prior(8, 8, 5, "cloth is pulled in pressing or sewing, bias edges first"),
    Why.SLIP: Prior(1, 2, 0.3, "a finished size is read for an unfinished one"),
}
"""Working practice in makers' reports puts the seam first and the count of pieces next; the
shares are from memory and only decide where the tape does not. WIDE stands for NARROW too."""

BY_DRIFT = 0.5
"""The share of wrong seams that are no other foot's, but drift by one of DRIFT. From memory."""

DRIFT = ((0.7, 0.047), (0.3, 0.01))
"""Inches by which a drifting allowance is off, as standard deviations with their shares: by 3/64 in
or so, or by a thread, which only many seams add up. From memory."""

MISREAD = 0.2
"""Inches by which one mis-cut piece is off most likely, and half of what it is on average: a
misread mark of a ruler, mostly an eighth to a half inch. From memory."""

ALL_CUT_SO = 0.15
"""The same for pieces that were all cut alike: packs run up to 1/4 in under their label.
From memory."""

DRAWS_IN = 0.2
"""The share of what it is pulled by that cloth draws in the other way, about. From memory."""

PULLED, PULLED_ON_THE_BIAS = 0.015, 0.02
"""The share of its length by which cloth is stretched, as a standard deviation. From memory."""

UNCOUNTED = 0.2
"""How much rarer a piece too few is where nobody counts, as in a row of three. From memory."""

ONCE_MORE = 0.3
"""How much rarer it is that one more of the measured pieces was mis-cut or miscounted alike. From
memory."""

IN_EVERY_ROW = 0.3
"""How much rarer a mis-cut piece is as the cause where a whole top is off: it lies in one row. From
memory."""

ONE_MORE = 0.2
"""How much rarer each further piece too few or too many is. From memory."""

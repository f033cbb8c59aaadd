"""What to do with measured pieces: go on, trim them all, stop and resew these, count, look."""

from __future__ import annotations

from collections.abc import Sequence
from enum import StrEnum

from msgspec import Struct

from sewalong.lengths import Length, Rounding, Unit, round_to
from sewalong.progress.measuring.causes.cause import Cause
from sewalong.progress.measuring.causes.priors import Why
from sewalong.progress.measuring.spread import Spread
from sewalong.progress.measuring.verdict import Outcome
from sewalong.progress.record.measurable import Measured


class Do(StrEnum):
    """The one thing to do next."""

    GO_ON = "go on"
    EASE = "go on and ease"
    BORDERS = "go on, borders to the centre"
    TRIM = "trim all"
    RESEW = "stop and resew"
    REMAKE = "stop and make again"
    COUNT = "stop and count"
    SORT = "stop and sort out"
    SET_SEAM = "stop and set the seam"
    MEASURE = "stop and measure again"


class Decision(Struct, frozen=True):
    """`places` are the readings (from 0) it is about, all where it is about all; `to` the size to
    trim to, in inches."""

    do: Do
    places: tuple[int, ...]
    to: Length | None = None


LOOK = {Why.SWAPPED: Do.SORT, Why.SLIP: Do.MEASURE, Why.OTHER: Do.MEASURE,
        Why.MISSING: Do.COUNT, Why.TOO_MANY: Do.COUNT}  # fmt: skip
"""What is looked for before anything is sewn or cut: until then nobody knows what the pieces are."""

WORTH_A_LOOK = 0.2
"""Counting and looking cost nothing, unpicking does: a cause as likely as this is looked for first.
From memory."""


def decide(
    piece: Measured,
    outcomes: Sequence[Outcome],
    causes: Sequence[Cause],
    spread: Spread,
    unit: Unit,
) -> Decision:
    """What to do; `causes` are those of readings that do not all pass, the likeliest first."""
    every = tuple(range(len(outcomes)))
    if all(one is Outcome.PASS for one in outcomes):
        return Decision(Do.GO_ON, every)
    cause = causes[0]
    if piece.is_test:
        return Decision(Do.SET_SEAM if cause.is_seam else Do.MEASURE, every)
    for one in causes:
        if one.why in LOOK and (one is cause or one.likely >= WORTH_A_LOOK):
            return Decision(LOOK[one.why], one.places)
    planned = planned_size(piece, unit)
    trims = piece.is_border or (cause.why is Why.STRETCHED and not piece.is_long)
    if trims and spread.smallest >= planned:
        return Decision(Do.TRIM, every, planned)
    bad = tuple(place for place, one in enumerate(outcomes) if one is Outcome.REMAKE)
    if bad:
        return Decision(Do.RESEW if cause.is_seam else Do.REMAKE, bad)
    if piece.kind == "centre":
        return Decision(Do.BORDERS, every)
    if piece.is_long:
        return Decision(Do.EASE, every)
    return Decision(Do.TRIM, every, trim_size(piece, spread, unit))


def trim_size(piece: Measured, spread: Spread, unit: Unit) -> Length:
    """The size planned where all reach it, else the largest on the ruler that all reach."""
    planned = planned_size(piece, unit)
    return planned if spread.smallest >= planned else spread.common


def planned_size(piece: Measured, unit: Unit) -> Length:
    """What it would be trimmed to: the size decided, else what it should be, on the ruler."""
    if piece.at_least is not None:
        return piece.at_least
    if piece.is_border:
        return piece.expected
    return round_to(piece.expected, unit.step, Rounding.NEAREST)

"""The one further measurement that tells the causes apart best."""

from __future__ import annotations

from collections.abc import Sequence
from enum import StrEnum
from itertools import combinations

from msgspec import Struct

from sewalong.lengths import Length
from sewalong.progress.measuring.causes.cause import Cause
from sewalong.progress.measuring.causes.evidence import Evidence
from sewalong.progress.measuring.causes.priors import Why
from sewalong.progress.measuring.causes.weighing import SEAM_READ
from sewalong.progress.measuring.tape import hand_noise, reading_noise, together
from sewalong.quilt.as_fraction import as_fraction

APART = 3.0
"""Standard deviations by which two answers differ that tell causes apart: one in fifteen then lies
nearer the other (normal distribution, beyond half of it)."""

NEARLY = 0.8
"""What tells so much of what the best does, and takes less, is asked for first. From memory."""


class What(StrEnum):
    """What can be looked at or measured besides, what takes least first."""

    COUNT = "count the pieces"
    KIND = "look what kind it is"
    EDGES = "measure once more between the right edges"
    ALLOWANCE = "one seam allowance at the back"
    OTHER_WAY = "the same piece the other way"
    PIECES = "its pieces one by one"


class Further(Struct, frozen=True):
    """What to measure, and the answer each cause in question foretells, the likeliest first: inches,
    a count of pieces, or 1 where the cause shows and 0 where not (KIND, EDGES, PIECES)."""

    what: What
    answers: tuple[tuple[Cause, Length], ...]


def further(evidence: Evidence, causes: Sequence[Cause]) -> Further | None:
    """The measurement that parts most of the causes, by how likely they are, or nearly as many for
    less work; None where there is but one cause, or nothing parts them."""
    found: list[tuple[float, Further]] = []
    for what in What:
        answers = [(cause, _answer(evidence, what, cause)) for cause in causes]
        told = tuple((cause, answer) for cause, answer in answers if answer is not None)
        noise = _noise(evidence, what)
        parted = sum(
            one.likely * other.likely
            for (one, a), (other, b) in combinations(told, 2)
            if abs(float(a - b)) > APART * noise
        )
        found.append((parted, Further(what, told)))
    most = max(parted for parted, _ in found)
    enough = (one for parted, one in found if parted >= NEARLY * most)
    return next(enough) if most > 0 else None


_SHOWN_BY = {What.KIND: Why.SWAPPED, What.EDGES: Why.SLIP, What.PIECES: Why.MISCUT}


def _answer(evidence: Evidence, what: What, cause: Cause) -> Length | None:
    """What `what` comes to if `cause` is true; None where it cannot be done or says nothing."""
    if what in _SHOWN_BY:
        return Length(1 if cause.why is _SHOWN_BY[what] else 0)
    if what is What.COUNT:
        if not evidence.counted:
            return None
        more = {Why.MISSING: -cause.pieces, Why.TOO_MANY: cause.pieces}.get(cause.why, 0)
        return Length(evidence.of + more)
    if what is What.ALLOWANCE:
        if evidence.seam_read is not None or not evidence.allowances:
            return None
        return cause.named_seam if cause.named_seam is not None else evidence.seam
    return _other_way(evidence, cause)


def _other_way(evidence: Evidence, cause: Cause) -> Length | None:
    way = evidence.other_way
    if way is None or way.readings:
        return None
    if cause.named_seam is not None:
        off = float(cause.named_seam - evidence.seam)
        return way.expected - as_fraction(off * way.allowances)
    if cause.why in (Why.SWAPPED, Why.SLIP) or (cause.why is Why.MISCUT and cause.all_alike):
        return None
    return way.expected


def _noise(evidence: Evidence, what: What) -> float:
    if what is What.ALLOWANCE:
        return SEAM_READ
    if what is What.OTHER_WAY and evidence.other_way is not None:
        way = evidence.other_way
        return together(reading_noise(way.expected), hand_noise(way.allowances))
    return 0.1

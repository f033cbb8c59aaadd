"""What is believed of an owner's pace at all stages together, from her own sessions.

In logarithms of minutes. A stage's time for one count is the guess from seam length and
handling, times how this owner compares with the guesses at all stages alike, times how she
does at this one, times how far she has learned it, times the evening: on a tired evening
everything takes longer. So a stage worked at tells of those not begun, as far as the owner
makes them alike, and two stages of one evening are not taken for two opinions. How much her
evenings differ is not known beforehand: each of a few answers is carried along and weighs as
well as it explains her record.

The spreads are set so that the stated ranges hold in the first of the worlds that the
calibration benchmark prints; how they do in the others stands beside it there.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from datetime import datetime
from math import exp, log

from msgspec import Struct

from sewalong.progress.pace.belief import Belief, Row
from sewalong.progress.pace.learning import against_practised, lean
from sewalong.progress.pace.session_samples import Spell

OWNER_SPREAD = 0.40
"""How far an owner's pace lies from the guesses at all stages alike, in logarithms."""

STAGE_SPREAD = 0.46
"""How far it lies from them at one stage beyond that."""

USUAL_SLOPE = 0.10
"""Before the record knows: each doubling brings a piece's time to 93 %. From memory."""

SLOPE_SPREAD = 0.07
"""How far owners lie from that, as a standard deviation."""

EVENINGS = ((0.06, 0.25), (0.13, 0.30), (0.21, 0.25), (0.30, 0.20))
"""How much an owner's evenings differ, in logarithms, each with its chance beforehand: from
hardly at all to by a third. The chances are from memory."""

OWN_FAULT = 0.05
"""What stays uncertain of a stage's time in a session however many its counts: some were
typed late, some of the work was not sewing. In logarithms."""

CHANGED_BY_SESSION = 0.08
"""How far the pace of a stage worked at may have moved from one session to the next, beyond
what learning does: a better light, another way of pressing. From memory."""

CHANGED_BY_MONTH = 0.05
"""The same for a month away: hands forget. From memory."""

DAYS_OF_A_MONTH = 30.0


class Likely(Struct, frozen=True):
    """One answer to how much evenings differ: the `chance` it has, from 0 to 1, and what is
    believed if it holds."""

    evenings: float
    chance: float
    belief: Belief


class OwnersPace(Struct, frozen=True):
    """All that is believed. In a belief each stage has the place in `places`, then come the
    slope of learning and the evening of session `evening` (None before there is one)."""

    places: Mapping[str, int]
    likely: tuple[Likely, ...]
    evening: int | None

    def row(self, stage: str, before: int, n: int, evening: float = 0.0) -> tuple[Row, float]:
        """Of the time of one count on average, `n` counts being made after `before`: the sum
        of unknowns its logarithm is, and what is to be added to it.

        `evening` is the part of them made in the evening the belief knows of.
        """
        return _row(self.places, stage, before, n, evening)


def owners_pace(
    guesses: Mapping[str, float],
    found: Sequence[Spell],
    uneven: Mapping[str, float],
    now: datetime,
) -> OwnersPace:
    """The belief at `now`: `guesses` and `uneven` (see `unevenness`) by stage."""
    places = {stage: place for place, stage in enumerate(guesses)}
    likely = _likely(guesses, places, found, uneven, now)
    return OwnersPace(places, likely, found[-1].session if found else None)


def _row(
    places: Mapping[str, int], stage: str, before: int, n: int, evening: float
) -> tuple[Row, float]:
    leans = lean(USUAL_SLOPE, before, n)
    row = {places[stage]: 1.0, len(places): leans, len(places) + 1: evening}
    return row, against_practised(USUAL_SLOPE, before, n) - leans * USUAL_SLOPE


def _likely(
    guesses: Mapping[str, float],
    places: Mapping[str, int],
    found: Sequence[Spell],
    uneven: Mapping[str, float],
    now: datetime,
) -> tuple[Likely, ...]:
    told = []
    for spell in found:
        row, more = _row(places, spell.stage, spell.before, spell.n, evening=1.0)
        variance = uneven[spell.stage] / spell.n + OWN_FAULT**2
        told.append((spell, row, log(spell.each) - more, variance))
    beliefs = []
    for evenings, _ in EVENINGS:
        belief = _beforehand(guesses)
        last: Spell | None = None
        begun: set[int] = set()
        for spell, row, value, variance in told:
            if last is None or spell.session != last.session:
                belief.less_sure(begun, _changed(last, spell.at))
                belief.drawn_anew(len(places) + 1, evenings**2)
            belief.told(row, value, variance)
            begun.add(places[spell.stage])
            last = spell
        if last is not None:
            belief.less_sure(begun, _away(last.at, now))
        beliefs.append(belief)
    best = max(belief.fit for belief in beliefs)
    weights = [
        chance * exp(belief.fit - best)
        for (_, chance), belief in zip(EVENINGS, beliefs, strict=True)
    ]
    return tuple(
        Likely(evenings, weight / sum(weights), belief)
        for (evenings, _), weight, belief in zip(EVENINGS, weights, beliefs, strict=True)
    )


def _beforehand(guesses: Mapping[str, float]) -> Belief:
    n = len(guesses)
    alike, alone = OWNER_SPREAD**2, STAGE_SPREAD**2
    covariance = [
        [alike + (alone if i == j else 0.0) for j in range(n)] + [0.0, 0.0] for i in range(n)
    ]
    covariance += [[0.0] * n + [SLOPE_SPREAD**2, 0.0], [0.0] * (n + 2)]
    return Belief([log(minutes) for minutes in guesses.values()] + [USUAL_SLOPE, 0.0], covariance)


def _changed(last: Spell | None, at: datetime) -> float:
    return 0.0 if last is None else CHANGED_BY_SESSION**2 + _away(last.at, at)


def _away(last: datetime, at: datetime) -> float:
    days = max(0.0, (at - last).total_seconds() / 86400)
    return CHANGED_BY_MONTH**2 * days / DAYS_OF_A_MONTH

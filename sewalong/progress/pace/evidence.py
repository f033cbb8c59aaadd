"""How much a number of counts in one session says about the pace.

Counts of one session share the evening: the light, the cloth, how tired she is. However
many there are, together they say no more about other evenings than the spread between
sessions lets them. And one count is many motions (reach, lay, level, sew, set down), so it
varies less than a single chance event would.
"""

from __future__ import annotations

MOTIONS = 10
"""Motions to a count: times of single counts then spread by about 30 %. From memory."""

SESSION_SPREAD = 0.20
"""How much a stage's pace differs from session to session, as a part of it. From memory;
with it the stated ranges held true of simulated quilts (see the calibration benchmark)."""

KEPT_BY_SESSION = 0.85
"""What a session's evidence keeps for each later session at the same stage. From memory."""

HALF_LIFE_DAYS = 180.0
"""Days after which evidence is worth half: hands forget. From memory."""


def evidence_of(n: int) -> float:
    """Evidence in `n` counts of one session, in counts' worth that are independent.

    The relative variance of their average is 1 / (MOTIONS * n) + SESSION_SPREAD**2; the
    evidence is its inverse, at most 1 / SESSION_SPREAD**2. 0 for no counts.
    """
    if n <= 0:
        return 0.0
    return 1 / (1 / (MOTIONS * n) + SESSION_SPREAD**2)


def kept(sessions_since: int, days: float) -> float:
    """The part of its worth that evidence keeps, from 0 to 1."""
    return float(KEPT_BY_SESSION**sessions_since * 0.5 ** (max(0.0, days) / HALF_LIFE_DAYS))

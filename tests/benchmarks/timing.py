"""Timing a piece of work, alone or turn about with its floor."""

from __future__ import annotations

import time
from collections.abc import Callable
from statistics import median

Work = Callable[[], object]

Timed = Callable[[], float]
"""Something that is done and gives the seconds it took."""


def seconds(work: Work) -> float:
    """How long one run takes."""
    begun = time.perf_counter()
    work()
    return time.perf_counter() - begun


def best(work: Work, rounds: int = 5) -> float:
    """The shortest of several runs, in seconds."""
    return min(seconds(work) for _ in range(rounds))


def turn_about(floor: Timed, ours: Timed, rounds: int) -> tuple[float, float]:
    """The medians of both in seconds, after a first run of each that does not count.

    They take turns, so that a busy moment of the machine falls on both alike.
    """
    _, *pairs = [(floor(), ours()) for _ in range(rounds + 1)]
    return median(pair[0] for pair in pairs), median(pair[1] for pair in pairs)

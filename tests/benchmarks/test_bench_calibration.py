"""Prints how often the stated ranges hold the truth (`pytest -s`); the bounds are coarse."""

from __future__ import annotations

from tests.benchmarks.calibration import figures
from tests.progress.pace.simulated import KINDS, WORLDS


def test_print_how_often_the_range_holds_the_truth() -> None:
    lines = list(figures())
    print("\n", *lines, sep="\n")
    assert len(lines) == 4 + len(KINDS) * len(WORLDS) + 1

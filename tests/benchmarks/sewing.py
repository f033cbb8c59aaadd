"""What the sewing screen costs in a real terminal, beside the barest app that saves and draws."""

from __future__ import annotations

import sys
import time
from collections.abc import Iterator
from pathlib import Path
from statistics import median, quantiles

from tests.benchmarks.effort import Effort
from tests.benchmarks.processes import SEWALONG, hello
from tests.benchmarks.records import pairs_counted, sewing_now
from tests.benchmarks.row import Goal, Row, milliseconds
from tests.benchmarks.terminal import Terminal, terminal
from tests.benchmarks.timing import turn_about

READY = b"READY"
TO_GO = b"to go"
"""What is painted when either is ready for a key."""

OURS = (SEWALONG, "open")


def sewing_rows(home: Path, effort: Effort) -> Iterator[Row]:
    """First paint, a key, and on Linux memory and the processor's time with nothing to do."""
    sewing_now(home)
    painted = turn_about(
        lambda: _paint(hello(home), home, READY), lambda: _paint(OURS, home, TO_GO), effort.rounds
    )
    yield milliseconds("first paint", "bare Textual app", painted, Goal(times=1.35))
    with terminal(hello(home), home) as floor, terminal(OURS, home) as ours:
        floor.sees(READY)
        ours.sees(TO_GO)
        yield from _keys(floor, ours, home, effort.keys)
        if sys.platform == "linux":
            yield from _idle(floor, ours, effort.idle_seconds)


def _paint(argv: tuple[str, ...], home: Path, words: bytes) -> float:
    with terminal(argv, home) as program:
        return program.sees(words)


def _keys(floor: Terminal, ours: Terminal, home: Path, keys: int) -> Iterator[Row]:
    """Keys to both in turn; afterwards every one must stand in the record."""
    floor.settles(0.8)
    ours.settles(0.8)
    before = pairs_counted(home)
    taken = [(floor.answers(b" "), ours.answers(b" ")) for _ in range(keys)]
    assert pairs_counted(home) == before + keys
    bare, full = zip(*taken, strict=True)
    beside = "one row saved, one line drawn"
    middle = (median(bare), median(full))
    slow = (
        quantiles(bare, n=20, method="inclusive")[-1],
        quantiles(full, n=20, method="inclusive")[-1],
    )
    yield milliseconds("key, saved, repainted: median", beside, middle, Goal(times=2))
    yield milliseconds("key, saved, repainted: p95", beside, slow, Goal(times=2.5))


def _idle(floor: Terminal, ours: Terminal, seconds: float) -> Iterator[Row]:
    """Both are left alone for the same while."""
    floor.settles(1)
    ours.settles(1)
    beside = "bare Textual app"
    yield Row("memory", beside, floor.megabytes(), ours.megabytes(), "MB", Goal(times=1.25))
    before = floor.processor_seconds(), ours.processor_seconds()
    end = time.monotonic() + seconds
    while time.monotonic() < end:
        floor.take_in(0.25)
        ours.take_in(0.25)
    used = floor.processor_seconds() - before[0], ours.processor_seconds() - before[1]
    bare, full = (100 * one / seconds for one in used)
    yield Row("processor, idle", beside, bare, full, "%", Goal(times=2))

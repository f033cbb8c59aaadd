"""Folding costs what there is to fold: twice the events take about twice the time.

Prints the times of one run (`pytest -s`) and asserts only what they come to side by side.
"""

from __future__ import annotations

import time
from datetime import timedelta

from sewalong.progress.record.events.every_kind import (
    Counted,
    Event,
    Noted,
    PutAway,
    Recorded,
    SessionOpened,
)
from sewalong.progress.record.fold import fold
from tests.progress.building import EVENING, a_quilt

QUILT = a_quilt(pieces=9999)
MOST_OF_TWICE = 3.0
"""What squares would be four; a busy machine is given room below that."""


def history(n: int) -> list[Recorded]:
    """`n` invented events of one session: pairs counted, put away, a note now and then."""
    events: list[Event] = [SessionOpened(at=EVENING, session=1)]
    for minute in range(1, n):
        at = EVENING + timedelta(seconds=minute)
        if minute % 50 == 0:
            events.append(Noted(at=at, session=1, text=f"note {minute}"))
        elif minute % 10 == 0:
            events.append(PutAway(at=at, session=1, pile="pair", place=f"box {minute % 3}", n=1))
        else:
            events.append(Counted(at=at, session=1, stage="pair", n=1))
    return [Recorded(seq, event) for seq, event in enumerate(events, start=1)]


def best(record: list[Recorded], rounds: int = 7) -> float:
    """The shortest of several folds, in seconds."""
    times = []
    for _ in range(rounds):
        begun = time.perf_counter()
        fold(QUILT, record)
        times.append(time.perf_counter() - begun)
    return min(times)


def test_twice_the_events_take_about_twice_the_time() -> None:
    few, many = best(history(10_000)), best(history(20_000))
    print(f"\n10,000 events {few * 1000:.1f} ms, 20,000 {many * 1000:.1f} ms: × {many / few:.2f}")
    assert many / few < MOST_OF_TWICE

"""How long the store takes, in proportion to the disk itself. Prints; judges nothing.

Run it with `python -m pytest tests/benchmarks/test_bench_store.py -s`.
"""

from __future__ import annotations

import sqlite3
import time
from collections.abc import Callable
from contextlib import closing
from datetime import timedelta
from pathlib import Path
from statistics import median

from sewalong.progress.acts.decide import decide
from sewalong.progress.record.audit import audit
from sewalong.progress.record.events import Counted, Event, SessionOpened
from sewalong.progress.record.fold import fold
from sewalong.service.open_quilt import OpenQuilt
from sewalong.store.library import Library
from tests.progress import every_act as c
from tests.progress.building import advance
from tests.store.shelf import EVENING, a_quilt, shelf

EVENTS = 5000
TIMES = 200


def a_long_record() -> list[Event]:
    """Pairs counted one by one, in sessions of fifty."""
    events: list[Event] = []
    for i in range(EVENTS):
        at, session = EVENING + timedelta(seconds=20 * i), 1
        opening = SessionOpened(at=at, session=session)
        events.append(opening if i == 0 else Counted(at=at, session=session, stage="pair", n=1))
    return events


def milliseconds(act: Callable[[], object], times: int = 1) -> float:
    """The median over `times` runs."""
    taken = []
    for _ in range(times):
        began = time.perf_counter()
        act()
        taken.append(time.perf_counter() - began)
    return median(taken) * 1000


def bare_commit(path: Path) -> float:
    """One row into a table of one's own, with the same settings as the record's."""
    with closing(sqlite3.connect(path, isolation_level=None)) as connection:
        connection.execute("PRAGMA journal_mode = TRUNCATE")
        connection.execute("PRAGMA synchronous = FULL")
        connection.execute("PRAGMA fullfsync = 1")
        connection.execute("CREATE TABLE line (body TEXT)")

        def write() -> None:
            connection.execute("BEGIN IMMEDIATE")
            connection.execute("INSERT INTO line VALUES (?)", ("x" * 120,))
            connection.execute("COMMIT")

        return milliseconds(write, TIMES)


def test_what_a_count_costs_beside_the_disk(tmp_path: Path) -> None:
    path = tmp_path / "quilts.db"
    with shelf(path) as library:
        entry = library.add(a_quilt(pieces=9999, borders=0), EVENING, events=a_long_record()[:2])
        short = OpenQuilt(library, entry)
        report("a bare commit", bare := bare_commit(tmp_path / "bare.db"), bare)
        report(
            "a count, 2 events before it",
            milliseconds(lambda: short.do(c.WriteNote("x")), TIMES),
            bare,
        )
    long_path = tmp_path / "long.db"
    with shelf(long_path) as library:
        entry = library.add(a_quilt(pieces=9999, borders=0), EVENING, events=a_long_record())
        quilt = long_quilt(library, bare)
        now = quilt.state.sessions[-1].last_at
        report(
            f"a count, {EVENTS} events before it",
            milliseconds(lambda: quilt.do(c.Recount("square", 20)), TIMES),
            bare,
        )
        command = c.Recount("square", 20)
        events = decide(quilt.state, command, now)
        report(
            "  of it, deciding", milliseconds(lambda: decide(quilt.state, command, now), 50), bare
        )
        new = quilt.do(command)
        state, record = quilt.state, quilt.record
        report("  of it, moving on", milliseconds(lambda: advance(state, record, new), 50), bare)
        report("  of it, the longer record", milliseconds(lambda: (*record, *new), 50), bare)
        report("an undo", milliseconds(lambda: quilt.do(c.Undo()), 3), bare)
        assert events
        assert len(library.load(entry).record) == len(quilt.record)


def long_quilt(library: Library, bare: float) -> OpenQuilt:
    """The quilt with the long record, opened; what that takes is reported."""
    (entry,) = library.entries()
    report(f"reading {EVENTS} events", milliseconds(lambda: library.load(entry), 3), bare)
    loaded = library.load(entry)
    report(
        f"folding {EVENTS} events", milliseconds(lambda: fold(loaded.quilt, loaded.record)), bare
    )
    report(
        f"auditing {EVENTS} events", milliseconds(lambda: audit(loaded.quilt, loaded.record)), bare
    )
    quilt = OpenQuilt(library, entry, lambda: EVENING + timedelta(seconds=20 * EVENTS))
    assert quilt.state.done["pair"] == EVENTS - 1
    return quilt


def report(what: str, taken: float, bare: float) -> None:
    print(f"{what:<36}{taken:10.3f} ms  = {taken / bare:8.2f} bare commits")

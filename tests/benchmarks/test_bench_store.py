"""What an act costs beside the disk itself, behind a short record and behind a long one.

Prints ratios measured in one run (`pytest -s`); it asserts no times.
"""

from __future__ import annotations

import sqlite3
from contextlib import closing
from functools import partial
from pathlib import Path
from statistics import median

from sewalong.progress.acts.notes import WriteNote
from sewalong.progress.record.auditing.audit import audit
from sewalong.service.acting import do
from tests.benchmarks.records import COUNT, put, sat_down_after, shelf
from tests.benchmarks.timing import Work, best, seconds

SHORT, LONG = 50, 5_000
ROUNDS = 30


def test_print_what_an_act_costs_beside_the_disk(tmp_path: Path) -> None:
    bare = bare_commit(tmp_path / "bare.db")
    report("a bare commit", bare, bare)
    for events in (SHORT, LONG):
        with shelf(tmp_path / str(events)) as library:
            entry = put(library, events)
            quilt = sat_down_after(library, entry)
            behind = f"behind {events:,} events"
            report(f"a count {behind}", middle(partial(do, quilt, COUNT)), bare)
            report(f"a note {behind}", middle(partial(do, quilt, WriteNote("x"))), bare)
            loaded = library.load(entry)
            assert audit(loaded.quilt, loaded.record) is None
            auditing = best(partial(audit, loaded.quilt, loaded.record), 3)
            report(f"auditing {len(loaded.record):,} events", auditing, bare)
            assert len(loaded.record) > events + 2 * ROUNDS


def bare_commit(path: Path) -> float:
    """One row into a table of one's own, with the same settings as the record's, in seconds."""
    with closing(sqlite3.connect(path, isolation_level=None)) as connection:
        connection.execute("PRAGMA journal_mode = TRUNCATE")
        connection.execute("PRAGMA synchronous = FULL")
        connection.execute("PRAGMA fullfsync = 1")
        connection.execute("CREATE TABLE line (body TEXT)")

        def write() -> None:
            connection.execute("BEGIN IMMEDIATE")
            connection.execute("INSERT INTO line VALUES (?)", ("x" * 120,))
            connection.execute("COMMIT")

        return middle(write)


def middle(work: Work) -> float:
    """The median of several runs, in seconds."""
    return median(seconds(work) for _ in range(ROUNDS))


def report(what: str, taken: float, bare: float) -> None:
    print(f"{what:<36}{taken * 1000:10.3f} ms  = {taken / bare:8.2f} bare commits")

"""What grows with the record: it may grow no faster than what there is to read."""

from __future__ import annotations

from collections.abc import Iterator
from functools import partial
from pathlib import Path

from sewalong.progress.acts.undoing import Undo
from sewalong.progress.record.fold import fold
from sewalong.service.acting import do
from tests.benchmarks.effort import Effort
from tests.benchmarks.processes import SEWALONG, run
from tests.benchmarks.records import COUNT, many_quilts, noted, put, sat_down_after, shelf
from tests.benchmarks.row import Goal, Row, milliseconds
from tests.benchmarks.timing import seconds, turn_about


def growth_rows(home: Path, effort: Effort) -> Iterator[Row]:
    """Longer records, more notes, more quilts, and an undo behind many events."""
    for full in (1_000, 10_000, 100_000):
        yield _folding(home / f"fold-{full}", effort.size(full), effort.rounds)
    yield _notes(home, effort.size(5_000), effort.size(20_000), effort.rounds)
    yield _listing(home, 5, effort.size(500), effort.rounds)
    yield _undoing(home / "undo", effort.size(10_000), effort.rounds)


def _folding(home: Path, events: int, rounds: int) -> Row:
    """Working out where a quilt stands, beside taking its events from disk."""
    with shelf(home) as library:
        entry = put(library, events)
        loaded = library.load(entry)
        reading = partial(library.since, entry, 0)
        folding = partial(fold, loaded.quilt, loaded.record)
        taken = turn_about(partial(seconds, reading), partial(seconds, folding), rounds)
    return milliseconds(f"fold of {events:,} events", "reading them", taken, Goal(times=3))


def _notes(home: Path, few: int, many: int, rounds: int) -> Row:
    """`status` of a quilt with many notes, beside one with few."""
    fewer, more = home / "few-notes", home / "many-notes"
    for at, notes in ((fewer, few), (more, many)):
        with shelf(at) as library:
            put(library, notes, noted)
    status = (SEWALONG, "status")
    taken = turn_about(partial(run, status, fewer), partial(run, status, more), rounds)
    what, beside = f"`status` with {many:,} notes", f"with {few:,} notes"
    return milliseconds(what, beside, taken, Goal(times=many / few))


def _listing(home: Path, few: int, many: int, rounds: int) -> Row:
    """`list` of many quilts, beside a few."""
    fewer, more = home / "few-quilts", home / "many-quilts"
    many_quilts(fewer, few)
    many_quilts(more, many)
    listing = (SEWALONG, "list")
    taken = turn_about(partial(run, listing, fewer), partial(run, listing, more), rounds)
    return milliseconds(f"`list` of {many} quilts", f"`list` of {few}", taken, Goal(more=50))


def _undoing(home: Path, events: int, rounds: int) -> Row:
    """One undo behind so many events, beside a count and the reading of the record."""
    with shelf(home) as library:
        entry = put(library, events)
        quilt = sat_down_after(library, entry)
        reading = partial(library.since, entry, 0)
        taken = turn_about(
            lambda: seconds(partial(do, quilt, COUNT)) + seconds(reading),
            lambda: seconds(partial(do, quilt, Undo())),
            rounds,
        )
    return milliseconds(f"undo behind {events:,} events", "a count and reading", taken, Goal())

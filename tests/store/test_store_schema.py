"""The database itself refuses to forget, and is set so that what was acknowledged is on disk."""

from __future__ import annotations

import sqlite3
from pathlib import Path

import pytest

from sewalong.progress.record.events.every_kind import Noted
from sewalong.store.database import PATIENCE, Database
from sewalong.store.faults import StoreFault
from sewalong.store.schema import STEPS
from tests.progress import every_act as c
from tests.store.shelf import EVENING, a_quilt, begin, opened, shelf


@pytest.fixture
def path(tmp_path: Path) -> Path:
    path = tmp_path / "quilts.db"
    begin(path)
    with opened(path) as quilt:
        quilt.do(c.WriteNote("begun"))
        quilt.do(c.Count("pair"))
    return path


@pytest.mark.parametrize(
    ("pragma", "wanted"),
    [
        ("foreign_keys", 1),
        ("recursive_triggers", 1),
        ("journal_mode", "truncate"),
        ("synchronous", 2),  # FULL, as SQLite numbers it: sqlite.org/pragma.html
        ("fullfsync", 1),
        ("application_id", 0x53455741),
        ("user_version", len(STEPS)),
        ("busy_timeout", int(PATIENCE * 1000)),
    ],
)
def test_the_settings_are_in_force(path: Path, pragma: str, wanted: str | int) -> None:
    database = Database(path, EVENING)
    try:
        assert database.rows(f"PRAGMA {pragma}") == [(wanted,)]
    finally:
        database.close()


def test_after_a_write_the_journal_is_there_and_empty(path: Path) -> None:
    with opened(path) as quilt:
        quilt.do(c.WriteNote("one more"))
        assert (path.parent / "quilts.db-journal").stat().st_size == 0


BODY = '\'{"kind": "picked up"}\''
FORBIDDEN = {
    "edit an event": "UPDATE event SET body = '{}' WHERE seq = 1",
    "renumber an event": "UPDATE event SET seq = 900 WHERE seq = 2",
    "delete an event": "DELETE FROM event WHERE seq = 1",
    "delete all events": "DELETE FROM event",
    "replace an event": f"INSERT OR REPLACE INTO event VALUES (1, 1, 'x', 0, 'x', {BODY})",
    "leave a gap": f"INSERT INTO event VALUES (1, 99, 'x', 0, 'x', {BODY})",
    "repeat a number": f"INSERT OR IGNORE INTO event VALUES (1, 1, 'x', 0, 'x', {BODY})",
    "an event of no quilt": f"INSERT INTO event VALUES (77, 1, 'x', 0, 'x', {BODY})",
    "edit a plan": "UPDATE quilt SET plan = '{}'",
    "delete a quilt": "DELETE FROM quilt",
    "replace a quilt by id": "INSERT OR REPLACE INTO quilt VALUES (1, 'k', 'n', '{}', 'x')",
    "replace a quilt by key": "INSERT OR REPLACE INTO quilt (key, name, plan, started) "
    "SELECT key, 'n', '{}', 'x' FROM quilt",
}


@pytest.mark.parametrize("sql", FORBIDDEN.values(), ids=FORBIDDEN.keys())
def test_the_record_only_grows(path: Path, sql: str) -> None:
    connection = sqlite3.connect(path)
    try:
        connection.execute("PRAGMA foreign_keys = ON")
        before = list(connection.iterdump())
        with pytest.raises(sqlite3.IntegrityError):
            connection.execute(sql)
        assert list(connection.iterdump()) == before
    finally:
        connection.close()


def test_several_events_are_written_all_or_none(path: Path) -> None:
    good = Noted(at=EVENING, session=0, text="kept?")
    bad = Noted(at=EVENING, session=0, text="half a \ud800 character")
    with shelf(path) as library:
        entry = library.find("Hedgerow")
        before = library.since(entry, 0)
        with pytest.raises(StoreFault):
            library.append(entry, before[-1].seq, [good, bad])
        assert library.since(entry, 0) == before
        library.append(entry, before[-1].seq, [good])


def test_a_quilt_with_a_record_comes_in_whole_or_not_at_all(path: Path) -> None:
    good = Noted(at=EVENING, session=0, text="kept?")
    bad = Noted(at=EVENING, session=0, text="half a \ud800 character")
    with shelf(path) as library:
        with pytest.raises(StoreFault):
            library.add(a_quilt("Another"), EVENING, events=[good, bad])
        assert [entry.name for entry in library.entries()] == ["Hedgerow"]


def stopped_while_writing(database: Database) -> None:
    with database.writing() as connection:
        connection.execute("INSERT INTO quilt VALUES (5, 'k', 'n', '{}', 'x')")
        raise KeyboardInterrupt


def test_a_stop_in_the_middle_of_a_write_leaves_nothing(path: Path) -> None:
    database = Database(path, EVENING)
    try:
        before = database.rows("SELECT * FROM quilt")
        with pytest.raises(KeyboardInterrupt):
            stopped_while_writing(database)
        assert database.rows("SELECT * FROM quilt") == before
        with database.writing() as connection:
            connection.execute("INSERT INTO quilt VALUES (5, 'k', 'n', '{}', 'x')")
        assert len(database.rows("SELECT * FROM quilt")) == len(before) + 1
    finally:
        database.close()

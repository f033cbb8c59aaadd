"""The shape of the database changes step by step, each step whole or not at all."""

from __future__ import annotations

import shutil
import sqlite3
from collections.abc import Iterator
from contextlib import closing
from pathlib import Path
from typing import Any

import pytest

from sewalong.store.database import Database
from sewalong.store.faults import StoreFault
from sewalong.store.migrations import migrate
from sewalong.store.schema import APPLICATION_ID, STEPS
from tests.progress import every_act as c
from tests.store.shelf import EVENING, begin, opened, shelf

# Invented steps of versions that never were.
SHELF = ("CREATE TABLE shelf (name TEXT)", "INSERT INTO shelf VALUES ('upper')")
LOWER = ("INSERT INTO shelf VALUES ('lower')", "ALTER TABLE quilt ADD COLUMN shelf TEXT")
BROKEN = ("INSERT INTO shelf VALUES ('half')", "INSERT INTO nowhere VALUES (1)")


@pytest.fixture
def path(tmp_path: Path) -> Path:
    path = tmp_path / "quilts.db"
    begin(path)
    with opened(path) as quilt:
        quilt.do(c.Count("pair", 3))
    return path


@pytest.fixture
def connection(path: Path) -> Iterator[sqlite3.Connection]:
    with closing(sqlite3.connect(path, isolation_level=None)) as connection:
        yield connection


def version(connection: sqlite3.Connection) -> int:
    ((found,),) = connection.execute("PRAGMA user_version").fetchall()
    return int(found)


def shelves(connection: sqlite3.Connection) -> list[str]:
    return [name for (name,) in connection.execute("SELECT name FROM shelf ORDER BY rowid")]


def backups(path: Path) -> list[Path]:
    """Those made before a migration; there is one of the day beside them."""
    folder = path.parent / "backups"
    return sorted(folder.glob("quilts-v*")) if folder.exists() else []


def test_a_new_record_gets_every_step_and_no_backup(tmp_path: Path) -> None:
    path = tmp_path / "new" / "quilts.db"
    Database(path, EVENING).close()
    with closing(sqlite3.connect(path)) as connection:
        assert version(connection) == len(STEPS)
        assert connection.execute("PRAGMA application_id").fetchone() == (APPLICATION_ID,)
    assert backups(path) == []


def test_steps_are_taken_in_order_and_the_record_is_kept(
    path: Path, connection: sqlite3.Connection
) -> None:
    events = connection.execute("SELECT * FROM event").fetchall()
    migrate(connection, path, EVENING, (*STEPS, SHELF, LOWER))
    assert version(connection) == len(STEPS) + 2
    assert shelves(connection) == ["upper", "lower"]
    assert connection.execute("SELECT * FROM event").fetchall() == events
    migrate(connection, path, EVENING, (*STEPS, SHELF, LOWER))
    assert shelves(connection) == ["upper", "lower"]


def test_a_backup_of_the_old_record_is_made_first(
    path: Path, connection: sqlite3.Connection
) -> None:
    before = list(connection.iterdump())
    migrate(connection, path, EVENING, (*STEPS, SHELF))
    (backup,) = backups(path)
    assert backup.name == f"quilts-v{len(STEPS)}-20231104T190000.db"
    with closing(sqlite3.connect(backup)) as copy:
        assert version(copy) == len(STEPS)
        assert list(copy.iterdump()) == before


def test_the_backup_opens_as_a_record(path: Path, connection: sqlite3.Connection) -> None:
    migrate(connection, path, EVENING, (*STEPS, SHELF))
    (backup,) = backups(path)
    with opened(backup) as quilt:
        assert quilt.state.done["pair"] == 3


def test_a_step_that_fails_leaves_the_version_before_it(
    path: Path, connection: sqlite3.Connection
) -> None:
    with pytest.raises(sqlite3.OperationalError, match="nowhere"):
        migrate(connection, path, EVENING, (*STEPS, SHELF, BROKEN, LOWER))
    assert version(connection) == len(STEPS) + 1
    assert shelves(connection) == ["upper"]
    assert not connection.in_transaction
    migrate(connection, path, EVENING, (*STEPS, SHELF, LOWER))
    assert shelves(connection) == ["upper", "lower"]


def test_two_windows_that_upgrade_at_once_take_each_step_once(
    path: Path, connection: sqlite3.Connection
) -> None:
    """The other window takes both steps just after this one found them missing."""
    steps = (*STEPS, SHELF, LOWER)
    with closing(sqlite3.connect(path, isolation_level=None)) as other:
        done: list[bool] = []

        def before_this_one_begins(statement: str) -> None:
            if statement == "BEGIN IMMEDIATE" and not done:
                done.append(True)
                migrate(other, path, EVENING, steps)

        connection.set_trace_callback(before_this_one_begins)
        migrate(connection, path, EVENING, steps)
    assert done
    assert shelves(connection) == ["upper", "lower"]
    assert version(connection) == len(steps)


def test_no_upgrade_without_a_backup(path: Path, connection: sqlite3.Connection) -> None:
    shutil.rmtree(path.parent / "backups")
    (path.parent / "backups").write_text("a file where the folder should be")
    with pytest.raises(StoreFault, match=r"No backup could be made .* left as it was"):
        migrate(connection, path, EVENING, (*STEPS, SHELF))
    assert version(connection) == len(STEPS)


def test_a_backup_that_fails_half_way_leaves_no_half_of_one(
    path: Path, connection: sqlite3.Connection, monkeypatch: pytest.MonkeyPatch
) -> None:
    real = sqlite3.connect

    def small(name: str, **options: Any) -> sqlite3.Connection:
        copy: sqlite3.Connection = real(name, **options)
        copy.execute("PRAGMA max_page_count = 2")
        return copy

    monkeypatch.setattr(sqlite3, "connect", small)
    with pytest.raises(StoreFault, match="disk is full"):
        migrate(connection, path, EVENING, (*STEPS, SHELF))
    assert version(connection) == len(STEPS)
    assert backups(path) == []


@pytest.mark.parametrize("journal", ["truncate", "wal"])
def test_a_newer_record_is_refused_and_stays_as_it_was(path: Path, journal: str) -> None:
    with closing(sqlite3.connect(path)) as newer:
        newer.execute(f"PRAGMA journal_mode = {journal}")
        newer.execute(f"PRAGMA user_version = {len(STEPS) + 1}")
    before = path.read_bytes()
    with pytest.raises(StoreFault, match="written by a newer sewalong"), shelf(path):
        pass
    assert path.read_bytes() == before
    assert backups(path) == []


@pytest.mark.parametrize("marked", [0, 42])
@pytest.mark.parametrize("numbered", [0, 1, 9])
def test_a_database_of_another_program_is_refused_and_stays_as_it_was(
    tmp_path: Path, marked: int, numbered: int
) -> None:
    path = tmp_path / "quilts.db"
    with closing(sqlite3.connect(path)) as other:
        other.execute("CREATE TABLE recipe (title TEXT)")
        other.execute(f"PRAGMA application_id = {marked}")
        other.execute(f"PRAGMA user_version = {numbered}")
        other.execute("PRAGMA journal_mode = wal")
    before = path.read_bytes()
    with pytest.raises(StoreFault, match="not a sewalong record"), shelf(path):
        pass
    assert path.read_bytes() == before


def test_an_empty_file_is_a_record_that_has_yet_to_begin(tmp_path: Path) -> None:
    path = tmp_path / "quilts.db"
    path.touch()
    begin(path)
    with opened(path) as quilt:
        assert quilt.state.seq == 0


def test_a_window_of_before_an_upgrade_writes_nothing_after_it(path: Path) -> None:
    with opened(path) as quilt:
        with closing(sqlite3.connect(path, isolation_level=None)) as newer:
            migrate(newer, path, EVENING, (*STEPS, SHELF))
        with pytest.raises(StoreFault, match="changed by another sewalong"):
            quilt.do(c.Count("pair"))
    with closing(sqlite3.connect(path)) as connection:
        # Session opened and three pairs counted: what was there before.
        assert connection.execute("SELECT COUNT(*) FROM event").fetchone() == (2,)

"""What is wrong with a record is found by its bytes alone, of this version or an older one."""

from __future__ import annotations

import sqlite3
from contextlib import closing
from pathlib import Path

import pytest

from sewalong.store.faults import StoreFault
from sewalong.store.schema import STEPS
from sewalong.store.soundness import Fault, as_of_one_moment, faults_of, faults_of_file, trouble_of
from tests.progress import every_act as c
from tests.store.shelf import a_quilt, begin, opened

MARKED = len(STEPS)
"""The version that has marks."""


@pytest.fixture
def path(tmp_path: Path) -> Path:
    path = tmp_path / "quilts.db"
    begin(path)
    begin(path, a_quilt("Second"))
    with opened(path) as quilt:
        quilt.do(c.Count("pair", 2))
        quilt.do(c.WriteNote("three more tomorrow"))
    return path


def change(path: Path, *statements: str) -> None:
    with closing(sqlite3.connect(path)) as connection:
        for statement in statements:
            connection.execute(statement)
        connection.commit()


def made_older(path: Path) -> None:
    """The record as it was before there were marks."""
    change(
        path, "DROP TABLE plan_mark", "DROP TABLE event_mark", f"PRAGMA user_version = {MARKED - 1}"
    )


def without_its_guard(path: Path, trigger: str, statement: str) -> None:
    """`statement` carried out as somebody would who takes the trigger off and puts it back."""
    with closing(sqlite3.connect(path)) as connection:
        sql = "SELECT sql FROM sqlite_master WHERE name = ?"
        ((kept,),) = connection.execute(sql, (trigger,)).fetchall()
    change(path, f"DROP TRIGGER {trigger}", statement, kept)


def marks(path: Path) -> list[tuple[int, int, int]]:
    with closing(sqlite3.connect(path)) as connection:
        return connection.execute("SELECT * FROM event_mark ORDER BY quilt, seq").fetchall()


def test_a_sound_record_has_no_fault_and_an_older_one_is_marked_as_it_is(path: Path) -> None:
    assert faults_of_file(str(path)) == ()
    before = marks(path)
    assert len(before) == 3
    made_older(path)
    assert faults_of_file(str(path)) == ()
    with opened(path) as quilt:
        assert (len(quilt.record), quilt.damage) == (3, "")
    assert faults_of_file(str(path)) == ()
    assert marks(path) == before


@pytest.mark.parametrize("older", [False, True])
def test_what_is_missing_is_said_of_its_quilt(path: Path, older: bool) -> None:
    if older:
        made_older(path)
    without_its_guard(path, "event_is_never_deleted", "DELETE FROM event WHERE seq = 2")
    said = "of its 3 events only 2 are there" if older else "event 2 is missing"
    assert faults_of_file(str(path)) == (Fault(said, 1),)


@pytest.mark.parametrize("older", [False, True])
def test_a_quilt_that_is_gone_is_missed_by_what_it_left(path: Path, older: bool) -> None:
    if older:
        made_older(path)
    without_its_guard(path, "plan_is_never_deleted", "DELETE FROM quilt WHERE id = 1")
    assert faults_of_file(str(path)) == (Fault("its plan is missing", 1),)


def test_an_empty_file_and_one_that_is_none_are_no_record(path: Path, tmp_path: Path) -> None:
    empty = tmp_path / "empty.db"
    empty.touch()
    assert faults_of_file(str(empty)) == (Fault("there is no quilt and no table in it"),)
    with pytest.raises(StoreFault, match="cannot be opened"):
        faults_of_file(str(tmp_path))


@pytest.mark.parametrize(
    ("was", "now", "what"),
    [
        (b"'an event is never edited'", b"'an event is \xffever edited'", "it cannot be read"),
        # SQLite quotes what it does not understand, and then its own words are no text.
        (b"TABLE event_mark", b"T\xffBLE event_mark", "the description of its tables is no text"),
    ],
)
def test_a_description_that_is_no_text_is_said_to_be_so(
    path: Path, was: bytes, now: bytes, what: str
) -> None:
    whole = path.read_bytes()
    assert whole.count(was) == 1
    path.write_bytes(whole.replace(was, now))
    (fault,) = faults_of_file(str(path))
    assert (fault.what, fault.quilt) == (what, None)


def test_pages_that_do_not_fit_together_are_a_fault_of_the_whole(path: Path) -> None:
    # The key of a quilt is changed in the table and stays as it was in its index.
    with closing(sqlite3.connect(path)) as connection:
        (key,) = connection.execute("SELECT key FROM quilt WHERE id = 1").fetchone()
    whole = path.read_bytes()
    at = whole.index(key.encode())
    path.write_bytes(whole[:at] + b"#" + whole[at + 1 :])
    (fault,) = faults_of_file(str(path))
    assert (fault.what, fault.quilt) == ("its pages do not fit together", None)
    assert "index" in fault.detail


def test_the_trouble_of_a_record_is_what_is_wrong_with_it_as_a_whole() -> None:
    assert trouble_of([Fault("a chain is broken", 1), Fault("cut short"), Fault("more")]) == (
        "cut short"
    )
    assert trouble_of([Fault("a chain is broken", 1)]) == trouble_of([]) == ""


def test_it_is_looked_at_as_of_one_moment_and_let_go_of(path: Path) -> None:
    with closing(sqlite3.connect(path, isolation_level=None)) as connection:
        with as_of_one_moment(connection):
            assert connection.in_transaction
        assert not connection.in_transaction
        connection.execute("BEGIN IMMEDIATE")
        assert faults_of(connection, str(path)) == ()
        assert connection.in_transaction, "whoever holds it goes on holding it"

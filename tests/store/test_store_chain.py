"""The marks of plans and events: whatever is changed or missing shows, and hides nothing before it."""

from __future__ import annotations

import sqlite3
from contextlib import closing
from pathlib import Path
from zlib import crc32

import pytest

from sewalong.store import chain
from sewalong.store.faults import Damaged, StoreFault
from sewalong.store.soundness import faults_of_file
from tests.progress import every_act as c
from tests.store.shelf import a_quilt, begin, opened, shelf


@pytest.fixture
def path(tmp_path: Path) -> Path:
    path = tmp_path / "quilts.db"
    begin(path)
    begin(path, a_quilt("Second"))
    for name in ("Second", "Hedgerow"):
        with opened(path, name) as quilt:
            quilt.do(c.Count("pair", 2))
            quilt.do(c.WriteNote("three more tomorrow"))
            quilt.do(c.Count("pair", 3))
    return path


def by_hand(path: Path, *statements: str) -> None:
    """Somebody took the triggers off, wrote into the file, and put them back."""
    with closing(sqlite3.connect(path)) as connection:
        triggers = connection.execute(
            "SELECT name, sql FROM sqlite_master WHERE type = 'trigger'"
        ).fetchall()
        for name, _ in triggers:
            connection.execute(f"DROP TRIGGER {name}")
        for statement in statements:
            connection.execute(statement)
        for _, sql in triggers:
            connection.execute(sql)
        connection.commit()


def test_the_checksum_is_the_published_one() -> None:
    """The check value of CRC-32/ISO-HDLC, which ITU-T V.42 describes: 0xCBF43926 for "123456789",
    from memory."""
    assert chain.mark_of_event(b"1234", b"56789", 0) == 0xCBF43926


def test_each_mark_goes_on_from_the_one_before(path: Path) -> None:
    with closing(sqlite3.connect(path)) as connection:
        (mark,) = connection.execute("SELECT mark FROM plan_mark WHERE quilt = 1").fetchone()
        marks = dict(connection.execute("SELECT seq, mark FROM event_mark WHERE quilt = 1"))
        events = connection.execute(
            "SELECT seq, at, session, kind, body FROM event WHERE quilt = 1 ORDER BY seq"
        ).fetchall()
    assert len(events) == len(marks) == 4
    for seq, at, session, kind, body in events:
        mark = crc32(f"{at}{session}{kind}{body}".encode(), mark)
        assert marks[seq] == mark


CHANGES = {
    "a number": ("UPDATE event SET body = replace(body, '\"n\":2', '\"n\":9')", 2),
    "a letter of a note": ("UPDATE event SET body = replace(body, 'three', 'threw')", 3),
    "a time beside the event": ("UPDATE event SET at = replace(at, '19:', '18:') WHERE seq = 4", 4),
    "a session beside the event": ("UPDATE event SET session = 2 WHERE seq = 3", 3),
    "an event turned into nothing": ("UPDATE event SET body = '' WHERE seq = 3", 3),
    "an event that is no text": ("UPDATE event SET body = X'ff' WHERE seq = 3", 3),
    "an event that is missing": ("DELETE FROM event WHERE seq = 2", 2),
    "the last that is missing": ("DELETE FROM event WHERE seq = 4", 4),
    "all but the first missing": ("DELETE FROM event WHERE seq > 1", 2),
    "one event too many": (
        "INSERT INTO event SELECT quilt, 5, at, session, kind, body FROM event WHERE seq = 4", 5,
    ),
    "a mark that is changed": ("UPDATE event_mark SET mark = mark + 1 WHERE seq = 3", 3),
    "a mark that is missing": ("DELETE FROM event_mark WHERE seq > 2", 3),
}  # fmt: skip


@pytest.mark.parametrize(("change", "at"), CHANGES.values(), ids=CHANGES.keys())
def test_a_change_shows_and_what_comes_before_is_shown(path: Path, change: str, at: int) -> None:
    with opened(path) as quilt:
        whole = list(quilt.record)
    by_hand(path, f"{change} {'AND' if 'WHERE' in change else 'WHERE'} quilt = 1")
    before = path.read_bytes()
    with opened(path) as quilt:
        assert f"at event {at}, " in quilt.damage
        assert "newer" not in quilt.damage
        assert "sewalong restore" in quilt.damage
        assert quilt.record == whole[: at - 1]
        with pytest.raises(StoreFault, match="is damaged"):
            quilt.do(c.Count("pair"))
    assert path.read_bytes() == before
    (fault,) = faults_of_file(str(path))
    assert (fault.quilt, fault.what.startswith(f"event {at} is ")) == (1, True), fault
    with opened(path, "Second") as other:
        assert other.damage == ""
        other.do(c.Count("pair"))


PLANS = {
    "a number of the plan": "UPDATE quilt SET plan = replace(plan, '400', '900')",
    "its name": "UPDATE quilt SET name = 'Sedgerow'",
    "its key": "UPDATE quilt SET key = 'k'",
    "its start": "UPDATE quilt SET started = replace(started, '19:', '18:')",
    "a start that is none": "UPDATE quilt SET started = 'once'",
    "no plan": "UPDATE quilt SET plan = '{}'",
}


@pytest.mark.parametrize("change", PLANS.values(), ids=PLANS.keys())
def test_a_plan_that_was_changed_is_not_sewn_by(path: Path, change: str) -> None:
    by_hand(path, f"{change} WHERE id = 1")
    with shelf(path) as library:
        first = min(library.entries(), key=lambda one: one.id)
        with pytest.raises(Damaged, match=r"its plan is not as it was written.*sewalong restore"):
            library.load(first)
    with opened(path, "Second") as other:
        other.do(c.Count("pair"))


def test_a_quilt_that_is_missing_is_missed(path: Path) -> None:
    with shelf(path) as library:
        assert library.missing() == ""
    by_hand(path, "DELETE FROM event WHERE quilt = 1", "DELETE FROM quilt WHERE id = 1")
    with shelf(path) as library:
        assert "number 1 is missing" in library.missing()


def test_an_event_of_a_newer_version_is_not_called_damage(path: Path) -> None:
    """It is as it was written, and no event this version knows."""
    with closing(sqlite3.connect(path)) as connection:
        (mark,) = connection.execute(
            "SELECT mark FROM event_mark WHERE quilt = 1 AND seq = 4"
        ).fetchone()
        at, body = "2023-11-05T19:00:00+01:00", '{"kind":"dyed"}'
        connection.execute("INSERT INTO event VALUES (1, 5, ?, 1, 'dyed', ?)", (at, body))
        columns = chain.columns_of(at, 1, "dyed")
        mark = chain.mark_of_event(columns, body.encode(), mark)
        connection.execute(chain.EVENT_MARK, (1, 5, mark))
        connection.commit()
    with opened(path) as quilt:
        assert "as it was written, and this sewalong does not know it" in quilt.damage
        assert "damaged" not in quilt.damage
        assert len(quilt.record) == 4
        with pytest.raises(StoreFault):
            quilt.do(c.Count("pair"))


def test_what_is_derived_is_worked_out_anew_where_it_is_not_as_it_was_kept(path: Path) -> None:
    for table in ("summary", "kept_method"):
        by_hand(path, f"UPDATE {table} SET body = replace(body, '1', '7')")
    with shelf(path) as library:
        assert [entry.summary for entry in library.entries()] == ["", ""]
    with opened(path) as quilt:
        assert quilt.state.quilt.method == a_quilt().method


@pytest.mark.parametrize("text", ["", "x", "½ “name”", "x" * 5000])
def test_what_is_sealed_comes_out_as_it_went_in(text: str) -> None:
    kept = chain.sealed(text).encode()
    assert chain.unsealed(kept) == text
    for n in range(0, len(kept), 97):
        assert chain.unsealed(kept[:n] + b"#" + kept[n + 1 :]) is None


# The file as a whole


SCHEMA = {
    "a letter of a table": ("CREATE TABLE event", "CREATE TABLE evemt"),
    "a letter of a trigger": ("BEFORE DELETE ON event", "BEFORE DELETE ON evemt"),
    "what is no text": ("an event is never", "an ev\udcffnt is never"),
    "what no longer means anything": ("CREATE TRIGGER plan", "CREATE TRIGGEX plan"),
}


@pytest.mark.parametrize(("was", "now"), SCHEMA.values(), ids=SCHEMA.keys())
def test_a_changed_description_of_the_tables_is_damage(path: Path, was: str, now: str) -> None:
    data = path.read_bytes()
    assert was.encode() in data
    data = data.replace(was.encode(), now.encode(errors="surrogateescape"))
    path.write_bytes(data)
    with pytest.raises(StoreFault, match=r"is damaged.*sewalong restore\."), shelf(path):
        pass
    assert path.read_bytes() == data


HEADER = {
    "an older version": (60, (2).to_bytes(4, "big"), "number of its version"),
    "no version": (60, bytes(4), "number of its version"),
    "a version beyond all": (60, (2**24).to_bytes(4, "big"), "number of its version"),
    "another program": (68, b"SEWB", "which program wrote it"),
    "no program": (68, bytes(4), "which program wrote it"),
}
"""Offset in the file, as sqlite.org/fileformat2.html has it: 60 the user version, 68 the
application ID."""


@pytest.mark.parametrize(("offset", "put", "said"), HEADER.values(), ids=HEADER.keys())
def test_a_flipped_byte_in_the_header_is_damage_and_no_newer_version(
    path: Path, offset: int, put: bytes, said: str
) -> None:
    data = bytearray(path.read_bytes())
    data[offset : offset + len(put)] = put
    path.write_bytes(data)
    with pytest.raises(Damaged, match=said) as fault, shelf(path):
        pass
    assert "newer" not in str(fault.value)
    assert path.read_bytes() == data


def test_a_file_with_something_behind_it_is_damaged(path: Path) -> None:
    path.write_bytes(path.read_bytes() + bytes(4096))
    with pytest.raises(Damaged, match="it should have"), shelf(path):
        pass

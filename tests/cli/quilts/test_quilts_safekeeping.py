"""`backup`, `examine`, `restore`, and exports of everything: the record as a whole, in plain words."""

from __future__ import annotations

import json
import os
import shlex
import shutil
import sqlite3
from collections.abc import Callable
from contextlib import closing
from pathlib import Path

import pytest

from tests.cli.conftest import Desk

posix = pytest.mark.skipif(os.name != "posix", reason="needs links and rights as POSIX has them")


def record(desk: Desk) -> Path:
    return desk.folder / "home" / "quilts.db"


def sew(desk: Desk, days: int = 2) -> None:
    """Some evenings of sewing, so that there are backups."""
    for n in range(days):
        desk.wait(days=1)
        desk.ok("count", "pair", str(n + 1))
        desk.ok("note", f"evening {n + 1}")


def spoil_the_last(desk: Desk) -> bytes:
    """Another note in the place of the last one, as a program that means well would put it."""
    with closing(sqlite3.connect(record(desk))) as connection:
        triggers = connection.execute(
            "SELECT name, sql FROM sqlite_master WHERE type = 'trigger'"
        ).fetchall()
        for name, _ in triggers:
            connection.execute(f"DROP TRIGGER {name}")
        connection.execute(
            "UPDATE event SET body = replace(body, 'evening 2', 'evening 7') "
            "WHERE seq = (SELECT MAX(seq) FROM event)"
        )
        for _, sql in triggers:
            connection.execute(sql)
        connection.commit()
    return record(desk).read_bytes()


# backup


def test_a_backup_is_made_read_back_and_told(begun: Desk) -> None:
    sew(begun)
    said = begun.ok("backup")
    file = begun.folder / "home" / "backups" / "quilts-20261104T201500.db"
    assert said.lines == [
        "Backed up: 1 quilt with 7 events",
        f"In: {file}",
        "Read back: sound, 1 quilt with 7 events",
        "Put a backup back with: sewalong restore",
    ]
    assert begun.ok("backup").lines[1].endswith("-2.db"), "none is written over"


def test_a_backup_elsewhere_is_put_back_by_its_name(begun: Desk) -> None:
    sew(begun)
    said = begun.ok("backup", str(begun.folder / "a disk"))
    line = said.lines[-1].removeprefix("Put it back with: ")
    before = begun.ok("log").out
    shutil.rmtree(begun.folder / "home")
    begun.ok(*shlex.split(line)[1:])
    assert begun.ok("log").out == before


def test_where_nothing_is_begun_nothing_is_backed_up(desk: Desk) -> None:
    assert "There is no quilt yet" in desk.refused("backup").err
    assert not (desk.folder / "home").exists()


def test_a_damaged_record_makes_no_backup(begun: Desk) -> None:
    data = record(begun).read_bytes()
    record(begun).write_bytes(data[: len(data) // 2])
    assert "is damaged" in begun.refused("backup").err
    assert list((begun.folder / "home").rglob("*.db")) == [record(begun)]


# examine


def test_a_sound_record_is_told_one_fact_a_line(begun: Desk) -> None:
    sew(begun)
    said = begun.ok("examine")
    size = record(begun).stat().st_size
    assert said.lines == [
        "The record is sound.",
        f"Record: {record(begun)}",
        f"Size: {size:,} bytes",
        "SQLite finds the file whole.",
        "Quilts: 1",
        "Events: 7",
        "Gate Post: 7 events",
        "Gate Post: numbered without a gap",
        "Gate Post: each event as it was written",
        "Gate Post: all readable",
        "Gate Post: the counts add up",
        "Backup of 2026-11-04, before the first write of the day: sound, 1 quilt with 3 events",
        "Backup of 2026-11-03, before the first write of the day: sound, 1 quilt with 0 events",
    ]
    data = begun.ok("examine", "--json").data
    assert data["record"]["sound"] is True
    assert [one["sound"] for one in data["backups"]] == [True, True]


def test_examining_changes_nothing(begun: Desk) -> None:
    sew(begun)
    before = {file: file.read_bytes() for file in begun.folder.rglob("*.*")}
    begun.ok("examine")
    begun.ok("restore")
    assert {file: file.read_bytes() for file in begun.folder.rglob("*.*")} == before


def test_what_cannot_have_happened_is_found_though_every_mark_is_right(begun: Desk) -> None:
    """More pairs are sewn than there are squares for: no disk did that."""
    from sewalong.store import chain

    begun.ok("note", "so far nothing")
    with closing(sqlite3.connect(record(begun))) as connection:
        sql = "SELECT seq, mark FROM event_mark ORDER BY seq DESC LIMIT 1"
        last, before = connection.execute(sql).fetchone()
        at, n = "2026-11-02T20:15:00Z", last + 1
        body = f'{{"at":"{at}","session":0,"stage":"pair","n":500,"kind":"counted"}}'
        connection.execute("INSERT INTO event VALUES (1, ?, ?, 0, 'counted', ?)", (n, at, body))
        mark = chain.mark_of_event(chain.columns_of(at, 0, "counted"), body.encode(), before)
        connection.execute(chain.EVENT_MARK, (1, n, mark))
        connection.commit()
    said = begun.run("examine")
    assert (said.status, said.lines[0]) == (2, "The record is damaged.")
    assert f"Gate Post: {n} events\nGate Post: damaged: event {n} " in said.out


def test_nothing_begun_is_nothing_to_examine(desk: Desk) -> None:
    assert desk.ok("examine").lines[0].startswith("There is no quilt yet")
    assert not (desk.folder / "home").exists()


# What a damaged record still tells


def test_all_before_the_damage_is_shown_by_status_log_and_export(begun: Desk) -> None:
    sew(begun)
    whole = begun.ok("log").lines
    spoil_the_last(begun)
    for argv in (["log"], ["status"], ["export", "-"], ["log", "--json"]):
        said = begun.run(*argv)
        assert said.status == 2
        assert "“Gate Post” is damaged: at event 7, it is not as it was written" in said.err
        assert "newer" not in said.err
    assert begun.run("log").lines == whole[:-1]
    assert json.loads(begun.run("export", "-").out)["events"][-1]["seq"] == 6
    assert "event 7" in begun.refused("count", "pair", "1").err


def test_a_damaged_quilt_hides_no_other_from_list_and_export(begun: Desk) -> None:
    sew(begun)
    begun.ok(
        "start",
        begun.file(
            "b.toml",
            Path(begun.file("gate-post.toml")).read_text().replace("Gate Post", "Mill Lane"),
        ),
    )
    spoil_the_last(begun)
    said = begun.run("export", "--all", str(begun.folder / "out"))
    assert said.status == 2
    assert "event 7" in said.err
    assert len(json.loads((begun.folder / "out" / "Gate-Post.json").read_text())["events"]) == 6
    assert len(json.loads((begun.folder / "out" / "Mill-Lane.json").read_text())["events"]) == 0
    begun.ok("count", "pair", "1", "--quilt", "Mill Lane")


def test_a_quilt_that_is_missing_is_said_and_no_count_falls_on_another(begun: Desk) -> None:
    begun.ok(
        "start",
        begun.file(
            "b.toml",
            Path(begun.file("gate-post.toml")).read_text().replace("Gate Post", "Mill Lane"),
        ),
    )
    with closing(sqlite3.connect(record(begun))) as connection:
        connection.execute("DROP TRIGGER plan_is_never_deleted")
        connection.execute("DELETE FROM quilt WHERE id = 2")
        connection.execute(
            "CREATE TRIGGER plan_is_never_deleted BEFORE DELETE ON quilt "
            "BEGIN SELECT RAISE (ABORT, 'a plan is never deleted'); END"
        )
        connection.commit()
    for argv in (["count", "pair", "1"], ["status"]):
        assert "the quilt with the number 2 is missing" in begun.refused(*argv).err
    listed = begun.run("list")
    assert listed.status == 2
    assert listed.lines[0].startswith("1. Gate Post")
    begun.ok("count", "pair", "1", "--quilt", "Gate Post")


# restore


def test_a_backup_is_put_back_and_what_it_lacks_is_saved_and_offered(begun: Desk) -> None:
    sew(begun)
    damaged = spoil_the_last(begun)
    listed = begun.ok("restore")
    assert listed.lines == [
        "The record now: not sound: event 7 is not as it was written",
        "1. 2026-11-04, before the first write of the day: sound, 1 quilt with 3 events",
        "2. 2026-11-03, before the first write of the day: sound, 1 quilt with 0 events",
        "Put one back with its number, such as: sewalong restore 1",
        "Or begin with an empty record: sewalong restore --empty",
    ]
    assert record(begun).read_bytes() == damaged
    said = begun.ok("restore", "1")
    assert said.lines[0] == "Put back: 1 quilt with 3 events"
    aside = said.lines[2].removeprefix("Kept aside: what lay there before, as ")
    assert Path(aside).read_bytes() == damaged
    assert said.lines[3].startswith("Saved: “Gate Post” with 3 events more, in ")
    assert begun.ok("log", "--json").data["events"][-1]["seq"] == 3
    # What is offered is taken.
    begun.ok(*shlex.split(said.lines[4].partition("sewalong ")[2]))
    rescued = begun.ok("log", "--json", "--quilt", "Gate Post, rescued").data["events"]
    assert [event["seq"] for event in rescued] == [1, 2, 3, 4, 5, 6]
    # The seventh cannot be vouched for: it can be read.
    assert said.lines[5].startswith("Saved: 1 event more that can be read, in ")
    assert "evening 7" in Path(said.lines[5].rpartition(" in ")[2]).read_text()


def test_what_no_database_can_be_made_of_is_searched_for_events(begun: Desk) -> None:
    """The first page is gone, and with it all that says where anything lies."""
    sew(begun)
    data = record(begun).read_bytes()
    record(begun).write_bytes(bytes(4096) + data[4096:])
    said = begun.ok("restore", "2")
    assert "Saved: 7 events more that can be read, in " in said.out
    (file,) = (begun.folder / "home" / "rescued").iterdir()
    bodies = [json.loads(line) for line in file.read_text().splitlines()]
    assert [body["text"] for body in bodies if body["kind"] == "noted"] == [
        "evening 1",
        "evening 2",
    ]


def test_a_sound_record_is_kept_as_a_backup_and_can_be_put_back_again(begun: Desk) -> None:
    sew(begun)
    now = begun.ok("log").out
    said = begun.ok("restore", "1")
    assert said.lines[2].startswith("Kept: the record as it was before, as ")
    assert begun.ok("log").out != now
    begun.wait(minutes=1)
    number = next(line for line in begun.ok("restore").lines if "before a restore" in line)
    begun.ok("restore", number.split(".")[0])
    assert begun.ok("log").out == now


def test_a_journal_left_behind_is_not_played_back_into_the_backup(begun: Desk) -> None:
    """A hot journal belongs to the file that goes, and is kept with it."""
    sew(begun)
    journal = begun.folder / "home" / "quilts.db-journal"
    with closing(sqlite3.connect(record(begun), isolation_level=None)) as connection:
        connection.execute("PRAGMA cache_size = 1")
        connection.execute("BEGIN IMMEDIATE")
        connection.execute("CREATE TABLE more (x)")
        for n in range(200):
            connection.execute("INSERT INTO more VALUES (?)", ("x" * 2000 + str(n),))
        hot, torn = journal.read_bytes(), record(begun).read_bytes()
    assert hot[:8] == bytes.fromhex("d9d505f920a163d7"), "the magic of sqlite.org/fileformat2.html"
    journal.write_bytes(hot)
    record(begun).write_bytes(torn[:4096] + bytes(4096) + torn[8192:] + b"x")
    begun.ok("restore", "1")
    assert begun.ok("log", "--json").data["events"][-1]["seq"] == 3
    assert begun.ok("examine").lines[0] == "The record is sound."


@pytest.mark.parametrize("which", ["3", "0", "99999999", "none.db", ""])
def test_what_is_not_in_the_list_is_refused(begun: Desk, which: str) -> None:
    sew(begun)
    assert "sewalong restore lists" in begun.refused("restore", which).err


def test_a_file_that_is_no_backup_is_not_put_back(begun: Desk) -> None:
    said = begun.refused("restore", begun.file("letter.db", "Dear Ada, " * 999))
    assert "is not sound" in said.err


def test_two_answers_to_one_question_are_refused(begun: Desk) -> None:
    assert "not both" in begun.refused("restore", "1", "--empty").err


def test_a_lost_record_with_no_backup_can_be_begun_anew(begun: Desk) -> None:
    record(begun).unlink()
    listed = begun.run("restore")
    assert "Or begin with an empty record: sewalong restore --empty" in listed.lines
    begun.ok("restore", "--empty")
    begun.ok("start", begun.file("gate-post.toml"))


@posix
def test_a_record_that_is_a_link_to_another_disk_stays_one(begun: Desk) -> None:
    sew(begun)
    disk = begun.folder / "disk"
    disk.mkdir()
    shutil.move(record(begun), disk / "quilts.db")
    record(begun).symlink_to(disk / "quilts.db")
    (disk / "quilts.db").write_bytes(b"")
    begun.ok("restore", "1")
    assert record(begun).is_symlink()
    assert begun.ok("log", "--json").data["events"][-1]["seq"] == 3


# Nothing of anybody else's is written where the record lies


def by_its_name(desk: Desk) -> str:
    return str(record(desk))


def by_a_link_to_it(desk: Desk) -> str:
    (desk.folder / "link.json").symlink_to(record(desk))
    return str(desk.folder / "link.json")


def by_a_link_to_its_folder(desk: Desk) -> str:
    (desk.folder / "link").symlink_to(desk.folder / "home")
    return str(desk.folder / "link" / "quilts.db")


def the_long_way_round(desk: Desk) -> str:
    return str(desk.folder / "home" / ".." / "home" / "." / "quilts.db")


def its_journal(desk: Desk) -> str:
    return str(record(desk)) + "-journal"


def its_marker(desk: Desk) -> str:
    return str(record(desk)) + "-begun"


def a_backup(desk: Desk) -> str:
    return desk.ok("backup").lines[1].removeprefix("In: ")


def a_new_file_beside_it(desk: Desk) -> str:
    return str(desk.folder / "home" / "new.json")


def another_name_of_the_same_file(desk: Desk) -> str:
    os.link(record(desk), desk.folder / "hard.json")
    return str(desk.folder / "hard.json")


WAYS = (
    by_its_name, by_a_link_to_it, by_a_link_to_its_folder, the_long_way_round, its_journal,
    its_marker, a_backup, a_new_file_beside_it, another_name_of_the_same_file,
)  # fmt: skip


@posix
@pytest.mark.parametrize("way", WAYS, ids=lambda way: way.__name__)
def test_no_export_is_written_there(begun: Desk, way: Callable[[Desk], str]) -> None:
    sew(begun)
    file = way(begun)
    before = {one: one.read_bytes() for one in (begun.folder / "home").rglob("*.*")}
    for more in ([], ["--replace"]):
        said = begun.refused("export", file, *more)
        assert "the folder of your record" in said.err
    assert {one: one.read_bytes() for one in (begun.folder / "home").rglob("*.*")} == before


@posix
def test_no_backup_and_no_export_of_all_is_put_there_either(begun: Desk) -> None:
    (begun.folder / "link").symlink_to(begun.folder / "home")
    for folder in ("home", "home/deeper", "link/deeper"):
        begun.refused("backup", str(begun.folder / folder))
        begun.refused("export", "--all", str(begun.folder / folder))
    assert not (begun.folder / "home" / "deeper").exists()


# export --all


def test_every_quilt_goes_into_a_file_of_its_own_and_comes_in_again(begun: Desk) -> None:
    names = ("Gate Post", "Mill/Lane", "mill lane", "…")
    for name in names[1:]:
        text = Path(begun.file("gate-post.toml")).read_text().replace("Gate Post", name)
        begun.ok("start", begun.file("more.toml", text))
    out = begun.folder / "out"
    said = begun.ok("export", "--all", str(out))
    files = {json.loads(file.read_text())["quilt"]["name"]: file.name for file in out.iterdir()}
    assert files == {
        "Gate Post": "Gate-Post.json",
        "Mill/Lane": "Mill-Lane-2.json",
        "mill lane": "mill-lane.json",
        "…": "quilt.json",
    }
    assert len(said.lines) == 4
    shutil.rmtree(begun.folder / "home")
    for file in out.iterdir():
        begun.ok("import", str(file))
    assert sorted(one["name"] for one in begun.ok("list", "--json").data["quilts"]) == sorted(names)


def test_files_that_are_there_are_not_written_over_unasked(begun: Desk) -> None:
    out = begun.folder / "out"
    out.mkdir()
    (out / "Gate-Post.json").write_text("something of the owner's")
    assert "there already" in begun.refused("export", "--all", str(out)).err
    assert (out / "Gate-Post.json").read_text() == "something of the owner's"
    begun.ok("export", "--all", str(out), "--replace")


def test_one_quilt_or_all(begun: Desk) -> None:
    assert "not both" in begun.refused("export", "--all", "--quilt", "1", "out").err


# For their owner alone


@posix
def test_exports_and_backups_are_their_owners_alone(begun: Desk) -> None:
    old = os.umask(0)
    try:
        begun.ok("export", str(begun.folder / "one.json"))
        begun.ok("export", "--all", str(begun.folder / "out"))
        file = begun.ok("backup", str(begun.folder / "disk")).lines[1].removeprefix("In: ")
    finally:
        os.umask(old)
    for one in (begun.folder / "one.json", begun.folder / "out" / "Gate-Post.json", Path(file)):
        assert one.stat().st_mode & 0o777 == 0o600
    for folder in (begun.folder / "out", begun.folder / "disk"):
        assert folder.stat().st_mode & 0o777 == 0o700


@posix
@pytest.mark.parametrize(("mode", "then"), [(0o644, 0o600), (0o400, 0o400), (0o640, 0o600)])
def test_a_file_that_is_replaced_keeps_the_stricter_mode(begun: Desk, mode: int, then: int) -> None:
    file = Path(begun.file("one.json", "old"))
    file.chmod(mode)
    begun.ok("export", str(file), "--replace")
    assert file.stat().st_mode & 0o777 == then

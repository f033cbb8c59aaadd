"""Whatever is done to the file: it opens right, or is refused with a way out that leads out.

Each command is a process of its own, as at a terminal. `long`: all 1,000 mutations, a second
each or less (18 minutes on two busy processors); else the first 60.
"""

from __future__ import annotations

import sqlite3
from collections.abc import Callable
from contextlib import closing
from pathlib import Path

import pytest

from tests.faults.home import QUILTS, Home, spoil

SHORT, LONG = 12, 1000


def assert_restored(home: Home, damaged: bytes | None) -> None:
    """`restore` brings back all the last backup had, and keeps what lay there."""
    listed = home.run("restore")
    assert listed.status == 0
    # A count in a quilt that is whole has its backup of the day, and with the damage in it.
    last = next(line for line in listed.out.splitlines()[1:] if ": sound, " in line)
    restored = home.run("restore", last.split(".")[0])
    assert restored.status == 0, restored.err
    for name in QUILTS:
        said, events = home.events(name)
        assert (said.status, events) == (0, home.kept[name]), said.err
    assert home.run("examine").out.startswith("The record is sound")
    assert home.run("count", "pair", "1").status == 0
    if damaged is not None:
        kept = [file.read_bytes() for file in (home.folder / "set-aside").glob("*.db")]
        backups = list((home.folder / "backups").glob("*before-restore*"))
        assert damaged in kept or backups


def assert_nothing_lost_unsaid(home: Home) -> bool:
    """Whether all is there; if not, it is said, and what is shown is what was there before."""
    whole = True
    for name in QUILTS:
        said, events = home.events(name)
        assert said.is_plain(), said.out + said.err
        if said.status == 0:
            assert events == home.truth[name]
        else:
            whole = False
            assert home.truth[name][: len(events or ())] == (events or [])
    return whole


def look_spoil_and_count(sound: Home, folder: Path, seed: int) -> None:
    home = sound.copy(folder)
    spoilt = spoil(home.record.read_bytes(), seed)
    home.record.write_bytes(spoilt)
    whole = assert_nothing_lost_unsaid(home)
    counted = home.run("count", "pair", "1", "--quilt", "Hedgerow", "--caution-read")
    assert counted.is_plain(), counted.err
    said, events = home.events("Hedgerow")
    before = home.truth["Hedgerow"]
    if counted.status == 0:
        # Not on top of what was lost: all that was there is there, and the count behind it.
        assert said.status == 0, said.err
        assert [event["seq"] for event in events[: len(before)]] == [e["seq"] for e in before]
        assert [event["words"] for event in events[: len(before)]] == [e["words"] for e in before]
    if not whole:
        assert home.run("examine").status == 2
        assert home.record.exists()
        assert_restored(home, home.record.read_bytes())


@pytest.mark.parametrize("seed", range(SHORT))
def test_a_random_mutation(sound: Home, tmp_path: Path, seed: int) -> None:
    look_spoil_and_count(sound, tmp_path / "home", seed)


@pytest.mark.long
@pytest.mark.parametrize("seed", range(SHORT, LONG))
def test_one_of_a_thousand_random_mutations(sound: Home, tmp_path: Path, seed: int) -> None:
    look_spoil_and_count(sound, tmp_path / "home", seed)


@pytest.mark.parametrize(
    "step", [pytest.param(5, id="fifth"), pytest.param(1, id="one", marks=pytest.mark.long)]
)
def test_cut_off_at_every_page(sound: Home, tmp_path: Path, step: int) -> None:
    data = sound.record.read_bytes()
    for pages in range(0, len(data) // 4096, step):
        home = sound.copy(tmp_path / f"{pages}")
        left = data[: pages * 4096]
        home.record.write_bytes(left)
        for argv in (["list"], ["count", "pair", "1"]):
            said = home.run(*argv)
            assert said.status == 2
            assert said.is_plain(), said.err
        assert home.record.read_bytes() == left
        assert home.run("examine").status == 2
        assert_restored(home, left)


def emptied(home: Home) -> None:
    home.record.write_bytes(b"")


def one_byte(home: Home) -> None:
    home.record.write_bytes(b"S")


def removed(home: Home) -> None:
    home.record.unlink()


def a_letter(home: Home) -> None:
    home.record.write_text("Dear Ada, the binding is done.\n" * 400)


def another_programs(home: Home) -> None:
    home.record.unlink()
    with closing(sqlite3.connect(home.record)) as connection:
        connection.execute("CREATE TABLE recipe (title TEXT)")


def a_folder(home: Home) -> None:
    home.record.unlink()
    home.record.mkdir()
    (home.record / "inside").write_text("kept")


def a_dangling_link(home: Home) -> None:
    home.record.unlink()
    home.record.symlink_to(home.folder / "nowhere")


WAYS = (emptied, one_byte, removed, a_letter, another_programs, a_folder, a_dangling_link)


@pytest.mark.parametrize("way", WAYS, ids=lambda way: way.__name__)
def test_replaced_removed_or_emptied(
    sound: Home, tmp_path: Path, way: Callable[[Home], None]
) -> None:
    home = sound.copy(tmp_path / "home")
    way(home)
    file = home.record.read_bytes() if home.record.is_file() else None
    for argv in ([], ["list"], ["status"], ["count", "pair", "1"], ["export", "--all", "out"]):
        said = home.run(*argv)
        assert said.status == 2, argv
        assert said.is_plain(), said.err
    assert home.run("examine").status == 2
    assert (home.record.read_bytes() if home.record.is_file() else None) == file
    assert_restored(home, file)


def test_a_backup_that_is_damaged_is_not_put_back(sound: Home, tmp_path: Path) -> None:
    home = sound.copy(tmp_path / "home")
    backup = next((home.folder / "backups").glob("quilts-2023-11-05.db"))
    data = bytearray(backup.read_bytes())
    data[8192:9000] = bytes(808)
    backup.write_bytes(data)
    before = home.record.read_bytes()
    examined = home.run("examine")
    assert examined.status == 2
    assert examined.out.startswith("The record is sound, but 1 backup is not.")
    said = home.run("restore", "1")
    assert said.status == 2
    assert "is not sound" in said.err
    assert home.record.read_bytes() == before
    assert home.run("restore", "2").status == 0


def test_begun_empty_on_request_what_lay_there_is_kept(sound: Home, tmp_path: Path) -> None:
    home = sound.copy(tmp_path / "home")
    data = home.record.read_bytes()[:8192]
    home.record.write_bytes(data)
    assert home.run("restore", "--empty").status == 0
    assert home.run("list").out.startswith("There is no quilt yet.")
    assert [file.read_bytes() for file in (home.folder / "set-aside").glob("*.db")] == [data]
    assert_restored(home, None)

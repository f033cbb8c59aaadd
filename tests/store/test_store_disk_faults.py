"""Whatever is wrong with the disk is said in plain words; nothing is lost and nothing half done."""

from __future__ import annotations

import os
import shutil
import sqlite3
import subprocess
import sys
import tempfile
import time
from collections.abc import Iterator
from contextlib import closing
from pathlib import Path

import pytest

from sewalong.progress.record.fold import fold
from sewalong.service.open_quilt import OpenQuilt
from sewalong.store.faults import Stale, StoreFault, fault_from
from tests.progress import every_act as c
from tests.store.shelf import a_quilt, begin, opened, ran, shelf, worker

posix = pytest.mark.skipif(os.name != "posix", reason="needs rights as POSIX has them")


@pytest.fixture
def path(tmp_path: Path) -> Path:
    path = tmp_path / "quilts.db"
    begin(path)
    with opened(path) as quilt:
        quilt.do(c.Count("pair", 3))
    return path


def assert_whole(quilt: OpenQuilt, path: Path) -> None:
    """What the window shows is what is on disk, and SQLite finds nothing wrong with it."""
    with opened(path) as fresh:
        assert fresh.record == quilt.record
        assert fresh.state == quilt.state == fold(fresh.state.quilt, fresh.record)
    with closing(sqlite3.connect(path)) as connection:
        assert connection.execute("PRAGMA integrity_check").fetchall() == [("ok",)]


def write_nine_notes(quilt: OpenQuilt) -> None:
    for _ in range(9):
        quilt.do(c.WriteNote("x" * 2000))


def is_plain(sentence: str) -> bool:
    """No traceback's language: words, and what to do next."""
    jargon = ("SQLITE", "Error", "errno", "database disk image", "sqlite")
    return sentence.endswith(".") and not any(word in sentence for word in jargon)


# A full disk


def test_a_full_disk(path: Path) -> None:
    """SQLite's own limit gives the very error a full disk gives, SQLITE_FULL."""
    with opened(path) as quilt:
        connection = quilt._library._db._connection
        ((pages,),) = connection.execute("PRAGMA page_count").fetchall()
        connection.execute(f"PRAGMA max_page_count = {pages}")
        with pytest.raises(StoreFault, match="disk is full, so nothing was recorded") as fault:
            write_nine_notes(quilt)
        assert is_plain(str(fault.value))
        assert_whole(quilt, path)
        connection.execute("PRAGMA max_page_count = 100000")
        quilt.do(c.WriteNote("there is room again"))
        assert_whole(quilt, path)


FILLING = """
import resource, sys
from pathlib import Path
from sewalong.progress.acts.counting import Count
from sewalong.progress.acts.notes import WriteNote
from sewalong.store.faults import StoreFault
from sewalong.store.library import Library
from sewalong.service.open_quilt import OpenQuilt, local_now

path = Path(sys.argv[1])
library = Library(path, local_now())
quilt = OpenQuilt(library, library.find("Hedgerow"))
if len(sys.argv) > 2:
    limit = path.stat().st_size + int(sys.argv[2])
    resource.setrlimit(resource.RLIMIT_FSIZE, (limit, limit))
for written in range(10_000):
    try:
        quilt.do(WriteNote("x" * 2000))
    except StoreFault as fault:
        print(written, fault)
        break
quilt.refresh(force=True)
print(len(quilt.state.notes), len(library.load(quilt.entry).record) == len(quilt.record))
library.close()
"""


@posix
@pytest.mark.parametrize("room", [0, 30_000])
def test_a_file_that_may_not_grow(path: Path, room: int) -> None:
    with worker(FILLING, path, room) as window:
        said, counted = ran(window).splitlines()
    written, sentence = said.split(" ", 1)
    assert is_plain(sentence)
    assert "nothing was recorded" in sentence
    assert counted == f"{written} True"
    with opened(path) as quilt:
        assert len(quilt.state.notes) == int(written)
        quilt.do(c.WriteNote("there is room again"))
        assert_whole(quilt, path)


@pytest.fixture
def small_disk(tmp_path: Path) -> Iterator[Path]:
    """A file system of 128 KB in memory, where the system lets us have one."""
    disk = tmp_path / "disk"
    disk.mkdir()
    mount, umount = shutil.which("mount"), shutil.which("umount")
    if not (sys.platform == "linux" and mount and umount):
        pytest.skip("no small disk can be made here")
    options = ["-t", "tmpfs", "-o", "size=128k", "tmpfs", str(disk)]
    if subprocess.run([mount, *options], capture_output=True, check=False).returncode:
        pytest.skip("no small disk may be made here")
    yield disk
    subprocess.run([umount, str(disk)], check=True, capture_output=True)


def test_a_disk_that_is_really_full(small_disk: Path) -> None:
    path = small_disk / "quilts.db"
    begin(path)
    with worker(FILLING, path) as window:
        said, counted = ran(window).splitlines()
    written, sentence = said.split(" ", 1)
    assert sentence == (
        "The disk is full, so nothing was recorded. Make some room, then try again."
    )
    assert int(written) > 5
    assert counted == f"{written} True"
    with opened(path) as quilt:
        assert_whole(quilt, path)


# A disk that may not be written to

READ_ONLY = """
import os, sys
from pathlib import Path
from sewalong.progress.acts.counting import Count
from sewalong.store.faults import StoreFault
from sewalong.store.library import Library
from sewalong.service.open_quilt import OpenQuilt, local_now

# Whatever is imported late is imported now: Python itself may lie where nobody may look.
import sewalong.store.backups
path = Path(sys.argv[1])
if path.exists():
    library = Library(path, local_now())
    OpenQuilt(library, library.find("Hedgerow"))
    library.close()
if os.geteuid() == 0:
    os.setgroups([])
    os.setgid(65534)
    os.setuid(65534)
try:
    library = Library(path, local_now())
    quilt = OpenQuilt(library, library.find("Hedgerow"))
    print("shows", quilt.state.done["pair"])
    quilt.do(Count("pair"))
except StoreFault as fault:
    print(fault)
"""


@pytest.fixture
def open_folder() -> Iterator[Path]:
    """A folder that even nobody may look into; pytest's own are closed to others."""
    with tempfile.TemporaryDirectory() as name:
        os.chmod(name, 0o755)
        yield Path(name)
        for folder, _, _ in os.walk(name):
            os.chmod(folder, 0o755)


def give_away(path: Path, mode: int) -> None:
    """To nobody, so that it is its owner who looks: a record is closed to all others."""
    os.chmod(path, mode)
    if os.geteuid() == 0:
        os.chown(path, 65534, 65534)


def without_rights(path: Path) -> list[str]:
    with worker(READ_ONLY, path) as window:
        return ran(window).splitlines()


@posix
def test_a_record_that_may_only_be_read_is_shown_and_not_written(open_folder: Path) -> None:
    path = open_folder / "quilts.db"
    begin(path)
    with opened(path) as quilt:
        quilt.do(c.Count("pair", 3))
    give_away(path, 0o444)
    os.chmod(open_folder, 0o555)
    before = path.read_bytes()
    shown, sentence = without_rights(path)
    assert shown == "shows 3"
    assert "cannot be written to" in sentence
    assert is_plain(sentence)
    assert path.read_bytes() == before


@posix
def test_a_folder_that_may_only_be_read(open_folder: Path) -> None:
    """The file may be written, but no journal beside it: that must not half work either."""
    path = open_folder / "quilts.db"
    begin(path)
    with opened(path) as quilt:
        quilt.do(c.Count("pair", 3))
    give_away(path, 0o666)
    (open_folder / "quilts.db-journal").unlink(missing_ok=True)
    os.chmod(open_folder, 0o555)
    before = path.read_bytes()
    shown, sentence = without_rights(path)
    assert shown == "shows 3"
    assert is_plain(sentence)
    assert path.read_bytes() == before


@posix
def test_a_folder_in_which_nothing_may_be_made(open_folder: Path) -> None:
    closed = open_folder / "closed"
    closed.mkdir(mode=0o555)
    (sentence,) = without_rights(closed / "quilts.db")
    assert "cannot be opened" in sentence
    (sentence,) = without_rights(closed / "deeper" / "quilts.db")
    assert "cannot be made (Permission denied). Set SEWALONG_HOME" in sentence
    assert list(closed.iterdir()) == []


# A file that is no record


def damaged(path: Path) -> bytes:
    """The record with its pages after the first overwritten."""
    data = path.read_bytes()
    return data[:4096] + b"\xa5" * (len(data) - 4096)


NOT_RECORDS = {
    "a letter": (b"Dear Ada, the binding is done.\n" * 40, "not a sewalong record"),
    "zeros": (bytes(8192), "not a sewalong record"),
    "a header and no more": (b"SQLite format 3\0" + b"\xff" * 4080, "not a sewalong record"),
}


@pytest.mark.parametrize(("data", "said"), NOT_RECORDS.values(), ids=NOT_RECORDS.keys())
def test_a_file_that_is_no_record_stays_as_it_was(tmp_path: Path, data: bytes, said: str) -> None:
    path = tmp_path / "quilts.db"
    path.write_bytes(data)
    with pytest.raises(StoreFault, match=said) as fault, shelf(path):
        pass
    assert is_plain(str(fault.value))
    assert path.read_bytes() == data
    assert [entry.name for entry in tmp_path.iterdir()] == ["quilts.db"]


def test_a_damaged_record_is_said_to_be_damaged_and_stays_as_it_was(path: Path) -> None:
    data = damaged(path)
    path.write_bytes(data)
    with pytest.raises(StoreFault, match=r"is damaged .*\. It was left untouched") as fault:
        begin(path, a_quilt("Second"))
    assert is_plain(str(fault.value))
    assert path.read_bytes() == data


def test_a_record_cut_short_is_said_to_be_damaged(path: Path) -> None:
    data = path.read_bytes()[:-4096]
    path.write_bytes(data)
    with pytest.raises(StoreFault, match="damaged"), opened(path) as quilt:
        quilt.do(c.Count("pair"))
    assert path.read_bytes() == data


@pytest.mark.parametrize(
    "edit",
    [
        "UPDATE event SET body = '{'",
        "UPDATE event SET body = X'ff'",
        "UPDATE event SET body = NULL WHERE 0; DELETE FROM event WHERE seq = 1",
        "UPDATE quilt SET plan = '{}'",
        "UPDATE quilt SET plan = 'null'",
        "UPDATE quilt SET plan = replace(plan, 'paired-squares', 'origami')",
        "UPDATE quilt SET started = 'once'; DELETE FROM event",
        "UPDATE event SET at = 'once'",
    ],
)
def test_what_a_bad_edit_did_is_a_sentence(path: Path, edit: str) -> None:
    """Somebody took the triggers off and wrote into the file by hand."""
    with closing(sqlite3.connect(path)) as connection:
        triggers = connection.execute("SELECT name FROM sqlite_master WHERE type = 'trigger'")
        for (trigger,) in triggers.fetchall():
            connection.execute(f"DROP TRIGGER {trigger}")
        connection.executescript(edit)
    before = path.read_bytes()
    with pytest.raises(StoreFault), opened(path):
        pass
    assert path.read_bytes() == before


def test_a_folder_in_the_place_of_the_record(tmp_path: Path) -> None:
    path = tmp_path / "quilts.db"
    path.mkdir()
    with pytest.raises(StoreFault, match=r"cannot be opened.*no folder of that name"), shelf(path):
        pass
    assert list(path.iterdir()) == []


def test_a_file_in_the_place_of_the_folder(tmp_path: Path) -> None:
    (tmp_path / "home").write_text("a shopping list")
    with pytest.raises(StoreFault, match="and is a file"), shelf(tmp_path / "home" / "quilts.db"):
        pass
    assert (tmp_path / "home").read_text() == "a shopping list"


# Others at the same file


@pytest.mark.parametrize("lock", ["IMMEDIATE", "EXCLUSIVE"])
def test_a_record_another_program_is_writing_to(path: Path, lock: str) -> None:
    with opened(path) as quilt, closing(sqlite3.connect(path, isolation_level=None)) as other:
        other.execute(f"BEGIN {lock}")
        before = quilt.record
        began = time.monotonic()
        with pytest.raises(StoreFault, match=r"Another window .* Nothing was recorded") as fault:
            quilt.do(c.Count("pair"))
        assert time.monotonic() - began < 2, "the screen stood still"
        assert is_plain(str(fault.value))
        assert quilt.record == before
        other.execute("ROLLBACK")
        quilt.do(c.Count("pair"))
        assert_whole(quilt, path)


def test_a_record_another_program_reads_for_long(path: Path) -> None:
    with opened(path) as quilt, closing(sqlite3.connect(path, isolation_level=None)) as other:
        other.execute("BEGIN")
        other.execute("SELECT * FROM event").fetchall()
        with pytest.raises(StoreFault, match="Nothing was recorded"):
            quilt.do(c.Count("pair"))
        other.execute("COMMIT")
        quilt.do(c.Count("pair"))
        assert_whole(quilt, path)


def test_a_record_that_is_locked_cannot_be_opened_yet(path: Path) -> None:
    with closing(sqlite3.connect(path, isolation_level=None)) as other:
        other.execute("BEGIN EXCLUSIVE")
        with pytest.raises(StoreFault, match="Another window"), shelf(path):
            pass


@posix
@pytest.mark.parametrize("how", ["replaced", "moved", "deleted"])
def test_a_record_taken_away_under_an_open_window(path: Path, tmp_path: Path, how: str) -> None:
    with opened(path) as quilt:
        quilt.do(c.Count("pair"))
        before = path.read_bytes()
        if how == "replaced":
            shutil.copy(path, tmp_path / "copy.db")
            os.replace(tmp_path / "copy.db", path)
        elif how == "moved":
            path.rename(tmp_path / "elsewhere.db")
        else:
            path.unlink()
        with pytest.raises(StoreFault, match=r"moved or replaced") as fault:
            quilt.do(c.Count("pair"))
        assert is_plain(str(fault.value))
        there = {"replaced": path, "moved": tmp_path / "elsewhere.db"}.get(how)
        assert path.exists() == (how == "replaced")
        assert there is None or there.read_bytes() == before


# The sentences


ERRORS = """
FULL READONLY READONLY_DBMOVED READONLY_DIRECTORY READONLY_ROLLBACK CANTOPEN CANTOPEN_ISDIR
BUSY BUSY_SNAPSHOT NOTADB CORRUPT CORRUPT_VTAB IOERR IOERR_WRITE IOERR_FSYNC
"""


@pytest.mark.parametrize("name", ERRORS.split())
def test_every_error_of_the_disk_has_a_sentence(name: str) -> None:
    error = sqlite3.OperationalError("inner words")
    error.sqlite_errorname = f"SQLITE_{name}"
    sentence = str(fault_from(error, Path("home/quilts.db")))
    assert is_plain(sentence.replace("home/quilts.db", "it"))
    assert "inner words" not in sentence


def test_an_error_nobody_thought_of_still_says_that_nothing_was_recorded() -> None:
    fault = fault_from(sqlite3.OperationalError("odd"), Path("quilts.db"))
    assert str(fault) == "The record at quilts.db could not be used (odd). Nothing was recorded."


def test_every_connection_is_closed(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Python 3.13 warns of one left open; here it is counted in every version."""
    left_open: list[sqlite3.Connection] = []

    class Watched(sqlite3.Connection):
        def close(self) -> None:
            left_open.remove(self)
            super().close()

    real = sqlite3.connect

    def watched(name: Path, **options: object) -> sqlite3.Connection:
        connection: sqlite3.Connection = real(name, factory=Watched, **options)  # type: ignore[call-overload]
        left_open.append(connection)
        return connection

    monkeypatch.setattr(sqlite3, "connect", watched)
    good, letter = tmp_path / "quilts.db", tmp_path / "letter.db"
    letter.write_text("Dear Ada, " * 200)
    begin(good)
    assert not left_open
    with pytest.raises(StoreFault), shelf(letter):
        pass
    assert not left_open
    with opened(good) as quilt:
        assert len(left_open) == 1
        quilt.do(c.Count("pair"))
    assert not left_open


def test_stale_is_a_fault_of_its_own() -> None:
    assert issubclass(Stale, StoreFault)

"""Putting a backup back is all or nothing, waits for nobody's half-written count, loses nothing."""

from __future__ import annotations

import os
import shutil
import signal
import sqlite3
from collections.abc import Callable
from contextlib import closing
from datetime import timedelta
from pathlib import Path

import pytest

from sewalong.store.backups import backups_of
from sewalong.store.faults import StoreFault
from sewalong.store.restoring import begin_empty, put_back
from tests.progress import every_act as c
from tests.store.shelf import EVENING, begin, opened, shelf, ticking, worker


@pytest.fixture
def path(tmp_path: Path) -> Path:
    """Three pairs on the first evening, five more on the second."""
    path = tmp_path / "quilts.db"
    begin(path)
    for day, n in ((0, 3), (1, 5)):
        with opened(path, clock=ticking(EVENING + timedelta(days=day))) as quilt:
            quilt.do(c.Count("pair", n))
    return path


def restore(path: Path) -> None:
    put_back(str(path), of_the_day(path), EVENING)


def of_the_day(path: Path) -> str:
    """The backup of the second evening."""
    return next(one.path for one in backups_of(str(path)) if "first write" in one.why)


def pairs(path: Path) -> int:
    with opened(path) as quilt:
        return quilt.state.done["pair"]


def test_a_window_in_the_middle_of_a_write_is_waited_for_and_then_left_alone(path: Path) -> None:
    before = path.read_bytes()
    with closing(sqlite3.connect(path, isolation_level=None)) as other:
        other.execute("BEGIN IMMEDIATE")
        with pytest.raises(StoreFault, match="Another window is writing"):
            restore(path)
    assert path.read_bytes() == before
    assert not (path.parent / "set-aside").exists()
    restore(path)
    assert pairs(path) == 3


@pytest.mark.skipif(os.name != "posix", reason="an open file cannot be replaced elsewhere")
def test_a_window_that_is_open_is_told_and_writes_nothing(path: Path) -> None:
    with opened(path) as quilt:
        restore(path)
        before = path.read_bytes()
        with pytest.raises(StoreFault, match="moved or replaced"):
            quilt.do(c.Count("pair"))
    assert path.read_bytes() == before


KILLED = """
import os, signal, sys
from sewalong.service.open_quilt import local_now
from sewalong.store import restoring
from sewalong.store.backups import backups_of

path, where = sys.argv[1:]
real = getattr(os, where)

def killed(*args):
    if any(str(arg) in (path, path + "-journal") for arg in args):
        os.kill(os.getpid(), signal.SIGKILL)
    return real(*args)

setattr(os, where, killed)
restoring.put_back(path, backups_of(path)[0].path, local_now())
"""


@pytest.mark.skipif(os.name != "posix", reason="there is no SIGKILL")
@pytest.mark.parametrize("damaged", [False, True])
@pytest.mark.parametrize("where", ["link", "unlink", "replace"])
def test_killed_half_way_the_old_record_lies_there_and_it_can_be_done_again(
    path: Path, where: str, damaged: bool
) -> None:
    if damaged:
        data = path.read_bytes()
        path.write_bytes(data[:4096] + bytes(4096) + data[8192:])
    elif where == "link":
        pytest.skip("a sound record is not put aside")
    before = path.read_bytes()
    with worker(KILLED, path, where) as window:
        _, error = window.communicate()
    assert window.returncode == -signal.SIGKILL, error
    assert path.read_bytes() == before
    restore(path)
    assert pairs(path) == 3
    kept = [*(path.parent / "set-aside").glob("*.db")] if damaged else []
    assert all(file.read_bytes() == before for file in kept)


def test_a_disk_without_second_names_gets_a_copy(
    path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def refused(*_: object) -> None:
        raise PermissionError(1, "Operation not permitted")

    data = path.read_bytes()[:-4096]
    path.write_bytes(data)
    monkeypatch.setattr(os, "link", refused)
    restore(path)
    assert pairs(path) == 3
    (aside,) = (path.parent / "set-aside").glob("*.db")
    assert aside.read_bytes() == data


def test_no_room_to_save_what_is_left_keeps_nobody_from_the_backup(
    path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path.write_bytes(path.read_bytes()[:-4096])
    (path.parent / "rescued").write_text("a file in the way")
    done = put_back(str(path), of_the_day(path), EVENING)
    assert done.unsaved
    assert done.aside is not None
    assert pairs(path) == 3


def removed(path: Path) -> None:
    path.unlink()


def emptied(path: Path) -> None:
    path.write_bytes(b"")


def cut_short(path: Path) -> None:
    path.write_bytes(path.read_bytes()[:-4096])
    path.chmod(0o644)


def a_folder(path: Path) -> None:
    path.unlink()
    path.mkdir()
    (path / "letter.txt").write_text("not a quilt")


def a_link_to_nowhere(path: Path) -> None:
    path.unlink()
    path.symlink_to(path.parent / "nowhere")


def the_whole_home(path: Path) -> None:
    shutil.rmtree(path.parent)


LOST: dict[Callable[[Path], None], list[str]] = {
    removed: [],
    emptied: [""],
    cut_short: [""],
    a_folder: [""],
    a_link_to_nowhere: [""],
}
"""What is lost how, and what is set aside then: the names end so. A journal with nothing in it, as
every write leaves one, is not worth it."""


@pytest.mark.skipif(os.name != "posix", reason="links and modes are as POSIX has them")
@pytest.mark.parametrize("loss", [*LOST, the_whole_home], ids=lambda loss: loss.__name__)
def test_whatever_lies_there_the_backup_takes_its_place_and_that_is_kept(
    tmp_path: Path, loss: Callable[[Path], None]
) -> None:
    path = tmp_path / "home" / "quilts.db"
    begin(path)
    for day, n in ((0, 3), (1, 5)):
        with opened(path, clock=ticking(EVENING + timedelta(days=day))) as quilt:
            quilt.do(c.Count("pair", n))
    backup = shutil.copy(of_the_day(path), tmp_path / "stick.db")
    assert (path.parent / "quilts.db-journal").read_bytes() == b""
    loss(path)
    done = put_back(str(path), str(backup), EVENING)
    assert pairs(path) == 3
    assert path.is_file()
    aside = sorted((path.parent / "set-aside").glob("*"))
    assert [one.name.partition("quilts.db")[2] for one in aside] == LOST.get(loss, [])
    assert [str(one) for one in aside] == ([done.aside] if done.aside else [])
    for one in aside:
        if one.is_file():
            assert one.stat().st_mode & 0o777 == 0o600


def test_an_empty_record_in_its_place_keeps_what_was_there(path: Path) -> None:
    done = begin_empty(str(path), EVENING)
    assert done.before is not None
    with shelf(path) as library:
        assert library.entries() == ()
    put_back(str(path), done.before, EVENING)
    assert pairs(path) == 8

"""A record that is lost is not a record that has yet to begin: nothing is written over it."""

from __future__ import annotations

import os
import shutil
import sqlite3
from collections.abc import Callable
from contextlib import closing
from datetime import date
from pathlib import Path

import pytest

from sewalong.store.begun import backup_of_day, is_there, marker_of
from sewalong.store.faults import Lost, StoreFault
from tests.progress import every_act as c
from tests.store.shelf import a_quilt, begin, opened, shelf

posix = pytest.mark.skipif(os.name != "posix", reason="needs rights as POSIX has them")


@pytest.fixture
def path(tmp_path: Path) -> Path:
    path = tmp_path / "home" / "quilts.db"
    begin(path)
    with opened(path) as quilt:
        quilt.do(c.Count("pair", 3))
    return path


def emptied(path: Path) -> None:
    path.write_bytes(b"")


def one_byte(path: Path) -> None:
    path.write_bytes(b"S")


def a_little(path: Path) -> None:
    path.write_bytes(path.read_bytes()[:400])


def removed(path: Path) -> None:
    path.unlink()


def a_folder(path: Path) -> None:
    path.unlink()
    path.mkdir()


def a_dangling_link(path: Path) -> None:
    path.rename(path.with_name("elsewhere"))
    path.symlink_to(path.with_name("nowhere"))


def another_database(path: Path) -> None:
    """As a program that meant well would leave: a database with nothing in it."""
    path.unlink()
    with closing(sqlite3.connect(path)) as empty:
        empty.execute("CREATE TABLE quilt (id)")
        empty.execute("DROP TABLE quilt")
    assert path.stat().st_size > 4096


def another_programs(path: Path) -> None:
    path.unlink()
    with closing(sqlite3.connect(path)) as connection:
        connection.execute("CREATE TABLE recipe (title TEXT)")


def a_letter(path: Path) -> None:
    path.write_text("Dear Ada, the binding is done.\n" * 400)


def its_first_bytes_changed(path: Path) -> None:
    path.write_bytes(b"xQLite" + path.read_bytes()[6:])


LOSSES = (
    emptied, one_byte, a_little, removed, a_folder, a_dangling_link, another_database,
    another_programs, a_letter, its_first_bytes_changed,
)  # fmt: skip


def named(loss: Callable[[Path], None]) -> str:
    return loss.__name__


def everything(folder: Path) -> dict[str, bytes | None]:
    return {
        str(file.relative_to(folder)): file.read_bytes() if file.is_file() else None
        for file in folder.rglob("*")
    }


@pytest.mark.parametrize("loss", LOSSES, ids=named)
def test_a_loss_is_said_with_the_way_out_and_nothing_is_written(
    path: Path, loss: Callable[[Path], None]
) -> None:
    loss(path)
    before = everything(path.parent)
    for _ in range(2):
        with pytest.raises(Lost, match=r"was begun at .* Nothing was written.*sewalong restore\."):
            begin(path, a_quilt("Second"))
    assert everything(path.parent) == before


@pytest.mark.parametrize(
    ("left", "said"),
    [(b"", "has nothing in it"), (b"S", "has one byte in it"), (b"SQLite format", "has 13 bytes")],
)
def test_what_is_left_of_it_is_said(path: Path, left: bytes, said: str) -> None:
    path.write_bytes(left)
    with pytest.raises(Lost, match=said):
        is_there(str(path))


def test_there_or_not_is_answered_and_its_files_are_named_after_it(path: Path) -> None:
    assert is_there(str(path)) is True
    assert is_there(str(path.with_name("other.db"))) is False
    backup = path.with_name("backups") / "quilts-2023-11-04.db"
    assert backup_of_day(str(path), date(2023, 11, 4)) == str(backup)
    assert backup.exists()


@pytest.mark.parametrize("loss", [emptied, removed], ids=named)
def test_without_its_marker_the_backups_tell(path: Path, loss: Callable[[Path], None]) -> None:
    os.unlink(marker_of(str(path)))
    loss(path)
    with pytest.raises(Lost), shelf(path):
        pass


def test_a_file_of_an_older_version_removed_beside_its_journal(path: Path) -> None:
    """Older versions wrote no marker and made no backups; the journal is what they left."""
    os.unlink(marker_of(str(path)))
    shutil.rmtree(path.parent / "backups")
    assert (path.parent / "quilts.db-journal").exists()
    path.unlink()
    with pytest.raises(Lost, match="the file is gone"), shelf(path):
        pass


def test_an_older_home_without_a_marker_goes_on_and_gets_one(path: Path) -> None:
    os.unlink(marker_of(str(path)))
    with opened(path) as quilt:
        assert quilt.state.done["pair"] == 3
    assert "leave it here" in Path(marker_of(str(path))).read_text()
    emptied(path)
    with pytest.raises(Lost), shelf(path):
        pass


def test_put_back_by_hand_the_record_is_there_again(path: Path) -> None:
    path.rename(path.with_name("elsewhere"))
    with pytest.raises(Lost), shelf(path):
        pass
    path.with_name("elsewhere").rename(path)
    with opened(path) as quilt:
        assert quilt.state.done["pair"] == 3


@pytest.mark.parametrize("left", [b"", None])
def test_a_first_start_that_was_cut_off_before_the_record_was_made_begins_anew(
    tmp_path: Path, left: bytes | None
) -> None:
    path = tmp_path / "quilts.db"
    if left is not None:
        path.write_bytes(left)
    begin(path)
    with shelf(path) as library:
        assert len(library.entries()) == 1


def test_few_bytes_of_something_else_are_left_alone(tmp_path: Path) -> None:
    path = tmp_path / "quilts.db"
    path.write_bytes(b"S")
    with pytest.raises(StoreFault, match="not a sewalong record"), shelf(path):
        pass
    assert everything(tmp_path) == {"quilts.db": b"S"}


def test_a_data_folder_that_is_a_file(tmp_path: Path) -> None:
    (tmp_path / "home").write_text("a shopping list")
    with pytest.raises(StoreFault, match=r"and is a file\. Nothing was written"):
        begin(tmp_path / "home" / "quilts.db")
    assert (tmp_path / "home").read_text() == "a shopping list"


def test_a_data_folder_that_is_a_link_to_a_disk_not_connected(tmp_path: Path) -> None:
    (tmp_path / "home").symlink_to(tmp_path / "nowhere")
    with pytest.raises(StoreFault, match="If it leads to another disk, connect that"):
        begin(tmp_path / "home" / "quilts.db")
    assert not (tmp_path / "nowhere").exists()


# For its owner alone


@posix
def test_record_marker_backups_and_journal_are_their_owners_alone(path: Path) -> None:
    for place in (path.parent, *path.parent.rglob("*")):
        allowed = 0o700 if place.is_dir() else 0o600
        assert place.stat().st_mode & 0o777 == allowed, place


@posix
def test_every_folder_made_on_the_way_is_the_owners_alone(tmp_path: Path) -> None:
    begin(tmp_path / "a" / "b" / "quilts.db")
    assert (tmp_path / "a").stat().st_mode & 0o777 == 0o700


@posix
@pytest.mark.parametrize(("mode", "then"), [(0o644, 0o600), (0o666, 0o600), (0o601, 0o600)])
def test_what_others_could_read_is_closed_to_them_at_the_next_opening(
    path: Path, mode: int, then: int
) -> None:
    path.chmod(mode)
    with opened(path):
        pass
    assert path.stat().st_mode & 0o777 == then


@posix
def test_a_stricter_mode_stays(path: Path) -> None:
    path.chmod(0o400)
    with shelf(path):
        pass
    assert path.stat().st_mode & 0o777 == 0o400

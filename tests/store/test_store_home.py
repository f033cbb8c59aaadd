"""Where the record lies."""

from __future__ import annotations

from pathlib import Path

import pytest

from sewalong.store.faults import StoreFault
from sewalong.store.home import data_folder, demo_record_path, record_path
from tests.store.shelf import begin, shelf


def test_the_owner_says_where(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    monkeypatch.setenv("SEWALONG_HOME", str(tmp_path / "a folder of ½"))
    assert record_path() == str(tmp_path / "a folder of ½" / "quilts.db")
    begin(Path(record_path()))
    with shelf(Path(record_path())) as library:
        assert len(library.entries()) == 1


def test_a_tilde_is_home(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    monkeypatch.setenv("HOME", str(tmp_path))
    monkeypatch.setenv("USERPROFILE", str(tmp_path))
    monkeypatch.setenv("SEWALONG_HOME", "~/quilts")
    assert data_folder() == str(tmp_path / "quilts")


def test_the_home_of_nobody_is_a_sentence(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("SEWALONG_HOME", "~nobody-of-that-name/quilts")
    with pytest.raises(StoreFault, match=r"no such home folder\. Set it to a whole path"):
        data_folder()


@pytest.mark.parametrize("unset", [None, ""])
def test_else_it_is_the_platforms_folder(
    monkeypatch: pytest.MonkeyPatch, tmp_path: Path, unset: str | None
) -> None:
    monkeypatch.setenv("HOME", str(tmp_path))
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path / "data"))
    if unset is None:
        monkeypatch.delenv("SEWALONG_HOME", raising=False)
    else:
        monkeypatch.setenv("SEWALONG_HOME", unset)
    assert Path(data_folder()).name == "sewalong"
    assert Path(data_folder()).is_absolute()


def test_the_demo_has_a_record_of_its_own(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    monkeypatch.setenv("SEWALONG_HOME", str(tmp_path))
    begin(Path(demo_record_path()))
    assert not Path(record_path()).exists()
    with shelf(Path(record_path())) as library:
        assert library.entries() == ()


def test_a_new_folder_is_the_owners_alone(tmp_path: Path) -> None:
    begin(tmp_path / "new" / "quilts.db")
    assert (tmp_path / "new").stat().st_mode & 0o077 == 0


def test_a_name_that_means_something_to_sqlite_is_only_a_name(
    monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    folder = tmp_path / "file:memory?mode=ro&x=%2e#1"
    begin(folder / "quilts.db")
    assert (folder / "quilts.db").stat().st_size > 0

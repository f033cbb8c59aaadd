"""Several files written into a folder: all or none, and nothing that lies there lost unasked."""

from __future__ import annotations

import os
from pathlib import Path

import pytest

from sewalong.store.faults import StoreFault
from sewalong.store.folders import write_into

FILES = {"one.txt": b"one", "two.txt": b"two"}


@pytest.fixture(autouse=True)
def home(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("SEWALONG_HOME", str(tmp_path / "home"))


def test_the_folder_and_those_above_it_are_made(tmp_path: Path) -> None:
    folder = tmp_path / "a" / "b"
    write_into(str(folder), FILES)
    assert {name: (folder / name).read_bytes() for name in os.listdir(folder)} == FILES


def test_what_is_the_same_is_no_reason_to_refuse(tmp_path: Path) -> None:
    write_into(str(tmp_path), FILES)
    write_into(str(tmp_path), FILES)
    assert (tmp_path / "two.txt").read_bytes() == b"two"


@pytest.mark.parametrize("there", [b"six", b"another length", b""])
def test_of_other_content_nothing_is_written_unless_that_is_said(
    tmp_path: Path, there: bytes
) -> None:
    (tmp_path / "two.txt").write_bytes(there)
    with pytest.raises(StoreFault, match=r"two\.txt is there already, with something else in it"):
        write_into(str(tmp_path), FILES)
    assert os.listdir(tmp_path) == ["two.txt"]
    assert (tmp_path / "two.txt").read_bytes() == there
    write_into(str(tmp_path), FILES, replace=True)
    assert {name: (tmp_path / name).read_bytes() for name in FILES} == FILES


@pytest.mark.parametrize("replace", [False, True])
def test_a_folder_in_the_place_of_a_file_stays(tmp_path: Path, replace: bool) -> None:
    (tmp_path / "two.txt").mkdir()
    with pytest.raises(StoreFault, match="is not a file"):
        write_into(str(tmp_path), FILES, replace=replace)
    assert os.listdir(tmp_path) == ["two.txt"]


def test_a_link_that_leads_nowhere_is_something_else(tmp_path: Path) -> None:
    (tmp_path / "two.txt").symlink_to(tmp_path / "gone")
    with pytest.raises(StoreFault, match="something else"):
        write_into(str(tmp_path), FILES)
    assert not (tmp_path / "gone").exists()

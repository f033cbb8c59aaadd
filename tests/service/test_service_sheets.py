"""The sheets of a quilt as they are written: what is in the folder, and what the record is left as."""

from __future__ import annotations

import os
from pathlib import Path

import pytest
from msgspec.structs import replace

from sewalong.service.sheets import write_sheets
from sewalong.store import folders
from sewalong.store.faults import StoreFault
from tests.service.opened_quilt import a_window
from tests.sheets.paper_quilts import PLAIN, STATES


def test_where_no_unit_can_be_made_there_are_pages_and_no_top(tmp_path: Path) -> None:
    with a_window(tmp_path, quilt=STATES["too small for its seams"].quilt) as window:
        found = write_sheets(window.quilt, str(tmp_path / "paper"))
    assert found == (("sheets.html",), "")
    assert os.listdir(tmp_path / "paper") == ["sheets.html"]


def test_printing_records_nothing(tmp_path: Path) -> None:
    with a_window(tmp_path, quilt=PLAIN) as window:
        before = window.on_disk()
        write_sheets(window.quilt, str(tmp_path / "paper"))
        assert window.on_disk() == before


def test_the_files_are_for_their_owner_alone(tmp_path: Path) -> None:
    with a_window(tmp_path, quilt=PLAIN) as window:
        names, _ = write_sheets(window.quilt, str(tmp_path / "paper"))
    for path in (tmp_path / "paper", *(tmp_path / "paper" / name for name in names)):
        assert path.stat().st_mode & 0o077 == 0


def test_where_the_disk_refuses_what_lay_there_stays(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    folder = tmp_path / "paper"
    with a_window(tmp_path, quilt=PLAIN) as window:
        write_sheets(window.quilt, str(folder))
    was = (folder / "sheets.html").read_bytes()

    def full(path: str, data: bytes) -> None:
        raise StoreFault(f"{path} cannot be written (no space).")

    monkeypatch.setattr(folders, "write_whole", full)
    with (
        a_window(tmp_path / "other", quilt=replace(PLAIN, name="Another")) as window,
        pytest.raises(StoreFault, match="no space"),
    ):
        write_sheets(window.quilt, str(folder), replace=True)
    assert (folder / "sheets.html").read_bytes() == was
    assert sorted(os.listdir(folder)) == ["sheets.html", "top.png", "top.svg"]

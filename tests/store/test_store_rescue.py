"""What a damaged record has and the backup lacks is saved, and nothing else."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from sewalong.store.archive import from_text
from sewalong.store.rescue import Rescued, rescue
from tests.progress import every_act as c
from tests.store.shelf import EVENING, a_quilt, begin, opened

STAMP = "20231104T190000"


@pytest.fixture
def path(tmp_path: Path) -> Path:
    path = tmp_path / "quilts.db"
    begin(path)
    begin(path, a_quilt("Gate Post"))
    for name in ("Hedgerow", "Gate Post"):
        with opened(path, name) as quilt:
            quilt.do(c.Count("pair", 3))
    return path


def saved(path: Path, backup: Path) -> tuple[tuple[str, int, str | None], ...]:
    """The name of each file, the events in it, and the quilt."""
    found = rescue(str(path), str(backup), str(path.parent / "rescued"), EVENING)
    return tuple((Path(one.file).name, one.events, one.quilt) for one in found)


def test_only_what_the_backup_lacks(path: Path, tmp_path: Path) -> None:
    backup = Path(shutil.copy(path, tmp_path / "backup.db"))
    assert saved(path, backup) == ()
    begin(path, a_quilt("New / today"))
    with opened(path, "Gate Post") as quilt:
        quilt.do(c.Count("pair", 2))
        quilt.do(c.WriteNote("the blue thread"))
        whole = list(quilt.record)
    assert saved(path, backup) == (
        (f"Gate-Post-{STAMP}.json", 2, "Gate Post"),
        (f"New-today-{STAMP}.json", 0, "New / today"),
    )
    text = (path.parent / "rescued" / f"Gate-Post-{STAMP}.json").read_text(encoding="utf-8")
    assert list(from_text(text).record) == whole


def test_done_twice_in_one_second_nothing_is_written_over(path: Path, tmp_path: Path) -> None:
    begin(backup := tmp_path / "backup.db")
    first, second = ({name for name, *_ in saved(path, backup)} for _ in range(2))
    assert first == {f"Hedgerow-{STAMP}.json", f"Gate-Post-{STAMP}.json"}
    assert second == {f"Hedgerow-2-{STAMP}.json", f"Gate-Post-2-{STAMP}.json"}


def test_neither_file_is_changed(path: Path, tmp_path: Path) -> None:
    begin(backup := tmp_path / "backup.db")
    before = path.read_bytes(), backup.read_bytes()
    assert isinstance(rescue(str(path), str(backup), str(tmp_path / "r"), EVENING)[0], Rescued)
    assert (path.read_bytes(), backup.read_bytes()) == before

"""A file is written whole or not at all, and what was there before stays until then."""

from __future__ import annotations

import os
from pathlib import Path

import pytest

from sewalong.store.faults import StoreFault
from sewalong.store.writing import write_whole


@pytest.fixture
def path(tmp_path: Path) -> Path:
    path = tmp_path / "Hedgerow.json"
    path.write_text("the old file")
    return path


def alone(path: Path) -> bool:
    """Nothing temporary was left beside it."""
    return [entry.name for entry in path.parent.iterdir()] == [path.name]


def test_a_file_is_written(tmp_path: Path) -> None:
    path = tmp_path / "Hedgerow.json"
    write_whole(path, "½ inch – “Hedgerow”\n")
    assert path.read_bytes() == "½ inch – “Hedgerow”\n".encode()
    assert alone(path)


def test_a_file_is_replaced(path: Path) -> None:
    write_whole(path, "the new file")
    assert path.read_text() == "the new file"
    assert alone(path)


@pytest.mark.parametrize("step", ["fsync", "replace", "chmod", "fdopen"])
def test_a_failure_at_any_step_leaves_the_old_file(
    path: Path, monkeypatch: pytest.MonkeyPatch, step: str
) -> None:
    def fail(*_: object, **__: object) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(os, step, fail)
    with pytest.raises(StoreFault, match=r"cannot be written \(No space left on device\)"):
        write_whole(path, "the new file")
    assert path.read_text() == "the old file"
    assert alone(path)


def test_a_stop_in_the_middle_leaves_the_old_file(
    path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def stop(_: int) -> None:
        raise KeyboardInterrupt

    monkeypatch.setattr(os, "fsync", stop)
    with pytest.raises(KeyboardInterrupt):
        write_whole(path, "the new file")
    assert path.read_text() == "the old file"
    assert alone(path)


def test_text_that_no_file_can_hold_leaves_the_old_file(path: Path) -> None:
    with pytest.raises(StoreFault, match="half a character"):
        write_whole(path, "new \ud800")
    assert path.read_text() == "the old file"
    assert alone(path)


def test_a_folder_in_its_place_is_refused(tmp_path: Path) -> None:
    (tmp_path / "exports").mkdir()
    with pytest.raises(StoreFault, match=r"is a folder\. Give the name of a file"):
        write_whole(tmp_path / "exports", "new")
    assert list((tmp_path / "exports").iterdir()) == []


def test_a_folder_that_is_not_there_is_refused(tmp_path: Path) -> None:
    with pytest.raises(StoreFault, match="Choose another place"):
        write_whole(tmp_path / "nowhere" / "Hedgerow.json", "new")
    assert list(tmp_path.iterdir()) == []


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="there are no named pipes")
def test_what_is_no_file_is_not_replaced_by_one(tmp_path: Path) -> None:
    """As administrator a rename would turn /dev/null into a file."""
    pipe = tmp_path / "pipe"
    os.mkfifo(pipe)
    with pytest.raises(StoreFault, match="is not a file"):
        write_whole(pipe, "new")
    assert pipe.is_fifo()


def test_a_name_as_long_as_a_name_may_be(tmp_path: Path) -> None:
    path = tmp_path / ("x" * 250 + ".json")
    write_whole(path, "new")
    assert path.read_text() == "new"


def test_a_folder_that_cannot_be_synced_does_no_harm(
    path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Some network folders refuse; the file is in its place and must not be called unwritten."""
    real = os.open

    def refuse(name: str | Path, flags: int, mode: int = 0o777) -> int:
        if name == path.parent:
            raise OSError(22, "Invalid argument")
        return real(name, flags, mode)

    monkeypatch.setattr(os, "open", refuse)
    write_whole(path, "the new file")
    assert path.read_text() == "the new file"

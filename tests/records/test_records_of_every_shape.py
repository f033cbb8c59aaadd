"""A record of every shape the database has had is brought up to date and holds what it held.

`written_by_version_2.db` and `written_by_version_3.db` were written by the last versions that had
two steps and three; `said_by_version_N.json` is what those exported of them. Neither is ever made
anew. All quilts in them are invented. What version 1 said in full stands in its own test.
"""

from __future__ import annotations

import json
import shutil
import sqlite3
from contextlib import closing
from datetime import UTC, datetime
from pathlib import Path

import pytest

from sewalong.store.schema import STEPS
from tests.cli.conftest import Desk

HERE = Path(__file__).parent


def lay(desk: Desk, version: int) -> Path:
    """The record of a version in the home of a desk."""
    home = desk.folder / "home"
    home.mkdir()
    shutil.copyfile(HERE / f"written_by_version_{version}.db", home / "quilts.db")
    desk.now = datetime(2026, 11, 28, 20, 15, tzinfo=UTC)
    return home / "quilts.db"


def steps_of(path: Path) -> int:
    with closing(sqlite3.connect(path)) as connection:
        ((steps,),) = connection.execute("PRAGMA user_version").fetchall()
        return int(steps)


def test_there_is_a_record_of_every_older_shape() -> None:
    steps = [steps_of(file) for file in sorted(HERE.glob("written_by_version_*.db"))]
    assert steps == list(range(1, len(STEPS)))


@pytest.mark.parametrize("version", range(1, len(STEPS)))
def test_it_is_brought_up_to_date_and_is_sound(desk: Desk, version: int) -> None:
    path = lay(desk, version)
    before = [line.split(",")[0] for line in desk.ok("list").lines]
    assert steps_of(path) == len(STEPS)
    assert desk.ok("examine").lines[0] == "The record is sound."
    (backup,) = (path.parent / "backups").iterdir()
    assert backup.name == f"quilts-v{version}-20261128T201500.db"
    assert "before a newer sewalong took over: sound" in desk.ok("restore").out
    desk.ok("restore", "1")
    assert [line.split(",")[0] for line in desk.ok("list").lines] == before


@pytest.mark.parametrize("version", [2, 3])
def test_its_quilts_hold_what_they_held(desk: Desk, version: int) -> None:
    lay(desk, version)
    said = json.loads((HERE / f"said_by_version_{version}.json").read_text(encoding="utf-8"))
    for number, quilt in said.items():
        found = json.loads(desk.ok("export", "--quilt", number, "-").out)
        for part in ("key", "started", "events"):
            assert found[part] == quilt[part]
        assert desk.ok("log", "--quilt", number, "--json").data["quilt"] == quilt["name"]


@pytest.mark.parametrize("version", range(1, len(STEPS)))
def test_an_older_record_that_cannot_be_written_is_read(
    desk: Desk, version: int, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = lay(desk, version)

    def refused(*_: object) -> None:
        error = sqlite3.OperationalError("attempt to write a readonly database")
        error.sqlite_errorname = "SQLITE_READONLY"
        raise error

    monkeypatch.setattr("sewalong.store.migrations._probe", refused)
    assert desk.ok("list").lines
    assert desk.ok("log", "--quilt", "1").lines
    assert steps_of(path) == version

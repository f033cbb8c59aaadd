"""A plain command costs little: it imports no screen, and help imports next to nothing."""

from __future__ import annotations

import json
import os
import subprocess
import sys
from pathlib import Path
from typing import TYPE_CHECKING

import pytest

if TYPE_CHECKING:
    from tests.cli.conftest import Desk

_RUN = """
import io, json, sys
from contextlib import redirect_stdout
from sewalong.__main__ import main
with redirect_stdout(io.StringIO()):
    status = main(sys.argv[1:])
heavy = ("textual", "rich", "pydantic", "sqlite3", "platformdirs")
print(json.dumps([status, [name for name in heavy if name in sys.modules],
                  [name for name in sys.modules if name.startswith("sewalong.screens")]]))
"""

SCREENS = {"textual", "rich"}


def imported(home: Path, *argv: str) -> tuple[int, set[str], list[str]]:
    """Exit status, heavy libraries and screen modules that a command imported."""
    done = subprocess.run(
        [sys.executable, "-c", _RUN, *argv],
        env={**os.environ, "SEWALONG_HOME": str(home)},
        stdin=subprocess.DEVNULL,
        capture_output=True,
        text=True,
        timeout=60,
        check=True,
    )
    status, heavy, screens = json.loads(done.stdout)
    return status, set(heavy), screens


@pytest.mark.parametrize("argv", [["--help"], ["--version"], ["count", "--help"], ["cuont"]])
def test_help_and_version_import_nothing_heavy(argv: list[str], tmp_path: Path) -> None:
    _, heavy, screens = imported(tmp_path, *argv)
    assert heavy == set()
    assert screens == []


@pytest.mark.parametrize(
    "argv",
    [
        ["list"],
        ["status", "--json"],
        ["log"],
        ["count", "pair", "1"],
        ["note", "x"],
        ["undo"],
        ["close"],
        ["export", "-"],
        ["open"],
        [],
        ["demo", "--list"],
    ],
    ids=" ".join,
)
def test_a_plain_command_imports_no_screen(argv: list[str], begun: Desk) -> None:
    begun.ok("note", "something to undo")
    status, heavy, screens = imported(begun.folder / "home", *argv)
    assert status == 0
    assert heavy & SCREENS == set()
    assert screens == []
    assert "sqlite3" in heavy, "the command did get as far as the record"

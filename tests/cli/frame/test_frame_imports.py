"""A plain command costs little: it imports no screen, and only what it uses."""

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
from contextlib import redirect_stderr, redirect_stdout
from sewalong.__main__ import main
with redirect_stdout(io.StringIO()), redirect_stderr(io.StringIO()):
    status = main(sys.argv[1:])
print(json.dumps([status, list(sys.modules)]))
"""

SCREENS = {"textual", "rich"}


HEAVY = {"textual", "rich", "pydantic", "sqlite3", "platformdirs", "coloraide"}
REGISTRY = "sewalong.cli.registry."


def imported(home: Path, *argv: str) -> tuple[int, set[str]]:
    """The exit status, and every module that was imported."""
    done = subprocess.run(
        [sys.executable, "-c", _RUN, *argv],
        env={**os.environ, "SEWALONG_HOME": str(home)},
        stdin=subprocess.DEVNULL,
        capture_output=True,
        text=True,
        timeout=60,
        check=True,
    )
    status, modules = json.loads(done.stdout)
    return status, set(modules)


def registry_files(modules: set[str]) -> set[str]:
    """The files of commands among them."""
    found = {name.removeprefix(REGISTRY) for name in modules if name.startswith(REGISTRY)}
    return found - {"index", "command", "argument", "shared", "light"}


@pytest.mark.parametrize(
    "argv",
    [["--help"], ["--version"], ["help", "all"], ["count", "--help"], ["cuont"], ["backing"]],
    ids=" ".join,
)
def test_help_and_version_import_nothing_heavy(argv: list[str], tmp_path: Path) -> None:
    _, modules = imported(tmp_path, *argv)
    assert modules & HEAVY == set()
    assert not any(name.startswith("sewalong.screens") for name in modules)


@pytest.mark.parametrize("argv", [["--version"], ["cuont"], ["backing"], ["-x"]], ids=" ".join)
def test_the_version_and_unknown_words_import_next_to_nothing(
    argv: list[str], tmp_path: Path
) -> None:
    _, modules = imported(tmp_path, *argv)
    assert modules & {"argparse", "msgspec", "dataclasses", "inspect", "sewalong.lengths"} == set()
    assert registry_files(modules) == set()
    assert ("difflib" in modules) == (argv == ["cuont"])


@pytest.mark.parametrize(
    ("argv", "file"),
    [
        (["count", "--help"], "counting"),
        (["status"], "looking"),
        (["size", "--method", "four-patch", "--square", "5"], "numbers"),
        (["reckon", "backing", "--top", "60"], "reckon_cloth"),
    ],
)
def test_a_command_imports_no_other_commands(argv: list[str], file: str, tmp_path: Path) -> None:
    _, modules = imported(tmp_path, *argv)
    assert registry_files(modules) == {file}


@pytest.mark.parametrize(
    "argv",
    [
        ["help", "all"],
        ["size", "--method", "four-patch", "--square", "5"],
        ["reckon", "backing", "--top", "60"],
    ],
    ids=" ".join,
)
def test_what_no_mistake_was_made_in_looks_for_no_nearest_word(
    argv: list[str], tmp_path: Path
) -> None:
    _, modules = imported(tmp_path, *argv)
    assert modules & {"difflib", "dataclasses", "sqlite3"} == set()


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
    status, modules = imported(begun.folder / "home", *argv)
    assert status == 0
    assert modules & SCREENS == set()
    assert not any(name.startswith("sewalong.screens") for name in modules)
    assert "sqlite3" in modules, "the command did get as far as the record"


WALL = ("sewalong.progress.wall", "sewalong.wall.laying", "sewalong.progress.joining.row_in_hand")


@pytest.mark.parametrize("argv", [["status"], ["count", "pair", "1"], ["begun"]], ids=" ".join)
def test_nothing_of_a_wall_is_loaded_where_none_is_laid(argv: list[str], begun: Desk) -> None:
    status, modules = imported(begun.folder / "home", *argv)
    assert status == 0
    assert not [name for name in modules if name.startswith(WALL)]


def test_the_unit_that_is_next_is_told_without_colours(desk: Desk) -> None:
    listed = desk.ok("demo", "--list", "--json").data["quilts"]
    number = next(one["number"] for one in listed if one["name"].startswith("Signal Garden"))
    argv = ("status", "--demo", "--quilt", str(number))
    status, modules = imported(desk.folder / "home", *argv)
    assert status == 0
    assert "sewalong.progress.joining.row_in_hand" in modules
    assert modules & {*SCREENS, "coloraide"} == set()

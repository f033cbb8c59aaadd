"""A record of version 1 reads the same for ever: what it holds, what is said of it, its archives.

`written_by_version_1.db` was written by the first version: the demo quilts as they were, and a
quilt of every method with a random history in which every kind of event there was comes up.
`said_by_version_1.json` is what that version printed of them. Neither file is ever made anew;
lines that were not true stand in `put_right_since.py`, what is said about time beside it.
All quilts in them are invented.
"""

from __future__ import annotations

import json
import shutil
from collections.abc import Mapping
from datetime import UTC, datetime
from pathlib import Path

import pytest

from tests.cli.conftest import Desk
from tests.records.put_right_since import put_right

HERE = Path(__file__).parent
SAID: Mapping[str, Mapping[str, str]] = json.loads(
    (HERE / "said_by_version_1.json").read_text(encoding="utf-8")
)
KEPT = ("list", "status", "log", "export", "proof", "join", "forecast", "pace", "tonight")
"""Commands whose words or data must stay; what `plan` says of cloth may be put better."""

EXPORTS = [line for line in SAID if line.startswith("export")]


def archives(line: str) -> str:
    """The quilt a command is about as it was exported; all of them where none is named."""
    _, _, name = line.partition(" --quilt ")
    return "\n".join(SAID[one]["out"] for one in EXPORTS if not name or f" {name} -" in one)


def argv_of(line: str) -> list[str]:
    """The command line a key of the file stands for."""
    before, option, name = line.partition(" --quilt ")
    to_terminal = name.endswith(" -")
    words = [*before.split(), *([option.strip(), name.removesuffix(" -")] if option else [])]
    return [*words, "-"] if to_terminal else words


@pytest.fixture
def old(desk: Desk, utc: None) -> Desk:
    """A desk on which the old record lies."""
    home = desk.folder / "home"
    home.mkdir()
    shutil.copyfile(HERE / "written_by_version_1.db", home / "quilts.db")
    desk.now = datetime(2026, 11, 20, 20, 15, tzinfo=UTC)
    return desk


@pytest.mark.parametrize("command", KEPT)
def test_what_was_said_of_an_old_record_is_said_again(old: Desk, command: str) -> None:
    for line in SAID:
        if line.split()[0] == command:
            said = old.run(*argv_of(line))
            true = put_right(line, SAID[line]["out"], archives(line))
            assert (line, said.status, said.out) == (line, 0, true)


@pytest.mark.parametrize("line", EXPORTS)
def test_an_archive_of_version_1_is_taken_in_and_comes_out_the_same(
    desk: Desk, utc: None, line: str
) -> None:
    text = SAID[line]["out"]
    desk.ok("import", desk.file("old.json", text))
    assert desk.ok("export", "-").out == text

"""What the README says is true: its commands exist, its example is a quilt, its keys are keys."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from sewalong.cli.frame.command import Command
from sewalong.cli.registry.commands import COMMANDS
from sewalong.quilt.file.reader import read_quilt
from sewalong.screens.widgets.keys import SEWING_KEYS

README = (Path(__file__).parent.parent / "README.md").read_text(encoding="utf-8")


@pytest.mark.parametrize("command", COMMANDS, ids=lambda command: command.name)
def test_every_command_stands_in_the_readme_with_its_help(command: Command) -> None:
    assert f"- `{command.name}`: {command.help}" in README


def test_no_command_in_the_list_is_gone() -> None:
    listed = re.findall(r"^- `([a-z-]+)`: ", README, flags=re.MULTILINE)
    assert sorted(listed) == sorted(command.name for command in COMMANDS)


def test_the_quilt_in_the_readme_can_be_begun() -> None:
    (example,) = re.findall(r"```toml\n(.*?)```", README, flags=re.DOTALL)
    quilt = read_quilt(example)
    assert quilt.target.units == 56


def test_the_keys_named_in_the_readme_are_keys() -> None:
    section = README.split("## In the app")[1].split("## Plain commands")[0]
    named = set(re.findall(r"`([a-z?])`", section))
    caps = {key.cap for key in SEWING_KEYS}
    assert named <= caps
    assert {cap for cap in caps if len(cap) == 1} <= named


def test_the_readme_opens_with_the_job() -> None:
    first = README.split("\n\n")[1].replace("\n", " ")
    for word in ("squares", "units", "evenings", "presser foot", "on disk", "iron"):
        assert word in first
    assert "makers' instructions" in README

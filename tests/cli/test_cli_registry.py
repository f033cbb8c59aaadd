"""Every command is documented, can be loaded, and does what its example shows."""

from __future__ import annotations

import inspect
import shlex
from typing import TYPE_CHECKING

import pytest

from sewalong import __version__
from sewalong.cli.frame.command import Command
from sewalong.cli.frame.parser import build
from sewalong.cli.registry.commands import COMMANDS, GROUPS

if TYPE_CHECKING:
    from tests.cli.conftest import Desk


def every(command: Command) -> str:
    return command.name


def test_no_two_commands_share_a_name() -> None:
    names = [command.name for command in COMMANDS]
    assert len(set(names)) == len(names)


def test_the_help_names_every_command_with_its_words(desk: Desk) -> None:
    out = desk.ok("--help").out
    for command in COMMANDS:
        assert any(
            line.split()[:1] == [command.name] and command.help in line for line in out.splitlines()
        )


@pytest.mark.parametrize("command", COMMANDS, ids=every)
def test_a_command_has_words_a_group_and_a_function(command: Command) -> None:
    assert command.group in GROUPS
    assert command.help
    assert command.help[-1] != "."
    assert len(command.help) <= 70
    assert list(inspect.signature(command.load()).parameters) == ["args", "context"]


@pytest.mark.parametrize("command", COMMANDS, ids=every)
def test_the_example_of_a_command_can_be_typed(command: Command) -> None:
    program, *words = shlex.split(command.example)
    assert program == "sewalong"
    assert build().parse_args(words).command == command.name


@pytest.mark.parametrize("command", COMMANDS, ids=every)
def test_the_help_of_a_command_explains_its_arguments(command: Command, desk: Desk) -> None:
    said = desk.ok(command.name, "--help")
    assert command.example in " ".join(said.out.split())
    assert f"usage: sewalong {command.name}" in said.out
    assert ("--json" in said.out) == command.json
    assert "\x1b" not in said.out


def test_the_version_is_printed(desk: Desk) -> None:
    assert desk.ok("--version").out == f"sewalong {__version__}\n"

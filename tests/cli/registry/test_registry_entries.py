"""Every command is one entry: it is found by its words, explained, and has a function to run."""

from __future__ import annotations

import inspect
from typing import TYPE_CHECKING

import pytest

from sewalong.cli.frame.parser import parser_of
from sewalong.cli.frame.run import function_of
from sewalong.cli.registry import index
from sewalong.cli.registry.command import Command

if TYPE_CHECKING:
    from tests.cli.conftest import Desk

COMMANDS = index.commands()
RECKONERS = index.reckoners()


def every(command: Command) -> str:
    return command.name


def letters(text: str) -> str:
    return "".join(filter(str.isalnum, text))


def test_the_index_names_each_command_of_each_file_in_order() -> None:
    assert [one.name for one in COMMANDS] == [n for names in index.COMMANDS.values() for n in names]
    named = [f"reckon {name}" for names in index.RECKONED.values() for name in names]
    assert [one.name for one in RECKONERS] == named


def test_no_word_leads_to_two_places() -> None:
    words = [one.name for one in COMMANDS] + list(index.SEVERAL)
    for names in index.RECKONED.values():
        for name, others in names.items():
            words += [name, *others]
    assert len(set(words)) == len(words)


def test_what_is_used_weekly_are_commands() -> None:
    assert set(index.WEEKLY) <= {one.name for one in COMMANDS}


def test_a_word_for_several_things_names_things_that_are_reckoned() -> None:
    named = {name for names in index.SEVERAL.values() for name in names}
    assert named <= {name for names in index.RECKONED.values() for name in names}


@pytest.mark.parametrize("command", COMMANDS + RECKONERS, ids=every)
def test_a_command_has_words_and_a_function(command: Command) -> None:
    assert command.help
    assert command.help[-1] != "."
    assert len(command.help) <= 70
    assert list(inspect.signature(function_of(command)).parameters) == ["args", "context"]


@pytest.mark.parametrize("command", COMMANDS + RECKONERS, ids=every)
def test_the_help_of_a_command_explains_its_arguments(command: Command, desk: Desk) -> None:
    said = desk.ok(*command.name.split(), "--help")
    text = " ".join(said.out.split())
    assert command.example in text
    assert f"usage: sewalong {command.name}" in said.out
    assert ("--json" in said.out) == command.json
    assert "\x1b" not in said.out
    for argument in command.arguments:
        assert argument.help
        assert letters(argument.help) in letters(text), "whatever lines it is broken into"


@pytest.mark.parametrize("command", COMMANDS + RECKONERS, ids=every)
def test_help_with_a_command_is_its_own_help(command: Command, desk: Desk) -> None:
    words = command.name.split()
    assert desk.ok("help", *words).out == desk.ok(*words, "--help").out


@pytest.mark.parametrize("command", COMMANDS + RECKONERS, ids=every)
def test_no_two_arguments_of_a_command_share_a_name(command: Command) -> None:
    names = [argument.name for argument in command.arguments]
    assert len(set(names)) == len(names)
    assert parser_of(command).prog == f"sewalong {command.name}"

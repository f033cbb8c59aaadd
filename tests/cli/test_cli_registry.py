"""Every command is documented, can be loaded, and does what its example shows."""

from __future__ import annotations

import inspect
import shlex
from typing import TYPE_CHECKING

import pytest

from sewalong import __version__
from sewalong.cli.frame.command import Verb
from sewalong.cli.frame.parser import build
from sewalong.cli.registry.commands import GROUPS, VERBS

if TYPE_CHECKING:
    from tests.cli.conftest import Desk


def every(verb: Verb) -> str:
    return verb.name


def test_no_two_commands_share_a_name() -> None:
    names = [verb.name for verb in VERBS]
    assert len(set(names)) == len(names)


def test_the_help_names_every_command_with_its_words(desk: Desk) -> None:
    out = desk.ok("--help").out
    for verb in VERBS:
        assert any(
            line.split()[:1] == [verb.name] and verb.help in line for line in out.splitlines()
        )


@pytest.mark.parametrize("verb", VERBS, ids=every)
def test_a_command_has_words_a_group_and_a_function(verb: Verb) -> None:
    assert verb.group in GROUPS
    assert verb.help
    assert verb.help[-1] != "."
    assert len(verb.help) <= 70
    assert list(inspect.signature(verb.load()).parameters) == ["args", "here"]


@pytest.mark.parametrize("verb", VERBS, ids=every)
def test_the_example_of_a_command_can_be_typed(verb: Verb) -> None:
    program, *words = shlex.split(verb.example)
    assert program == "sewalong"
    assert build().parse_args(words).command == verb.name


@pytest.mark.parametrize("verb", VERBS, ids=every)
def test_the_help_of_a_command_explains_its_arguments(verb: Verb, desk: Desk) -> None:
    said = desk.ok(verb.name, "--help")
    assert verb.example in " ".join(said.out.split())
    assert f"usage: sewalong {verb.name}" in said.out
    assert ("--json" in said.out) == verb.json
    assert "\x1b" not in said.out


def test_the_version_is_printed(desk: Desk) -> None:
    assert desk.ok("--version").out == f"sewalong {__version__}\n"

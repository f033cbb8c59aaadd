"""Every line of a plain command is one plain fact: no bracket packs several, no sentence is glued
to the next. A screen reader reads a bracket as part of the sentence, and three facts in one are
lost on whoever hears them."""

from __future__ import annotations

import re
import shlex
from collections.abc import Iterator, Mapping

import pytest

from sewalong.cli.registry.command import Command
from sewalong.cli.registry.index import commands, reckoners
from sewalong.quilt.worksheet.one_fact import apart
from tests.cli.conftest import Desk
from tests.cli.registry.test_registry_examples import BEFORE, nothing

IN_BRACKETS = re.compile(r"\(([^()]*)\)")
MOST_SIGNS = 1
"""Commas and semicolons in one bracket: "(2 Nov 2026, 20:15)" has one."""

NO_WORDS: Mapping[str, str] = {
    "completion": "it prints a script for a shell",
    "quilt-file": "it prints a file, with what the owner wrote",
    "export": "it prints or writes a file",
    "methods": "a method file is printed as it is",
    "new": "it asks, and says nothing that was not typed",
}
"""Commands whose output is no report, each with why."""

WRITTEN_BY_HER: Mapping[str, str] = {
    "About: ": "her own words about the quilt",
    "Noted: ": "a note of hers",
    **dict.fromkeys(
        (
            "You wrote: ",
            "Laid aside: ",
            "Note: ",
            "First note: ",
            "Last note: ",
            "Spoiled: ",
            "Put away: ",
            "Machine: ",
            "Tested by: ",
            "Press: ",
        ),
        "facts of coming back that hold words of hers",
    ),
    "Settings: ": "settings as she wrote them",
}
"""Beginnings of lines that hold what a person wrote, which is told as it is."""


def packed(line: str) -> Iterator[str]:
    """What is wrong with a line, in words."""
    if line.startswith(tuple(WRITTEN_BY_HER)):
        return
    for bracket in IN_BRACKETS.findall(line):
        if sum(bracket.count(sign) for sign in ",;") > MOST_SIGNS:
            yield f"several facts in a bracket: {line}"
    numbered = re.sub(r"^\d+\. ", "", line)
    if len(apart(numbered)) > 1:
        yield f"several sentences: {line}"


def test_the_rule_bites() -> None:
    assert not list(packed("Last touched: today (2 Nov 2026, 20:15)."))
    assert not list(packed("1. Gate Post: in progress."))
    assert list(packed("buy: 3 yd (105 in of cloth, 2.92 yd: buy 3 yd, 3 in slack)"))
    assert list(packed("Session 1 closed. Next time: press"))
    assert list(packed("Next: 4 stacks wait; 2 to go."))


@pytest.mark.usefixtures("utc")
@pytest.mark.parametrize("command", commands() + reckoners(), ids=lambda command: command.name)
def test_what_its_example_prints_is_one_fact_a_line(command: Command, desk: Desk) -> None:
    if command.name in NO_WORDS:
        return
    desk.monkeypatch.chdir(desk.folder)
    file = desk.file("my-quilt.toml")
    if command.name != "start":
        desk.ok("start", file)
    BEFORE.get(command.name, nothing)(desk)
    words = shlex.split(command.example)[1:]
    said = desk.ok(*(word for word in words if word != "--json"))
    assert [trouble for line in said.lines for trouble in packed(line)] == []


LOOKS = (
    "status",
    "places",
    "forecast",
    "pace",
    "proof",
    "join",
    "tonight 60",
    "plan",
    "layouts",
    "plan --told",
    "fabrics",
    "contrast",
    "sets --next",
)


@pytest.mark.usefixtures("utc")
@pytest.mark.parametrize("look", LOOKS)
def test_what_is_told_of_every_demo_quilt_is_one_fact_a_line(look: str, desk: Desk) -> None:
    listed = desk.ok("demo", "--list", "--json").data["quilts"]
    assert len(listed) > 4
    for one in listed:
        said = desk.run(*look.split(), "--demo", "--quilt", str(one["number"]))
        assert said.status == 0, said.err
        assert [trouble for line in said.lines for trouble in packed(line)] == []

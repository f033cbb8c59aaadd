"""The example in the help of every command does what it says, at a desk where it makes sense."""

from __future__ import annotations

import io
import shlex
import shutil
from collections.abc import Callable

import pytest

from sewalong.cli.registry.command import Command
from sewalong.cli.registry.index import commands, reckoners
from tests.cli.conftest import Desk


def count(desk: Desk, **stages: int) -> None:
    """Counts so many at each stage named, a minute for each, cautions read."""
    for stage, n in stages.items():
        desk.wait(minutes=n)
        desk.ok("count", stage.replace("_", "-"), str(n), "--caution-read")


def four_patches(desk: Desk) -> None:
    """All sixteen four-patches are sewn, the first of them pressed."""
    count(desk, pair=32, sew=16, press=6)


def sewn(desk: Desk) -> None:
    """Sixteen four-patches are sewn, none pressed."""
    count(desk, pair=32, sew=16)


def stacks(desk: Desk) -> None:
    """Eight stacks are pinned, the first two of them sewn around."""
    count(desk, pair=32, sew=16, press=16, stack=8)
    desk.ok("go-on", "sew-around")
    count(desk, sew_around=2)


def units(desk: Desk) -> None:
    """The first sixteen units are pressed open."""
    stacks(desk)
    count(desk, sew_around=2, cut_twice=4, press_open=16)


def rows(desk: Desk) -> None:
    """Two rows are sewn."""
    stacks(desk)
    count(desk, sew_around=6, cut_twice=8, press_open=32, sew_rows=2)


def ironed(desk: Desk) -> None:
    """Machine and iron were used."""
    count(desk, pair=8, sew=4, press=2)


def exported(desk: Desk) -> None:
    """The quilt is in a file, and nothing was ever begun here."""
    desk.ok("export", "my-quilt.json")
    shutil.rmtree(desk.folder / "home")


def undone(desk: Desk) -> None:
    four_patches(desk)
    desk.ok("undo")


def laid_aside(desk: Desk) -> None:
    desk.ok("lay-aside")


def answered(desk: Desk) -> None:
    """Every usual answer is taken."""
    desk.monkeypatch.setattr("sys.stdin", io.StringIO("\n" * 12))


def colour_piles(desk: Desk) -> None:
    """Lights and darks, of which sets can be made."""
    desk.ok("fabrics", "--say", "lights 32, darks 32")


def sets_accepted(desk: Desk) -> None:
    """Sets of lights and darks, so that the units are known."""
    colour_piles(desk)
    desk.ok("sets", "--seconds", "1", "--accept")


def nothing(desk: Desk) -> None:
    """A quilt begun is enough."""


BEFORE: dict[str, Callable[[Desk], None]] = {
    "new": answered,
    "count": stacks,
    "unpick": stacks,
    "undo": four_patches,
    "redo": undone,
    "close": ironed,
    "answer": ironed,
    "spoil": units,
    "recount": four_patches,
    "put-away": stacks,
    "measure": units,
    "proof": four_patches,
    "go-on": stacks,
    "bobbin": sewn,
    "begun": units,
    "join": rows,
    "forecast": four_patches,
    "tonight": four_patches,
    "pace": four_patches,
    "stage": four_patches,
    "pick-up": laid_aside,
    "import": exported,
    "sets": colour_piles,
    "wall": sets_accepted,
}
"""What was done before; nothing but beginning the quilt where a command is not named."""


@pytest.mark.usefixtures("utc")
@pytest.mark.parametrize("command", commands() + reckoners(), ids=lambda command: command.name)
def test_the_example_runs(command: Command, desk: Desk) -> None:
    desk.monkeypatch.chdir(desk.folder)
    file = desk.file("my-quilt.toml")
    if command.name != "start":
        desk.ok("start", file)
    BEFORE.get(command.name, nothing)(desk)
    before = desk.record()
    program, *words = shlex.split(command.example)
    assert program == "sewalong"
    assert words[: len(command.name.split())] == command.name.split()
    said = desk.ok(*words)
    assert said.out.strip()
    assert (desk.record() != before) == (command.name in KEEPS), "it keeps what it says it keeps"


KEEPS = {
    "count", "unpick", "undo", "redo", "close", "answer", "spoil", "find", "recount", "put-away",
    "measure", "trim", "go-on", "bobbin", "press", "begun", "join", "note", "settings", "changed",
    "alter", "fabrics", "stage", "target", "lay-aside", "pick-up", "done", "new", "start", "import",
}  # fmt: skip
"""Commands that write something into the record; the others only look."""


def test_every_place_an_example_begins_at_belongs_to_a_command() -> None:
    names = {command.name for command in commands()}
    assert set(BEFORE) <= names
    assert names >= KEEPS


def test_an_example_stands_on_one_line_of_the_help_and_can_be_copied() -> None:
    for command in (*commands(), *reckoners()):
        assert len(f"Example: {command.example}") <= 78, command.name

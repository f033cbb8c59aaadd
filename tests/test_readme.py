"""What the README says is true: its commands exist, its example is a quilt, its keys are keys."""

from __future__ import annotations

import os
import re
import shlex
import subprocess
import sys
from datetime import UTC, datetime
from pathlib import Path

import pytest

from sewalong.cli.frame.context import Context
from sewalong.cli.frame.run import run
from sewalong.cli.registry import index
from sewalong.quilt.file.reader import read_quilt
from sewalong.screens.widgets.keys import SEWING_KEYS

README = (Path(__file__).parent.parent / "README.md").read_text(encoding="utf-8")


@pytest.mark.parametrize("name", index.WEEKLY)
def test_every_weekly_command_stands_in_the_readme_with_its_help(name: str) -> None:
    command = index.command(name)
    assert command is not None
    assert f"- `{name}`: {command.help}" in README


def test_no_command_in_the_list_is_gone() -> None:
    listed = re.findall(r"^- `([a-z-]+)`: ", README, flags=re.MULTILINE)
    assert listed == list(index.WEEKLY)
    assert "`sewalong help all` lists all" in README


def test_commands_named_in_the_text_are_commands() -> None:
    named = re.findall(r"`sewalong ([a-z][a-z -]*)", README)
    assert "help all" in named
    for words in named:
        first, *behind = words.split()
        if first == "reckon" and behind:
            assert index.reckoned_as(behind[0]) == behind[0]
        else:
            assert first == "help" or index.command(first) is not None


def test_the_quilt_in_the_readme_can_be_begun() -> None:
    example, *settings = re.findall(r"```toml\n(.*?)```", README, flags=re.DOTALL)
    quilt = read_quilt(example)
    assert quilt.units_for(quilt.target) == 56
    assert [read_quilt(f"{example}\n{one}").is_on_point for one in settings] == [False, True]


def test_what_happens_if_is_proved_by_tests_that_are_there() -> None:
    rows = re.findall(r"^\| .*\| `(tests/[\w/]+\.py)` +\|$", README, flags=re.MULTILINE)
    assert len(rows) == 10
    for file in rows:
        assert "def test_" in (Path(__file__).parent.parent / file).read_text(encoding="utf-8")


def test_the_keys_named_in_the_readme_are_keys() -> None:
    section = README.split("## In the app")[1].split("## Plain commands")[0]
    named = set(re.findall(r"`([a-z?,.+-])`", section))
    caps = {key.cap for key in SEWING_KEYS}
    assert named <= caps
    assert {cap for cap in caps if len(cap) == 1} <= named


def test_the_readme_opens_with_the_job() -> None:
    first = README.split("\n\n")[1].replace("\n", " ")
    for word in ("squares", "units", "evenings", "presser foot", "on disk", "iron"):
        assert word in first
    assert "makers' instructions" in README


@pytest.mark.parametrize(
    "drawn", ["goldens/counted-80x24.txt", "goldens_of_the_wall/a-wall-80x24.txt"]
)
def test_a_screen_in_the_readme_is_the_one_that_is_drawn(drawn: str) -> None:
    golden = Path(__file__).parent / "screens" / drawn
    assert f"```text\n{golden.read_text(encoding='utf-8').rstrip()}\n```" in README


def test_the_steps_in_plain_lines_run_as_written(tmp_path: Path) -> None:
    section = README.split("## Begin, count, come back")[1].split("## Your own quilt")[0]
    steps = re.findall(r"```sh\n(.*?)```", section, flags=re.DOTALL)
    (lines,) = (step.splitlines() for step in steps)
    said = []
    for line in lines:
        words = shlex.split(line)
        assert words[0] == "sewalong"
        done = subprocess.run(
            [sys.executable, "-m", "sewalong", *words[1:]],
            # Every usual answer is taken.
            input="\n" * 20,
            env={**os.environ, "SEWALONG_HOME": str(tmp_path)},
            capture_output=True,
            text=True,
            check=False,
        )
        assert done.returncode == 0, f"{line}\n{done.stdout}{done.stderr}"
        said.append(done.stdout)
    begun, counted, closed, status = said
    assert "Begun: " in begun
    assert "Counted 12 pairs." in counted
    assert "the pairs of the rain prints first" in closed + status
    assert "Pick up" in status or "Next:" in status


def test_the_lines_about_cloth_and_wall_run_as_written(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setenv("SEWALONG_HOME", str(tmp_path / "home"))
    monkeypatch.chdir(tmp_path)
    file = tmp_path / "quilt.toml"
    file.write_text(OF_176_SQUARES, encoding="utf-8")
    context = Context(clock=lambda: datetime(2026, 11, 2, 20, 15, tzinfo=UTC), interactive=False)
    assert run(["start", str(file)], context) == 0
    section = README.split("## Cloth")[1].split("## As you like it")[0]
    lines = "".join(re.findall(r"```sh\n(.*?)```", section, flags=re.DOTALL))
    capsys.readouterr()
    for line in lines.splitlines():
        program, *words = shlex.split(line)
        assert program == "sewalong"
        assert run(words, context) == 0, f"{line}\n{capsys.readouterr().err}"
    told = capsys.readouterr().out
    for said in (
        "Accepted 21 sets, light on dark.",
        "Set 1 of 21",
        "Swapped squares in sets 7 and 9.",
        "Laid on the wall, as proposed: ",
        "Row 3, ",
    ):
        assert said in told


OF_176_SQUARES = """\
name = "Sedge and sand"
method = "stacked-four-patch"
notes = "Invented for a test."
[squares]
size = "5"
count = 176
[layout]
rows = 9
columns = 9
"""

"""Whatever is typed behind `wall`, it is carried out or refused in a sentence, on a wall or on none."""

from __future__ import annotations

import os
from collections.abc import Iterator
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from sewalong.cli.registry import wall
from tests.cli.conftest import Desk
from tests.cli.wall.conftest import MAZE
from tests.fabrics.photo.made_photos import Scene, laid

(COMMAND,) = wall.COMMANDS
OPTIONS = [
    one.name
    for one in COMMAND.arguments
    # How long is looked for is drawn in no test: it is waited for.
    if one.name.startswith("-") and one.name not in ("--seconds", "--demo")
]
WORDS = st.one_of(
    st.sampled_from(
        ["swap", "turn", "spare", "out", "lock", "unlock", "exchange", "turn-row", "clear", "mend",
         "order", "1.1", "2·3", "1.1/2", "9.9", "0.0", "R1", "R4", "2R", "B", "7/2", "1/1/3", "1", "0", "-1",
         "99", "points", "seams", "apart", "rings", "none", "A", "1.1=7/2", "1.1=nothing", "1.1/1=A",
         "wall.txt", "floor.png", ".", "-", "", ",", "\x1b[2J", "\udcff", "½"]
    ),
    st.sampled_from([*OPTIONS, "--json", "--look", "--accept"]),
    st.text(max_size=8),
)  # fmt: skip


@pytest.fixture
def floor(maze: Desk, monkeypatch: pytest.MonkeyPatch) -> Iterator[Desk]:
    """A wall, a file of one and a photograph beside it, and nobody to ask."""
    monkeypatch.chdir(maze.folder)
    monkeypatch.delenv("SEWALONG_TRACE", raising=False)
    Path("wall.txt").write_text("\n".join(MAZE.split(" / ")), encoding="utf-8")
    Path("floor.png").write_bytes(Scene(squares=laid(4, 5), size=(140, 140)).file())
    with open(os.devnull, encoding="utf-8") as nothing:
        monkeypatch.setattr("sys.stdin", nothing)
        yield maze


@settings(
    max_examples=250, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture]
)
@given(words=st.lists(WORDS, max_size=5))
def test_any_line_is_carried_out_or_refused_in_a_sentence(floor: Desk, words: list[str]) -> None:
    said = floor.run("wall", *words)
    assert said.status in (0, 2), (words, said.err)
    assert "fault in sewalong itself" not in said.err, words
    assert "\x1b" not in said.out + said.err
    assert said.err or said.out, words
    assert said.status == 0 or not said.out, words
    if said.status == 0:
        assert floor.run("wall").status == 0
        assert floor.run("status").status == 0


def test_names_that_are_meant_to_do_harm_are_shown_as_typed(begun: Desk) -> None:
    begun.ok("fabrics", "--say", "[red]moss[/] 32, [/] 32")
    begun.ok("sets", "--seconds", "1", "--accept")
    begun.ok("wall", "--propose", "--seconds", "1", "--accept")
    assert "A [red]moss[/]" in begun.ok("wall", "--row", "1").out

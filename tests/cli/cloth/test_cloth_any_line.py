"""Whatever is typed behind `fabrics`, `contrast` and `sets`, it is carried out or refused in a
sentence, and one fact a line, with sets laid and without."""

from __future__ import annotations

import os
import re
from collections.abc import Iterator
from functools import partial
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from sewalong.cli.registry import cloth
from sewalong.fabrics.sets.proposing import proposed
from sewalong.service import set_proposals
from tests.cli.conftest import Desk
from tests.fabrics.photo.made_photos import Scene, laid

WORDS = st.one_of(
    st.sampled_from(
        ["A", "H", "B,C", "rust dots", "rust dots 4", "lights 30", "A 0", "A 9 #a05", "navy 3 dark",
         "#a0522d", "navy", "tan", "", ",", "2x2", "2x3", "9x9", "1,1", "pack.png", "sheet.png", "top.svg",
         ".", "1:1 2:2", "9:9 1:1", "1: A B C D E F G H", "2:", "1", "8", "0", "-1", "99", "pair",
         "sew", "scrappy", "one background", "green", "2.1", "2·1", "\x1b[2J", "\udcff", "½"]
    ),
    st.text(max_size=8),
)  # fmt: skip


@st.composite
def lines(draw: st.DrawFn) -> list[str]:
    command = draw(st.sampled_from(cloth.COMMANDS))
    # How long is looked for is drawn in no test: it is waited for.
    options = [
        one.name
        for one in command.arguments
        if one.name.startswith("-") and one.name not in ("--seconds", "--demo")
    ]
    word = WORDS | st.sampled_from([*options, "--json"])
    return [command.name, *draw(st.lists(word, max_size=6))]


@pytest.fixture
def table(drawer: Desk, monkeypatch: pytest.MonkeyPatch) -> Iterator[Desk]:
    """A desk with fabrics, a photograph beside it, and nobody to ask; looks are short."""
    monkeypatch.chdir(drawer.folder)
    monkeypatch.delenv("SEWALONG_TRACE", raising=False)
    monkeypatch.setattr(set_proposals, "proposed", partial(proposed, looks=1))
    Path("pack.png").write_bytes(Scene(squares=laid(2, 2), size=(140, 140)).file())
    with open(os.devnull, encoding="utf-8") as nothing:
        monkeypatch.setattr("sys.stdin", nothing)
        yield drawer


@settings(
    max_examples=250, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture]
)
@given(argv=lines())
def test_any_line_is_carried_out_or_refused_in_a_sentence(table: Desk, argv: list[str]) -> None:
    said = table.run(*argv)
    assert said.status in (0, 2), (argv, said.err)
    assert "fault in sewalong itself" not in said.err, argv
    assert "\x1b" not in said.out + said.err
    assert said.err or said.out, argv
    assert said.status == 0 or not said.out, argv
    if said.status == 0:
        assert table.run("sets").status in (0, 2)
        assert table.run("status").status == 0


def test_what_the_commands_tell_is_the_same_every_time(chosen: Desk) -> None:
    for words in (
        ["fabrics"],
        ["contrast"],
        ["contrast", "--set", "1"],
        ["sets"],
        ["sets", "--next"],
    ):
        before = chosen.record()
        assert chosen.ok(*words).out == chosen.ok(*words).out
        assert chosen.ok(*words, "--json").out == chosen.ok(*words, "--json").out
        assert chosen.record() == before


@pytest.mark.usefixtures("utc")
def test_every_line_is_one_fact(chosen: Desk) -> None:
    from tests.cli.test_one_fact_a_line import packed

    for words in (
        ["fabrics"], ["fabrics", "--say", "A 12, gift 4"], ["contrast"], ["contrast", "A", "D", "E"],
        ["contrast", "--set", "1"], ["sets"], ["sets", "--next"], ["sets", "--with", "A"],
        ["sets", "--lock", "2"], ["sets", "--anew"], ["sets", "--anew", "--rule", "scrappy"],
        ["sets", "--swap", "1:1 2:2"], ["sets", "--anew", "--rule", "one background", "--background", "A"],
        ["sets", "--anew", "--rule", "light on dark"], ["sets", "--anew", "--rule", "by colour"],
    ):  # fmt: skip
        said = chosen.ok(*words)
        assert [trouble for line in said.lines for trouble in packed(line)] == [], words
        assert all(re.match(r"[A-Za-z0-9#0-9]", line) for line in said.lines)


def test_names_that_are_meant_to_do_harm_are_shown_as_typed(begun: Desk) -> None:
    begun.ok("fabrics", "--say", "[red]moss[/] 32, [/] 32")
    assert "A [red]moss[/]" in begun.ok("fabrics").out
    assert "B [/]" in begun.ok("sets").out

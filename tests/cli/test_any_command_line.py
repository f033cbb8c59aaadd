"""Whatever is typed behind `sewalong`, it is carried out or refused in a sentence."""

from __future__ import annotations

import os
from collections.abc import Iterator
from datetime import UTC, datetime
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from sewalong.cli.frame.context import Context
from sewalong.cli.frame.run import run
from sewalong.cli.registry import index
from sewalong.cli.registry.command import Command
from tests.cli.conftest import QUILT_FILE

NOT_TRIED = {"open", "demo", "restore"}
"""They open the app, make the demo quilts, or put another record in the place of the one tried on;
each has tests of its own."""

COMMANDS = [
    one for one in (*index.commands(), *index.reckoners()) if one.name.split()[0] not in NOT_TRIED
]
WORDS = st.one_of(
    st.sampled_from(
        ["pair", "square", "sew", "1", "2", "0", "-1", "3", "1000000000000", "5 1/4", "2.5 cm", "60 x 80",
         "iron", "yes", "no", "quilt.toml", "out.json", "-", "--", ".", "Gate Post", "x",
         "1/0", "½", "NaN", "1e9", "0.1", "60", "80", "inch", "cm", "\u200b", "\x1b[2J", "\udcff", ""]
    ),
    st.text(max_size=12),
)  # fmt: skip


def options(command: Command) -> list[str]:
    named = [one.name for one in command.arguments if one.name.startswith("-")]
    return [*named, "--json", "--help", "--nothing"]


@st.composite
def lines(draw: st.DrawFn) -> list[str]:
    command = draw(st.sampled_from(COMMANDS))
    word = WORDS | st.sampled_from(options(command))
    return [*command.name.split(), *draw(st.lists(word, max_size=6))]


@pytest.fixture
def desk_of_its_own(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[Context]:
    """A folder to stand in, a record with a quilt, and nobody to ask."""
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("SEWALONG_HOME", str(tmp_path / "home"))
    monkeypatch.delenv("SEWALONG_TRACE", raising=False)
    Path("quilt.toml").write_text(QUILT_FILE, encoding="utf-8")
    with open(os.devnull, encoding="utf-8") as nothing:
        monkeypatch.setattr("sys.stdin", nothing)
        now = datetime(2026, 11, 2, 20, 15, tzinfo=UTC)
        context = Context(clock=lambda: now, interactive=False)
        assert run(["start", "quilt.toml"], context) == 0
        yield context


@settings(
    max_examples=400, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture]
)
@given(argv=lines())
def test_any_line_is_carried_out_or_refused_in_a_sentence(
    desk_of_its_own: Context, capsys: pytest.CaptureFixture[str], argv: list[str]
) -> None:
    status = run(argv, desk_of_its_own)
    said = capsys.readouterr()
    assert status in (0, 2), (argv, said.err)
    assert "fault in sewalong itself" not in said.err
    assert "Traceback" not in said.err
    assert "\x1b" not in said.out + said.err
    assert status == 0 or said.err or said.out, argv
    if status == 0:
        assert run(["status"], desk_of_its_own) == 0


@settings(
    max_examples=200, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture]
)
@given(argv=st.lists(WORDS | st.sampled_from(["help", "reckon", "count", "-h", "--version"])))
def test_any_words_at_all(
    desk_of_its_own: Context, capsys: pytest.CaptureFixture[str], argv: list[str]
) -> None:
    status = run(argv, desk_of_its_own)
    said = capsys.readouterr()
    assert status in (0, 2), (argv, said.err)
    assert "fault in sewalong itself" not in said.err

"""A home of its own for every test, and one way to run a command that works numbers out."""

from __future__ import annotations

import json
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path
from typing import Any

import pytest

from sewalong.cli.frame.context import Context
from sewalong.cli.frame.run import run

NOW = datetime(2026, 11, 2, 20, 15, tzinfo=UTC)


@dataclass(frozen=True)
class Answer:
    """What a command printed, and its exit status."""

    status: int
    out: str
    err: str

    @property
    def data(self) -> Any:
        """The answer as JSON."""
        return json.loads(self.out)


Ask = Callable[..., Answer]

Case = tuple[str, str, str, list[str]]
"""A published source, its problem, the command line for it, and what the answer must hold."""


def each_of(cases: Sequence[Case]) -> pytest.MarkDecorator:
    """Runs a test for each case, under the name of its problem."""
    return pytest.mark.parametrize("case", cases, ids=[case[1] for case in cases])


def gives(ask: Ask, case: Case) -> None:
    """Checks that the command line answers the problem with every part of the answer."""
    source, problem, line, parts = case
    answer = ask(line)
    assert answer.status == 0, answer.err
    missing = [part for part in parts if part not in answer.out]
    assert not missing, f"{problem} ({source}): {missing} not in\n{answer.out}"


@pytest.fixture
def ask(tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch) -> Ask:
    """Runs a command line given as one text, or as words where one of them has spaces in it."""
    monkeypatch.setenv("SEWALONG_HOME", str(tmp_path / "home"))

    def asked(*words: str) -> Answer:
        argv = words[0].split() if len(words) == 1 else list(words)
        capsys.readouterr()
        status = run(argv, Context(clock=lambda: NOW, interactive=False))
        out, err = capsys.readouterr()
        return Answer(status, out, err)

    return asked

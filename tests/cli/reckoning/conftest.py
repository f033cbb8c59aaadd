"""A home of its own for every test, and one way to run a command that works numbers out."""

from __future__ import annotations

import json
from collections.abc import Callable
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

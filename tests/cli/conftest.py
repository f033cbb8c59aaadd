"""A home of its own for every test, a clock that stands still, and one way to run a command."""

from __future__ import annotations

import io
import json
import time
from collections.abc import Iterator
from dataclasses import dataclass, field
from datetime import UTC, datetime, timedelta
from pathlib import Path
from typing import Any

import pytest

from sewalong.cli.frame.context import Context
from sewalong.cli.frame.run import run

QUILT_FILE = """\
name = "Gate Post"
method = "stacked-four-patch"
notes = "Invented for a test."

[squares]
size = "4 1/2"
count = 64

[layout]
rows = 5
columns = 6
"""


@dataclass
class Said:
    """What a command printed, and its exit status."""

    status: int
    out: str
    err: str

    @property
    def lines(self) -> list[str]:
        return self.out.splitlines()

    @property
    def data(self) -> Any:
        return json.loads(self.out)


@dataclass
class Desk:
    """Runs commands at a time of the test's choosing; `typed` is what a person types."""

    folder: Path
    capsys: pytest.CaptureFixture[str]
    monkeypatch: pytest.MonkeyPatch
    now: datetime = field(default=datetime(2026, 11, 2, 20, 15, tzinfo=UTC))

    def wait(self, **length: float) -> None:
        self.now += timedelta(**length)

    def run(self, *argv: str, typed: str | None = None) -> Said:
        if typed is not None:
            self.monkeypatch.setattr("sys.stdin", io.StringIO(typed))
        self.capsys.readouterr()
        status = run(list(argv), Context(clock=lambda: self.now, interactive=typed is not None))
        out, err = self.capsys.readouterr()
        return Said(status, out, err)

    def ok(self, *argv: str, typed: str | None = None) -> Said:
        said = self.run(*argv, typed=typed)
        assert said.status == 0, said.err
        return said

    def refused(self, *argv: str, typed: str | None = None) -> Said:
        """Run what must be refused: status 2, a sentence, no traceback, nothing changed."""
        before = self.record()
        said = self.run(*argv, typed=typed)
        assert said.status == 2
        assert said.err.strip()
        assert "Traceback" not in said.err
        assert self.record() == before
        return said

    def file(self, name: str, text: str = QUILT_FILE) -> str:
        path = self.folder / name
        path.write_text(text, encoding="utf-8")
        return str(path)

    def record(self) -> bytes | None:
        path = self.folder / "home" / "quilts.db"
        return path.read_bytes() if path.exists() else None

    def status(self) -> Any:
        return self.ok("status", "--json").data


@pytest.fixture
def desk(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> Desk:
    """A desk with nothing on it."""
    monkeypatch.setenv("SEWALONG_HOME", str(tmp_path / "home"))
    return Desk(tmp_path, capsys, monkeypatch)


@pytest.fixture
def begun(desk: Desk) -> Desk:
    """A desk with one quilt begun: 64 squares, 32 units possible, 5 × 6 wanted."""
    desk.ok("start", desk.file("gate-post.toml"))
    return desk


@pytest.fixture
def utc(monkeypatch: pytest.MonkeyPatch) -> Iterator[None]:
    """Local time is UTC, so that printed times are known."""
    with monkeypatch.context() as patch:
        patch.setenv("TZ", "UTC")
        time.tzset()
        yield
    time.tzset()

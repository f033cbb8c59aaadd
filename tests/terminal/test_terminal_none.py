"""Where there is no terminal to draw on, the quilt is told in plain words."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pexpect
import pytest

from tests.progress import every_act as c
from tests.terminal.terminal import PATIENCE, begin_a_quilt, surroundings


@pytest.fixture
def home(tmp_path: Path) -> Path:
    begin_a_quilt(tmp_path / "home", c.Count("pair", 6))
    return tmp_path / "home"


def test_piped_the_plain_status_is_printed(home: Path) -> None:
    told = subprocess.run(
        [sys.executable, "-m", "sewalong"],
        env=surroundings(home),
        stdin=subprocess.DEVNULL,
        capture_output=True,
        text=True,
        timeout=PATIENCE,
        check=False,
    )
    assert told.returncode == 0
    assert "Window seat" in told.stdout
    assert "6" in told.stdout
    assert "needs a terminal" in told.stderr
    assert "\x1b" not in told.stdout + told.stderr


def test_with_stderr_in_a_file_nothing_is_drawn_into_it(home: Path) -> None:
    errors = home / "errors.txt"
    shell = pexpect.spawn(
        "/bin/sh",
        ["-c", f"{sys.executable} -m sewalong 2>{errors}"],
        env=dict(surroundings(home)),
        timeout=PATIENCE,
        encoding="utf-8",
    )
    shell.expect_exact(pexpect.EOF)
    shell.close()
    assert shell.exitstatus == 0
    assert "Window seat" in str(shell.before)
    written = errors.read_text()
    assert "needs a terminal" in written
    assert "\x1b" not in written


@pytest.mark.parametrize("more", [{}, {"NO_COLOR": "1"}], ids=["dumb", "dumb, without colour"])
def test_on_a_terminal_that_cannot_be_drawn_on_the_quilt_is_told_in_plain_words(
    home: Path, more: dict[str, str]
) -> None:
    app = pexpect.spawn(
        sys.executable,
        ["-m", "sewalong"],
        env=dict(surroundings(home, TERM="dumb", **more)),
        timeout=PATIENCE,
        encoding="utf-8",
    )
    app.expect_exact(pexpect.EOF)
    app.close()
    assert app.exitstatus == 0
    told = str(app.before)
    assert "needs a terminal" in told
    assert "Window seat" in told
    assert "Traceback" not in told
    assert "\x1b" not in told

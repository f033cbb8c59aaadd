"""Stopped and brought to the fore again, and a window that is shut, in tmux.

These need a shell with job control around the app. Where tmux is not installed they are
left out; the other tests of this folder need only a pseudo-terminal.
"""

from __future__ import annotations

import os
import shutil
import signal
import subprocess
import sys
import time
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest

from tests.terminal.terminal import BETWEEN_LOOKS, PATIENCE, begin_a_quilt, on_disk, surroundings

TMUX = shutil.which("tmux")
PROMPT = "ready> "

pytestmark = pytest.mark.skipif(TMUX is None, reason="tmux is not installed")


class Window:
    """A tmux server of its own with one window, in which a plain shell runs."""

    def __init__(self, folder: Path, home: Path) -> None:
        self._socket = str(folder / "tmux")
        self._home = home
        self.run("new-session", "-d", "-x", "80", "-y", "24", f"PS1='{PROMPT}' /bin/sh -i")
        self.run("set-option", "-g", "status", "off")

    def run(self, *arguments: str) -> str:
        """What a tmux command prints."""
        done = subprocess.run(
            [str(TMUX), "-S", self._socket, "-f", "/dev/null", *arguments],
            env={**surroundings(self._home), "ENV": ""},
            capture_output=True,
            text=True,
            timeout=PATIENCE,
            check=True,
        )
        return done.stdout

    @property
    def text(self) -> str:
        """What stands in the window, each run of spaces as one."""
        return "\n".join(
            " ".join(line.split()) for line in self.run("capture-pane", "-p").split("\n")
        )

    def line(self, command: str) -> None:
        """Type a command line into the shell."""
        self.run("send-keys", command, "Enter")

    def until(self, true: Callable[[], bool], what: str) -> None:
        """Look again and again until `true()`."""
        deadline = time.monotonic() + PATIENCE
        while not true():
            assert time.monotonic() < deadline, f"never came: {what}\n{self.text}"
            time.sleep(BETWEEN_LOOKS)

    def sees(self, *texts: str) -> None:
        """Look until all of `texts` stand in the window."""
        for text in texts:
            self.until(lambda text=text: text in self.text, text)  # type: ignore[misc]


@pytest.fixture
def home(tmp_path: Path) -> Path:
    begin_a_quilt(tmp_path / "home")
    return tmp_path / "home"


@pytest.fixture
def window(tmp_path: Path, home: Path) -> Iterator[Window]:
    window = Window(tmp_path, home)
    try:
        window.sees(PROMPT.strip())
        yield window
    finally:
        subprocess.run(
            [str(TMUX), "-S", str(tmp_path / "tmux"), "kill-server"], check=False, timeout=PATIENCE
        )


def process_of(window: Window) -> int:
    """The number of the process in the fore of the window's terminal: the app's."""
    shell = window.run("display-message", "-p", "#{pane_pid}").strip()
    fore = subprocess.run(
        ["ps", "-o", "tpgid=", "-p", shell], capture_output=True, text=True, check=True
    )
    return int(fore.stdout)


def is_there(process: int) -> bool:
    try:
        os.kill(process, 0)
    except ProcessLookupError:
        return False
    return True


def test_after_a_stop_and_fg_the_screen_is_drawn_anew(window: Window, home: Path) -> None:
    window.line(f"{sys.executable} -m sewalong")
    window.sees("pairs to go 0 of 200 done")
    window.run("send-keys", "Space")
    window.sees("pairs to go 1 of 200 done")
    os.kill(process_of(window), signal.SIGTSTP)
    window.sees(PROMPT.strip())
    assert "pairs to go" not in window.text
    window.line("fg")
    window.sees("Window seat", "pairs to go 1 of 200 done", "? all keys", "PAIR at the table")
    window.run("send-keys", "Space")
    window.sees("pairs to go 2 of 200 done")
    assert on_disk(home).done["pair"] == 2


def test_when_the_window_is_shut_the_app_ends_and_nothing_is_lost(
    window: Window, home: Path
) -> None:
    window.line(f"{sys.executable} -m sewalong")
    window.sees("pairs to go 0 of 200 done")
    window.run("send-keys", "9", "Enter")
    window.sees("pairs to go 9 of 200 done")
    process = process_of(window)
    assert is_there(process)
    window.run("kill-pane")
    window.until(lambda: not is_there(process), "the end of the app")
    assert on_disk(home).done["pair"] == 9

"""The app in a real pseudo-terminal, and what a person would see in it."""

from __future__ import annotations

import fcntl
import os
import pty
import re
import select
import struct
import subprocess
import sys
import termios
import time
from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager
from fractions import Fraction
from pathlib import Path

import pyte

import sewalong
from sewalong.lengths import Unit
from sewalong.progress.record.state import State
from sewalong.quilt.quilt import Quilt, StartPile, Target
from sewalong.service.open_quilt import OpenQuilt, local_now
from sewalong.store.home import FILE_NAME
from sewalong.store.library import Library
from tests.progress import every_act as c

ROOT = Path(sewalong.__file__).parents[1]
PATIENCE = 45.0
"""Seconds until something that should come about is given up: only reached when it fails."""

BETWEEN_LOOKS = 0.05
"""Seconds from one look to the next, so that looking costs little."""

ALTERNATE_SCREEN = (b"\x1b[?1049h", b"\x1b[?1049l")
CURSOR_HIDDEN = (b"\x1b[?25l", b"\x1b[?25h")


def begin_a_quilt(home: Path, *commands: c.Act) -> None:
    """An invented quilt in the record under `home`, with a session open since now."""
    home.mkdir(parents=True, exist_ok=True)
    library = Library(home / FILE_NAME, local_now())
    try:
        quilt = Quilt(
            name="Window seat",
            method_id="stacked-four-patch",
            unit=Unit.INCH,
            seam=Fraction(1, 4),
            starts=(StartPile("square", Fraction(5), 400),),
            target=Target(20, 10),
        )
        opened = OpenQuilt(library, library.add(quilt, local_now()))
        for command in (c.OpenSession(), *commands):
            opened.do(command)
    finally:
        library.close()


def on_disk(home: Path) -> State:
    """Where the quilt stands for somebody who opens the record now."""
    library = Library(home / FILE_NAME, local_now())
    try:
        return OpenQuilt(library, library.entries()[0]).state
    finally:
        library.close()


def surroundings(home: Path, **more: str) -> Mapping[str, str]:
    """The environment of the app: its own record, and nothing of the tester's terminal."""
    kept = {name: os.environ[name] for name in ("PATH", "HOME", "LANG") if name in os.environ}
    return {
        **kept,
        "PYTHONPATH": str(ROOT),
        "SEWALONG_HOME": str(home),
        "TERM": "xterm-256color",
        "LC_ALL": "C.UTF-8",
        "TEXTUAL_ANIMATIONS": "none",
        **more,
    }


class Terminal:
    """A running `python -m sewalong`, its screen, and everything it wrote."""

    def __init__(
        self, home: Path, size: tuple[int, int] = (80, 24), *, belongs: bool = True, **more: str
    ) -> None:
        width, height = size
        self.screen = pyte.Screen(width, height)
        self._stream = pyte.ByteStream(self.screen)
        self.written = b""
        # Our end, and the app's: kept open, so that the terminal is still there to look at
        # when the app has ended.
        self.ours, self.slave = pty.openpty()
        fcntl.ioctl(self.slave, termios.TIOCSWINSZ, struct.pack("HHHH", height, width, 0, 0))
        self.app = subprocess.Popen(
            [sys.executable, "-m", "sewalong"],
            cwd=str(home),
            env=surroundings(home, **more),
            stdin=self.slave,
            stdout=self.slave,
            stderr=self.slave,
            start_new_session=True,
            preexec_fn=self._make_it_the_terminal if belongs else None,
        )

    def _make_it_the_terminal(self) -> None:
        """In the app's process before it begins: this terminal is the one it belongs to."""
        fcntl.ioctl(self.slave, termios.TIOCSCTTY, 0)

    def close(self) -> None:
        """Put an end to it, whatever state it is in."""
        self.app.kill()
        self.app.wait()
        self.shut()

    def shut(self) -> None:
        """Close the window: nobody holds the terminal open any more but the app."""
        for end in (self.slave, self.ours):
            if end >= 0:
                os.close(end)
        self.slave = self.ours = -1

    def take_in(self) -> bool:
        """Read what was written, waiting a moment for it; whether there was anything."""
        if not select.select([self.ours], [], [], 0.1)[0]:
            return False
        new = os.read(self.ours, 65536)
        self.written += new
        # pyte takes the end of a Kitty keyboard sequence for a letter.
        self._stream.feed(re.sub(rb"\x1b\[[<>=?][0-9;]*u", b"", new))
        return True

    @property
    def text(self) -> str:
        """The screen, each run of spaces as one."""
        return "\n".join(" ".join(line.split()) for line in self.screen.display)

    def until(self, true: Callable[[], bool], what: str) -> None:
        """Read until `true()`; fails with the screen as it stands when it never comes."""
        deadline = time.monotonic() + PATIENCE
        while not true():
            assert time.monotonic() < deadline, f"never came: {what}\n{self.text}"
            ended = self.app.poll() is not None
            if not self.take_in() and ended and not true():
                raise AssertionError(f"ended before it came: {what}\n{self.text}")

    def wait(self, seconds: float) -> None:
        """Read for so long, or until the app ends."""
        deadline = time.monotonic() + seconds
        while time.monotonic() < deadline:
            self.take_in()

    def sees(self, *texts: str) -> None:
        """Read until all of `texts` stand on the screen."""
        for text in texts:
            self.until(lambda text=text: text in self.text, text)  # type: ignore[misc]

    def press(self, keys: str | bytes) -> None:
        """Send keys as the terminal would."""
        os.write(self.ours, keys.encode() if isinstance(keys, str) else keys)

    def pairs_shown(self) -> int:
        """How many pairs the screen says are done; -1 when it says nothing of it."""
        found = re.search(r"pairs to go (\d+) of", self.text)
        return int(found[1]) if found else -1

    def signal(self, number: int) -> None:
        """Send a signal to the app alone."""
        self.app.send_signal(number)

    def status_on_ending(self) -> int:
        """Wait for the end; the exit status, or minus the signal that ended it."""
        self.until(lambda: self.app.poll() is not None, "the end")
        while self.take_in():
            pass
        return int(self.app.returncode)

    def seconds_used_on_ending(self) -> float:
        """Wait for the end without reading; the processor time used from the start on."""
        deadline = time.monotonic() + PATIENCE
        while True:
            process, status, used = os.wait4(self.app.pid, os.WNOHANG)
            if process:
                self.app.returncode = os.waitstatus_to_exitcode(status)
                return used.ru_utime + used.ru_stime
            assert time.monotonic() < deadline, "the app goes on without its terminal"
            time.sleep(BETWEEN_LOOKS)

    def is_cooked(self) -> bool:
        """Whether the terminal echoes and gathers lines, as a shell needs it."""
        local = int(termios.tcgetattr(self.slave)[3])
        return all(local & flag for flag in (termios.ECHO, termios.ICANON, termios.ISIG))

    def left(self, mode: tuple[bytes, bytes]) -> bool:
        """Whether a mode that was switched on was switched off again afterwards."""
        on, off = mode
        return 0 <= self.written.rfind(on) < self.written.rfind(off)


@contextmanager
def the_terminal(
    home: Path, size: tuple[int, int] = (80, 24), *, belongs: bool = True, **more: str
) -> Iterator[Terminal]:
    """The app on the record under `home`, at its sewing screen.

    Where it does not belong to the terminal, no signal tells it that the window was shut.
    """
    terminal = Terminal(home, size, belongs=belongs, **more)
    try:
        terminal.sees("Window seat", "pairs to go")
        yield terminal
    finally:
        terminal.close()

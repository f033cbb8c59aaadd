"""A program in a real pseudo-terminal, timed by the bytes it writes. Nothing is drawn here, so
that looking costs nothing."""

from __future__ import annotations

import ctypes
import fcntl
import os
import pty
import select
import struct
import subprocess
import termios
import time
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from tests.benchmarks.processes import environment

PATIENCE = 45.0
"""Seconds until something that should come about is given up."""


class Terminal:
    """A running program in a terminal of 80 x 24; `begun` is the moment before it was started."""

    def __init__(self, argv: tuple[str, ...], home: Path) -> None:
        self._ours, self._theirs = pty.openpty()
        fcntl.ioctl(self._theirs, termios.TIOCSWINSZ, struct.pack("HHHH", 24, 80, 0, 0))
        self._written = b""
        self.begun = time.perf_counter()
        self._program = subprocess.Popen(
            argv,
            env=environment(home),
            stdin=self._theirs,
            stdout=self._theirs,
            stderr=self._theirs,
            start_new_session=True,
            preexec_fn=self._make_it_the_terminal,
        )

    def _make_it_the_terminal(self) -> None:
        fcntl.ioctl(self._theirs, termios.TIOCSCTTY, 0)

    def take_in(self, wait: float) -> bool:
        """Read what was written, waiting at most so many seconds; whether there was anything."""
        if not select.select([self._ours], [], [], wait)[0]:
            return False
        self._written += os.read(self._ours, 65536)
        return True

    def sees(self, words: bytes) -> float:
        """Seconds from the start until `words` were written."""
        while words not in self._written:
            self.take_in(0.2)
            waited = time.perf_counter() - self.begun
            assert waited < PATIENCE, f"never wrote {words!r}: {self._written[-400:]!r}"
            assert self._program.poll() is None, f"ended: {self._written[-400:]!r}"
        return time.perf_counter() - self.begun

    def settles(self, quiet: float) -> float:
        """Read until nothing came for `quiet` seconds; the moment of the last byte."""
        last = time.perf_counter()
        while self.take_in(quiet):
            last = time.perf_counter()
        return last

    def answers(self, key: bytes) -> float:
        """Seconds from a key to the last byte of what it changes on the screen."""
        self.settles(0.05)
        pressed = time.perf_counter()
        os.write(self._ours, key)
        assert self.take_in(PATIENCE), f"no answer to {key!r}"
        return self.settles(0.03) - pressed

    def processor_seconds(self) -> float:
        """Processor time used so far, to the nanosecond; on Linux only."""
        clock = ctypes.c_int()
        ctypes.CDLL(None).clock_getcpuclockid(self._program.pid, ctypes.byref(clock))
        return time.clock_gettime(clock.value)

    def megabytes(self) -> float:
        """Memory in use; on Linux only."""
        pages = int(Path(f"/proc/{self._program.pid}/statm").read_text("ascii").split()[1])
        return pages * os.sysconf("SC_PAGE_SIZE") / 2**20

    def close(self) -> None:
        """Put an end to the program and its terminal."""
        self._program.kill()
        self._program.wait()
        os.close(self._theirs)
        os.close(self._ours)


@contextmanager
def terminal(argv: tuple[str, ...], home: Path) -> Iterator[Terminal]:
    """The program in a terminal, ended afterwards."""
    opened = Terminal(argv, home)
    try:
        yield opened
    finally:
        opened.close()

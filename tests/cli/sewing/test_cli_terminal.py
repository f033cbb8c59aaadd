"""A person at a real terminal: the caution waits for Enter, closing asks."""

from __future__ import annotations

import os
import pty
import subprocess
import sys
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from tests.cli.conftest import Desk


def at_a_terminal(desk: Desk, *argv: str, typed: str) -> tuple[int, str]:
    """Run a command with stdin and stderr on a pseudo-terminal; its status and stdout."""
    ours, theirs = pty.openpty()
    try:
        process = subprocess.Popen(
            [sys.executable, "-m", "sewalong", *argv],
            env={**os.environ, "SEWALONG_HOME": str(desk.folder / "home")},
            stdin=theirs,
            stdout=subprocess.PIPE,
            stderr=theirs,
            text=True,
            encoding="utf-8",
        )
        os.write(ours, typed.encode())
        out, _ = process.communicate(timeout=60)
        return process.returncode, out
    finally:
        os.close(ours)
        os.close(theirs)


def test_the_caution_waits_for_enter_and_closing_asks(begun: Desk) -> None:
    begun.refused("count", "sew", "1")
    assert at_a_terminal(begun, "count", "pair", "4", typed="")[0] == 0
    status, out = at_a_terminal(begun, "count", "sew", "1", typed="\n")
    assert status == 0
    assert "Counted 1 four-patch at sew." in out
    status, out = at_a_terminal(begun, "close", typed="\nyes\n\n\n\nsew the other one\n")
    assert status == 0
    assert "Next time: sew the other one" in out

"""From an empty home, by keys alone: a quilt is begun, and what was answered outlives a killed window."""

from __future__ import annotations

import signal
import sys
from contextlib import closing
from pathlib import Path

import pexpect
import pytest

from tests.terminal.terminal import PATIENCE, Terminal, on_disk, surroundings


@pytest.fixture
def home(tmp_path: Path) -> Path:
    (tmp_path / "home").mkdir()
    return tmp_path / "home"


@pytest.mark.parametrize("size", [(80, 24), (40, 20), (160, 50)])
def test_begun_and_counted_by_keys_alone(home: Path, size: tuple[int, int]) -> None:
    with closing(Terminal(home, size)) as terminal:
        terminal.sees("No quilt yet.", "Begin one by a few questions: n")
        terminal.press("n")
        terminal.sees("168 squares make 84 units.")
        terminal.press("s")
        terminal.sees("Begun: Stacked four-patch")
        terminal.press("\r")
        terminal.sees("PAIR")
        terminal.press(" ")
        terminal.sees("Counted 1 pair.")
    state = on_disk(home)
    assert state.quilt.name == "Stacked four-patch"
    assert state.done["pair"] == 1


def test_killed_in_the_middle_of_the_questions_the_answers_are_there(home: Path) -> None:
    with closing(Terminal(home)) as terminal:
        terminal.sees("No quilt yet.")
        terminal.press("n")
        terminal.sees("168 squares make 84 units.")
        terminal.press("\x1b[B\x1b[B")
        terminal.sees("> how many")
        terminal.press("\r")
        terminal.sees("168, or packs such as")
        terminal.press("64\r")
        terminal.sees("64 squares make 32 units.", "> seam")
        terminal.signal(signal.SIGKILL)
    with closing(Terminal(home)) as terminal:
        terminal.sees("a draft: enter goes on with it")
        terminal.press("\r")
        terminal.sees("64 squares make 32 units.")


def _heeds_ctrl_c() -> None:
    signal.signal(signal.SIGINT, signal.SIG_DFL)


def test_on_a_dumb_terminal_new_asks_in_plain_lines(home: Path) -> None:
    shell = pexpect.spawn(
        sys.executable,
        ["-m", "sewalong", "new"],
        env=dict(surroundings(home, TERM="dumb")),
        timeout=PATIENCE,
        encoding="utf-8",
        # Run behind something that ignores it, such as nohup, it would be ignored here too.
        preexec_fn=_heeds_ctrl_c,
    )
    shell.expect_exact("1 of 11. By which method? [Stacked four-patch]")
    shell.sendline("")
    shell.expect_exact("2 of 11. The size the squares are cut at? [5 in]")
    shell.sendline("6")
    shell.expect_exact("A unit finishes at 7 1/4 in")
    shell.expect_exact("3 of 11.")
    # Ctrl+C leaves it as it is.
    shell.sendcontrol("c")
    shell.expect_exact("Your answers are kept as a draft.")
    shell.expect_exact(pexpect.EOF)
    shell.close()
    assert shell.exitstatus == 2

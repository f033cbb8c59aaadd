"""The first look follows the terminal's background, and what it answers never counts as a key."""

from __future__ import annotations

import os
import pty
import termios
import time
from collections.abc import Iterator
from pathlib import Path

import pytest

from sewalong.screens.background import ASKED, LONGEST_WAIT, Asking, light_in
from sewalong.screens.widgets.themes import DAYLIGHT, LAMPLIGHT
from sewalong.store.look import remember_look
from tests.terminal.terminal import Terminal, begin_a_quilt, on_disk

WHITE, INK = b"\x1b]11;rgb:ffff/ffff/ffff\x1b\\", b"\x1b]11;rgb:1e1e/1e1e/2e2e\x07"
WHAT_IT_IS = b"\x1b[?62;22c"
LIGHT, DARK = DAYLIGHT.background, LAMPLIGHT.background


@pytest.fixture
def home(tmp_path: Path) -> Path:
    begin_a_quilt(tmp_path / "home")
    return tmp_path / "home"


@pytest.fixture
def terminal(home: Path) -> Iterator[Terminal]:
    one = Terminal(home, COLORTERM="truecolor")
    yield one
    one.close()


def asked(terminal: Terminal) -> None:
    terminal.until(lambda: ASKED in terminal.written, "the question")


def ground(terminal: Terminal) -> str:
    """The colour behind the number to go, when it stands there."""
    terminal.sees("pairs to go")
    return f"#{terminal.screen.buffer[10][1].bg}"


@pytest.mark.parametrize(("colour", "look"), [(WHITE, LIGHT), (INK, DARK)])
def test_an_answer_in_time_is_followed(terminal: Terminal, colour: bytes, look: str) -> None:
    asked(terminal)
    terminal.press(colour + WHAT_IT_IS)
    assert ground(terminal) == look


@pytest.mark.parametrize(
    "answer",
    [b"", WHAT_IT_IS, b"\x1b]11;rgb:12/34", b"\x1b]11;\x1b\\", b"\x07\xff\xfe111"],
    ids=repr,
)
def test_without_a_colour_it_is_lamplight_and_nothing_was_counted(
    terminal: Terminal, home: Path, answer: bytes
) -> None:
    asked(terminal)
    terminal.press(answer)
    assert ground(terminal) == DARK
    terminal.press(" ")
    terminal.sees("pairs to go 1 of 200 done")
    assert on_disk(home).done["pair"] == 1


@pytest.mark.parametrize("at", [0, 1, 2, 4, 9, 20, len(WHITE) - 1, len(WHITE) + 3])
def test_an_answer_that_comes_late_is_passed_over(terminal: Terminal, home: Path, at: int) -> None:
    """The first part of it comes within the wait, or all of it after; either way it is no key."""
    answer = WHITE + WHAT_IT_IS
    asked(terminal)
    terminal.press(answer[:at])
    assert ground(terminal) in (DARK, LIGHT)
    terminal.press(answer[at:])
    terminal.wait(0.3)
    terminal.press(" ")
    terminal.sees("pairs to go 1 of 200 done")
    assert "enter: count them" not in terminal.text
    assert on_disk(home).done["pair"] == 1


def test_her_own_choice_wins_and_nothing_is_asked(home: Path) -> None:
    remember_look(home, DAYLIGHT.name)
    terminal = Terminal(home, COLORTERM="truecolor")
    try:
        assert ground(terminal) == LIGHT
        assert ASKED not in terminal.written
    finally:
        terminal.close()


def test_a_terminal_that_would_print_the_question_is_not_asked(home: Path) -> None:
    terminal = Terminal(home, TERM="linux", COLORFGBG="0;15")
    try:
        terminal.sees("pairs to go")
        assert ASKED not in terminal.written
    finally:
        terminal.close()


@pytest.mark.parametrize(
    ("answer", "light"),
    [
        (b"\x1b]11;rgb:ffff/ffff/ffff\x07", True),
        (b"\x1b]11;rgb:fd/f6/e3\x1b\\", True),
        (b"\x1b]11;rgb:F/F/F\x1b\\", True),
        (b"\x1b]11;rgba:0000/0000/0000/ffff\x1b\\", False),
        (b"\x1b]11;rgb:0000/2b2b/3636\x1b\\", False),
        (b"q\x1b]11;rgb:00ff/00ff/00ff\x1b\\\x1b[?1c", False),
        (b"\x1b]11;rgb:zz/00/00\x1b\\", None),
        (b"\x1b]10;rgb:ffff/ffff/ffff\x1b\\", None),
        (b"", None),
    ],
    ids=repr,
)
def test_colours_are_read(answer: bytes, light: bool | None) -> None:
    assert light_in(answer) is light


def told(terminal: int, surroundings: dict[str, str]) -> bool | None:
    """Whether the terminal says that it is light."""
    with Asking(terminal, terminal, surroundings) as asked:
        pass
    return asked.light


@pytest.mark.parametrize(
    ("set_to", "light"),
    [("15;0", False), ("0;15", True), ("0;default;7", True), ("7;8", False), ("", None),
     ("0;default", None), ("1;99999999", None), ("0;²", None)],
)  # fmt: skip
def test_without_an_answer_the_variable_says(set_to: str, light: bool | None) -> None:
    assert told(-1, {"COLORFGBG": set_to}) is light


def test_silence_costs_no_more_than_the_wait() -> None:
    """A lower bound only: no test asserts how fast anything is."""
    ours, theirs = pty.openpty()
    try:
        before = termios.tcgetattr(theirs)
        began = time.monotonic()
        assert told(theirs, {}) is None
        assert time.monotonic() - began >= LONGEST_WAIT
        os.write(ours, WHITE + WHAT_IT_IS)
        assert told(theirs, {}) is True
        with pytest.raises(KeyError), Asking(theirs, theirs, {}):
            raise KeyError
        assert termios.tcgetattr(theirs) == before
    finally:
        os.close(ours)
        os.close(theirs)

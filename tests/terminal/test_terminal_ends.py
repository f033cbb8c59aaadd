"""Whatever ends the app, nothing counted is lost and the terminal is left as it was."""

from __future__ import annotations

import re
import signal
import sqlite3
import time
from pathlib import Path

import pytest

from sewalong.screens.terminal import WATCH_EVERY
from sewalong.store.home import FILE_NAME
from tests.terminal.terminal import (
    ALTERNATE_SCREEN,
    CURSOR_HIDDEN,
    Terminal,
    begin_a_quilt,
    on_disk,
    the_terminal,
)


@pytest.fixture
def home(tmp_path: Path) -> Path:
    begin_a_quilt(tmp_path / "home")
    return tmp_path / "home"


def test_killed_in_the_middle_of_counting_nothing_is_lost(home: Path) -> None:
    with the_terminal(home) as terminal:
        terminal.press(" ")
        terminal.sees("pairs to go 1 of 200 done", "Counted 1 pair.")
        terminal.press("12\r")
        terminal.sees("pairs to go 13 of 200 done")
        terminal.press(" " * 60)
        terminal.until(lambda: terminal.pairs_shown() >= 16, "some of the sixty counts")
        terminal.signal(signal.SIGKILL)
        shown = terminal.pairs_shown()
        assert terminal.status_on_ending() == -signal.SIGKILL
    done = on_disk(home).done["pair"]
    assert shown <= done <= 13 + 60
    with sqlite3.connect(home / FILE_NAME) as record:
        assert record.execute("PRAGMA integrity_check").fetchall() == [("ok",)]
    record.close()
    with the_terminal(home) as terminal:
        terminal.sees(f"pairs to go {done} of 200 done")
        terminal.press(" ")
        terminal.sees(f"pairs to go {done + 1} of 200 done")
        terminal.press("u")
        terminal.sees(f"pairs to go {done} of 200 done")
    assert on_disk(home).done["pair"] == done


@pytest.mark.parametrize("number", [signal.SIGTERM, signal.SIGHUP], ids=["SIGTERM", "SIGHUP"])
def test_ended_by_a_signal_the_terminal_is_sane_and_nothing_is_lost(
    home: Path, number: signal.Signals
) -> None:
    with the_terminal(home) as terminal:
        terminal.press("7\r")
        terminal.sees("pairs to go 7 of 200 done")
        assert not terminal.is_cooked()
        assert not terminal.left(ALTERNATE_SCREEN)
        terminal.signal(number)
        assert terminal.status_on_ending() == 128 + number
        assert terminal.is_cooked()
        assert terminal.left(ALTERNATE_SCREEN)
        assert terminal.left(CURSOR_HIDDEN)
    assert on_disk(home).done["pair"] == 7


def test_left_by_its_keys_the_terminal_is_sane(home: Path) -> None:
    with the_terminal(home) as terminal:
        terminal.press(" ")
        terminal.sees("pairs to go 1 of 200 done")
        terminal.press("\x1b")
        terminal.sees("which quilt?")
        terminal.press("q")
        terminal.sees("End the session", "Where are the 1 pair?")
        for _ in range(3):
            terminal.press("\r")
            terminal.wait(0.3)
        assert terminal.status_on_ending() == 0
        assert terminal.is_cooked()
        assert terminal.left(ALTERNATE_SCREEN)
        assert terminal.left(CURSOR_HIDDEN)
    assert on_disk(home).session is None


@pytest.mark.parametrize("key", ["\x03", "\x11"], ids=["ctrl+c", "ctrl+q"])
def test_pressed_twice_it_leaves_at_once(home: Path, key: str) -> None:
    with the_terminal(home) as terminal:
        terminal.press(" ")
        terminal.sees("pairs to go 1 of 200 done")
        terminal.press(key)
        terminal.sees("End the session")
        terminal.press(key)
        assert terminal.status_on_ending() == 0
        assert terminal.is_cooked()
        assert terminal.left(ALTERNATE_SCREEN)
    assert on_disk(home).session is not None


@pytest.mark.parametrize(
    "number",
    [
        pytest.param(signal.SIGTERM, marks=pytest.mark.long),
        pytest.param(signal.SIGINT, marks=pytest.mark.long),
        pytest.param(signal.SIGHUP, marks=pytest.mark.long),
    ],
)
def test_a_signal_while_starting_leaves_nothing_of_the_app_behind(
    home: Path, number: signal.Signals
) -> None:
    """At many moments of the start, from before anything is drawn to the first picture."""
    for moment in range(3, 40, 3):
        terminal = Terminal(home)
        try:
            terminal.wait(moment / 100)
            terminal.signal(number)
            assert terminal.status_on_ending() in (128 + number, -number)
            assert terminal.is_cooked()
            if ALTERNATE_SCREEN[0] in terminal.written:
                assert terminal.left(ALTERNATE_SCREEN)
                assert terminal.left(CURSOR_HIDDEN)
                assert b"Traceback" not in terminal.written
        finally:
            terminal.close()


def test_stopped_and_gone_on_unasked_it_draws_anew_and_counts_once_a_key(home: Path) -> None:
    """SIGSTOP cannot be seen coming, and nothing is put back before it."""
    with the_terminal(home) as terminal:
        terminal.press(" ")
        terminal.sees("pairs to go 1 of 200 done")
        for n in range(2, 5):
            terminal.signal(signal.SIGSTOP)
            terminal.written = b""
            terminal.signal(signal.SIGCONT)
            terminal.until(lambda: b"Window seat" in terminal.written, "all drawn anew")
            terminal.press(" ")
            terminal.sees(f"pairs to go {n} of 200 done", "? all keys")
        terminal.signal(signal.SIGTERM)
        assert terminal.status_on_ending() == 128 + signal.SIGTERM
        assert terminal.is_cooked()
        assert terminal.left(ALTERNATE_SCREEN)
    assert on_disk(home).done["pair"] == 4


@pytest.mark.parametrize("belongs", [True, False], ids=["told by a signal", "not told"])
def test_when_the_terminal_closes_the_app_ends_soon(home: Path, belongs: bool) -> None:
    with the_terminal(home, belongs=belongs) as terminal:
        terminal.press("5\r")
        terminal.sees("pairs to go 5 of 200 done")
        terminal.shut()
        # From its start on; an app that spins goes on until this test gives it up.
        assert terminal.seconds_used_on_ending() < 20
        assert terminal.app.returncode == 128 + signal.SIGHUP
    assert on_disk(home).done["pair"] == 5


def test_a_terminal_it_does_not_belong_to_is_no_closed_terminal(home: Path) -> None:
    with the_terminal(home, belongs=False) as terminal:
        looked_at = time.monotonic() + 1.2 * WATCH_EVERY
        terminal.until(lambda: time.monotonic() > looked_at, "the app's look at its terminal")
        terminal.press(" ")
        terminal.sees("pairs to go 1 of 200 done")


@pytest.mark.parametrize("size", [(80, 24), (40, 20)], ids=["80x24", "40x20"])
def test_counting_and_undo_at_both_sizes(home: Path, size: tuple[int, int]) -> None:
    with the_terminal(home, size) as terminal:
        terminal.press(" ")
        terminal.sees("pairs to go 1 of 200 done")
        terminal.press("30\r")
        terminal.sees("pairs to go 31 of 200 done", "Counted 30 pairs.")
        terminal.press("u")
        terminal.sees("pairs to go 1 of 200 done", "Undone: counted 30 pairs.")
        terminal.press("999\r")
        terminal.sees("Not done: 999 pairs at pair cannot be")
    assert on_disk(home).done["pair"] == 1


def test_a_byte_that_is_no_utf8_does_not_end_the_app(home: Path) -> None:
    with the_terminal(home) as terminal:
        terminal.press(b"\xff\xfe\xe9")
        terminal.press(" ")
        terminal.sees("pairs to go 1 of 200 done")
        terminal.press("n")
        terminal.sees("A note for yourself")
        terminal.press(b"caf\xe9 ok\r")
        terminal.sees("Noted: caf")
    assert on_disk(home).done["pair"] == 1


@pytest.mark.parametrize(
    "code",
    [b"\x1b[99999999999u", b"\x1b[97:65;;97u", b"\x1b[48;99999999;99999999;1;1t", b"\x1b[<"],
    ids=repr,
)
def test_a_code_that_is_none_does_not_end_the_app(home: Path, code: bytes) -> None:
    with the_terminal(home) as terminal:
        terminal.press(code)
        terminal.press(b"\x1b[32u")
        terminal.sees("pairs to go 1 of 200 done")
        terminal.press("n")
        terminal.sees("A note for yourself")
        terminal.press(b"\x1b[98u\x1b[32u\x1b[50;129u\r")
        terminal.sees("Noted: b 2")
        assert terminal.app.poll() is None


def test_without_colour_the_app_draws_and_counts(home: Path) -> None:
    with the_terminal(home, NO_COLOR="1") as terminal:
        terminal.press(" ")
        terminal.sees("pairs to go 1 of 200 done")


def test_on_a_terminal_of_sixteen_colours_no_others_are_asked_for(home: Path) -> None:
    with the_terminal(home, TERM="xterm") as terminal:
        terminal.press(" ")
        terminal.sees("pairs to go 1 of 200 done")
        assert b"38;2;" not in terminal.written
        assert b"38;5;" not in terminal.written
        # Bright yellow on black: the number.
        assert re.search(rb"\x1b\[[\d;]*93;40m", terminal.written)

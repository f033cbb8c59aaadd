"""Whenever a process is killed, ended or stopped, what it said to be counted is in the record.

Plain commands as an owner types them, and the app on a terminal of its own; the moment is drawn
anew each time. `long`: 200 moments for SIGKILL and 40 for each of the others; else three.
"""

from __future__ import annotations

import os
import signal
import subprocess
import sys
import time
from pathlib import Path
from random import Random

import pytest

from tests.faults.home import Home, Said
from tests.store.shelf import ROOT, a_quilt, begin
from tests.terminal.terminal import (
    ALTERNATE_SCREEN,
    CURSOR_HIDDEN,
    begin_a_quilt,
    on_disk,
    the_terminal,
)

pytestmark = pytest.mark.skipif(os.name != "posix", reason="there are no such signals")

SHORT = 2
LONG = {
    signal.SIGKILL: 200,
    signal.SIGTERM: 40,
    signal.SIGHUP: 40,
    signal.SIGINT: 40,
    signal.SIGSTOP: 40,
}
"""How often each signal is tried; one that stops is followed by SIGCONT."""

HOW_OFTEN = pytest.mark.parametrize(
    ("number", "times"),
    [
        *(pytest.param(number, SHORT, id=f"{number.name}-short") for number in LONG),
        *(
            pytest.param(number, times, id=number.name, marks=pytest.mark.long)
            for number, times in LONG.items()
        ),
    ],
)

OURS = str(ROOT / "sewalong")


def count_and_signal(home: Home, number: signal.Signals, after: float) -> Said:
    """`sewalong count pair 1` with a signal so many seconds after its start."""
    command = subprocess.Popen(
        # Warnings as an owner has them: an import that is interrupted leaves its file open, and
        # only with all warnings shown does Python print a traceback about it.
        [sys.executable, "-m", "sewalong", "count", "pair", "1"],
        cwd=ROOT,
        env={**os.environ, "PYTHONPATH": str(ROOT), "SEWALONG_HOME": str(home.folder)},
        stdin=subprocess.DEVNULL,
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        text=True,
    )
    with command:
        time.sleep(after)
        command.send_signal(number)
        if number == signal.SIGSTOP:
            time.sleep(after / 10)
            command.send_signal(signal.SIGCONT)
        out, err = command.communicate(timeout=60)
    return Said(command.returncode, out, err)


@HOW_OFTEN
def test_a_plain_count_is_done_if_it_is_said(
    tmp_path: Path, number: signal.Signals, times: int
) -> None:
    home = Home(tmp_path, {}, {})
    begin(home.record, a_quilt(pieces=9999))
    chance = Random(number)
    began = time.monotonic()
    assert home.run("count", "pair", "1").status == 0
    usual = time.monotonic() - began
    done, ended = 1, set()
    for _ in range(times):
        said = count_and_signal(home, number, chance.uniform(0, 1.2 * usual))
        ended.add(said.status)
        if "KeyboardInterrupt" in said.err:
            # Before the first line of ours it is Python itself that ends so.
            assert number == signal.SIGINT
            assert OURS not in said.err
        else:
            assert "Traceback" not in said.err
            assert said.status in (0, -number, 128 + number), said
        events = home.events("Hedgerow")[1]
        now = sum(event["kind"] == "counted" for event in events)
        assert now in (done, done + 1)
        assert [event["seq"] for event in events] == list(range(1, len(events) + 1))
        if "Counted" in said.out or said.status == 0:
            assert now == done + 1
        done = now
    assert home.run("examine").status == 0
    if number == signal.SIGSTOP:
        assert ended == {0}


@HOW_OFTEN
def test_what_the_app_showed_is_there(tmp_path: Path, number: signal.Signals, times: int) -> None:
    chance = Random(number)
    done = 0
    home = tmp_path / "none"
    for turn in range(times):
        if turn % 8 == 0:
            home, done = tmp_path / f"{turn}", 0
            begin_a_quilt(home)
        with the_terminal(home) as terminal:
            terminal.until(lambda: terminal.pairs_shown() >= 0, "the number")
            assert terminal.pairs_shown() == done
            pressed = chance.randrange(1, 25)
            terminal.press(" " * pressed)
            terminal.wait(chance.uniform(0, 0.4))
            terminal.signal(number)
            if number == signal.SIGSTOP:
                terminal.wait(chance.uniform(0, 0.2))
                terminal.signal(signal.SIGCONT)
                terminal.until(lambda: terminal.pairs_shown() == done + pressed, "all")  # noqa: B023
                terminal.signal(signal.SIGTERM)
            shown = terminal.pairs_shown()
            status = terminal.status_on_ending()
            if number == signal.SIGKILL:
                assert status == -number
            else:
                assert status == 128 + (signal.SIGTERM if number == signal.SIGSTOP else number)
                assert terminal.is_cooked()
                assert terminal.left(ALTERNATE_SCREEN)
                assert terminal.left(CURSOR_HIDDEN)
        now = on_disk(home).done["pair"]
        assert max(shown, done) <= now <= done + pressed
        done = now

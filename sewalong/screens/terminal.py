"""Leaving the terminal sane, whatever ends the program.

Every event is on disk before it is shown, so ending at any moment loses nothing; what is
left to care for is the terminal.
"""

from __future__ import annotations

import asyncio
import os
import signal
import sys
import threading
import time
from collections.abc import Iterator
from contextlib import contextmanager
from functools import partial

from textual.app import App
from textual.drivers.linux_driver import LinuxDriver

ENDED_BY_SIGNAL = 128

ENDING = (signal.SIGINT, signal.SIGTERM, signal.SIGHUP)
"""Signals that end the app. Ctrl+C sends none while it runs, it is a key then."""

WATCH_EVERY = 2.0
"""Seconds between looks whether the terminal is still there."""


def shows_more_than_ascii() -> bool:
    """Whether the terminal was said to take UTF-8: in the C locale of old it was not."""
    encoding = getattr(sys.__stderr__, "encoding", None) or "utf-8"
    return encoding.replace("-", "").replace("_", "").lower() == "utf8"


def leave_on_signals(app: App[int]) -> None:
    """On the signals of ENDING leave by the app's own exit, which restores the terminal."""
    loop = asyncio.get_running_loop()
    for number in ENDING:
        loop.add_signal_handler(
            number, partial(app.exit, ENDED_BY_SIGNAL + number, ENDED_BY_SIGNAL + number)
        )


@contextmanager
def holding_signals_back() -> Iterator[None]:
    """Within it the signals of ENDING wait until they are let through.

    Between taking the terminal over and being able to give it back the app must not be ended.
    """
    signal.pthread_sigmask(signal.SIG_BLOCK, ENDING)
    try:
        yield
    finally:
        let_signals_through()


def let_signals_through() -> None:
    """What was held back comes now."""
    signal.pthread_sigmask(signal.SIG_UNBLOCK, ENDING)


def go_on_after_a_stop(app: App[int]) -> None:
    """When the process goes on after a stop, take the terminal over again and draw all anew.

    The library is ready for SIGTSTP alone, which it can see coming. Before SIGSTOP nothing was put
    back, and its threads are there still: they are stopped first, else there would be two of each.
    """
    driver = app._driver
    if not isinstance(driver, LinuxDriver):
        return

    def go_on() -> None:
        if not driver._must_signal_resume:
            driver.suspend_application_mode()
            driver._must_signal_resume = True
        driver.resume_application_mode()

    asyncio.get_running_loop().add_signal_handler(signal.SIGCONT, go_on)


def terminal_is_gone() -> bool:
    """Whether the terminal the app draws on has been closed under it.

    It need not be the one the process belongs to: under `su -c` or `setsid` there is none.
    """
    return not os.isatty(sys.__stderr__.fileno() if sys.__stderr__ else 2)


def end_without_terminal() -> None:
    """Nothing can be drawn or restored any more: end at once. The record is on disk."""
    os._exit(ENDED_BY_SIGNAL + signal.SIGHUP)


def watch_terminal() -> None:
    """Look every two seconds, from a thread, whether the terminal is still there.

    When it is gone the driver's queues fill up and block the event loop, so a timer in the
    loop would never fire again, and the reading thread spins.
    """

    def look() -> None:
        while not terminal_is_gone():
            time.sleep(WATCH_EVERY)
        end_without_terminal()

    threading.Thread(target=look, name="watch-terminal", daemon=True).start()

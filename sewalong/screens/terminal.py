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
from functools import partial

from textual.app import App

ENDED_BY_SIGNAL = 128

WATCH_EVERY = 2.0
"""Seconds between looks whether the terminal is still there."""


def leave_on_signals(app: App[int]) -> None:
    """On SIGTERM and SIGHUP leave by the app's own exit, which restores the terminal."""
    loop = asyncio.get_running_loop()
    for number in (signal.SIGTERM, signal.SIGHUP):
        loop.add_signal_handler(
            number, partial(app.exit, ENDED_BY_SIGNAL + number, ENDED_BY_SIGNAL + number)
        )


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

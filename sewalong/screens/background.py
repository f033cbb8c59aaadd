"""Whether the terminal is dark or light, asked of the terminal itself before the app starts.

Asked by the control sequence OSC 11 of xterm's (`ESC ] 11 ; ?`), which most terminals answer with
`ESC ] 11 ; rgb:RRRR/GGGG/BBBB`. Behind it goes the question every terminal answers, what it is
(DA1, `ESC [ c`), so that one without colours to tell ends the waiting at once. What comes later
than anybody waits for is passed over where keys are read (`key_reading`).
"""

from __future__ import annotations

import os
import re
import select
import signal
import sys
import termios
import time
from collections.abc import Mapping
from contextlib import suppress
from typing import Any

ASKED = b"\x1b]11;?\x1b\\\x1b[c"
LONGEST_WAIT = 0.1
"""Seconds a terminal that does not answer costs."""

MOST_BYTES = 4096
"""Bytes of whatever comes in meanwhile that are looked at."""

HELD_BACK = (signal.SIGINT, signal.SIGTERM, signal.SIGHUP, signal.SIGTSTP)

WRITES_IT_OUT = ("linux", "dumb")
"""Terminals by TERM that would print the question, or have no colours."""

_COLOUR = re.compile(rb"\x1b\]11;rgba?:([\da-f]{1,4})/([\da-f]{1,4})/([\da-f]{1,4})", re.IGNORECASE)
_WHAT_IT_IS = re.compile(rb"\x1b\[\?[\d;]*c")
_UNFINISHED = re.compile(rb"\x1b(\](1(1(;[^\x07\x1b]{0,64}\x1b?)?)?)?|\[(\?[\d;]*)?)?\Z")

HALFWAY = 0.18
"""The luminance at which black and white stand out equally, by WCAG's formula of contrast."""

LIGHT_COLOURS = {7, *range(9, 16)}
"""Of the sixteen colours of a terminal: white and the bright ones but for bright black."""


class Asking:
    """The question under way, so that what is loaded within it costs no more waiting.

    Within it the terminal `stdin` gives what is typed at once and does not write it on the screen,
    and what would end or stop the program waits, or the terminal would stay so. After it `light`
    says whether the background is, None where nobody says, and `unfinished` is an answer whose end
    had not come yet. `out` is the terminal to write to.
    """

    def __init__(self, stdin: int, out: int, surroundings: Mapping[str, str]) -> None:
        self.light: bool | None = None
        self.unfinished = ""
        self._stdin, self._out, self._surroundings = stdin, out, surroundings
        self._before: list[Any] | None = None
        self._until = 0.0

    def __enter__(self) -> Asking:
        if self._surroundings.get("TERM") not in WRITES_IT_OUT:
            signal.pthread_sigmask(signal.SIG_BLOCK, HELD_BACK)
            try:
                self._before = _letter_by_letter(self._stdin)
                os.write(self._out, ASKED)
            except (OSError, ValueError, termios.error):
                self._give_back()
            self._until = time.monotonic() + LONGEST_WAIT
        return self

    def __exit__(self, *exception: object) -> None:
        answer = b""
        if self._before is not None:
            try:
                answer = _answer(self._stdin, self._until)
            except (OSError, ValueError):
                pass  # then nobody says
            finally:
                self._give_back()
        self.light = light_in(answer)
        if self.light is None:
            self.light = _light_as_set(self._surroundings.get("COLORFGBG", ""))
        rest = _UNFINISHED.search(answer)
        self.unfinished = rest[0].decode(errors="replace") if rest else ""

    def _give_back(self) -> None:
        """The terminal as it was, and what waited comes."""
        with suppress(OSError, termios.error):
            if self._before is not None:
                termios.tcsetattr(self._stdin, termios.TCSANOW, self._before)
        self._before = None
        signal.pthread_sigmask(signal.SIG_UNBLOCK, HELD_BACK)


def asking_this_terminal() -> Asking:
    """The question to the terminal of this process."""
    stdin, stderr = sys.__stdin__, sys.__stderr__
    if stdin is None or stderr is None:
        return Asking(-1, -1, os.environ)
    return Asking(stdin.fileno(), stderr.fileno(), os.environ)


def light_in(answer: bytes) -> bool | None:
    """Whether the colour in the terminal's answer is light; None where there is none."""
    found = _COLOUR.search(answer)
    if found is None:
        return None
    # 1 to 4 hexadecimal digits, each as a part of the most that so many can say.
    red, green, blue = (_linear(int(one, 16) / (16 ** len(one) - 1)) for one in found.groups())
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue > HALFWAY


def _linear(part: float) -> float:
    """A part of sRGB as light, as WCAG 2 has it."""
    return float(part / 12.92 if part <= 0.03928 else ((part + 0.055) / 1.055) ** 2.4)


def _light_as_set(fore_and_back: str) -> bool | None:
    """What the variable COLORFGBG of rxvt's says: colours by number, the background last."""
    back = fore_and_back.rpartition(";")[2]
    if not (back.isascii() and back.isdigit()) or len(back) > 2 or int(back) > 15:
        return None
    return int(back) in LIGHT_COLOURS


def _answer(stdin: int, until: float) -> bytes:
    """What the terminal sends up to then, or up to where it says what it is."""
    heard = b""
    while len(heard) < MOST_BYTES:
        left = max(0.0, until - time.monotonic())
        if not select.select([stdin], [], [], left)[0]:
            break
        more = os.read(stdin, 1024)
        heard += more
        if not more or _WHAT_IT_IS.search(heard):
            break
    return heard


def _letter_by_letter(stdin: int) -> list[Any]:
    """Have the terminal give what is typed at once and write it nowhere; how it was before."""
    before = termios.tcgetattr(stdin)
    now = termios.tcgetattr(stdin)
    now[3] &= ~(termios.ICANON | termios.ECHO)
    termios.tcsetattr(stdin, termios.TCSANOW, now)
    return before

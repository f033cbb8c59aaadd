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
import time
from collections.abc import Iterator, Mapping
from contextlib import contextmanager

from msgspec import Struct

ASKED = b"\x1b]11;?\x1b\\\x1b[c"
LONGEST_WAIT = 0.1
"""Seconds a terminal that does not answer costs."""

MOST_BYTES = 4096
"""Bytes of whatever comes in meanwhile that are looked at."""

WRITES_IT_OUT = ("linux", "dumb")
"""Terminals by TERM that would print the question, or have no colours."""

_COLOUR = re.compile(rb"\x1b\]11;rgba?:([\da-f]{1,4})/([\da-f]{1,4})/([\da-f]{1,4})", re.IGNORECASE)
_WHAT_IT_IS = re.compile(rb"\x1b\[\?[\d;]*c")
_UNFINISHED = re.compile(rb"\x1b(\](1(1(;[^\x07\x1b]{0,64}\x1b?)?)?)?|\[(\?[\d;]*)?)?\Z")

HALFWAY = 0.18
"""The luminance at which black and white stand out equally, by WCAG's formula of contrast."""

LIGHT_COLOURS = {7, *range(9, 16)}
"""Of the sixteen colours of a terminal: white and the bright ones but for bright black."""


class Background(Struct, frozen=True):
    """`light` is None where nobody says. `unfinished` is an answer whose end had not come yet."""

    light: bool | None
    unfinished: str = ""


def background(stdin: int, out: int, surroundings: Mapping[str, str]) -> Background:
    """What the background is; `stdin` and `out` are the terminal's, to read from and write to."""
    answer = b""
    if surroundings.get("TERM") not in WRITES_IT_OUT:
        answer = _answer(stdin, out)
    told = light_in(answer)
    if told is None:
        told = _light_as_set(surroundings.get("COLORFGBG", ""))
    rest = _UNFINISHED.search(answer)
    return Background(told, rest[0].decode(errors="replace") if rest else "")


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


def _answer(stdin: int, out: int) -> bytes:
    """What the terminal sends within the time, up to where it says what it is."""
    heard = b""
    try:
        with _letter_by_letter(stdin):
            os.write(out, ASKED)
            until = time.monotonic() + LONGEST_WAIT
            while (left := until - time.monotonic()) > 0 and len(heard) < MOST_BYTES:
                if not select.select([stdin], [], [], left)[0]:
                    break
                more = os.read(stdin, 1024)
                heard += more
                if not more or _WHAT_IT_IS.search(heard):
                    break
    except (OSError, ValueError):
        pass  # then nobody says
    return heard


@contextmanager
def _letter_by_letter(stdin: int) -> Iterator[None]:
    """The terminal gives what is typed at once and does not write it on the screen.

    No stop may come between, or the terminal would stay so.
    """
    import termios

    before = termios.tcgetattr(stdin)
    now = termios.tcgetattr(stdin)
    now[3] &= ~(termios.ICANON | termios.ECHO)
    signal.pthread_sigmask(signal.SIG_BLOCK, [signal.SIGTSTP])
    try:
        termios.tcsetattr(stdin, termios.TCSANOW, now)
        try:
            yield
        finally:
            termios.tcsetattr(stdin, termios.TCSANOW, before)
    except termios.error as error:
        raise OSError(*error.args) from error
    finally:
        signal.pthread_sigmask(signal.SIG_UNBLOCK, [signal.SIGTSTP])

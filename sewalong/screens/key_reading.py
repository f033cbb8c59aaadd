"""What the terminal sends, read so that nothing it sends can end the app.

The library's parser raises in its reading thread for codes that are no character, and gives a
key without its text where a terminal of the Kitty protocol sends only its code. It would also
take for keys what the terminal answers, later than anybody waited, about its background.
"""

from __future__ import annotations

import codecs
import re
import sys
import time
from collections.abc import Callable, Iterable
from functools import partial
from typing import ClassVar

from textual._xterm_parser import XTermParser
from textual.driver import Driver
from textual.events import Key, Resize
from textual.keys import Keys
from textual.message import Message

_CODE_ALONE = re.compile(r"\x1b\[(\d{1,7})(?:;(\d{0,3}))?u")
"""A key by its code, and the keys held with it, without its text."""

_COLOUR_ANSWER = "\x1b]11;"
"""How the answer about the background begins; it ends with a bell, or with _ENDS."""
_ENDS = "\x1b\\"
_IN_A_COLOUR = frozenset("rgba:/;?0123456789abcdefABCDEF")
_GOES_ON = re.compile(r"\x1b(\]1?$|\]11($|;)|\[\?)")
_WHAT_IT_IS = re.compile(r"\x1b\[\?[\d;]*c")
_ANSWER_BEGUN = re.compile(r"\x1b(\]1{0,2}|\[\?[\d;]*)")

ANSWER_WITHIN = 1.0
"""Seconds after its beginning in which an answer of the terminal comes whole, and then no more."""

_SHIFT, _LOCKS = 1, 64 | 128
"""Bits of the keys held: shift; caps lock and num lock, which take nothing from a letter."""

WIDEST = 10_000
"""Columns or rows of a terminal beyond which a report of its size is no report: from memory, the widest
screens show some 1,000 of the smallest letters."""


class ForgivingParser(XTermParser):
    """The library's parser, without its faults."""

    _colour_until = 0.0
    """Up to when what comes belongs to an answer about the background; 0 when none does."""
    unfinished: ClassVar[str] = ""
    """The beginning of an answer that was read before there was a parser."""
    _since_escape = ""
    _escape_at = 0.0

    def feed(self, data: str) -> Iterable[Message]:
        if not data:
            yield from super().feed(data)
        if self.unfinished and _GOES_ON.match(self.unfinished + data):
            data = self.unfinished + data
        ForgivingParser.unfinished = ""
        for sign in data:
            if self._colour_until and self._is_of_the_colour(sign):
                continue
            if sign == "\x1b":
                self._since_escape, self._escape_at = "", time.monotonic()
            self._since_escape += sign if len(self._since_escape) < 32 else ""
            for message in super().feed(sign):
                if isinstance(message, Resize) and not 0 < max(message.size) <= WIDEST:
                    continue
                yield message

    def tick(self) -> Iterable[Message]:
        """An answer of the terminal that has begun is waited for longer than a key."""
        late = time.monotonic() - self._escape_at > ANSWER_WITHIN
        if late or not _ANSWER_BEGUN.fullmatch(self._since_escape):
            yield from super().tick()

    def _is_of_the_colour(self, sign: str) -> bool:
        """Whether an answer about the background goes on with `sign`; else it has ended."""
        goes_on = sign in _IN_A_COLOUR and time.monotonic() < self._colour_until
        if not goes_on:
            self._colour_until = 0.0
        return goes_on or sign == "\a"

    def _sequence_to_key_events(self, sequence: str, alt: bool = False) -> Iterable[Key]:
        if sequence == _COLOUR_ANSWER:
            self._colour_until = time.monotonic() + ANSWER_WITHIN
        if sequence in (_COLOUR_ANSWER, _ENDS) or _WHAT_IT_IS.fullmatch(sequence):
            return [Key(Keys.Ignore, None)]
        try:
            keys = [
                _with_text(key, sequence) for key in super()._sequence_to_key_events(sequence, alt)
            ]
            for key in keys:
                (key.character or "").encode()
        except (ValueError, OverflowError):
            # A code that is no character: the whole of it is passed over.
            return [Key(Keys.Ignore, None)]
        return keys


def _with_text(key: Key, sequence: str) -> Key:
    """`key` with the character it types, where the terminal sent only its code."""
    if key.character is not None or (code := _CODE_ALONE.fullmatch(sequence)) is None:
        return key
    held = max(0, int(code[2] or 1) - 1)
    text = chr(int(code[1]))
    if not text.isprintable() or held & ~(_SHIFT | _LOCKS):
        return key
    if held & _SHIFT:
        # Which sign stands above a digit differs from keyboard to keyboard.
        return Key(text.upper(), text.upper()) if text.isalpha() else key
    return Key(key.key, text)


def forgive_bad_bytes(driver: type[Driver]) -> None:
    """Let a byte that is no UTF-8 show as � and not end the program, whatever the driver.

    Drivers decode standard input strictly; a stray byte from a paste or a wrong locale would
    raise in their reading thread (Textual issue 6668).
    """
    for kind in driver.__mro__:
        names = vars(sys.modules[kind.__module__])
        if "getincrementaldecoder" in names:
            names["getincrementaldecoder"] = _forgiving_decoder
        if "XTermParser" in names:
            names["XTermParser"] = ForgivingParser


def _forgiving_decoder(encoding: str) -> Callable[[], codecs.IncrementalDecoder]:
    return partial(codecs.getincrementaldecoder(encoding), errors="replace")

"""What the terminal sends, read so that nothing it sends can end the app.

The library's parser raises in its reading thread for codes that are no character, and gives a
key without its text where a terminal of the Kitty protocol sends only its code.
"""

from __future__ import annotations

import codecs
import re
import sys
from collections.abc import Callable, Iterable
from functools import partial

from textual._xterm_parser import XTermParser
from textual.driver import Driver
from textual.events import Key, Resize
from textual.keys import Keys
from textual.message import Message

_CODE_ALONE = re.compile(r"\x1b\[(\d{1,7})(?:;(\d{0,3}))?u")
"""A key by its code, and the keys held with it, without its text."""

_SHIFT, _LOCKS = 1, 64 | 128
"""Bits of the keys held: shift; caps lock and num lock, which take nothing from a letter."""

WIDEST = 10_000
"""Columns or rows of a terminal beyond which a report of its size is no report: from memory, the widest
screens show some 1,000 of the smallest letters."""


class ForgivingParser(XTermParser):
    """The library's parser, without its faults."""

    def feed(self, data: str) -> Iterable[Message]:
        for message in super().feed(data):
            if isinstance(message, Resize) and not 0 < max(message.size) <= WIDEST:
                continue
            yield message

    def _sequence_to_key_events(self, sequence: str, alt: bool = False) -> Iterable[Key]:
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

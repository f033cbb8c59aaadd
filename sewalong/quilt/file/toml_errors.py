"""A quilt file as TOML: read, or refused with the line and in plain words."""

from __future__ import annotations

import re
import tomllib
from typing import NoReturn

from msgspec import Struct

from sewalong.quilt.file.faults import Fault, QuiltFileFaults
from sewalong.quilt.file.toml_bounds import out_of_bounds

LONGEST_FILE = 100_000
"""Bytes in a quilt file. A real one has a few hundred, with long notes and remarks some thousands."""

_AFTER_VALUE = (
    "Something stands behind the value on this line. Put text, and lengths with a space, a "
    'fraction or a unit, between quotes, such as size = "2 1/2"; for inches write in, not a '
    "second quote."
)
_NO_VALUE = (
    "What stands behind the = is not a value. Put text, and lengths with a fraction, between "
    'quotes, such as size = "½"; whole numbers and decimals go without.'
)
_NO_KEY = (
    'A key was expected here. Write key = value, such as name = "Harbour lights", or a heading '
    "such as [layout]; a remark begins with #."
)
_NO_EQUALS = (
    "There is no = behind the key. Write key = value; a key of several words is joined by _, "
    "such as in_a_pack."
)
_TWICE = "This key or heading stands in the file twice. Keep one of them."
_BACKSLASH = (
    r"A \ in text between double quotes has a meaning of its own. Write it twice, or use "
    "single quotes around the text."
)

# The openings of tomllib's messages, and what a person who has never heard of TOML can do.
_PLAIN = {
    "Expected newline or end of document": _AFTER_VALUE,
    "Invalid value": _NO_VALUE,
    "Invalid date": _NO_VALUE,
    "Invalid statement": _NO_KEY,
    "Invalid initial character for a key": _NO_KEY,
    "Expected '=' after a key": _NO_EQUALS,
    "Expected ']' at the end": "The heading is not closed. Write it like [layout].",
    "Expected ']]' at the end": "The heading is not closed. Write it like [[border]].",
    "Cannot": _TWICE,
    "Duplicate inline table key": _TWICE,
    "Unclosed array": "The list is not closed. Put commas between its parts and ] behind them.",
    "Unclosed inline table": "The { is not closed. Put commas between its parts and } behind them.",
    "Unterminated string": "The text is not closed. Put the same quotes behind it as before it.",
    'Expected \'"""\'': 'The text is not closed. Put """ behind it.',
    "Expected \"'''\"": "The text is not closed. Put ''' behind it.",
    'Expected "\'"': "The text is not closed. Put ' behind it, on the same line.",
    "Illegal character '\\n'": (
        "The text is not closed on its line. Put a quote behind it, or three quotes before and "
        "behind text of several lines."
    ),
    "Unescaped": _BACKSLASH,
    "Invalid hex": _BACKSLASH,
    "Escaped character": _BACKSLASH,
    "Illegal character": "There is a control character here. Take it out.",
    "Found invalid character": "There is a control character here. Take it out.",
}
_PLACE = r" \(at (?:line (?P<line>\d+), column \d+|end of document)\)$"


class Decimals(Struct, frozen=True):
    """A bare number with a point, as it was written, so that 0.1 stays a tenth."""

    written: str


def read_toml(text: str) -> dict[str, object]:
    """The keys and values of `text`, numbers with a point as `Decimals`.

    Raises QuiltFileFaults, with one fault, when it is too long, has too much in it to be a quilt
    file, or is not TOML.
    """
    try:
        size = len(text.encode())
    except UnicodeEncodeError as error:
        _refuse(
            text.count("\n", 0, error.start) + 1,
            "There is half a character here, which no file can hold. Take it out.",
        )
    refuse_if_too_long(size)
    if fault := out_of_bounds(text):
        raise QuiltFileFaults((fault,))
    try:
        return tomllib.loads(text, parse_float=Decimals)
    except tomllib.TOMLDecodeError as error:
        _refuse_toml(text, str(error))


def decode(data: bytes) -> str:
    """The text of a file of bytes; a byte order mark in front is left off.

    Raises QuiltFileFaults when it is too long or is not UTF-8.
    """
    refuse_if_too_long(len(data))
    try:
        return data.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        _refuse(
            data.count(b"\n", 0, error.start) + 1,
            "There are characters here that are not written in UTF-8. Open the file in an "
            "editor and save it as UTF-8.",
        )


def refuse_if_too_long(size: int) -> None:
    """Raise QuiltFileFaults when a file of `size` bytes is too long to be a quilt file."""
    if size > LONGEST_FILE:
        _refuse(
            None,
            f"The file has {size:,} bytes, and a quilt file has at most {LONGEST_FILE:,}. Is this "
            "the right file?",
        )


def _refuse_toml(text: str, message: str) -> NoReturn:
    place = re.search(_PLACE, message)
    line = place["line"] if place is not None else None
    number = int(line) if line is not None else text.rstrip().count("\n") + 1
    for opening, plain in _PLAIN.items():
        if message.startswith(opening):
            _refuse(number, plain)
    _refuse(number, "This line is not as TOML wants it. Compare it with a demo quilt file.")


def _refuse(line: int | None, sentence: str) -> NoReturn:
    raise QuiltFileFaults((Fault("", line, sentence),))

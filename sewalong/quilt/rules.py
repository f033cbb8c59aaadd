"""What a quilt may be called and how many of everything it may have.

Each rule takes a value as it was read from a file or an archive, gives it back checked, and
raises ValueError with a plain sentence when it will not do.
"""

from __future__ import annotations

import re
import unicodedata

from sewalong.lengths import Unit
from sewalong.lengths.fault import quoted
from sewalong.quilt.choices import CORNERS, FABRIC_KINDS, JOINS, VALUES
from sewalong.quilt.web import JOINED

LONGEST_NAME = 80
"""Characters in the name of a quilt or of a cloth."""

LONGEST_FILE_NAME = 200
"""Characters in the name of a file and the folders it is in."""

LONGEST_NOTES = 2000
"""Characters in the notes."""

MOST_ROWS = 200
"""Rows, and columns, of a layout: far more than any bed takes, and a screen still draws it."""

MOST_PIECES = 9999
"""Pieces to begin with, in one pile."""

MOST_BORDERS = 12
"""Borders of one quilt: from memory, few have more than five."""

MOST_METRES = 20_000
"""Thread on a spool or a bobbin; large cones hold some 5,000 m."""

_COLOUR = "#[0-9a-fA-F]{6}"

SETTINGS = ("straight", "sashed", "on point")
"""How units can be set."""

FINISHING_STAGES = ("layer", "quilt", "bind")
"""What may follow the top, in working order."""

# These turn the writing on a screen around or end a line where nobody sees it.
_TURNS_WRITING = frozenset("\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069")
_ENDS_LINE = frozenset("\u2028\u2029")


# Letters and symbols by their kind, and blank all the same: fillers of Korean writing, the Braille
# pattern without dots, a note without its head.
_BLANK = frozenset("\u115f\u1160\u3164\uffa0\u2800\U0001d159")
# Marks that never show, a part of which has no kind yet.
_NEVER_SHOWN = (range(0x2060, 0x2070), range(0xFFF0, 0xFFFC), range(0xE0000, 0xE1000))


def a_text(value: object, longest: int, *, lines: bool = False) -> str:
    """`value` if it is text of at most `longest` characters; with `lines`, it may have several."""
    if not isinstance(value, str):
        raise ValueError('This must be text between quotes, such as "cream linen".')
    if len(value) > longest:
        raise ValueError(f"This has {len(value)} characters. Write it in {longest} or fewer.")
    if any(_is_control(character) for character in value if not (lines and character in "\n\t")):
        kept = " other than a tab or a new line" if lines else " such as a tab or a new line"
        raise ValueError(f"This has a control character{kept} in it. Take it out.")
    return value


def a_name(value: object) -> str:
    """`value` if it is the name of a quilt or a cloth: one line, with something to see in it."""
    text = a_stored_name(value)
    if not any(map(_can_be_seen, text)):
        raise ValueError("Nothing in this name can be seen. Write one with a letter or a digit.")
    return text


def a_stored_name(value: object) -> str:
    """`value` if it is a name as records have it: one line, not empty.

    Records may hold names of which nothing can be seen, and are read all the same.
    """
    text = a_text(value, LONGEST_NAME)
    if not text.strip():
        raise ValueError("This is empty. Write a name of 1 to 80 characters.")
    return text


def a_file_name(value: object) -> str:
    """`value` if it can name a file: one line, not empty."""
    text = a_text(value, LONGEST_FILE_NAME)
    if not text.strip():
        raise ValueError('This is empty. Write the name of a file, such as "my-method.toml".')
    return text


def notes(value: object) -> str:
    """`value` if it can be the notes; they may be empty and have several lines."""
    return a_text(value, LONGEST_NOTES, lines=True)


def whole(value: object, most: int) -> int:
    """`value` if it is a whole number from 1 to `most`."""
    if isinstance(value, bool) or not isinstance(value, int):
        raise ValueError(f"This must be a whole number from 1 to {most:,}, without quotes.")
    if value < 1:
        raise ValueError(f"This must be at least 1, and at most {most:,}.")
    if value > most:
        raise ValueError(f"This is more than {most:,}. Write a whole number from 1 to {most:,}.")
    return value


def owner_unit(value: object) -> Unit:
    """The unit `value` names."""
    if not isinstance(value, str) or value not in tuple(Unit):
        said = f"{quoted(value)} is not" if isinstance(value, str) else "This is not"
        raise ValueError(f'{said} a unit to work in. Write "inch" or "cm".')
    return Unit(value)


def finishing(value: object) -> tuple[str, ...]:
    """The finishing stages `value` lists, in working order whatever the order they stand in."""
    known = ", ".join(f'"{name}"' for name in FINISHING_STAGES)
    if not isinstance(value, list) or not all(isinstance(name, str) for name in value):
        raise ValueError(f"This must be a list between [ and ] of any of {known}.")
    wrong: list[str] = []
    strange = [quoted(name) for name in value if name not in FINISHING_STAGES]
    if strange:
        verb = "is not a finishing stage" if len(strange) == 1 else "are not finishing stages"
        wrong.append(f"{', '.join(strange[:5])} {verb}. The finishing stages are {known}.")
    twice = [f'"{name}"' for name in FINISHING_STAGES if value.count(name) > 1]
    if twice:
        wrong.append(f"{', '.join(twice)} stands here more than once. Write each stage once.")
    if wrong:
        raise ValueError(" ".join(wrong))
    return tuple(name for name in FINISHING_STAGES if name in value)


def setting_kind(value: object) -> str:
    """`value` if it is a way units are set that is known."""
    return _one_of(value, SETTINGS)


def joined(value: object) -> str:
    """`value` if it is a way units are put together that is known."""
    return _one_of(value, JOINED)


def yes_or_no(value: object) -> bool:
    """`value` if it is true or false."""
    if not isinstance(value, bool):
        raise ValueError("This must be true or false, without quotes.")
    return value


def letter(value: object) -> str:
    """`value` if it is the letter of a fabric: "A" to "Z", and behind them "AA" to "ZZ"."""
    if not isinstance(value, str) or re.fullmatch("[A-Z]{1,2}", value) is None:
        raise ValueError('This must be one capital letter, such as "A", or two behind "Z".')
    return value


def by_letter(letter: str) -> tuple[int, str]:
    """What letters of fabrics are put in order by: A to Z, then AA."""
    return (len(letter), letter)


def fabric_kind(value: object) -> str:
    """`value` if it is one of FABRIC_KINDS."""
    return _one_of(value, FABRIC_KINDS)


def value_word(value: object) -> str:
    """`value` if it is one of VALUES."""
    return _one_of(value, VALUES)


def share(value: object) -> int:
    """`value` if it can be the part of a second colour, in a hundred."""
    return whole(value, 99)


def colour(value: object) -> str:
    """The colour `value` as "#rrggbb" in small letters."""
    if not isinstance(value, str) or re.fullmatch(_COLOUR, value) is None:
        raise ValueError(
            'This must be a colour: # and six digits 0 to 9 or a to f, such as "#243b6b".'
        )
    return value.lower()


def metres(value: object) -> int:
    """`value` if it can be the metres of thread on a spool or a bobbin."""
    return whole(value, MOST_METRES)


def joins(value: object) -> str:
    """`value` if it is one of JOINS."""
    return _one_of(value, JOINS)


def corners(value: object) -> str:
    """`value` if it is one of CORNERS."""
    return _one_of(value, CORNERS)


def _one_of(value: object, known: tuple[str, ...]) -> str:
    if not isinstance(value, str) or value not in known:
        said = f"{quoted(value)} is not" if isinstance(value, str) else "This is not"
        each = ", ".join(f'"{one}"' for one in known)
        raise ValueError(f"{said} one of these. Write one of {each}.")
    return value


def _can_be_seen(character: str) -> bool:
    """Whether a character by itself leaves a mark: no blank, no format code, no bare accent."""
    return (
        unicodedata.category(character)[0] not in "ZM"
        and unicodedata.category(character) not in ("Cc", "Cf", "Cs")
        and character not in _BLANK
        and not any(ord(character) in marks for marks in _NEVER_SHOWN)
    )


def _is_control(character: str) -> bool:
    return (
        unicodedata.category(character) in ("Cc", "Cs")
        or character in _TURNS_WRITING
        or character in _ENDS_LINE
    )

"""Figures and letters of dots, as large as wanted: readable from metres away.

A dot is printed as a block in the colour of its own ground, so no hairline shows between lines
whatever the font does, and it is still a sign where there is no colour.
"""

from __future__ import annotations

from typing import NamedTuple

LINES = 5
"""Dots a figure or letter is high."""

_ROWS = {
    "0": "### #.# #.# #.# ###",
    "1": ".#. ##. .#. .#. ###",
    "2": "### ..# ### #.. ###",
    "3": "### ..# ### ..# ###",
    "4": "#.# #.# ### ..# ..#",
    "5": "### #.. ### ..# ###",
    "6": "### #.. ### #.# ###",
    "7": "### ..# ..# ..# ..#",
    "8": "### #.# ### #.# ###",
    "9": "### #.# ### ..# ###",
    "A": ".#. #.# ### #.# #.#",
    "B": "##. #.# ##. #.# ##.",
    "C": ".## #.. #.. #.. .##",
    "D": "##. #.# #.# #.# ##.",
    "E": "### #.. ##. #.. ###",
    "F": "### #.. ##. #.. #..",
    "G": ".### #... #.## #..# .###",
    "H": "#.# #.# ### #.# #.#",
    "I": "### .#. .#. .#. ###",
    "J": "..# ..# ..# #.# .#.",
    "K": "#..# #.#. ##.. #.#. #..#",
    "L": "#.. #.. #.. #.. ###",
    "M": "#...# ##.## #.#.# #...# #...#",
    "N": "#..# ##.# #.## #..# #..#",
    "O": ".##. #..# #..# #..# .##.",
    "P": "##. #.# ##. #.. #..",
    "Q": ".##. #..# #..# #.## .###",
    "R": "##. #.# ##. #.# #.#",
    "S": ".## #.. .#. ..# ##.",
    "T": "### .#. .#. .#. .#.",
    "U": "#.# #.# #.# #.# ###",
    "V": "#.# #.# #.# #.# .#.",
    "W": "#...# #...# #.#.# ##.## #...#",
    "X": "#.# #.# .#. #.# #.#",
    "Y": "#.# #.# .#. .#. .#.",
    "Z": "### ..# .#. #.. ###",
    "-": "... ... ### ... ...",
    ".": ". . . . #",
    ",": ".. .. .. .# #.",
    ":": ". # . # .",
    "/": "..# ..# .#. #.. #..",
    ";": ".# .. .# .# #.",
    "'": "# # . . .",
    "?": "##. ..# .#. ... .#.",
    "!": "# # # . #",
    "(": ".# #. #. #. .#",
    ")": "#. .# .# .# #.",
    "+": "... .#. ### .#. ...",
    "×": "... #.# .#. #.# ...",
    "–": "... ... ### ... ...",
    "“": "#.# #.# ... ... ...",
    "”": "#.# #.# ... ... ...",
    " ": ".. .. .. .. ..",
}
_DOTS = {sign: rows.split(" ") for sign, rows in _ROWS.items()}

BLOCK = "█"


class Dot(NamedTuple):
    """How large a dot is: columns and lines. A cell is half as wide as it is high."""

    across: int
    down: int


def can_be_drawn(text: str) -> bool:
    """Whether there are dots for every sign of it, in capitals."""
    return all(sign in _DOTS for sign in text.upper())


def width_of(text: str, dot: Dot) -> int:
    """Columns it takes, one dot between two signs."""
    return (sum(len(_DOTS[sign][0]) + 1 for sign in text.upper()) - 1) * dot.across


def wrapped(text: str, dot: Dot, width: int) -> list[str] | None:
    """The lines of words that fit in `width` columns each; None where a word does not, or there
    are no dots for a sign."""
    if not can_be_drawn(text):
        return None
    lines: list[str] = []
    for word in text.split():
        if lines and width_of(f"{lines[-1]} {word}", dot) <= width:
            lines[-1] += f" {word}"
        elif width_of(word, dot) <= width:
            lines.append(word)
        else:
            return None
    return lines


def drawn(text: str, dot: Dot) -> list[str]:
    """`text` in capitals: 5 × `dot.down` lines of blocks and blanks.

    Raises KeyError for a sign there are no dots for.
    """
    lines = []
    for row in range(LINES):
        dots = ".".join(_DOTS[sign][row] for sign in text.upper())
        line = "".join((BLOCK if dot_ == "#" else " ") * dot.across for dot_ in dots)
        lines += [line] * dot.down
    return lines

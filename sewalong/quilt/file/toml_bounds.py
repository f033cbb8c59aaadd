"""Whether a text is small enough in every way to be given to `tomllib`, asked before it is.

A key of many parts costs `tomllib` their square in time and memory, and brackets within brackets
or a number of many digits end it in words of Python's. This walks the text once, token by
token, as far as it is TOML; what comes behind the first fault in it does not matter, since
`tomllib` stops there.
"""

from __future__ import annotations

import re

from sewalong.quilt.file.faults import Fault

MOST_PARTS = 8
"""Parts of one dotted key or heading. A quilt file needs two."""

MOST_KEYS = 2_000
"""Keys and headings. A quilt with all the borders, piles and fabrics there can be has some 400."""

DEEPEST = 20
"""Brackets within brackets. A quilt file needs two."""

LONGEST_WORD = 100
"""Characters of a bare key, number or date."""

_TOKEN = re.compile(
    # As in `toml_lines`, no group is repeated possessively.
    r'"""(?:[^"\\]|\\.|"(?!""))*"{0,5}'
    r"|'''(?:[^']|'(?!''))*'{0,5}"
    r'|"(?:[^"\\\n]|\\[^\n])*"?'
    r"|'[^'\n]*+'?"
    r"|#[^\n]*+"
    r"|[][{}=,.\n]"
    r"""|[^][{}=,.\s"'#]++""",
    re.DOTALL,
)


def out_of_bounds(text: str) -> Fault | None:
    """The first thing in `text` that no quilt file has so many of, or None."""
    line, depth, dots, keys = 1, 0, 0, 0
    in_heading, begins = False, True
    for found in _TOKEN.finditer(text):
        token = found[0]
        if token == "\n":
            line, dots, begins = line + 1, 0, depth == 0 or in_heading
            if in_heading:
                depth, in_heading = 0, False
            continue
        if token == ".":
            dots += 1
            if dots >= MOST_PARTS:
                return Fault("", line, _PARTS)
        elif token in "[{":
            in_heading = in_heading or begins
            keys += begins
            depth, dots = depth + 1, 0
            if depth > DEEPEST:
                return Fault("", line, _DEEP)
        elif token in "]}":
            depth = max(0, depth - 1)
        elif token in "=,":
            keys, dots = keys + (token == "="), 0
        elif token[0] in "\"'#":
            line += token.count("\n")
        elif len(token) > LONGEST_WORD:
            return Fault("", line, _LONG.format(len(token)))
        if keys > MOST_KEYS:
            return Fault("", line, _MANY)
        begins = False
    return None


_PARTS = (
    f"A key or heading here has more than {MOST_PARTS} parts joined by points. Put text between "
    "quotes; a quilt file has headings such as [layout]."
)
_DEEP = (
    f"Brackets stand more than {DEEPEST} deep within brackets here. Take them out; a quilt file "
    'has lists such as ["layer", "bind"].'
)
_LONG = (
    f"A key or a number of {{:,}} characters stands here, and at most {LONGEST_WORD} can be read. "
    "Shorten it, or put text between quotes."
)
_MANY = f"Up to here there are more than {MOST_KEYS:,} keys and headings. Is this a quilt file?"

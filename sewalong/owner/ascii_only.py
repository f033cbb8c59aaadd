"""Text in plain ASCII, sign for sign as wide as it was: for terminals that show nothing else."""

from __future__ import annotations

import unicodedata

_SIGNS = str.maketrans(
    {
        **dict.fromkeys("“”„″", '"'),
        **dict.fromkeys("‘’′", "'"),
        **dict.fromkeys("–—―╌─", "-"),
        **dict.fromkeys("━═", "="),
        **dict.fromkeys("·•…", "."),
        **dict.fromkeys("█▀▄▇▆▅▃▂▁▔", "#"),
        **dict.fromkeys("▌▐│┃┆", "|"),
        **dict.fromkeys("░▒▓", ":"),
        **dict.fromkeys("\N{NO-BREAK SPACE}\N{THIN SPACE}", " "),
        "╱": "/",
        "╲": "\\",
        "╳": "x",
        "┄": "-",
        "×": "x",
        "→": ">",
        "←": "<",
        "↑": "^",
        "↓": "v",
        "≤": "<",
        "≥": ">",
        "√": "V",
        "±": "~",
        "°": "o",
    }
)


def ascii_only(text: str) -> str:
    """`text` with a plain sign for each that is none, letters without their accents.

    What has nothing like it is "?", twice where it is two columns wide; what has no width of its
    own, such as an accent by itself, is left out.
    """
    if text.isascii():
        return text
    return "".join(map(_plain, text.translate(_SIGNS)))


def _plain(sign: str) -> str:
    if sign.isascii():
        return sign
    if unicodedata.category(sign) in ("Mn", "Me", "Cf"):
        return ""
    columns = 2 if unicodedata.east_asian_width(sign) in ("W", "F") else 1
    letter = unicodedata.normalize("NFKD", sign)[0]
    return letter * columns if letter.isascii() else "?" * columns

"""Text on its way to the terminal: as it was typed, but unable to drive the terminal."""

from __future__ import annotations

import re

# Compiled only when they are needed: most text has nothing to take out.
_SPACES = r"[\t\n\v\f\r\x85\u2028\u2029]+"
_HARMFUL = r"[\x00-\x1f\x7f-\x9f\u202a-\u202e\u2066-\u2069\ud800-\udfff]"
_PICTURES = 0x2400
_DELETE_PICTURE = "\u2421"
_STRANGE = "\ufffd"


def shown(text: str) -> str:
    """`text` on one line: line ends and tabs as spaces, other control characters as pictures.

    Escape becomes "␛"; what has no picture of its own (marks that turn the writing round,
    halves of characters) becomes "\ufffd".
    """
    if text.isprintable():
        return text
    return re.sub(_HARMFUL, lambda found: _picture(found[0]), re.sub(_SPACES, " ", text))


def _picture(character: str) -> str:
    code = ord(character)
    if code < 0x20:
        return chr(_PICTURES + code)
    return _DELETE_PICTURE if code == 0x7F else _STRANGE


def safe_json(text: str) -> str:
    """JSON `text` with its control characters written as escapes; it says the same."""
    return "".join(
        line if line == "\n" else re.sub(_HARMFUL, lambda found: f"\\u{ord(found[0]):04x}", line)
        for line in re.split(r"(\n)", text)
    )


def as_json(data: object) -> str:
    """`data` as readable JSON, ending in a line end."""
    import json

    return safe_json(json.dumps(data, ensure_ascii=False, indent=1)) + "\n"

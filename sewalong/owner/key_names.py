"""The names of keys, as people write them and as the terminal's library calls them."""

from __future__ import annotations

_OF_SIGNS = {
    "+": "plus",
    "-": "minus",
    "*": "asterisk",
    "/": "slash",
    ".": "full_stop",
    ",": "comma",
    ";": "semicolon",
    ":": "colon",
    "?": "question_mark",
    "!": "exclamation_mark",
    "=": "equals_sign",
    "#": "number_sign",
    "'": "apostrophe",
    "(": "left_parenthesis",
    ")": "right_parenthesis",
    "[": "left_square_bracket",
    "]": "right_square_bracket",
    "<": "less_than_sign",
    ">": "greater_than_sign",
}
_NAMED = {
    "space": "space",
    "enter": "enter",
    "esc": "escape",
    "escape": "escape",
    "tab": "tab",
    "backspace": "backspace",
    "delete": "delete",
    "insert": "insert",
    "home": "home",
    "end": "end",
    "page up": "pageup",
    "page down": "pagedown",
    "up": "up",
    "down": "down",
    **{f"f{n}": f"f{n}" for n in range(1, 25)},
}

_CAPS = {name: sign for sign, name in _OF_SIGNS.items()} | {"escape": "esc"}
_CAPS |= {"pageup": "page up", "pagedown": "page down"}


def key_named(typed: object) -> str:
    """What the library calls the key `typed`: "+" is plus, "F13" is f13, "A" is a.

    Raises ValueError for what is no key that can be given something to do.
    """
    name = typed.strip().lower() if isinstance(typed, str) else ""
    if len(name) == 1 and name.isascii() and name.isdigit():
        raise ValueError("Digits type a number to count. Choose another key.")
    if name in _NAMED:
        return _NAMED[name]
    if name in _OF_SIGNS:
        return _OF_SIGNS[name]
    if len(name) == 1 and name.isalpha() and name.isascii():
        return name
    raise ValueError(
        "This is no key that can be used. Write a letter, a sign such as + or -, space, enter, tab, "
        "backspace, delete, home, end, page up, page down, up, down, or f1 to f24."
    )


def cap(key: str) -> str:
    """What stands on the key that the library calls `key`."""
    return _CAPS.get(key, key)

"""The refusal of a length, and how the words it refuses are quoted."""

QUOTE_AT_MOST = 40
"""Characters of what was typed that a refusal repeats: a line of the smallest screen."""


class LengthFault(ValueError):
    """A length that cannot be taken. `sentence` says what was understood and what would be right.

    The sentence is one or more plain sentences on one line, fit to be shown as they are.
    """

    def __init__(self, sentence: str) -> None:
        """Refuse with `sentence`, which `str()` gives too."""
        super().__init__(sentence)
        self.sentence = sentence


def quoted(text: str) -> str:
    """The person's own words between quotes: one line, printable, at most 40 characters.

    Line breaks and tabs become spaces and anything else that cannot be printed becomes `?`,
    so that no control code or half of a character pair can reach a terminal or a file.
    """
    line = " ".join(text.split())
    shown = "".join(character if character.isprintable() else "?" for character in line)
    if len(shown) > QUOTE_AT_MOST:
        shown = shown[: QUOTE_AT_MOST - 3].rstrip() + "..."
    return f'"{shown}"' if "'" in shown and '"' not in shown else f"'{shown}'"

"""What one word on the line may be: readable text, or a whole number."""

from __future__ import annotations

import argparse
import re

_WHOLE = re.compile(r"[+-]?[0-9]{1,9}")


def whole_number(text: str) -> int:
    """A whole number in plain digits; what is too small or too large is refused later."""
    if not _WHOLE.fullmatch(text):
        raise argparse.ArgumentTypeError(
            f"“{text[:40]}” is not a whole number. Write it in digits, such as 12; "
            "a name of several words goes in quotes."
        )
    return int(text)


def words(text: str) -> str:
    """Text that can be kept; bytes that are no text are refused."""
    try:
        text.encode()
    except UnicodeEncodeError:
        raise argparse.ArgumentTypeError(
            "there are bytes in it that are no readable text. Type it in UTF-8."
        ) from None
    return text

"""Files the person names, read whole or refused in a plain sentence."""

from __future__ import annotations

import os
import sys

from sewalong.cli.frame.errors import CommandError

STDIN = "-"


def read_bytes(file: str, at_most: int) -> bytes:
    """The bytes of `file`, or of standard input for "-"; at most `at_most`.

    Never more than that is read, whatever stands at `file`. Raises CommandError.
    """
    try:
        if file == STDIN:
            if sys.stdin is None:
                raise CommandError("There is no standard input to read. Name a file.")
            data = sys.stdin.buffer.read(at_most + 1)
        else:
            if os.path.exists(file) and not os.path.isfile(file):
                raise CommandError(f"{file} is not a file. Name the file itself.")
            with open(file, "rb") as stream:
                data = stream.read(at_most + 1)
    except FileNotFoundError:
        raise CommandError(f"There is no file {file}. Look at its name and its folder.") from None
    except OSError as error:
        raise CommandError(f"{file} cannot be read ({error.strerror}).") from error
    if len(data) > at_most:
        raise CommandError(f"{file} has more than {at_most:,} bytes. Is this the right file?")
    return data


def read_text(file: str, at_most: int) -> str:
    """The same as text in UTF-8; raises CommandError for what is no text."""
    try:
        return read_bytes(file, at_most).decode("utf-8-sig")
    except UnicodeDecodeError:
        raise CommandError(f"{file} is not text in UTF-8. Is this the right file?") from None

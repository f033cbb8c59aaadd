"""Finding the method file that a quilt file names."""

from __future__ import annotations

import os

from sewalong.cli.frame.errors import CommandError
from sewalong.cli.frame.input_files import read_bytes

TYPE_CHECKING = False  # as typing has it, which takes longer to import than this file
if TYPE_CHECKING:
    from collections.abc import Callable

LONGEST_METHOD_FILE = 200_000
"""Bytes in a method file: what may be in it as text, in letters of four bytes."""


def beside(file: str) -> Callable[[str], bytes]:
    """What reads a method file named in the quilt file `file`, found from the folder that is in;
    from standard input ("-"), from the working folder. It raises ValueError for what it cannot read.
    """
    folder = os.path.dirname(file) or "."

    def load(name: str) -> bytes:
        try:
            return read_bytes(os.path.join(folder, name), LONGEST_METHOD_FILE)
        except CommandError as refusal:
            raise ValueError(str(refusal)) from refusal

    return load

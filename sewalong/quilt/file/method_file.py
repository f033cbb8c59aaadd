"""A method file of the maker's own: the method in it, or every fault with its line."""

from __future__ import annotations

import tomllib
from collections.abc import Callable

from sewalong.piecing.definition import MOST_FAULTS, Definition, understood
from sewalong.piecing.method_files import LONGEST_METHOD
from sewalong.piecing.method_trial import tried_out
from sewalong.quilt.file.faults import Fault, FaultList, MethodFileFaults, QuiltFileFaults
from sewalong.quilt.file.toml_errors import decode, read_toml

LoadMethod = Callable[[str], bytes]
"""Gives the bytes of the method file that a quilt file names; raises ValueError, in a plain sentence,
for one that cannot be read. Handed in, since this room has no disk."""

TOO_LONG = (
    f"The file has more than {LONGEST_METHOD:,} characters, and no method file is as long. Is this "
    "the right file?"
)


def method_text(data: bytes) -> str:
    """The text in the bytes of a method file. Raises MethodFileFaults unless it is UTF-8."""
    try:
        return decode(data).replace("\r\n", "\n")
    except QuiltFileFaults as error:
        raise MethodFileFaults(error.faults) from None


def read_method(file: str, text: str) -> Definition:
    """The method in `text`, its operations tried out; `file` is its name for later sentences.

    Raises MethodFileFaults with everything that is wrong with it. What is not TOML at all is one
    fault; operations are tried when nothing else is wrong.
    """
    if len(text) > LONGEST_METHOD:
        raise MethodFileFaults((Fault("", None, TOO_LONG),))
    try:
        # Read twice, since this one tells what is not TOML in plain words, with its line.
        read_toml(text)
    except QuiltFileFaults as error:
        raise MethodFileFaults(error.faults) from None
    found, wrong = understood(file, tomllib.loads(text))
    if found is not None:
        wrong = tried_out(found)
    if found is None or wrong:
        faults = FaultList(text)
        for path, sentence in wrong:
            faults.add(path, sentence[:1].upper() + sentence[1:])
        if len(wrong) == MOST_FAULTS:
            faults.add((), "There may be more faults than these. Is this a method file?")
        raise MethodFileFaults(faults.listed())
    return found

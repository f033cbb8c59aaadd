"""Which strips a method from strips is reckoned with, said wherever they decide the answer."""

from __future__ import annotations

import argparse

from msgspec import Struct

from sewalong.cli.frame.errors import CommandError
from sewalong.cli.frame.length_arguments import read, read_or_none, unit_of
from sewalong.lengths import Length, as_given
from sewalong.piecing.definition import Definition
from sewalong.piecing.derive import STRIP_LENGTH
from sewalong.piecing.method_counts import USUAL_STRIP
from sewalong.quilt.worksheet.line import Line


class StripTaken(Struct, frozen=True):
    """`width` and `length` in inches; `lines` says both, and is empty for a method from squares."""

    width: Length
    length: Length
    lines: tuple[Line, ...]


def strip_taken(
    written: Definition, args: argparse.Namespace, width: Length | None = None
) -> StripTaken:
    """The strip given by --strip and --strip-length, or the one taken as an example; `width` is
    there when it was worked out.

    Raises CommandError when a method from squares is given the length of a strip.
    """
    typed = [read_or_none(args, name) is not None for name in ("start", "strip-length")]
    wide = read(args, "start", USUAL_STRIP) if width is None else width
    long = read(args, "strip-length", STRIP_LENGTH)
    if not written.starts[0].strip:
        if typed[1]:
            raise CommandError(f"{written.name} begins with squares. Leave --strip-length out.")
        return StripTaken(wide, long, ())
    unit = unit_of(args)
    names = [
        name
        for name, known in (
            ("--strip", typed[0] or width is not None),
            ("--strip-length", typed[1]),
        )
        if not known
    ]
    example = f"an example; give {' and '.join(names)} for yours" if names else ""
    text = f"{as_given(wide, unit)} wide, {as_given(long, unit)} long"
    return StripTaken(wide, long, (Line("strips taken", text, example),))

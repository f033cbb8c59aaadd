"""The size a quilt is to have: given, or that of a bed and how far it hangs down."""

from __future__ import annotations

import argparse
from fractions import Fraction

from sewalong.cli.frame.errors import CommandError
from sewalong.cli.frame.length_arguments import read, size_of, unit_of
from sewalong.quilt.cloth.beds import bed, quilt_over
from sewalong.quilt.size import Size


def wanted_size(args: argparse.Namespace) -> Size | None:
    """The size from --near, or from --bed and --drop; None when neither is given."""
    if args.near is not None:
        if args.bed is not None:
            raise CommandError("Give --near or --bed, not both.")
        return size_of(" ".join(args.near), unit_of(args))
    if args.bed is None:
        return None
    return quilt_over(bed(args.bed).size, drop=read(args, "drop", Fraction(0)))

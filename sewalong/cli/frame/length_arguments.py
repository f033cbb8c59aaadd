"""Lengths, sizes and settings as people type them, read from the arguments of a command.

They were kept as text while the line was read, since what a bare number means hangs on the unit.
"""

from __future__ import annotations

import argparse
import re
from fractions import Fraction
from typing import TYPE_CHECKING

from sewalong.cli.frame.errors import CommandError

if TYPE_CHECKING:
    from sewalong.lengths import Length, Unit
    from sewalong.piecing.definition import Definition
    from sewalong.quilt.choices import Choices
    from sewalong.quilt.cloth.strips import Join
    from sewalong.quilt.size import Size

_METRIC = re.compile(r"[0-9]\s*(?:cm|m|centimet\w+|met\w+)\b", re.IGNORECASE)
_MILLIMETRES = re.compile(r"[0-9]\s*(?:mm|millimet\w+)\b", re.IGNORECASE)
_INCHES = re.compile(r"[0-9½¼¾⅛⅜⅝⅞]\s*(?:in\b|inch|[\"”″])", re.IGNORECASE)
_NOTHING = re.compile(r"0(?:\.0*)?\s*(?:in|cm|mm)?")


def unit_of(args: argparse.Namespace) -> Unit:
    """The unit asked for, else that of what was typed, else the one she prefers, else inches.

    Lengths typed in cm or m make it cm, unless others stand in inches. Millimetres do so only
    where every length is in them: a seam of 6 mm does not turn a quilt of inches over.
    """
    from sewalong.lengths import Unit

    if getattr(args, "unit", None) is not None:
        return Unit(args.unit)
    typed = [text for value in vars(args).values() for text in _typed(value)]
    if any(map(_METRIC.search, typed)) and not any(map(_INCHES.search, typed)):
        return Unit.CM
    if typed and all(map(_MILLIMETRES.search, typed)):
        return Unit.CM
    return Unit.INCH if any(map(_INCHES.search, typed)) else _preferred()


def _preferred() -> Unit:
    from sewalong.lengths import Unit
    from sewalong.service.preferences import own_preferences

    preferences, _ = own_preferences()
    return preferences.unit or Unit.INCH


def _typed(value: object) -> list[str]:
    """The lengths in an argument as they were typed: the words of one are a list of text."""
    if not isinstance(value, list) or not value:
        return []
    if all(isinstance(one, str) for one in value):
        return [" ".join(value)]
    return [text for one in value for text in _typed(one)]


def read(args: argparse.Namespace, name: str, usual: Length | None = None) -> Length:
    """The length typed for `--name`, or `usual`. "0" is nothing.

    Raises LengthFault for no length, and CommandError when it was left out and there is no usual one.
    """
    typed = getattr(args, name.replace("-", "_"), None)
    if typed is None:
        if usual is None:
            raise CommandError(f"Give --{name} and a length. See: sewalong {args.command} --help")
        return usual
    return read_text(" ".join(typed), unit_of(args))


def read_or_none(args: argparse.Namespace, name: str) -> Length | None:
    """The length typed for `--name`, or None."""
    return None if getattr(args, name.replace("-", "_"), None) is None else read(args, name)


def read_text(text: str, unit: Unit) -> Length:
    """One length; "0" is nothing. Raises LengthFault."""
    from sewalong.lengths import parse

    return Fraction(0) if _NOTHING.fullmatch(text.strip()) else parse(text, unit)


def read_size(args: argparse.Namespace, name: str) -> Size:
    """The size typed for `--name`; one length is a square. Raises LengthFault or CommandError."""
    typed = getattr(args, name.replace("-", "_"), None)
    if typed is None:
        raise CommandError(
            f"Give --{name} and a size, such as 60 x 80. See: sewalong {args.command} --help"
        )
    return size_of(" ".join(typed), unit_of(args))


def size_of(text: str, unit: Unit) -> Size:
    """`60 x 80`, `60 x 80 cm`, or one length for a square. Raises LengthFault."""
    from sewalong.lengths import parse_across_and_down
    from sewalong.quilt.size import Size

    return Size(*parse_across_and_down(text, unit))


def read_join(args: argparse.Namespace) -> Join:
    """How strips are joined, from `--joins`."""
    from sewalong.quilt.cloth.strips import Join

    return Join.NONE if args.joins == "none" else Join(args.joins)


def method_named(typed: str) -> Definition:
    """The method called that; raises CommandError, naming the nearest, when there is none."""
    from sewalong.piecing.catalogue import written_method
    from sewalong.piecing.faults import UnknownMethod

    try:
        return written_method("-".join(typed.lower().split()))
    except UnknownMethod as fault:
        raise CommandError(f"{fault} All are listed by: sewalong methods") from fault


def changed(choices: Choices, args: argparse.Namespace) -> Choices:
    """`choices` with what was given on the line instead. Raises LengthFault."""
    from msgspec.structs import replace

    given: dict[str, object] = {}
    for name in ("usable", "margin", "own-seam", "binding"):
        found = read_or_none(args, name)
        if found is not None:
            given[name.replace("-", "_")] = found
    for name in ("joins", "corners"):
        if getattr(args, name) is not None:
            given[name] = getattr(args, name)
    return replace(choices, **given)

"""A quilt file as it is written: its tables and their keys.

Every key may be missing here, and nothing is held against anything else: so what is good in a
file can be understood although something in it is bad, and all faults come out together.
"""

from __future__ import annotations

from dataclasses import dataclass, fields
from fractions import Fraction
from typing import Any

from sewalong.lengths import Unit


@dataclass(eq=False, repr=False)
class Counted:
    """How many pieces there are: `count`, or `packs` of `in_a_pack`."""

    count: int | None = None
    packs: int | None = None
    in_a_pack: int | None = None


@dataclass(eq=False, repr=False)
class Squares(Counted):
    """[squares]: squares of one `size`."""

    size: Fraction | None = None


@dataclass(eq=False, repr=False)
class Strips(Counted):
    """[strips]: strips of one `width`, and the `length` of each that can be used."""

    width: Fraction | None = None
    length: Fraction | None = None


@dataclass(eq=False, repr=False)
class More(Counted):
    """One [[more]]: another pile to begin with, of squares or of strips."""

    pile: str | None = None
    size: Fraction | None = None
    width: Fraction | None = None
    length: Fraction | None = None


@dataclass(eq=False, repr=False)
class Layout:
    """[layout]: rows down and columns across."""

    rows: int | None = None
    columns: int | None = None


@dataclass(eq=False, repr=False)
class WrittenBorder:
    """One [[border]], the inner ones first."""

    cut: Fraction | None = None
    cloth: str | None = None
    colour: str | None = None


@dataclass(eq=False, repr=False)
class Finishing:
    """[finishing]: the stages wanted after the top."""

    stages: tuple[str, ...] = ()


@dataclass(eq=False, repr=False)
class WrittenFabric:
    """One [[fabric]] of the units."""

    letter: str | None = None
    name: str | None = None
    colour: str | None = None


@dataclass(eq=False, repr=False)
class WrittenCloth:
    """[cloth]: what she chooses about cloth, joins and thread. The keys are those of Choices."""

    usable: Fraction | None = None
    margin: Fraction | None = None
    binding: Fraction | None = None
    binding_ends: Fraction | None = None
    joins: str | None = None
    corners: str | None = None
    spool_metres: int | None = None
    bobbin_metres: int | None = None
    own_seam: Fraction | None = None


@dataclass(eq=False, repr=False)
class WrittenQuilt:
    """A whole quilt file."""

    name: str | None = None
    method: str | None = None
    unit: Unit = Unit.INCH
    seam: Fraction | None = None
    notes: str = ""
    squares: Squares | None = None
    strips: Strips | None = None
    more: list[More] | None = None
    layout: Layout | None = None
    border: list[WrittenBorder] | None = None
    finishing: Finishing | None = None
    fabric: list[WrittenFabric] | None = None
    cloth: WrittenCloth | None = None


TABLES: dict[str, type[Any]] = {
    "squares": Squares,
    "strips": Strips,
    "more": More,
    "layout": Layout,
    "border": WrittenBorder,
    "finishing": Finishing,
    "fabric": WrittenFabric,
    "cloth": WrittenCloth,
}
"""The headings of a quilt file."""

SEVERAL = ("more", "border", "fabric")
"""The headings that may stand there more than once."""


def keys_of(table: type[Any]) -> tuple[str, ...]:
    """The keys that may stand in `table`."""
    return tuple(field.name for field in fields(table))

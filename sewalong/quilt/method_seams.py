"""What meets what in a method: seams inside its units, their outer edges, and prints that turn."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from itertools import groupby

from msgspec import Struct

from sewalong.piecing.cloth import Flat
from sewalong.piecing.contacts import Contact, contacts
from sewalong.piecing.derive import Derivation
from sewalong.piecing.edges import Side, outer_edges
from sewalong.piecing.one_way import ways_up


class Seam(Struct, frozen=True):
    """Two fabrics by the method's letters, and the numbers of the units, from 1, in which they
    share so many inches of seam."""

    letters: tuple[str, str]
    units: tuple[int, ...]
    length: float


class OuterEdge(Struct, frozen=True):
    """The letters that show on one side of a unit, in the order they lie there."""

    unit: int
    side: Side
    letters: tuple[str, ...]


class Stands(Struct, frozen=True):
    """Degrees from the unit's up to that of this fabric's print, x towards y, all that occur."""

    letter: str
    unit: int
    degrees: tuple[int, ...]


class MethodSeams(Struct, frozen=True):
    """All of it, unit by unit as they are made of one batch."""

    units: int
    seams: tuple[Seam, ...]
    edges: tuple[OuterEdge, ...]
    stands: tuple[Stands, ...]


def method_seams(made: Derivation, turned: Mapping[str, int] | None = None) -> MethodSeams:
    """What meets what in the different units of a batch.

    `turned` has the degrees a fabric's squares were turned by before they were pieced.
    """
    allowance = float(made.seam)
    ways = ways_up(made.units, allowance, turned)
    return MethodSeams(
        len(made.units),
        _seams(contacts(made.units, allowance)),
        tuple(_edges(made)),
        tuple(
            Stands(letter, unit, tuple(sorted(shown[letter])))
            for unit, shown in enumerate(ways, start=1)
            for letter in sorted(shown)
        ),
    )


def _seams(meeting: tuple[Contact, ...]) -> tuple[Seam, ...]:
    """Two fabrics and what all their seams in a unit come to, units of one length together."""
    lengths: dict[tuple[tuple[str, str], int], float] = {}
    for contact in meeting:
        key = (contact.letters, contact.unit + 1)
        lengths[key] = lengths.get(key, 0.0) + contact.length
    units: dict[tuple[tuple[str, str], float], list[int]] = {}
    for (letters, unit), length in lengths.items():
        units.setdefault((letters, round(length, _SAME)), []).append(unit)
    return tuple(
        Seam(letters, tuple(there), length) for (letters, length), there in sorted(units.items())
    )


_SAME = 6
"""Decimals of an inch to which seams are of one length: float noise is far below."""


def _edges(made: Derivation) -> Iterator[OuterEdge]:
    for number, unit in enumerate(made.units, start=1):
        edges = outer_edges(Flat(unit.finished(float(made.seam))))
        for side in Side:
            parts = sorted(
                (min(edge.start, edge.end), edge.letter) for edge in edges if edge.side is side
            )
            # A fabric that goes on behind a seam is told once.
            letters = tuple(letter for letter, _ in groupby(letter for _, letter in parts))
            yield OuterEdge(number, side, letters)

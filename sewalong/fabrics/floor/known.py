"""Units as they are looked for in a photograph of the floor: which patches they have, of which fabric."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from msgspec import Struct

from sewalong.piecing.cloth import Flat
from sewalong.piecing.derive import Derivation
from sewalong.piecing.geometry import Point, Polygon

UNKNOWN = ""
"""The letter of a patch whose fabric is not known."""


class UnitPatch(Struct, frozen=True):
    """What shows of one patch once the unit is sewn in, and the letter of its fabric.

    Points are shares of the unit's width and length to its raw edges, from 0 to 1: on the floor
    a unit still shows its seam allowance, or hides it under the next.
    """

    outline: Polygon
    fabric: str


class KnownUnit(Struct, frozen=True):
    """A unit of a set, both numbered from 1; units of a set in order of making. `shape` is its
    length as a share of its width."""

    set: int
    number: int
    patches: tuple[UnitPatch, ...]
    shape: float = 1.0

    @property
    def called(self) -> str:
        """How a unit is spoken of."""
        return f"set {self.set} unit {self.number}"

    @property
    def turns(self) -> tuple[int, ...]:
        """Quarter turns that leave it in a place of its own shape."""
        return (0, 1, 2, 3) if abs(self.shape - 1) < _SQUARE else (0, 2)


_SQUARE = 0.01
"""Share of its width by which a unit may be longer and still be laid either way: what cutting
misses (own choice)."""


def units_of_sets(
    made: Derivation, sets: Mapping[int, Sequence[str | None]]
) -> tuple[KnownUnit, ...]:
    """Every unit of these sets. A set is her letters in the order the method takes its squares;
    None, or none at the end, for one that is not known."""
    found: list[KnownUnit] = []
    for number, squares in sorted(sets.items()):
        laid = dict(zip(made.letters, squares, strict=False))
        fabrics = {letter: laid.get(letter) or UNKNOWN for letter in made.letters}
        found += [
            _known(unit, float(made.seam), number, at, fabrics)
            for at, unit in enumerate(made.units, 1)
        ]
    return tuple(found)


def shapes_of(made: Derivation) -> tuple[KnownUnit, ...]:
    """The different units of a batch with nothing known of their fabrics."""
    nothing = dict.fromkeys(made.letters, UNKNOWN)
    seam = float(made.seam)
    return tuple(_known(unit, seam, 1, at, nothing) for at, unit in enumerate(made.units, 1))


def turned(outline: Polygon, quarters: int) -> Polygon:
    """Where a patch lies once its unit has been turned by so many quarters, x towards y."""
    for _ in range(quarters % 4):
        outline = tuple((1 - y, x) for x, y in outline)
    return outline


def _known(unit: Flat, seam: float, number: int, at: int, fabrics: Mapping[str, str]) -> KnownUnit:
    width, length = unit.size

    def share(point: Point) -> Point:
        return (point[0] + seam) / width, (point[1] + seam) / length

    patches = tuple(
        UnitPatch(tuple(map(share, patch.points)), fabrics[patch.letter])
        for patch in unit.finished(seam)
    )
    return KnownUnit(number, at, patches, length / width)

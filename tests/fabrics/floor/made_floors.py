"""Photographs of units laid on a floor, made so that the truth is known."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from fractions import Fraction

import numpy as np
from msgspec import Struct

from sewalong.fabrics.colours import Colour
from sewalong.fabrics.floor.known import KnownUnit, units_of_sets
from sewalong.fabrics.photo.letters import letter
from sewalong.piecing.cloth import Flat, turned
from sewalong.piecing.derive import Derivation, derive
from sewalong.piecing.geometry import turn
from tests.fabrics.photo.made_photos import Field, Print, Scene, light_of, solid

METHODS = (
    "four-patch",
    "half-square-eight",
    "half-square-two",
    "hourglass",
    "nine-patch",
    "nine-patch-quartered",
    "paired-squares",
    "stacked-four-patch",
)
"""Every method whose squares come in sets."""


def many_colours(count: int, apart: float = 0.0) -> dict[str, Colour]:
    """So many invented fabrics by letter, spread over lightness and hue."""
    rng = np.random.default_rng(5)
    found: dict[str, Colour] = {}
    from sewalong.fabrics.sight import difference

    while len(found) < count:
        parts = rng.integers(20, 245, 3).tolist()
        colour = Colour(*parts)
        if all(difference(colour, other) > apart for other in found.values()):
            found[letter(len(found))] = colour
    return found


def made(method: str) -> Derivation:
    return derive(method, Fraction(5))


def dealt(
    method: Derivation, sets: int, letters: Sequence[str], seed: int = 1
) -> dict[int, tuple[str, ...]]:
    """Sets of different fabrics, drawn anyhow."""
    rng = np.random.default_rng(seed)
    size = len(method.letters)
    return {
        number: tuple(letters[at] for at in rng.permutation(len(letters))[:size])
        for number in range(1, sets + 1)
    }


class Lying(Struct, frozen=True):
    """What lies at a place: a unit by its place in the sequence of units, and its quarter turns."""

    unit: int
    turn: int


def unit_print(
    raw: Flat, quarters: int, light: Mapping[str, Field], seen: Print | None = None
) -> Print:
    """A unit to its raw edges as it lies; `light` is that of each of the method's letters."""
    piece = turned(raw, turn(2 * quarters))
    width, height = piece.size

    def at(u: Field, v: Field) -> Field:
        x, y = u * width, v * height
        shown = np.zeros((*u.shape, 3))
        for patch in piece.patches:
            inside = np.ones(u.shape, dtype=bool)
            for number, (bx, by) in enumerate(patch.points):
                ax, ay = patch.points[number - 1]
                inside &= (bx - ax) * (y - ay) - (by - ay) * (x - ax) >= -1e-9
            shown[inside] = light[patch.letter]
        return shown

    return at


class Floor(Struct, frozen=True, kw_only=True):
    """Units of sets laid in rows, each somewhere and somehow turned."""

    method: str
    sets: Mapping[int, Sequence[str]]
    colours: Mapping[str, Colour]
    laid: Sequence[Sequence[Lying | None]]

    @property
    def units(self) -> tuple[KnownUnit, ...]:
        return units_of_sets(made(self.method), self.sets)

    def prints(self, ground: str) -> list[list[Print]]:
        return [[self._print(one, ground) for one in row] for row in self.laid]

    def _print(self, one: Lying | None, ground: str) -> Print:
        if one is None:
            return solid(ground)
        method = made(self.method)
        number, at = divmod(one.unit, len(method.units))
        squares = dict(zip(method.letters, self.sets[number + 1], strict=True))
        light = {key: light_of(str(self.colours[fabric])) for key, fabric in squares.items()}
        return unit_print(method.units[at], one.turn, light)

    def scene(self, **how: object) -> Scene:
        ground = str(how.get("ground", "#c9c4ba"))
        return Scene(squares=self.prints(ground), **how)  # type: ignore[arg-type]


def anyhow(
    method: str, rows: int, columns: int, fabrics: int = 21, seed: int = 1, spare: int = 0
) -> Floor:
    """A floor full of units of sets dealt anyhow, laid anyhow."""
    derived = made(method)
    colours = many_colours(fabrics, 6)
    needed = -(-(rows * columns + spare) // len(derived.units))
    sets = dealt(derived, needed, list(colours), seed)
    rng = np.random.default_rng(seed)
    order = rng.permutation(needed * len(derived.units))[: rows * columns]
    turns = rng.integers(0, 4, rows * columns)
    lying = [Lying(int(u), int(q)) for u, q in zip(order, turns, strict=True)]
    laid = [lying[row * columns : (row + 1) * columns] for row in range(rows)]
    return Floor(method=method, sets=sets, colours=colours, laid=laid)

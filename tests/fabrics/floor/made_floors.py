"""Photographs of units laid on a floor, made so that the truth is known."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from fractions import Fraction
from functools import cache

import numpy as np
from msgspec import Struct

from sewalong.fabrics.colours import Colour
from sewalong.fabrics.floor.known import KnownUnit, units_of_sets
from sewalong.fabrics.floor.result import FloorPlace
from sewalong.fabrics.sight import difference, from_afar, lab
from sewalong.piecing.cloth import Flat, Patch, turned
from sewalong.piecing.derive import Derivation, derive
from sewalong.piecing.geometry import turn
from sewalong.quilt.letters import letter
from tests.fabrics.photo.made_photos import Field, Print, Scene, dots, solid

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

SEEN = 0.3
"""Share of the second colour in a dotted fabric."""


@cache
def cloth(count: int, apart: float = 6.0) -> Mapping[str, Colour]:
    """So many invented fabrics by letter, as muted as cloth is, any two so far apart (CIEDE2000)."""
    rng = np.random.default_rng(5)
    found: dict[str, Colour] = {}
    while len(found) < count:
        colour = Colour(*rng.integers(15, 245, 3).tolist())
        _, a, b = lab(colour)
        if math.hypot(a, b) < 45 and all(difference(colour, one) > apart for one in found.values()):
            found[letter(len(found))] = colour
    return found


def made(method: str) -> Derivation:
    return derive(method, Fraction(5))


class Lying(Struct, frozen=True):
    """What lies at a place: a unit by its place in the sequence of units, and its quarter turns."""

    unit: int
    turn: int


class Floor(Struct, frozen=True, kw_only=True):
    """Units of sets laid in rows, each somewhere and somehow turned. A fabric of `seconds` has dots
    of that colour, one of `prints` that print, the others are solids."""

    method: str
    sets: Mapping[int, Sequence[str]]
    colours: Mapping[str, Colour]
    laid: Sequence[Sequence[Lying | None]]
    seconds: Mapping[str, Colour] = {}
    prints: Mapping[str, Print] = {}

    @property
    def units(self) -> tuple[KnownUnit, ...]:
        return units_of_sets(made(self.method), self.sets)

    @property
    def size(self) -> tuple[int, int]:
        return len(self.laid), len(self.laid[0])

    @property
    def seen_colours(self) -> dict[str, Colour]:
        """Her fabrics as they look from afar."""
        return {
            key: from_afar(colour, self.seconds[key], SEEN) if key in self.seconds else colour
            for key, colour in self.colours.items()
        }

    def shows(self, one: Lying | None) -> dict[tuple[float, float], str]:
        """The fabric at a point in each finished patch of what lies there, to two places."""
        if one is None:
            return {}
        piece = self._piece(one)
        width, height = piece.size
        seam = float(made(self.method).seam)
        found = {}
        for patch in piece.finished(seam):
            x, y = np.mean(patch.points, axis=0)
            found[(round((x + seam) / width, 2), round((y + seam) / height, 2))] = patch.letter
        return found

    def _piece(self, one: Lying) -> Flat:
        """The unit in her fabrics as it lies, by the engine's own moves."""
        method = made(self.method)
        number, at = divmod(one.unit, len(method.units))
        squares = dict(zip(method.letters, list(self.sets.values())[number], strict=True))
        unit = method.units[at]
        own = tuple(Patch(p.points, squares[p.letter], p.grain) for p in unit.patches)
        return turned(Flat(own), turn(2 * one.turn))

    def _fabric(self, key: str) -> Print:
        if key in self.prints:
            return self.prints[key]
        colour = str(self.colours[key])
        second = self.seconds.get(key)
        return solid(colour) if second is None else dots(colour, str(second), 0.08, SEEN)

    def _print(self, one: Lying | None, ground: str) -> Print:
        if one is None:
            return solid(ground)
        piece = self._piece(one)
        width, height = piece.size

        def at(u: Field, v: Field) -> Field:
            shown = np.zeros((*u.shape, 3))
            for patch in piece.patches:
                inside = np.ones(u.shape, dtype=bool)
                for number, (bx, by) in enumerate(patch.points):
                    ax, ay = patch.points[number - 1]
                    side = (bx - ax) * (v * height - ay) - (by - ay) * (u * width - ax)
                    inside &= side >= -1e-9
                shown[inside] = self._fabric(patch.letter)(u[inside], v[inside])
            return shown

        return at

    def scene(self, **how: object) -> Scene:
        ground = str(how.get("ground", "#c9c4ba"))
        rows, columns = self.size
        how.setdefault("size", (90 * columns + 60, 90 * rows + 60))
        squares = [[self._print(one, ground) for one in row] for row in self.laid]
        return Scene(squares=squares, **how)  # type: ignore[arg-type]


def anyhow(
    method: str, rows: int, columns: int, *, fabrics: int = 24, seed: int = 1, spare: int = 0
) -> Floor:
    """A floor full of units of sets dealt anyhow, laid anyhow; so many units at least are spare."""
    derived = made(method)
    colours = cloth(fabrics)
    letters = list(colours)
    rng = np.random.default_rng(seed)
    count = -(-(rows * columns + spare) // len(derived.units))
    sets = {
        number: tuple(letters[at] for at in rng.permutation(fabrics)[: len(derived.letters)])
        for number in range(1, count + 1)
    }
    order = rng.permutation(count * len(derived.units)).tolist()
    turns = rng.integers(0, 4, rows * columns).tolist()
    lying = [Lying(unit, quarters) for unit, quarters in zip(order, turns, strict=False)]
    laid = [lying[row * columns : (row + 1) * columns] for row in range(rows)]
    return Floor(method=method, sets=sets, colours=colours, laid=laid)


def shown(place: FloorPlace) -> dict[tuple[float, float], str | None]:
    """What a place was read to show, as `Floor.shows` has it."""
    found = {}
    for patch in place.patches:
        x, y = np.mean(patch.outline, axis=0)
        found[(round(float(x), 2), round(float(y), 2))] = patch.fabric
    return found

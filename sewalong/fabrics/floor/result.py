"""What was read from a photograph of units that lie in rows: which unit lies where, and how turned."""

from __future__ import annotations

from enum import StrEnum

from msgspec import Struct

from sewalong.fabrics.colours import Colour
from sewalong.fabrics.floor.known import KnownUnit
from sewalong.piecing.geometry import Polygon

Light = tuple[float, float, float]
"""Linear red, green and blue light; 1 is white, and evened light may be more."""


class HowSure(StrEnum):
    """How far what is said of a place can be relied on."""

    SURE = "sure"
    NOT_SURE = "not sure"
    CANNOT_TELL = "cannot tell"


class Candidate(Struct, frozen=True):
    """What may lie at a place: a unit, by its place among the units, and its quarter turns, x towards
    y; or nothing (None). `worse` is by how much all places together fit worse with it than with the
    best, as a difference in colour (CIEDE2000) of one patch."""

    unit: int | None
    turn: int
    worse: float


class SeenPatch(Struct, frozen=True):
    """One patch as it lies: its outline in shares of the unit, the colour that was seen, light
    evened, the fabric it is taken for, None where none is like it, and others that it may be."""

    outline: Polygon
    colour: Colour
    fabric: str | None
    sure: HowSure
    others: tuple[str, ...] = ()


class FloorPlace(Struct, frozen=True):
    """One place, row and place in it from 1.

    `candidates` have what is taken to lie here first, then what else may; none where no unit is
    like it, or the units are not known. `same` are the other units that look just like the first:
    which of them lies here cannot be seen and does not matter. `turns` are the quarter turns in
    which the first would look the same, its own among them. `said` is whether a person said it.
    """

    row: int
    column: int
    sure: HowSure
    candidates: tuple[Candidate, ...]
    patches: tuple[SeenPatch, ...]
    same: tuple[int, ...] = ()
    turns: tuple[int, ...] = (0,)
    said: bool = False

    @property
    def address(self) -> str:
        """How a place is called: row and place, as "2·5"."""
        return f"{self.row}·{self.column}"

    @property
    def lies(self) -> Candidate | None:
        """What is taken to lie here; None where that cannot be told."""
        return None if self.sure is HowSure.CANNOT_TELL else next(iter(self.candidates), None)


class Seen(Struct, frozen=True):
    """What the camera saw, from which all is told: `light` and `spread` (mean square deviation, in
    CIELAB) of every outline at each place, row by row, and `bare`, how far a place is from the
    cloth beneath, as the squares of its patches' differences; None where that is not seen there.
    `evened` is whether its light was evened by the cloth beneath."""

    rows: int
    columns: int
    outlines: tuple[Polygon, ...]
    light: tuple[tuple[Light, ...], ...]
    spread: tuple[tuple[float, ...], ...]
    bare: tuple[float | None, ...]
    evened: bool


class Said(Struct, frozen=True):
    """What a person said of a place: a unit by its place among the units, or nothing (None)."""

    row: int
    column: int
    unit: int | None
    turn: int


class FloorReading(Struct, frozen=True):
    """A photograph of units as it was read. Nothing of the file's own data is in it.

    `units` are those that were looked for, known by their sets if `known`, else only the shapes of
    the method's. `fabrics` are her letters and colours. `places` stand row by row. `notes` are
    whole sentences on what was not done, or is not sure.
    """

    seen: Seen
    units: tuple[KnownUnit, ...]
    known: bool
    fabrics: tuple[tuple[str, Colour], ...]
    places: tuple[FloorPlace, ...]
    said: tuple[Said, ...] = ()
    notes: tuple[str, ...] = ()

    def place(self, row: int, column: int) -> FloorPlace | None:
        """The place so called; None where there is none."""
        inside = 1 <= row <= self.seen.rows and 1 <= column <= self.seen.columns
        return self.places[(row - 1) * self.seen.columns + column - 1] if inside else None

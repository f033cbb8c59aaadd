"""Where the squares lie: rows and places, found on the cloth beneath or spanned by four corners."""

from __future__ import annotations

import math
from collections.abc import Sequence

import numpy as np
from msgspec import Struct

from sewalong.fabrics.photo.finding.blobs import blobs, narrower, without_lines
from sewalong.fabrics.photo.finding.homography import Homography, fitted
from sewalong.fabrics.photo.finding.lattice import settled
from sewalong.fabrics.photo.picture import Picture
from sewalong.fabrics.photo.refused import PhotoRefused
from sewalong.fabrics.photo.tones import Flags, Numbers

Corner = tuple[float, float]

LEAST_PIXELS = 40
"""On a side of a square, in the stored picture. A motif of a twentieth of the square, as small
prints have, is then two pixels, the least that shows it (sampling theorem)."""

FOR_BLOBS = 640
"""Pixels on the long side in which squares are looked for: a gap of an eighth of a step is then
two pixels wide with 40 squares in a row."""

_OF_A_STEP = 0.7
"""Side of a square as a share of the picture's, split among them, where no grid was found to
measure it by: with gaps and a margin it is about that (own choice)."""

_LEAST_FOUND = 1 / 3
"""Of the squares, seen as squares, so that the grid is theirs (own choice)."""

_TAKEN_OFF = (0.02, 0.04)
"""Of a step, at each edge of a square. Twice that is the widest bridge between two that comes
apart; a print of ground and motifs comes apart too, so as little as will do (own choice)."""

_STRAY = 0.1
"""Share of what looks like a square that may lie off the grid (own choice)."""

_WITHIN_CORNERS = 0.84
"""Share of a step that a square is taken to be where only the corners are known: as little as
squares laid with an inch between them would be (own choice)."""


class Grid(Struct, frozen=True):
    """Rows and places in the picture.

    `map` takes (column, row), both from 0, to the middle of that square; `middles` holds where
    each middle is in those steps, rows × columns × 2; `side` is the side of a square as a share of
    a step. `found` are the squares that were seen themselves; the others are put by the rest.
    """

    map: Homography
    middles: Numbers
    side: float
    found: Flags

    @property
    def pixels(self) -> float:
        """Pixels of the stored picture on the side of the square that has the fewest."""
        return self.side * min(self.map.pitch(middle) for middle in self.middles.reshape(-1, 2))


def grid_of(mask: Flags, picture: Picture, rows: int, columns: int) -> Grid:
    """The grid of `rows` × `columns` squares that the pixels off the ground make up.

    Where squares lie so near that they hang together, it is looked for again with more taken off
    their edges. Raises PhotoRefused, for what was seen at first, where they make up another grid,
    or none.
    """
    step = min(mask.shape[1] / columns, mask.shape[0] / rows)
    refused = None
    for share in (0.0, *_TAKEN_OFF):
        off = math.ceil(share * step)
        kept = narrower(mask, off) if off else without_lines(mask)
        try:
            return _grid_of(kept, off, picture, rows, columns)
        except PhotoRefused as why:
            refused = refused or why
    assert refused is not None
    raise refused


def _grid_of(mask: Flags, off: int, picture: Picture, rows: int, columns: int) -> Grid:
    """As `grid_of`, of squares that `off` pixels were taken off on each side."""
    high, wide = mask.shape
    seen = blobs(mask)
    least = (0.2 * min(wide / columns, high / rows)) ** 2
    squares = seen.squarish() & (seen.areas > least)
    areas, middles = seen.areas[squares], seen.middles[squares]
    if len(areas):
        alike = np.abs(np.log(areas / _usual(areas))) < np.log(2.2)
        areas, middles = areas[alike], middles[alike]
    if len(areas) < max(2, _LEAST_FOUND * rows * columns):
        raise _too_few(len(areas), rows * columns)
    at = settled(middles)
    if at is None or np.sum(~at[2]) > max(1, _STRAY * len(areas)):
        raise PhotoRefused(
            f"The squares do not lie in {rows} straight rows of {columns}. Lay them straight, "
            "with the same gap between all, or give the four corners."
        )
    lattice, cells, near = at
    first = cells[near].min(axis=0)
    across, down = (cells[near].max(axis=0) - first + 1).tolist()
    if (down, across) != (rows, columns):
        raise another_grid(down, across, rows, columns)
    to_stored = np.diag([picture.scale, picture.scale, 1.0])
    from_first = np.array([[1, 0, first[0]], [0, 1, first[1]], [0, 0, 1.0]])
    grid = Homography(to_stored @ lattice.matrix @ from_first)
    places = _every_cell(rows, columns)
    found = np.zeros((rows, columns), dtype=bool)
    sides = []
    for (column, row), area, at_middle in zip(
        cells[near] - first, areas[near], middles[near], strict=True
    ):
        places[row, column] = grid.back(at_middle * picture.scale)
        found[row, column] = True
        pixels = (np.sqrt(area) + 2 * off) * picture.scale
        sides.append(pixels / grid.pitch(places[row, column]))
    return Grid(grid, places, min(float(np.median(sides)), 1.0), found)


def spanned(corners: Sequence[Corner], picture: Picture, rows: int, columns: int) -> Grid:
    """The grid between four corners: of row 1 place 1, of the end of row 1, of the end of the last
    row, of its first place. Raises PhotoRefused where they cannot be that."""
    points = np.array(corners, dtype=float)
    if points.shape != (4, 2) or not np.isfinite(points).all():
        raise PhotoRefused("Give four corners, each as x and y in pixels of the picture.")
    if (points < 0).any() or (points > [picture.wide + 1, picture.high + 1]).any():
        raise PhotoRefused(
            f"A corner lies outside the picture, which is {picture.wide:.0f} by "
            f"{picture.high:.0f} pixels. Points are counted from its upper left."
        )
    sides = np.roll(points, -1, axis=0) - points
    following = np.roll(sides, -1, axis=0)
    turns = sides[:, 0] * following[:, 1] - sides[:, 1] * following[:, 0]
    if (turns <= 0).any():
        raise PhotoRefused(
            "The four corners do not go round the squares. Give them in this order: row 1 place "
            "1, the end of row 1, the end of the last row, the first place of the last row."
        )
    cells = np.array([[0, 0], [columns, 0], [columns, rows], [0, rows]], dtype=float) - 0.5
    return Grid(
        fitted(cells, points),
        _every_cell(rows, columns),
        _WITHIN_CORNERS,
        np.ones((rows, columns), dtype=bool),
    )


def likely_side(picture: Picture, rows: int, columns: int) -> float:
    """Pixels of the stored picture on the side of a square, where no grid was found."""
    return _OF_A_STEP * min(picture.wide / columns, picture.high / rows)


def must_leave_room(picture: Picture, rows: int, columns: int) -> None:
    """Raises PhotoRefused where so many squares cannot have pixels enough, wherever they lie."""
    widest = min(picture.wide / columns, picture.high / rows)
    if widest < LEAST_PIXELS:
        raise PhotoRefused(
            f"The picture leaves {math.floor(widest)} pixels for a square; {LEAST_PIXELS} are needed. "
            "Use the photograph as the camera took it, or lay fewer squares at a time."
        )


def must_suit(grid: Grid, picture: Picture) -> None:
    """Raises PhotoRefused where squares are cut off by the edge or have too few pixels."""
    half = 0.4 * grid.side
    corners = grid.middles[..., None, :] + half * np.array([[-1, -1], [1, -1], [1, 1], [-1, 1]])
    points = grid.map(corners)
    out = ((points < 0) | (points > [picture.wide, picture.high])).any(axis=(-1, -2))
    if out.any():
        row, column = np.argwhere(out)[0] + 1
        raise PhotoRefused(
            f"The square at row {row} place {column} is cut off by the edge of the picture. "
            "Photograph all squares with cloth around them."
        )
    if grid.pixels < LEAST_PIXELS:
        raise PhotoRefused(
            f"A square is only {math.floor(grid.pixels)} pixels wide; {LEAST_PIXELS} are needed. "
            "Photograph from nearer, or fewer squares at a time."
        )


def _usual(areas: Numbers) -> float:
    """The area that half of all that is covered is in squares no larger than."""
    ordered = np.sort(areas)
    return float(ordered[np.searchsorted(np.cumsum(ordered), ordered.sum() / 2)])


def _every_cell(rows: int, columns: int) -> Numbers:
    x, y = np.meshgrid(np.arange(columns, dtype=float), np.arange(rows, dtype=float))
    return np.stack([x, y], axis=-1)


def _too_few(found: int, wanted: int) -> PhotoRefused:
    told = {0: "No square", 1: "Only 1 square"}.get(found, f"Only {found} squares")
    return PhotoRefused(
        f"{told} of {wanted} can be told from the cloth beneath. Lay them apart, a finger of "
        "cloth between them, on a plain cloth of another colour; or give the four corners."
    )


def another_grid(down: int, across: int, rows: int, columns: int) -> PhotoRefused:
    """The refusal where `down` rows of `across` lie and not the grid that was said."""
    turned = (
        f" Turn the picture, or give the grid as {down}x{across}."
        if (down, across) == (columns, rows)
        else " Give the grid as it lies, or take away what lies beside the squares."
    )
    return PhotoRefused(
        f"{_rows(down)} of {across} {'was' if down == 1 else 'were'} found, not {_rows(rows)} of {columns}.{turned}"
    )


def _rows(count: int) -> str:
    return "1 row" if count == 1 else f"{count} rows"

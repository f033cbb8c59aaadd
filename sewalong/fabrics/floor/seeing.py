"""The walk of a photograph of units: picture, cloth beneath, grid, light, patches."""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import BinaryIO

import numpy as np
from msgspec.structs import replace

from sewalong.fabrics.floor.known import KnownUnit
from sewalong.fabrics.floor.outline import outer_corners
from sewalong.fabrics.floor.regions import WELL_INSIDE, cores, narrowest
from sewalong.fabrics.floor.result import Seen
from sewalong.fabrics.floor.spacing import must_be_so_many
from sewalong.fabrics.floor.ways import outlines_of
from sewalong.fabrics.photo.blur import WIDEST_EDGE, must_be_sharp
from sewalong.fabrics.photo.finding.grid import (
    Corner,
    Grid,
    grid_of,
    likely_side,
    must_suit,
    spanned,
)
from sewalong.fabrics.photo.ground import Ground, beneath
from sewalong.fabrics.photo.light import (
    gaps,
    light_over,
    must_not_glare,
    only_around,
    seen_between,
)
from sewalong.fabrics.photo.picture import Picture
from sewalong.fabrics.photo.refused import PhotoRefused
from sewalong.fabrics.photo.squares import about, laid_straight, middle
from sewalong.fabrics.photo.steps import must_be_seen_well, with_small
from sewalong.fabrics.photo.tones import Flags, Light, Numbers, lab
from sewalong.piecing.geometry import Polygon, centre

_EDGE_TO_EDGE = 0.96
"""Side of a unit as a share of a step where only the corners are known: raw edges touch, or one
unit hides the allowance of the next (own choice)."""

_LOOKED_AT = 0.9
"""Of a unit's side, in which glare is looked for (own choice)."""

_LEAST_PATCH = 12
"""Pixels of the stored picture across the narrowest patch: of a JPEG that halves its colours each
way, four of them well inside are its own (own choice)."""


def seen(
    source: bytes | BinaryIO,
    rows: int,
    columns: int,
    corners: Sequence[Corner] | None,
    units: Sequence[KnownUnit],
) -> Seen:
    """What the camera saw of every patch that these units may have, at every place.

    Raises PhotoRefused for what cannot be read.
    """
    picture, small = with_small(source, rows, columns)
    outlines, shape = outlines_of(units), units[0].shape
    ground: Ground | None
    if corners is None:
        grid, ground, near = _found(picture, small, (rows, columns), shape, outlines)
    else:
        grid = spanned(corners, picture, rows, columns)
        ground, near = seen_between(small, grid)
        must_be_so_many(picture, grid, shape)
        grid = replace(grid, side=_EDGE_TO_EDGE)
    must_suit(grid, picture)
    patch = grid.pixels * narrowest(outlines)
    if patch < _LEAST_PATCH:
        raise PhotoRefused(
            f"The narrowest patch of a unit is only {math.floor(patch)} pixels wide; "
            f"{_LEAST_PATCH} are needed. Photograph from nearer, or fewer units at a time."
        )
    must_be_sharp(about(picture, grid), _side_to_be_sharp(grid.pixels, outlines))
    squares = laid_straight(picture, grid)
    must_not_glare(middle(squares, _LOOKED_AT))
    light, spread = _by_outline(squares, outlines)
    x, y = np.moveaxis(grid.map(_points(grid, outlines)), -1, 0)
    bare = np.full((rows, columns), np.nan)
    if ground is not None:
        bare = _bare(ground, light, x, y, len(units[0].patches))
        surface = light_over(small, grid, ground, near)
        falls = surface.log_at(x, y)
        light = light * np.exp(falls.max() - falls)[..., None]
    count = rows * columns
    return Seen(
        rows,
        columns,
        outlines,
        tuple(
            tuple((r, g, b) for r, g, b in place) for place in light.reshape(count, -1, 3).tolist()
        ),
        tuple(tuple(place) for place in spread.reshape(count, -1).tolist()),
        tuple(None if math.isnan(away) else away for away in bare.ravel().tolist()),
        ground is not None,
    )


def _found(
    picture: Picture,
    small: Picture,
    size: tuple[int, int],
    shape: float,
    outlines: Sequence[Polygon],
) -> tuple[Grid, Ground, Flags]:
    """The grid on the cloth beneath, by the gaps between the units or else by their outline, and the
    pixels that show the cloth; where there is none, refused for the reason behind that."""
    rows, columns = size
    ground, mask = beneath(small)
    try:
        grid = grid_of(mask, small, rows, columns)
        return grid, ground, gaps(small, grid)[0]
    except PhotoRefused as refused:
        unit = likely_side(picture, rows, columns)
        must_be_seen_well(picture, ground, _side_to_be_sharp(unit, outlines))
        corners = outer_corners(mask, small.scale, unit / small.scale)
        if corners is None:
            raise refused
    grid = spanned(corners, picture, rows, columns)
    must_be_so_many(picture, grid, shape)
    return replace(grid, side=_EDGE_TO_EDGE), ground, only_around(small, grid)


def _side_to_be_sharp(unit: float, outlines: Sequence[Polygon]) -> float:
    """The side of a square that must be as sharp as units of this side: edges may run as far into a
    patch as it is not looked at."""
    return unit * narrowest(outlines) * WELL_INSIDE / WIDEST_EDGE


def _by_outline(squares: Light, outlines: Sequence[Polygon]) -> tuple[Numbers, Numbers]:
    """The mean light well inside each outline and how the pixels vary about it, rows × columns ×
    outlines."""
    light, spread = [], []
    for core in cores(outlines, squares.shape[2]):
        pixels = squares[:, :, core]
        light.append(pixels.mean(axis=2, dtype=np.float64))
        tones = lab(pixels)
        spread.append(tones.var(axis=2).sum(axis=-1))
    return np.stack(light, axis=2), np.stack(spread, axis=2)


def _points(grid: Grid, outlines: Sequence[Polygon]) -> Numbers:
    """The middle of each outline at each place, in steps of the grid."""
    inside = np.array([centre(outline) for outline in outlines]) - 0.5
    return grid.middles[:, :, None] + inside * grid.side


def _bare(ground: Ground, light: Numbers, x: Numbers, y: Numbers, patches: int) -> Numbers:
    """How far each place is from the cloth beneath, for so many patches; not a number where any
    outline is another cloth."""
    apart = ground.apart(light.astype(np.float32), x, y)
    bare = (apart < ground.tolerance).all(axis=2)
    return np.where(bare, patches * (apart**2).mean(axis=2), np.nan)

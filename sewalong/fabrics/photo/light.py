"""Light evened by what the cloth between the squares shows; refused where it cannot be."""

from __future__ import annotations

import math
from itertools import pairwise

import numpy as np
from numpy.typing import NDArray

from sewalong.fabrics.photo.finding.blobs import wider
from sewalong.fabrics.photo.finding.grid import Grid
from sewalong.fabrics.photo.ground import OTHER_LIGHT, Ground, ground_of, points_of
from sewalong.fabrics.photo.picture import Picture
from sewalong.fabrics.photo.refused import PhotoRefused
from sewalong.fabrics.photo.surface import Surface, fit
from sewalong.fabrics.photo.tones import TO_LIGHT, Flags, Light, Numbers, luminance

WASHED_OUT = float(TO_LIGHT[252])
"""Light of the weakest part of a pixel from which it may be any brighter in truth."""

_MOST_WASHED_OUT = 0.2
"""Share of a square's middle that may be so, as white dots of a print are (own choice)."""

_GLARE = 0.25
"""Share of the sides of squares: where fewer are bright, light glares there; where more, the others
lie in shadow. What is said to be done about it is nearly the same (own choice)."""

_LEAST_BESIDE = 6
"""Pixels of ground beside a square that say how light it is there (own choice)."""

_STRAY = 0.003
"""Light of white that bright squares shed on the cloth beside them, in the lens and in JPEG: on
black cloth a fifth of its own. Measured on made pictures of garish squares, JPEG at 75."""

_ONE_SIDE = 2
"""Places that one side makes uneven, its own and the one it faces. A square laid over its
neighbour's gap does just that; an edge of shadow crosses more places, unless there are few."""

_ERRORS = 4
"""Standard errors that an edge of shadow must stand above what pixels vary by, on dark cloth above
all: of a hundred sides measured, chance passes that once in a hundred pictures."""

_NORTH, _EAST, _SOUTH, _WEST = range(4)
"""The sides of a square: towards row 1, along the row, and on."""

_OUTER = 0.7
"""Steps from the middle of an outer square up to which the ground around it counts: as much as
the gap and a little more, where nothing else lies (own choice)."""

_BEYOND = 0.05
"""Steps beyond the corners where ground begins: they are given by hand (own choice)."""


def gaps(picture: Picture, grid: Grid) -> tuple[Flags, NDArray[np.intp]]:
    """Which pixels lie between the squares or just around them, and for each pixel the number of
    the nearest side of a square: four sides a place, row by row."""
    rows, columns = grid.middles.shape[:2]
    where = grid.map.back(np.stack(points_of(picture), axis=-1))
    column = np.clip(np.rint(where[..., 0]), 0, columns - 1).astype(np.intp)
    row = np.clip(np.rint(where[..., 1]), 0, rows - 1).astype(np.intp)
    x, y = np.moveaxis(where - grid.middles[row, column], -1, 0)
    away = np.maximum(np.abs(x), np.abs(y))
    inner = grid.side / 2 + min(0.04, (1 - grid.side) / 4)
    side = np.where(
        np.abs(x) > np.abs(y), np.where(x > 0, _EAST, _WEST), np.where(y > 0, _SOUTH, _NORTH)
    )
    return (away > inner) & (away < _OUTER), (row * columns + column) * 4 + side


def only_around(picture: Picture, grid: Grid) -> Flags:
    """Of those pixels, the ones that lie outside of all squares: where squares lie edge to edge,
    nothing else is ground."""
    rows, columns = grid.middles.shape[:2]
    where = grid.map.back(np.stack(points_of(picture), axis=-1))
    away = np.abs(where - [(columns - 1) / 2, (rows - 1) / 2]) - [columns / 2, rows / 2]
    found: Flags = gaps(picture, grid)[0] & (away.max(axis=-1) > _BEYOND)
    return found


def seen_between(small: Picture, grid: Grid) -> tuple[Ground | None, Flags]:
    """The cloth between the squares or, where they lie edge to edge, around them, None where none
    is plain; and the pixels in which it was looked for."""
    near = gaps(small, grid)[0]
    ground = ground_of(small, near)
    if ground is None:
        near = only_around(small, grid)
        ground = ground_of(small, near)
    return ground, near


def light_over(picture: Picture, grid: Grid, ground: Ground, near: Flags) -> Surface:
    """The light over the squares, from the ground among the pixels `near` them.

    Raises PhotoRefused where an edge of shadow, or glare, lies over it.
    """
    cells = gaps(picture, grid)[1]
    shape = (*grid.middles.shape[:2], 4)
    weakest = picture.light[near].min(axis=-1)
    washed: Flags = np.any(_medians(weakest, cells[near], shape) >= WASHED_OUT, axis=-1)
    if washed.any():
        raise PhotoRefused(
            f"The cloth beneath is washed out white {_where(washed)}. Photograph it a little "
            "darker, or without the light that glares there."
        )
    near = near & ~wider(~ground.same_cloth(picture.light))
    if not near.any():
        return ground.surface
    x, y = (points[near] for points in points_of(picture))
    bright = np.maximum(luminance(picture.light[near]), 1e-4)
    surface, _ = fit(x, y, bright, picture.wide, picture.high)
    away = np.log(bright) - surface.log_at(x, y)
    limit = OTHER_LIGHT + _STRAY / float(luminance(ground.colour))
    least = _enough(away, limit)
    level = _medians(np.log(bright), cells[near], shape, least)
    off = _medians(away, cells[near], shape, least)
    must_be_smooth(level, off, limit)
    return surface


def must_not_glare(middles: Light) -> None:
    """Raises PhotoRefused where squares are washed out. `middles` are their pixels as
    photographed: rows × columns × n × n × 3."""
    share = (middles.min(axis=-1) >= WASHED_OUT).mean(axis=(-2, -1))
    if (share > _MOST_WASHED_OUT).any():
        raise PhotoRefused(
            f"Light glares on the squares {_where(share > _MOST_WASHED_OUT)}: there the picture "
            "is plain white. Move the lamp, or photograph a little darker."
        )


def must_be_smooth(
    level: Numbers, off: Numbers, limit: float, on: str = "the cloth beneath"
) -> None:
    """Raises PhotoRefused where an edge of shadow, or glare, lies over the squares.

    Both are the log of light on the four sides of each place, rows × columns × 4, `off` against
    the surface; a step above `limit` is an edge. `on` is what shows it."""
    if not np.isfinite(off).any():
        return
    off, level = _with_facing(off), _with_facing(level)
    high, low = _across(off, np.fmax), _across(off, np.fmin)
    worst = np.fmax(high - low, np.fmax(high, -low))
    uneven = worst > limit
    slight = uneven.sum() <= _ONE_SIDE < uneven.size / 4 and np.nanmax(worst) < 2 * limit
    if slight or not uneven.any():
        return
    known = off[np.isfinite(off)]
    half = (known.min() + known.max()) / 2
    if np.mean(known > half) < _GLARE:
        bright = high > half
        raise PhotoRefused(
            f"Light glares on {on} {_where(bright)}. Move the lamp, or photograph "
            "by daylight from a window to one side."
        )
    # The surface bends to an edge and spreads its misfit; the step in the light itself is where
    # the edge is.
    step = _across(level, np.fmax) - _across(level, np.fmin)
    usual = np.nanmedian(step)
    edge = step - usual >= (np.nanmax(step) - usual) / 2
    raise PhotoRefused(
        f"An edge of shadow runs {_where(edge, 'through')}. Move the lamp, step out of the light, "
        "or photograph by daylight."
    )


def _with_facing(sides: Numbers) -> Numbers:
    """The four sides of each place and the four of its neighbours that face them: an edge of
    shadow may run in the gap between."""
    facing = np.full_like(sides, np.nan)
    facing[1:, :, _NORTH], facing[:-1, :, _SOUTH] = sides[:-1, :, _SOUTH], sides[1:, :, _NORTH]
    facing[:, 1:, _WEST], facing[:, :-1, _EAST] = sides[:, :-1, _EAST], sides[:, 1:, _WEST]
    return np.concatenate([sides, facing], axis=-1)


def _across(sides: Numbers, which: np.ufunc) -> Numbers:
    """The highest or lowest of the sides of each place; not a number where none is known."""
    found: Numbers = which.reduce(sides, axis=-1)
    return found


def _enough(away: Numbers, limit: float) -> int:
    """Pixels whose median is sure enough to tell an edge of shadow, from how all vary: the
    standard error of a median is 1.25 deviations over the root of their number, and a deviation
    1.48 usual ones."""
    deviation = 1.48 * float(np.median(np.abs(away)))
    return max(_LEAST_BESIDE, math.ceil((_ERRORS * 1.25 * deviation / limit) ** 2))


def _medians(
    values: Numbers, cells: NDArray[np.intp], shape: tuple[int, ...], least: int = _LEAST_BESIDE
) -> Numbers:
    """The median of the values of each cell; not a number where there are fewer than `least`."""
    order = np.argsort(cells, kind="stable")
    ends = np.searchsorted(cells[order], np.arange(math.prod(shape) + 1))
    found = [
        np.median(values[order[start:end]]) if end - start >= least else np.nan
        for start, end in pairwise(ends)
    ]
    return np.array(found).reshape(shape)


def _where(places: Flags, how: str = "at") -> str:
    """Rows and places in words: "at rows 2 to 4, places 1 to 7"."""
    rows, columns = (np.flatnonzero(places.any(axis=axis)) + 1 for axis in (1, 0))
    return f"{how} {_span('row', rows)}, {_span('place', columns)}"


def _span(word: str, numbers: NDArray[np.intp]) -> str:
    first, last = int(numbers[0]), int(numbers[-1])
    return f"{word} {first}" if first == last else f"{word}s {first} to {last}"

"""Whether units that lie edge to edge are as many as was said: colours change where they meet."""

from __future__ import annotations

import math
from itertools import product

import numpy as np
from numpy.lib.stride_tricks import sliding_window_view

from sewalong.fabrics.photo.finding.grid import Grid, another_grid
from sewalong.fabrics.photo.picture import Picture
from sewalong.fabrics.photo.refused import PhotoRefused
from sewalong.fabrics.photo.tones import Light, Numbers, lab

_ACROSS = 480
"""Points each way at which the whole is looked at: twelve a unit where forty lie in a row (own
choice)."""

_OVER = 4
"""Points from side to side of which a change is taken (own choice)."""

_MOST_CHANGE = 30.0
"""In CIELAB, that counts: more says nothing more of where an edge is (own choice)."""

_MISSED = 0.06
"""Of a unit: as far may the edge lie from its place (own choice: hands lay them so)."""

_CLEARLY = 0.6
"""Where the change between as many units as were said is less than this share of that between
another number, there lie as many as that. Measured on made pictures of units of every method, edge
to edge and apart: of wrong numbers none had more than 0.4 of it, unless their edges are seams of
units; of the right ones none had less than any other."""

_LEAST = 3.0
"""In CIELAB, that edges change more than other points must, so that they say anything: what noise
does to few edges stays under it (own choice)."""

_AS_STRONG = 0.8
"""Of the strongest change, from which on another number is likely too (own choice)."""

_MOST_ASKEW = 1.5
"""Times as long or as wide as a unit is may its place look at most: seen so from 48° (own choice)."""


def must_be_so_many(picture: Picture, grid: Grid, shape: float) -> None:
    """Raises PhotoRefused where the units between the corners of the grid are plainly fewer or
    more, or would not be of their shape (length by width)."""
    rows, columns = grid.middles.shape[:2]
    wide, high = _size(grid)

    def askew(down: int, across: int) -> float:
        """Of the logarithm of a unit's shape, how far it would be off."""
        return math.log((high / down) / (wide / across) / shape)

    seen = lab(_straight(picture, grid))
    likely_across = _likely(_changes(seen), columns)
    likely_down = _likely(_changes(seen.transpose(1, 0, 2)), rows)
    # Half as many rows have edges only where there are some; the shape of the units tells.
    down, across = min(
        product(likely_down, likely_across),
        key=lambda grid: (round(abs(askew(*grid)), 1), abs(grid[0] - rows), abs(grid[1] - columns)),
    )
    if (down, across) != (rows, columns):
        raise another_grid(down, across, rows, columns)
    times = math.exp(askew(rows, columns))
    if max(times, 1 / times) > _MOST_ASKEW:
        which = "long" if times > 1 else "wide"
        raise PhotoRefused(
            f"In such a grid each unit would be {max(times, 1 / times):.1f} times as {which} as it "
            "is. Give the grid as it lies, or other corners."
        )


def _straight(picture: Picture, grid: Grid) -> Light:
    rows, columns = grid.middles.shape[:2]
    steps = (np.arange(_ACROSS) + 0.5) / _ACROSS
    x, y = np.meshgrid(steps * columns - 0.5, steps * rows - 0.5)
    points = grid.map(np.stack([x, y], axis=-1))
    return picture.at(points[..., 0], points[..., 1])


def _changes(seen: Numbers) -> Numbers:
    """How much the colours change along x at each point across, on the average of all rows."""
    steps = np.sqrt(((seen[:, _OVER:] - seen[:, :-_OVER]) ** 2).sum(axis=-1))
    return np.pad(np.minimum(steps, _MOST_CHANGE).mean(axis=0), _OVER // 2, mode="edge")


def _likely(changes: Numbers, said: int) -> list[int]:
    """`said`, or the numbers of units that the changes plainly show in its place. A number whose
    edges are all seams of units (half of it, twice, half as many again) is never put there."""
    others = [n for n in range(max(2, said // 2), 2 * said) if 2 * n % said]
    if said < 2 or not others:
        return [said]
    strong = {number: _between(changes, number) for number in others}
    strongest = max(strong.values())
    if strongest < _LEAST or _between(changes, said) >= _CLEARLY * strongest:
        return [said]
    return [number for number in others if strong[number] >= _AS_STRONG * strongest]


def _between(changes: Numbers, number: int) -> float:
    """How much stronger the change is where so many units meet than it is anywhere: at each point
    the strongest near it counts."""
    near = max(2, int(_MISSED * _ACROSS / number))
    strongest = sliding_window_view(np.pad(changes, near, mode="edge"), 2 * near + 1).max(axis=1)
    edges = [round(edge * _ACROSS / number) for edge in range(1, number)]
    return float(strongest[edges].mean() - strongest.mean())


def _size(grid: Grid) -> tuple[float, float]:
    """How wide and how high all units are together, through the middle, in pixels of the stored
    picture."""
    rows, columns = grid.middles.shape[:2]
    left, right = grid.map(np.array([[-0.5, rows / 2 - 0.5], [columns - 0.5, rows / 2 - 0.5]]))
    top, bottom = grid.map(np.array([[columns / 2 - 0.5, -0.5], [columns / 2 - 0.5, rows - 0.5]]))
    return float(np.hypot(*(right - left))), float(np.hypot(*(bottom - top)))

"""Whether units that lie edge to edge are as many as was said: colours change where they meet."""

from __future__ import annotations

import numpy as np

from sewalong.fabrics.photo.grid import Grid, another_grid
from sewalong.fabrics.photo.picture import Picture
from sewalong.fabrics.photo.refused import PhotoRefused
from sewalong.fabrics.photo.tones import Light, Numbers, lab

_ACROSS = 480
"""Points each way at which the whole is looked at: twelve a unit where forty lie in a row."""

_OVER = 4
"""Points from side to side of which a change is taken (own choice)."""

_MOST_CHANGE = 30.0
"""In CIELAB, that counts: more says nothing more of where an edge is (own choice)."""

_MISSED = 0.04
"""Of a unit: as far may the edge lie from its place (own choice: hands lay them so)."""

_CLEARLY = 0.6
"""Where the change between as many units as were said is less than this share of that between
another number, there lie as many as that. Measured on made pictures of units of every method: of
wrong numbers none had more than half of it, none of the right ones had less than all of it."""

_MOST_ASKEW = 1.5
"""Times as long or as wide as a unit is may its place look at most: seen so from 48° (own choice)."""


def must_be_so_many(picture: Picture, grid: Grid, shape: float) -> None:
    """Raises PhotoRefused where the units between the corners of the grid are plainly fewer or
    more, or would not be of their shape (length by width)."""
    rows, columns = grid.middles.shape[:2]
    seen = lab(_straight(picture, grid))
    across = _right_number(_changes(seen), columns)
    down = _right_number(_changes(seen.transpose(1, 0, 2)), rows)
    if (down, across) != (rows, columns):
        raise another_grid(down, across, rows, columns)
    wide, high = _place(grid)
    longer = high / wide / shape
    if max(longer, 1 / longer) > _MOST_ASKEW:
        which, times = ("long", longer) if longer > 1 else ("wide", 1 / longer)
        raise PhotoRefused(
            f"In such a grid each unit would be {times:.1f} times as {which} as it is. Give the "
            "grid as it lies, or other corners."
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


def _right_number(changes: Numbers, said: int) -> int:
    """`said`, or a number of units that the changes plainly show. A number whose edges are all seams
    of units (half of it, twice, half as many again) is never put in its place."""
    others = [n for n in range(max(2, said // 2), 2 * said) if 2 * n % said]
    if said < 2 or not others:
        return said
    strong = {number: _between(changes, number) for number in others}
    strongest = max(strong.values())
    if _between(changes, said) >= _CLEARLY * strongest:
        return said
    likely = [number for number in others if strong[number] >= 0.9 * strongest]
    return min(likely, key=lambda number: abs(number - said))


def _between(changes: Numbers, number: int) -> float:
    """The change where so many units meet, on the average of all their edges."""
    near = max(2, int(_MISSED * _ACROSS / number))
    edges = [round(edge * _ACROSS / number) for edge in range(1, number)]
    return float(np.mean([changes[edge - near : edge + near + 1].max() for edge in edges]))


def _place(grid: Grid) -> tuple[float, float]:
    """How wide and how high the places look, on the average, in pixels of the stored picture."""
    rows, columns = grid.middles.shape[:2]
    left, right = grid.map(np.array([[-0.5, rows / 2 - 0.5], [columns - 0.5, rows / 2 - 0.5]]))
    top, bottom = grid.map(np.array([[columns / 2 - 0.5, -0.5], [columns / 2 - 0.5, rows - 0.5]]))
    return float(np.hypot(*(right - left))) / columns, float(np.hypot(*(bottom - top))) / rows

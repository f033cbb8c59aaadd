"""Which of the squares found lies in which row and place."""

from __future__ import annotations

from collections import deque

import numpy as np
from numpy.typing import NDArray

from sewalong.fabrics.photo.finding.homography import Homography, fitted, square_on
from sewalong.fabrics.photo.tones import Numbers

Cells = NDArray[np.int64]

_NEAR = 0.3
"""Share of a step within which a square is where the next one is expected (own choice: hands lay
squares to a tenth of a step, and a half would be the place between two)."""


def neighbours(middles: Numbers) -> dict[int, tuple[int, int]]:
    """The (column, row) of squares that follow from one to the next, from any of them as (0, 0).

    `middles` are points (x, y), n × 2. Those that no step reaches are left out: begun from the one
    in the middle, or from another where that one lies by itself.
    """
    along, down = _step(middles, 0), _step(middles, 1)
    if along is None and down is None:
        return {0: (0, 0)} if len(middles) else {}
    along = _turned(down, -1) if along is None else along
    down = _turned(along, 1) if down is None else down
    found = {}
    for start in np.argsort(np.hypot(*(middles - np.median(middles, axis=0)).T)):
        found = _followed(middles, int(start), along, down)
        if len(found) > 1:
            break
    return found


def _followed(
    middles: Numbers, start: int, along: Numbers, down: Numbers
) -> dict[int, tuple[int, int]]:
    """The squares that steps lead to from this one, as `neighbours` has them."""
    found = {start: (0, 0)}
    steps = {start: (along, down)}
    waiting = deque([start])
    while waiting:
        here = waiting.popleft()
        column, row = found[here]
        along, down = steps[here]
        for across, onward in ((1, 0), (-1, 0), (0, 1), (0, -1)):
            step = across * along + onward * down
            away = np.hypot(*(middles - middles[here] - step).T)
            nearest = int(np.argmin(away))
            if nearest in found or away[nearest] > _NEAR * np.hypot(*step):
                continue
            found[nearest] = (column + across, row + onward)
            seen = (middles[nearest] - middles[here]) * (across + onward)
            steps[nearest] = ((along + seen) / 2, down) if across else (along, (down + seen) / 2)
            waiting.append(nearest)
    return found


def mapped(cells: Numbers, middles: Numbers) -> Homography | None:
    """The grid that these squares, n × 2 cells and middles, lie on; None where they are too few."""
    if len(cells) < 2:
        return None
    # Perspective shows only in four of which no three lie in one line.
    most = max(np.unique(cells[:, axis], return_counts=True)[1].max() for axis in (0, 1))
    if most >= len(cells) - 1 or np.linalg.matrix_rank(cells - cells.mean(axis=0)) < 2:
        return square_on(cells, middles)
    return fitted(cells, middles)


def settled(middles: Numbers) -> tuple[Homography, Cells, NDArray[np.bool_]] | None:
    """The grid, the (column, row) of every square and whether it lies on the grid.

    None where no grid can be told. Squares that no neighbour leads to are put where the grid of
    the others has them.
    """
    if len(middles) < 2:
        return None
    followed = neighbours(middles)
    index = np.array(list(followed), dtype=np.intp)
    cells = np.array(list(followed.values()), dtype=np.float64).reshape(-1, 2)
    grid = mapped(cells, middles[index])
    for _ in range(3):
        if grid is None:
            return None
        where = grid.back(middles)
        whole = np.rint(where)
        near = np.abs(where - whole).max(axis=1) < _NEAR
        if near.sum() < 2:
            return None
        grid = mapped(whole[near], middles[near])
    return None if grid is None else (grid, whole.astype(np.int64), near)


def _step(middles: Numbers, axis: int) -> Numbers | None:
    """The usual step to the next square along x (0) or y (1), within 45° of that; None for none."""
    apart = middles[None, :, :] - middles[:, None, :]
    ahead, aside = apart[..., axis], np.abs(apart[..., 1 - axis])
    away = np.where(ahead > aside, np.hypot(ahead, aside), np.inf)
    nearest = away.argmin(axis=1)
    there = np.isfinite(away.min(axis=1, initial=np.inf))
    if not there.any():
        return None
    step: Numbers = np.median(apart[np.flatnonzero(there), nearest[there]], axis=0)
    return step


def _turned(step: Numbers | None, way: int) -> Numbers:
    assert step is not None
    return np.array([-way * step[1], way * step[0]])

"""The pixels of each square, laid straight and with the light evened."""

from __future__ import annotations

import numpy as np

from sewalong.fabrics.photo.finding.grid import Grid
from sewalong.fabrics.photo.picture import Picture
from sewalong.fabrics.photo.surface import Surface
from sewalong.fabrics.photo.tones import Light, Numbers

_FEWEST, _MOST = 24, 192
"""Pixels on a side of a square laid straight: enough to see its print, no more than that."""


def laid_straight(picture: Picture, grid: Grid) -> Light:
    """Every square as photographed: rows × columns × n × n × 3, n a multiple of eight."""
    side = np.clip(grid.pixels / picture.scale, _FEWEST, _MOST)
    count = 8 * round(float(side) / 8)
    # Row by row: where all their pixels lie takes more room than the pixels.
    return np.stack([picture.at(*_points(grid, row, count)) for row in grid.middles])


def evened(squares: Light, grid: Grid, surface: Surface) -> Light:
    """The same squares in the light that falls on the best lit of them."""
    x, y = _points(grid, grid.middles, squares.shape[2])
    best = surface.log_at(*np.moveaxis(grid.map(grid.middles), -1, 0)).max()
    lift = np.exp(best - surface.log_at(x, y)).astype(np.float32)
    found: Light = np.minimum(squares * lift[..., None], 1)
    return found


def middle(squares: Light, share: float) -> Light:
    """The middle of every square: this share of its side."""
    count = squares.shape[2]
    cut = round(count * (1 - share) / 2)
    return squares[:, :, cut : count - cut, cut : count - cut]


def about(picture: Picture, grid: Grid) -> Picture:
    """The part of the picture that the squares lie in."""
    rows, columns = grid.middles.shape[:2]
    half = grid.side / 2
    ends = [(x, y) for x in (-half, columns - 1 + half) for y in (-half, rows - 1 + half)]
    corners = grid.map(np.array(ends)) / picture.scale
    left, top = np.maximum(np.floor(corners.min(axis=0)), 0).astype(int)
    right, bottom = np.ceil(corners.max(axis=0)).astype(int)
    return Picture(picture.light[top:bottom, left:right], picture.scale)


def _points(grid: Grid, middles: Numbers, count: int) -> tuple[Numbers, Numbers]:
    steps = ((np.arange(count) + 0.5) / count - 0.5) * grid.side
    across, down = np.meshgrid(steps, steps)
    points = grid.map(middles[..., None, None, :] + np.stack([across, down], axis=-1))
    return points[..., 0], points[..., 1]

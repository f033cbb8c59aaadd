"""How light falls off over the picture: a smooth surface through the log of what the ground shows."""

from __future__ import annotations

import numpy as np
from msgspec import Struct

from sewalong.fabrics.photo.tones import Flags, Numbers

_MOST_POINTS = 20_000
"""Of the ground, evenly taken: more of them change nothing but the time (own choice)."""


class Surface(Struct, frozen=True):
    """Light over the picture, of the second degree in its logarithm.

    A plane holds light that falls off to one side, the second degree what a lamp nearby and a
    lens add to it; an edge of shadow fits neither. Points are in pixels of the stored picture.
    """

    factors: Numbers
    wide: float
    high: float

    def log_at(self, x: Numbers, y: Numbers) -> Numbers:
        """The natural logarithm of the light at these points."""
        found: Numbers = _terms(x / self.wide, y / self.high) @ self.factors
        return found


def fit(x: Numbers, y: Numbers, light: Numbers, wide: float, high: float) -> tuple[Surface, Flags]:
    """The surface through most of these points, and which points lie on it.

    `light` is luminance above nothing. The sum of absolute misfits is made least (by least
    squares weighted anew), so that what lies on the ground here and there does not pull at it;
    then plain least squares through those within three times the usual misfit.
    """
    every = max(1, -(-len(x) // _MOST_POINTS))
    terms = _terms(x / wide, y / high)
    wanted = np.log(light)
    some, aim = terms[::every], wanted[::every]
    weight = np.ones(len(some))
    for _ in range(20):
        factors = _solved(some, aim, weight)
        weight = 1 / np.maximum(np.abs(aim - some @ factors), 0.005)
    for _ in range(3):
        off = np.abs(aim - some @ factors)
        near = off < 3 * _usual(off)
        factors = _solved(some[near], aim[near], np.ones(int(near.sum())))
    off = np.abs(wanted - terms @ factors)
    return Surface(factors, wide, high), off < 3 * _usual(off)


def _usual(off: Numbers) -> float:
    """The usual misfit as a standard deviation, from its median; a hundredth at least."""
    return max(float(1.4826 * np.median(off)), 0.01)


def _solved(terms: Numbers, aim: Numbers, weight: Numbers) -> Numbers:
    scaled = terms.T * weight
    slight = 1e-6 * weight.sum() * np.eye(terms.shape[1])
    found: Numbers = np.linalg.solve(scaled @ terms + slight, scaled @ aim)
    return found


def _terms(x: Numbers, y: Numbers) -> Numbers:
    u, v = 2 * x - 1, 2 * y - 1
    return np.stack([np.ones_like(u), u, v, u * u, u * v, v * v], axis=-1)

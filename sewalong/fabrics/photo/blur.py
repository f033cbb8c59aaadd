"""Whether a photograph is sharp enough to tell a print from a solid."""

from __future__ import annotations

import math

import numpy as np

from sewalong.fabrics.photo.picture import Picture
from sewalong.fabrics.photo.refused import PhotoRefused
from sewalong.fabrics.photo.tones import Numbers, lightness

WIDEST_EDGE = 0.06
"""Share of a square's side within which its edge must pass from cloth to cloth: a blur with a
standard deviation of a fortieth of the side. It leaves a motif that repeats every fifth of the
side seven tenths of its contrast, one every tenth three tenths (exp(-2π²σ²/p²))."""

_FAR = 2 * WIDEST_EDGE
"""Share of the side over which the whole contrast of an edge is looked for."""

_EDGES = 2.0
"""In a hundred: the share of pixels whose far change is taken for that of the strongest edges."""


def must_be_sharp(picture: Picture, side: float) -> None:
    """Raises PhotoRefused where squares of this side, in pixels of the stored picture, are blurred."""
    width = edge_width(picture, side)
    if width > max(WIDEST_EDGE * side, 3 * picture.scale):
        raise PhotoRefused(
            f"The picture is blurred: edges are {math.ceil(width)} pixels wide, and "
            f"{math.floor(WIDEST_EDGE * side)} are the most for squares of this size. "
            "Hold the camera still and let it focus."
        )


def edge_width(picture: Picture, side: float) -> float:
    """Pixels of the stored picture in which the strongest edges pass from cloth to cloth, in the
    blurrier of the two directions. `side` is that of a square, in the same pixels.

    The strongest changes over an eighth of the side, by the steepest from pixel to pixel.
    Measured on made pictures: about 2.5 standard deviations of the blur near the limit, on light,
    dark and coloured cloth, with noise of 5 in 255 or without.
    """
    far = max(2, round(_FAR * side / picture.scale))
    seen = lightness(picture.light)
    width = max(_width(seen, far), _width(seen.T, far))
    return width * picture.scale


def _width(seen: Numbers, far: int) -> float:
    """Along x. Averaged over three pixels down, so that noise is not taken for sharpness. Every
    edge is counted as many pixels long as the change is taken over, and the shares of pixels
    that are looked at are as those."""
    calm = (seen[:-2] + seen[1:-1] + seen[2:]) / 3
    steepest = np.percentile(np.abs(calm[:, 2:] - calm[:, :-2]) / 2, 100 - _EDGES * 2 / far)
    contrast = np.percentile(np.abs(calm[:, far:] - calm[:, :-far]), 100 - _EDGES)
    return float(contrast / max(steepest, 1e-6))

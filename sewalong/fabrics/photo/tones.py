"""Lightness and colour of many pixels at once, by the formulas that `sight` has for one colour."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from sewalong.fabrics.photo.linear_light import to_light, to_part

Light = NDArray[np.float32]
"""Linear red, green and blue light in the last axis, each 0 to 1."""
Numbers = NDArray[np.float64]
Flags = NDArray[np.bool_]

TO_LIGHT: Light = np.array([to_light(part) for part in range(256)], dtype=np.float32)
"""The light of each part of a pixel."""

_TO_XYZ = np.array(
    [
        [0.4123907993, 0.3575843394, 0.1804807884],
        [0.2126390059, 0.7151686788, 0.0721923154],
        [0.0193308187, 0.1191947798, 0.9505321522],
    ]
)
"""From linear sRGB to CIE XYZ under D65. Source: CSS Color Module Level 4, sample code."""

_WHITE = _TO_XYZ.sum(axis=1)

_STEPS = 4096
_TO_PARTS = np.array([to_part(step / _STEPS) for step in range(_STEPS + 1)], dtype=np.uint8)


def luminance(light: Light) -> Numbers:
    """CIE Y, 0 to 1, of each pixel."""
    found: Numbers = light.astype(np.float64) @ _TO_XYZ[1]
    return found


def lightness(light: Light) -> Numbers:
    """CIE L*, 0 to 100, of each pixel: of many, in a third of the room that `lab` takes."""
    return 116 * _root(luminance(light) / _WHITE[1]) - 16


def lab(light: Light) -> Numbers:
    """CIE 1976 L*a*b* under D65 of each pixel, in the last axis."""
    root = _root((light.astype(np.float64) @ _TO_XYZ.T) / _WHITE)
    x, y, z = root[..., 0], root[..., 1], root[..., 2]
    return np.stack([116 * y - 16, 500 * (x - y), 200 * (y - z)], axis=-1)


def _root(share: Numbers) -> Numbers:
    """The cube root that CIE L*a*b* takes of shares of white, a line near black."""
    low = share <= (6 / 29) ** 3
    return np.where(low, share * (29 / 6) ** 2 / 3 + 4 / 29, np.cbrt(np.maximum(share, 0)))


def parts(light: Light) -> NDArray[np.uint8]:
    """Red, green and blue parts of 0 to 255, to show on a screen."""
    steps = np.rint(np.clip(light, 0, 1) * _STEPS).astype(np.int32)
    return _TO_PARTS[steps]


def averaged(light: Light, by: int) -> Light:
    """Each `by` × `by` pixels as one, mixed as light mixes; what is over at the far edges is left."""
    high, wide = light.shape[0] // by, light.shape[1] // by
    cut = light[: high * by, : wide * by]
    total = sum(cut[row::by, column::by] for row in range(by) for column in range(by))
    found: Light = np.asarray(total, dtype=np.float32) / np.float32(by * by)
    return found

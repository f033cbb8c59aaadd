"""A photograph as linear light, upright and made small enough to reckon with."""

from __future__ import annotations

from typing import BinaryIO

import numpy as np
from msgspec import Struct
from PIL import Image

from sewalong.fabrics.photo.bounds import LEAST_SIDE, decoding, opened
from sewalong.fabrics.photo.profile import as_srgb
from sewalong.fabrics.photo.refused import PhotoRefused
from sewalong.fabrics.photo.tones import TO_LIGHT, Light, Numbers, averaged

LONG_SIDE = 1600
"""Pixels on the long side at most: of 12 squares in a row each still has a hundred (own choice)."""

_ROWS_AT_ONCE = 256
"""Rows of pixels turned to light at a time, so that the whole is never held in both forms."""

_TURNS = {3: 2, 4: 2, 5: 3, 6: 3, 7: 1, 8: 1}
"""Quarter turns, in the sense of `numpy.rot90`, for the orientations of Exif 2.32."""
_MIRRORED = (2, 4, 5, 7)
_ORIENTATION = 0x0112


class Picture(Struct, frozen=True):
    """Linear light, and how many pixels of the picture as stored are one of these, each way.

    Points are given in pixels of the stored picture, held upright: x along, y down, from the
    corner of the first pixel.
    """

    light: Light
    scale: float

    def at(self, x: Numbers, y: Numbers) -> Light:
        """The light at these points; beyond the edge, of the nearest pixel."""
        high, wide = self.light.shape[:2]
        column = np.clip((x / self.scale).astype(int), 0, wide - 1)
        row = np.clip((y / self.scale).astype(int), 0, high - 1)
        found: Light = self.light[row, column]
        return found

    def smaller(self, long_side: int) -> Picture:
        """The same with about so many pixels on the long side, averaged as light mixes."""
        by = max(1, -(-max(self.light.shape[:2]) // long_side))
        return Picture(averaged(self.light, by), self.scale * by) if by > 1 else self

    @property
    def wide(self) -> float:
        """Pixels of the stored picture along."""
        return float(self.light.shape[1] * self.scale)

    @property
    def high(self) -> float:
        """Pixels of the stored picture down."""
        return float(self.light.shape[0] * self.scale)


def read_picture(source: bytes | BinaryIO) -> Picture:
    """The picture in this file, upright, averaged in linear light. Of its metadata only the
    orientation and the meaning of its colours are looked at. Raises PhotoRefused as `opened` does, and for a damaged file."""
    image, halved = opened(source)
    with decoding():
        turned = image.getexif().get(_ORIENTATION, 1)
        image.load()
    by = max(1, -(-max(image.size) // LONG_SIDE))
    if min(image.size) // by < LEAST_SIDE:
        raise PhotoRefused(
            f"The picture is a strip of {image.width} by {image.height} pixels. "
            "Use the photograph as the camera took it."
        )
    light = as_srgb(_reduced(image, by), image.info.get("icc_profile"))
    return Picture(_upright(light, turned), by * halved)


def _reduced(image: Image.Image, by: int) -> Light:
    wide, high = image.width // by, image.height // by
    light = np.empty((high, wide, 3), dtype=np.float32)
    rows = max(1, _ROWS_AT_ONCE // by)
    for top in range(0, high, rows):
        bottom = min(top + rows, high)
        with decoding():
            strip = image.crop((0, top * by, wide * by, bottom * by)).convert("RGB")
        light[top:bottom] = averaged(TO_LIGHT[np.asarray(strip)], by)
    return light


def _upright(light: Light, orientation: object) -> Light:
    """The picture as it is to be looked at; an orientation that does not exist is none."""
    if not isinstance(orientation, int):
        return light
    turned = np.rot90(light, _TURNS.get(orientation, 0))
    if orientation in _MIRRORED:
        turned = turned[:, ::-1]
    return np.ascontiguousarray(turned)

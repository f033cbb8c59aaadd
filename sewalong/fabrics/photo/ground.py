"""The plain cloth that the squares lie on: its colour, and which pixels show it."""

from __future__ import annotations

import numpy as np
from msgspec import Struct

from sewalong.fabrics.photo.picture import Picture
from sewalong.fabrics.photo.refused import PhotoRefused
from sewalong.fabrics.photo.surface import Surface, fit
from sewalong.fabrics.photo.tones import Flags, Light, Numbers, lab, luminance

OTHER_LIGHT = 0.1
"""Step of the log of light that counts as an edge of shadow. Left in, half of it moves a middle
value by 1 in L*, less than tells two fabrics apart (2.5). Measured on made pictures: a window or a
lamp leaves a quarter of it against the surface."""

_FEWEST = 100
"""Pixels that show what cloth it is (own choice)."""

_MOST_PLAIN = 60
"""In a hundred: as much of what is looked at must be one cloth (own choice)."""

_SHADOWED = 0.08
"""Share of it in another light that is more than what lies about (own choice)."""

_MOST_OTHER = 5.0
"""Times that one cloth is lighter in one light than in another at most (own choice)."""

_CLOSEST, _FARTHEST = 7.0, 14.0
"""Difference in CIELAB within which a pixel is cloth beneath: four times the usual one, within
these. Under the first, wrinkles and noise come through; over the second, pale squares on a pale
cloth are lost (own choice)."""


class Ground(Struct, frozen=True):
    """The cloth beneath: its light at log light `level` of `surface`, and how near is the same.

    `in_other_light` says that a good part of what was looked at is this cloth in another light,
    as behind an edge of shadow.
    """

    colour: Light
    surface: Surface
    level: float
    tolerance: float
    in_other_light: bool

    def apart(self, light: Light, x: Numbers, y: Numbers) -> Numbers:
        """How far these pixels are from the cloth beneath, in CIELAB, light evened."""
        evened = light / np.exp(self.surface.log_at(x, y) - self.level)[..., None]
        return _apart(evened.astype(np.float32), self.colour)

    def same_cloth(self, light: Light) -> Flags:
        """Which pixels may be this cloth in whatever light: its colour, lighter or darker."""
        return _same_cloth(light, self.colour, self.tolerance)


def points_of(picture: Picture) -> tuple[Numbers, Numbers]:
    """The middle of each pixel, in pixels of the stored picture."""
    high, wide = picture.light.shape[:2]
    x, y = np.meshgrid((np.arange(wide) + 0.5), (np.arange(high) + 0.5))
    return x * picture.scale, y * picture.scale


def frame(picture: Picture) -> Flags:
    """The outermost pixels, where nothing but the cloth beneath is expected."""
    high, wide = picture.light.shape[:2]
    edge = max(2, round(0.025 * min(high, wide)))
    found = np.ones((high, wide), dtype=bool)
    found[edge : high - edge, edge : wide - edge] = False
    return found


def beneath(picture: Picture) -> tuple[Ground, Flags]:
    """The cloth seen all round in the outermost pixels, and the pixels that show something else.
    Raises PhotoRefused where no one cloth is."""
    ground = ground_of(picture, frame(picture))
    if ground is None:
        raise PhotoRefused(
            "No plain cloth is seen all round the squares. Lay them on one plain cloth and "
            "photograph it with a margin, or give the four corners."
        )
    mask = ground.apart(picture.light, *points_of(picture)) > ground.tolerance
    if ground.in_other_light:
        mask &= ~ground.same_cloth(picture.light)
    return ground, mask


def ground_of(picture: Picture, where: Flags) -> Ground | None:
    """The one cloth that most of these pixels show, or None where there is no such cloth."""
    x, y = points_of(picture)
    x, y, light = x[where], y[where], picture.light[where]
    if len(x) < _FEWEST:
        return None
    bright = np.maximum(luminance(light), 1e-4)
    cloth = np.ones(len(x), dtype=bool)
    for _ in range(2):
        surface, near = fit(x[cloth], y[cloth], bright[cloth], picture.wide, picture.high)
        log = surface.log_at(x, y)
        level = float(np.median(log))
        evened = (light / np.exp(log - level)[:, None]).astype(np.float32)
        lit = np.flatnonzero(cloth)[near]
        colour = np.median(evened[lit], axis=0).astype(np.float32)
        away = _apart(evened, colour)
        tolerance = float(np.clip(4 * np.median(away[lit]), _CLOSEST, _FARTHEST))
        cloth = away < tolerance
        if cloth.sum() < _FEWEST:
            return None
    same = _same_cloth(evened, colour, tolerance)
    off = np.abs(np.log(bright) - log)
    other = np.mean(same & (off > OTHER_LIGHT + 3 * np.median(off[lit])))
    if 100 * np.mean(cloth | same) < _MOST_PLAIN:
        return None
    return Ground(colour, surface, level, tolerance, bool(other > _SHADOWED))


def _apart(light: Light, colour: Light) -> Numbers:
    away: Numbers = np.sqrt(((lab(light) - lab(colour)) ** 2).sum(axis=-1))
    return away


def _same_cloth(light: Light, colour: Light, tolerance: float) -> Flags:
    bright, own = luminance(light), float(luminance(colour))
    times = own / np.maximum(bright, 1e-4)
    same = _apart((light * times[..., None]).astype(np.float32), colour) < tolerance
    found: Flags = same & (times < _MOST_OTHER) & (times > 1 / _MOST_OTHER)
    return found

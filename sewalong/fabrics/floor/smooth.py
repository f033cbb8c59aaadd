"""Whether light falls smoothly over units that lie without plain cloth between them."""

from __future__ import annotations

import numpy as np

from sewalong.fabrics.photo.light import must_be_smooth
from sewalong.fabrics.photo.surface import fit
from sewalong.fabrics.photo.tones import Numbers

_OTHER_LIGHT = 0.2
"""Step of the log of light that counts as an edge: twice what the cloth beneath shows, for fabrics
are seldom just as she wrote their colours (own choice)."""

_FEWEST = 9
"""Places that must say how light it is, so that a smooth light can be told (own choice)."""


def must_fall_smoothly(dark: Numbers) -> None:
    """Raises PhotoRefused where an edge of shadow, or glare, lies over the units. `dark` is the
    logarithm of how dark it is at each place, rows × columns, not a number where that is not known."""
    row, column = np.nonzero(np.isfinite(dark))
    if len(row) < _FEWEST:
        return
    rows, columns = dark.shape
    x, y = column.astype(np.float64) + 0.5, row.astype(np.float64) + 0.5
    level = -dark[row, column]
    surface, _ = fit(x, y, np.exp(level), columns, rows)
    off = np.full(dark.shape, np.nan)
    off[row, column] = level - surface.log_at(x, y)
    must_be_smooth(_on_each_side(-dark), _on_each_side(off), _OTHER_LIGHT, "the units")


def _on_each_side(places: Numbers) -> Numbers:
    return np.repeat(places[..., None], 4, axis=-1)

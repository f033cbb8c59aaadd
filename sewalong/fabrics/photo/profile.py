"""What red, green and blue a picture means, where its file says so: telephones mean wider ones."""

from __future__ import annotations

from io import BytesIO

import numpy as np
from PIL import ImageCms

from sewalong.fabrics.photo.tones import Light, Numbers

_MOST_BYTES = 100_000
"""Of a profile: those of cameras have a few thousand (own choice)."""

_SRGB = np.array(
    [
        [0.4360747, 0.3850649, 0.1430804],
        [0.2225045, 0.7168786, 0.0606169],
        [0.0139322, 0.0971045, 0.7141733],
    ]
)
"""From linear sRGB to XYZ under D50, as profiles give it. Source: CSS Color Module Level 4, linear
sRGB and the Bradford adaptation to D50."""


def to_srgb(profile: object) -> Numbers | None:
    """The matrix from the linear light of this ICC profile to that of sRGB; None where none is
    needed, or the profile has no such matrix or cannot be read: then it is taken for sRGB, as
    programs that show pictures do.

    The curve is taken for that of sRGB, which Display P3 shares and Adobe RGB comes near.
    """
    if not isinstance(profile, bytes) or len(profile) > _MOST_BYTES:
        return None
    try:
        read = ImageCms.ImageCmsProfile(BytesIO(profile)).profile
        primaries = (read.red_colorant, read.green_colorant, read.blue_colorant)
    except (ImageCms.PyCMSError, OSError, ValueError):
        return None
    if any(primary is None for primary in primaries):
        return None
    columns = np.array([primary[0] for primary in primaries if primary is not None]).T
    matrix: Numbers = np.linalg.inv(_SRGB) @ columns
    usable = np.isfinite(matrix).all() and np.abs(matrix).max() < 3
    return matrix if usable and np.abs(matrix - np.eye(3)).max() > 0.005 else None


def as_srgb(light: Light, profile: object) -> Light:
    """This light, of a picture with this profile, as linear sRGB; what sRGB cannot show is cut."""
    matrix = to_srgb(profile)
    if matrix is None:
        return light
    return np.clip(light @ matrix.T.astype(np.float32), 0, 1)

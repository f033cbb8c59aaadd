"""CIEDE2000 of many pairs of colours at once; of one pair, see `sight`."""

from __future__ import annotations

import numpy as np

from sewalong.fabrics.photo.tones import Numbers

_25_TO_7 = 25.0**7


def differences(one: Numbers, other: Numbers) -> Numbers:
    """The differences of L*a*b* colours, the last axis of both, which are broadcast together.

    Source: Sharma, Wu and Dalal 2005, doi 10.1002/col.20070; its equations by number.
    """
    lightness, a, b = np.moveaxis(one, -1, 0)
    lightness_2, a_2, b_2 = np.moveaxis(other, -1, 0)
    # Equations 2 to 7: less a* for what is nearly grey.
    mean = ((np.hypot(a, b) + np.hypot(a_2, b_2)) / 2) ** 7
    more = 1.5 - 0.5 * np.sqrt(mean / (mean + _25_TO_7))
    chroma, chroma_2 = np.hypot(a * more, b), np.hypot(a_2 * more, b_2)
    hue = np.arctan2(b, a * more) % (2 * np.pi)
    hue_2 = np.arctan2(b_2, a_2 * more) % (2 * np.pi)
    # Equations 8 to 14; hues in radians. Without chroma there is no hue to differ in.
    grey = chroma * chroma_2 == 0
    apart = np.where(grey, 0, hue_2 - hue)
    far_round = np.abs(apart) > np.pi
    by_hue = 2 * np.sqrt(chroma * chroma_2) * np.sin(apart / 2) * np.where(far_round, -1, 1)
    middle = np.where(grey, hue + hue_2, (hue + hue_2) / 2 + np.where(far_round, np.pi, 0))
    # Equations 15 to 22.
    t = (
        1
        - 0.17 * np.cos(middle - np.pi / 6)
        + 0.24 * np.cos(2 * middle)
        + 0.32 * np.cos(3 * middle + np.radians(6))
        - 0.20 * np.cos(4 * middle - np.radians(63))
    )
    dull = (lightness + lightness_2) / 2
    vivid = (chroma + chroma_2) / 2
    weight_l = 1 + 0.015 * (dull - 50) ** 2 / np.sqrt(20 + (dull - 50) ** 2)
    weight_c, weight_h = 1 + 0.045 * vivid, 1 + 0.015 * vivid * t
    degrees = np.degrees(middle) % 360
    turning = np.sin(np.radians(60 * np.exp(-(((degrees - 275) / 25) ** 2))))
    turning = -2 * np.sqrt(vivid**7 / (vivid**7 + _25_TO_7)) * turning
    by_l = (lightness_2 - lightness) / weight_l
    by_c, by_h = (chroma_2 - chroma) / weight_c, by_hue / weight_h
    squared = by_l**2 + by_c**2 + by_h**2 + turning * by_c * by_h
    found: Numbers = np.sqrt(np.maximum(squared, 0))
    return found

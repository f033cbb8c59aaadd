"""Colours as the eye weighs them: CIE L*a*b* and the CIEDE2000 difference."""

from __future__ import annotations

import math
from typing import NamedTuple

from sewalong.fabrics.colours import Colour, linear

_TO_XYZ = (
    (0.4124, 0.3576, 0.1805),
    (0.2126, 0.7152, 0.0722),
    (0.0193, 0.1192, 0.9505),
)
"""sRGB light to CIE XYZ for daylight D65. Source: IEC 61966-2-1. White is the sum of each row."""


class Lab(NamedTuple):
    """`lightness` 0 (black) to 100 (white); `a` green to red; `b` blue to yellow."""

    lightness: float
    a: float
    b: float


def lab(colour: Colour) -> Lab:
    """CIE 1976 L*a*b* under D65. Source: CIE 15, colorimetry."""
    light = (linear(colour.red), linear(colour.green), linear(colour.blue))
    x, y, z = (
        _root(sum(k * part for k, part in zip(row, light, strict=True)) / sum(row))
        for row in _TO_XYZ
    )
    return Lab(116 * y - 16, 500 * (x - y), 200 * (y - z))


def _root(share: float) -> float:
    if share > (6 / 29) ** 3:
        return math.cbrt(share)
    return share / (3 * (6 / 29) ** 2) + 4 / 29


def difference(one: Lab, other: Lab) -> float:
    """The CIEDE2000 difference; 1 is about what a trained eye just sees side by side.

    Source: Sharma, Wu and Dalal (2005), "The CIEDE2000 color-difference formula",
    Color Research and Application 30(1), with k_L = k_C = k_H = 1. Names follow the paper.
    """
    c_mean = (math.hypot(one.a, one.b) + math.hypot(other.a, other.b)) / 2
    g = 0.5 * (1 - math.sqrt(c_mean**7 / (c_mean**7 + 25.0**7)))
    a1, a2 = (1 + g) * one.a, (1 + g) * other.a
    c1, c2 = math.hypot(a1, one.b), math.hypot(a2, other.b)
    h1, h2 = _hue(a1, one.b), _hue(a2, other.b)

    d_l = other.lightness - one.lightness
    d_c = c2 - c1
    d_h = _turn(h1, h2) if c1 * c2 else 0.0
    d_big_h = 2 * math.sqrt(c1 * c2) * math.sin(math.radians(d_h / 2))

    l_mean = (one.lightness + other.lightness) / 2
    c_mean = (c1 + c2) / 2
    h_mean = _mean_hue(h1, h2) if c1 * c2 else h1 + h2
    t = (
        1
        - 0.17 * _cos(h_mean - 30)
        + 0.24 * _cos(2 * h_mean)
        + 0.32 * _cos(3 * h_mean + 6)
        - 0.20 * _cos(4 * h_mean - 63)
    )
    s_l = 1 + 0.015 * (l_mean - 50) ** 2 / math.sqrt(20 + (l_mean - 50) ** 2)
    s_c = 1 + 0.045 * c_mean
    s_h = 1 + 0.015 * c_mean * t
    d_theta = 30 * math.exp(-(((h_mean - 275) / 25) ** 2))
    r_c = 2 * math.sqrt(c_mean**7 / (c_mean**7 + 25.0**7))
    r_t = -math.sin(math.radians(2 * d_theta)) * r_c
    l_part, c_part, h_part = d_l / s_l, d_c / s_c, d_big_h / s_h
    return math.sqrt(l_part**2 + c_part**2 + h_part**2 + r_t * c_part * h_part)


def _hue(a: float, b: float) -> float:
    """Degrees from 0 to 360; 0 for a grey."""
    return math.degrees(math.atan2(b, a)) % 360 if a or b else 0.0


def _turn(h1: float, h2: float) -> float:
    """Degrees from one hue to the other, the short way round."""
    step = h2 - h1
    if step > 180:
        return step - 360
    return step + 360 if step < -180 else step


def _mean_hue(h1: float, h2: float) -> float:
    total = h1 + h2
    if abs(h1 - h2) <= 180:
        return total / 2
    return (total + 360) / 2 if total < 360 else (total - 360) / 2


def _cos(degrees: float) -> float:
    return math.cos(math.radians(degrees))

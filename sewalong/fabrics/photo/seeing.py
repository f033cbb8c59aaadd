"""The walk of a photograph: picture, ground, grid, light, squares, prints, letters."""

from __future__ import annotations

from collections.abc import Sequence
from typing import BinaryIO

import numpy as np
from PIL import Image

from sewalong.fabrics.photo.blur import must_be_sharp
from sewalong.fabrics.photo.doubles import Look, lettered
from sewalong.fabrics.photo.finding.grid import (
    Corner,
    Grid,
    grid_of,
    likely_side,
    must_suit,
    spanned,
)
from sewalong.fabrics.photo.ground import Ground, beneath
from sewalong.fabrics.photo.light import gaps, light_over, must_not_glare, seen_between
from sewalong.fabrics.photo.linear_light import colour_of
from sewalong.fabrics.photo.picture import Picture
from sewalong.fabrics.photo.prints import kind, spreads, tones_by_share, two_colours
from sewalong.fabrics.photo.refused import PhotoRefused
from sewalong.fabrics.photo.result import THUMB, Kind, Place, Reading, ReadPhoto
from sewalong.fabrics.photo.squares import about, evened, laid_straight, middle
from sewalong.fabrics.photo.steps import must_be_seen_well, with_small
from sewalong.fabrics.photo.tones import Light, parts

_SHOWN = 0.92
"""Of a square's side, shown back: without the cloth that its edges let through (own choice)."""


def seen(
    source: bytes | BinaryIO,
    rows: int,
    columns: int,
    corners: Sequence[Corner] | None,
    packs: int,
) -> Reading:
    """What `read_photo` returns, its numbers checked and its libraries there."""
    picture, small = with_small(source, rows, columns)
    ground: Ground | None
    if corners is None:
        grid, ground = _found(picture, small, rows, columns)
        near = gaps(small, grid)[0]
    else:
        grid = spanned(corners, picture, rows, columns)
        ground, near = seen_between(small, grid)
    must_suit(grid, picture)
    must_be_sharp(about(picture, grid), grid.pixels)
    squares = laid_straight(picture, grid)
    must_not_glare(middle(squares, 0.5))
    notes = []
    if ground is None:
        notes.append("No plain cloth is seen around the squares, so the light was not evened.")
    else:
        squares = evened(squares, grid, light_over(small, grid, ground, near))
        notes += _like_ground(grid, ground, small)
    if np.ptp(picture.light, axis=-1).max() == 0:
        notes.append("The picture has no colours, so only light and dark were read.")
    photo = ReadPhoto(rows, columns, packs, _places(squares), tuple(notes))
    return Reading(
        photo, tuple(_thumb(square) for row in middle(squares, _SHOWN) for square in row)
    )


def _found(picture: Picture, small: Picture, rows: int, columns: int) -> tuple[Grid, Ground]:
    """The grid on the ground; where there is none, refused for the reason behind that."""
    ground, mask = beneath(small)
    try:
        return grid_of(mask, small, rows, columns), ground
    except PhotoRefused:
        must_be_seen_well(picture, ground, likely_side(picture, rows, columns))
        raise


def _like_ground(grid: Grid, ground: Ground, picture: Picture) -> list[str]:
    """A sentence on the places where no square was seen and the cloth beneath may be bare."""
    here = grid.map(grid.middles)
    x, y = here[..., 0], here[..., 1]
    bare = ~grid.found & (ground.apart(picture.at(x, y), x, y) < ground.tolerance)
    if not bare.any():
        return []
    names = ", ".join(f"{row + 1}·{column + 1}" for row, column in np.argwhere(bare))
    return [
        "These places can hardly be told from the cloth beneath; look whether a square lies "
        f"there: {names}."
    ]


def _places(squares: Light) -> tuple[Place, ...]:
    rows, columns = squares.shape[:2]
    middles, most = middle(squares, 0.5), middle(squares, 0.75)
    read = []
    for row, column in np.ndindex(rows, columns):
        light = middles[row, column]
        colour = colour_of(light.mean(axis=(0, 1)))
        look = Look(colour, spreads(light), tones_by_share(light))
        is_kind = kind(most[row, column], look.spreads[0])
        two = None if is_kind is Kind.SOLID else two_colours(light)
        read.append((row + 1, column + 1, look, is_kind, two))
    letters = lettered([look for _, _, look, _, _ in read])
    return tuple(
        Place(row, column, look.colour, round(float(look.spreads[0]), 1), is_kind, letter, two)
        for (row, column, look, is_kind, two), letter in zip(read, letters, strict=True)
    )


def _thumb(square: Light) -> bytes:
    image = Image.fromarray(parts(square))
    return image.resize((THUMB, THUMB), Image.Resampling.BOX).tobytes()

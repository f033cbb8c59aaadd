"""Pictures of one quilt: what a stage makes, and the top."""

from __future__ import annotations

from collections.abc import Mapping
from functools import lru_cache

from sewalong.fabrics.colours import Colour, parse_colour
from sewalong.quilt.cloth.to_cut import to_cut
from sewalong.quilt.derived import derived_if_any
from sewalong.quilt.layouts.setting_sashed import Meeting
from sewalong.quilt.quilt import Quilt, Target
from sewalong.quilt.setting import SetOnPoint
from sewalong.quilt.unit_size import decided_unit
from sewalong.wall.keys import CORNERSTONE, SASH, SETTING, Key, border_key
from sewalong.wall.on_point import Slanting
from sewalong.wall.picture import EMPTY, Picture
from sewalong.wall.pieces import piece_picture
from sewalong.wall.tops import Level, Sashes, Turned


@lru_cache(maxsize=16)
def picture_made(
    quilt: Quilt, target: Target, pile: str | None, across: int, down: int
) -> Picture | None:
    """The piece a stage puts in `pile`, in at most `across` x `down` cells.

    Without a pile of the method's (a row, a stage of the top) it is the top with its borders.
    None when the pieces are too small for their seams. Kept, since every count asks for it.
    """
    derivation = derived_if_any(quilt)
    if derivation is None:
        return None
    if pile is not None and pile in derivation.piles:
        return piece_picture(derivation, pile, across, down)
    return picture_of_top(quilt, target, across, down)


def picture_of_top(quilt: Quilt, target: Target, across: int, down: int) -> Picture | None:
    """The top with its borders to scale, the units of one batch placed by turns; None when the
    pieces are too small for their seams. Part of it where there is no room for all its units."""
    top = the_top(quilt, target)
    if top is None:
        return None
    return EMPTY if across < 1 or down < 1 else top.laid(across, down).picture


def the_top(quilt: Quilt, target: Target, *, with_borders: bool = True) -> Level | Slanting | None:
    """The top of a quilt, to be drawn; None when the pieces are too small for their seams."""
    derivation = derived_if_any(quilt)
    if derivation is None:
        return None
    finished = decided_unit(quilt, derivation).grown(-quilt.seam)
    borders = tuple(float(border.cut - 2 * quilt.seam) for border in quilt.borders if with_borders)
    corners = Turned(quilt.choices.corners)
    if quilt.is_on_point:
        side = float(finished.width)
        return Slanting(derivation, target.rows, target.columns, side, borders, corners)
    unit = (float(finished.width), float(finished.length))
    return Level(derivation, target.rows, target.columns, unit, borders, _sashes(quilt), corners)


def _sashes(quilt: Quilt) -> Sashes | None:
    sashing = quilt.sashing
    if sashing is None:
        return None
    meeting = Meeting.LONG_SASHES if sashing.cornerstones is None else Meeting.CORNERSTONES
    width = to_cut(sashing.cut, quilt.unit).length - 2 * quilt.seam
    return Sashes(float(width), sashing.frame, meeting)


@lru_cache(maxsize=4)
def own_colours(quilt: Quilt) -> Mapping[Key, Colour]:
    """The colours the owner gave her fabrics and borders; the others have the palette's."""
    written = {fabric.letter: fabric.colour for fabric in quilt.named_fabrics}
    written |= {
        border_key(number): border.colour for number, border in enumerate(quilt.borders, start=1)
    }
    if isinstance(quilt.setting, SetOnPoint):
        written[SETTING] = quilt.setting.colour
    if quilt.sashing is not None:
        written[SASH] = quilt.sashing.colour
        stones = quilt.sashing.cornerstones
        written[CORNERSTONE] = stones.colour if stones else None
    return {key: parse_colour(colour) for key, colour in written.items() if colour}

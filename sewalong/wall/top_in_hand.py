"""The top as it stands, and what is in hand of it."""

from __future__ import annotations

from functools import lru_cache

from sewalong.quilt.quilt import Quilt, Target
from sewalong.wall.of_quilt import the_top
from sewalong.wall.places import Laid
from sewalong.wall.stage_picture import Shows, StagePicture
from sewalong.wall.standing import NOTHING_LIT, Lit, Sewn, standing_picture


@lru_cache(maxsize=8)
def top_in_hand(
    quilt: Quilt, target: Target, sewn: Sewn, across: int, down: int, lit: Lit = NOTHING_LIT
) -> StagePicture | None:
    """What is sewn of the top, and what is `lit`, in at most so many cells; None when the pieces
    are too small for their seams.

    Where there is no room for the patches of all units, units are drawn without them. Borders come
    after all that is in hand but their own sides, and take no room from it.
    """
    if across < 1 or down < 1:
        return None
    with_borders = not (lit.rows or lit.kinds or lit.corner)
    laid = _laid(quilt, target, across, down, with_borders)
    if laid is None:
        return None
    return StagePicture(standing_picture(laid, sewn, lit), _shows(lit))


@lru_cache(maxsize=4)
def _laid(quilt: Quilt, target: Target, across: int, down: int, with_borders: bool) -> Laid | None:
    top = the_top(quilt, target, with_borders=with_borders)
    if top is None:
        return None
    return top.laid(across, down, with_pattern=top.shows_its_pattern(across, down))


def _shows(lit: Lit) -> Shows:
    if lit.border:
        return Shows.SIDE
    if lit.kinds or lit.corner:
        return Shows.PIECES
    if lit.rows:
        return Shows.ROW if len(lit.rows) == 1 else Shows.ROWS
    return Shows.TOP

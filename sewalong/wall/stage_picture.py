"""The work of a stage as a picture: the piece with the lines it is marked or cut along, or what
trimming takes off."""

from __future__ import annotations

from enum import StrEnum
from functools import lru_cache

from msgspec import Struct

from sewalong.piecing.cloth import Flat, Piece, rectangle
from sewalong.piecing.derive import Derivation
from sewalong.piecing.method import Stage
from sewalong.piecing.operations import diagonal, through
from sewalong.piecing.stage_lines import stage_lines
from sewalong.quilt.derived import derived_if_any
from sewalong.quilt.quilt import Quilt
from sewalong.quilt.setting import CORNER, SIDE
from sewalong.quilt.unit_size import decided_unit
from sewalong.wall.keys import CUT, MARK, SETTING, TRIMMED
from sewalong.wall.picture import Picture, from_pixels, picture_of
from sewalong.wall.pieces import piece_picture, shortened


class Shows(StrEnum):
    """What a picture of a stage shows, in words."""

    MADE = "what it becomes"
    MARKS = "the marked line"
    SEAMS = "seams beside the line"
    CUTS = "where to cut"
    TRIM = "what trimming takes off"
    ROW = "this row among the rows"
    ROWS = "the rows to join"
    SIDE = "the side in hand"
    PIECES = "where they go"
    TOP = "the top"
    UNITS = "the units it gives"


class StagePicture(Struct, frozen=True):
    """A picture and what it shows."""

    picture: Picture
    shows: Shows


@lru_cache(maxsize=8)
def stage_picture(
    quilt: Quilt, stage: Stage, across: int, down: int, number: int = 0
) -> StagePicture | None:
    """The work of a stage of the method, or of one that cuts triangles, in at most so many cells.

    `number` says which count of a batch it is, from 0 on, for pieces of different fabrics.
    None when the pieces are too small for their seams, or where it is a stage of the top. Kept,
    since every count asks for it.
    """
    derivation = derived_if_any(quilt)
    if derivation is None or across < 1 or down < 1:
        return None
    if stage.makes.pile in (SIDE.id, CORNER.id):
        return StagePicture(_triangles(stage.makes.pile, across, down), Shows.CUTS)
    if stage.makes.pile not in derivation.piles:
        return None
    if stage.id == derivation.trim_stage:
        trimmed = _trimmed(quilt, derivation, stage.takes[0].pile, across, down, number)
        return StagePicture(trimmed, Shows.TRIM if TRIMMED in trimmed.keys else Shows.MADE)
    found = stage_lines(quilt.written_method, derivation, stage.id)
    if found is None:
        made = piece_picture(derivation, stage.makes.pile, across, down, number * stage.makes.count)
        return StagePicture(made, Shows.MADE)
    lines = [*((one, MARK) for one in found.marks), *((one, CUT) for one in found.cuts)]
    piece, lines = shortened(found.piece, lines)
    return StagePicture(
        picture_of(piece, across, down, lines), _shows(piece, cuts=bool(found.cuts))
    )


def _shows(piece: Piece, *, cuts: bool) -> Shows:
    if cuts:
        return Shows.CUTS
    return Shows.MARKS if isinstance(piece, Flat) or not piece.seams else Shows.SEAMS


def _triangles(pile: str, across: int, down: int) -> Picture:
    """A square of the cloth of the triangles, cut twice or once corner to corner."""
    square = rectangle(1.0, 1.0, SETTING)
    both = (False, True) if pile == SIDE.id else (False,)
    cuts = through(square.patches, [diagonal(square.patches, other) for other in both])
    return picture_of(square, across, down, [(cut, CUT) for cut in cuts])


def _trimmed(
    quilt: Quilt, made: Derivation, pile: str, across: int, down: int, number: int
) -> Picture:
    """The untrimmed unit, and as much of its edge as is cut off, never less than a pixel of it."""
    pieces = made.piles[pile].pieces
    raw = pieces[number % len(pieces)]
    picture = picture_of(raw, across, down)
    decided = decided_unit(quilt, made)
    rows = [list(row) for row in picture.pixels if any(row)]
    wide, high = len(rows[0]), len(rows)
    aside = _off(raw.size[0], float(decided.width), wide)
    above = _off(raw.size[1], float(decided.length), high)
    for y, row in enumerate(rows):
        for x in range(wide):
            if min(x, wide - 1 - x) < aside or min(y, high - 1 - y) < above:
                row[x] = TRIMMED
    return from_pixels(rows)


def _off(raw: float, kept: float, pixels: int) -> int:
    """Pixels that are trimmed off at each of two sides; none where nothing is."""
    if raw - kept < 1e-3:
        return 0
    return max(1, round((raw - kept) / 2 / raw * pixels))

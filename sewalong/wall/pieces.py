"""Pictures of what lies in a pile, and of a unit."""

from __future__ import annotations

from sewalong.piecing.cloth import Flat, Layered, Piece, Top, kept, moved
from sewalong.piecing.derive import Derivation
from sewalong.piecing.geometry import Line, turn
from sewalong.wall.picture import Picture, picture_of

LONGEST = 4.0
"""A strip is shown this many times as long as it is wide at most: enough to know it by."""

LIES_ACROSS = 2.0
"""Pieces this many times higher than wide are shown lying across, for the screen is low."""


def piece_picture(
    derivation: Derivation, pile: str, across: int, down: int, number: int = 0
) -> Picture:
    """A piece of the pile to its raw edges, in at most `across` x `down` cells.

    `number` picks among the pile's different pieces, round and round. A long strip is shown
    lying across, and only its beginning. Raises KeyError for a pile the method doesn't have.
    """
    pieces = derivation.piles[pile].pieces
    return picture_of(_shortened(pieces[number % len(pieces)]), across, down)


def finished_unit(derivation: Derivation, number: int) -> Flat:
    """What shows of a unit once its outer seams are taken."""
    unit = derivation.units[number % len(derivation.units)]
    return Flat(unit.finished(float(derivation.seam)))


def _shortened(piece: Piece) -> Piece:
    width, height = piece.size
    if height <= LIES_ACROSS * width:
        return piece
    end = Line((0.0, LONGEST * width), (0.0, -1.0))
    quarter = turn(2)
    if isinstance(piece, Flat):
        return Flat(moved(kept(piece.patches, end), quarter))
    return Layered(
        moved(kept(piece.base, end), quarter),
        tuple(
            Top(
                moved(kept(top.patches, end), quarter),
                tuple((quarter.point(a), quarter.point(b)) for a, b in top.seams),
            )
            for top in piece.tops
        ),
        piece.loose,
    )

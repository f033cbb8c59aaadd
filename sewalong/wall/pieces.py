"""Pictures of what lies in a pile, and of a unit."""

from __future__ import annotations

from collections.abc import Sequence

from sewalong.piecing.cloth import Flat, Layered, Piece, Segment, Top, kept, moved
from sewalong.piecing.derive import Derivation
from sewalong.piecing.geometry import Line as Along
from sewalong.piecing.geometry import turn
from sewalong.wall.picture import Line, Picture, picture_of

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
    return picture_of(shortened(pieces[number % len(pieces)])[0], across, down)


def finished_unit(derivation: Derivation, number: int) -> Flat:
    """What shows of a unit once its outer seams are taken."""
    unit = derivation.units[number % len(derivation.units)]
    return Flat(unit.finished(float(derivation.seam)))


def shortened(piece: Piece, lines: Sequence[Line] = ()) -> tuple[Piece, list[Line]]:
    """A long strip as it is shown, lying across and only its beginning; any other piece as it is.

    With it the lines on it; those beyond its beginning are left out.
    """
    width, height = piece.size
    if height <= LIES_ACROSS * width:
        return piece, [*lines]
    end = Along((0.0, LONGEST * width), (0.0, -1.0))
    quarter = turn(2)

    def lying(segment: Segment) -> Segment:
        return quarter.point(segment[0]), quarter.point(segment[1])

    there = [
        (lying(segment), key)
        for segment, key in lines
        if min(end.depth(point) for point in segment) >= 0
    ]
    if isinstance(piece, Flat):
        return Flat(moved(kept(piece.patches, end), quarter)), there
    tops = tuple(
        Top(moved(kept(top.patches, end), quarter), tuple(map(lying, top.seams)))
        for top in piece.tops
    )
    return Layered(moved(kept(piece.base, end), quarter), tops, piece.loose), there

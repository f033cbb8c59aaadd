"""Which cuts leave edges that stretch: before them is a better place to stop than after.

Worked out from the cloth: a cut that makes more edges on the bias, in a method whose units
have such edges outside. A diagonal cut that lies a seam's width from its stitches is held
by them and doesn't count.
"""

from __future__ import annotations

from functools import lru_cache
from math import atan2, degrees, hypot

from sewalong.piecing.cloth import Patch, Piece
from sewalong.piecing.derive import Derivation
from sewalong.quilt.derived import derived_if_any
from sewalong.quilt.quilt import Quilt

STRAIGHT = 1.0
"""Degrees within which an edge follows the threads."""


@lru_cache(maxsize=64)
def bias_cuts(quilt: Quilt) -> frozenset[str]:
    """Ids of the stages after which bias edges lie open; none where sizes cannot be had."""
    made = derived_if_any(quilt)
    if made is None or not made.has_bias_edges:
        return frozenset()
    return frozenset(work.id for work in made.stages if work.cut and _more_after(made, work.id))


def _more_after(made: Derivation, stage: str) -> bool:
    work = made.stage(stage)
    before = sum(_on_the_bias(made, taken.pile) * taken.count for taken in work.takes)
    after = _on_the_bias(made, work.makes.pile) * work.makes.count
    return after > before + 0.01


def _on_the_bias(made: Derivation, pile: str) -> float:
    """Inches of bias edge on the patches of a piece of the pile, on average."""
    pieces = made.piles[pile].pieces
    return sum(_of_piece(piece) for piece in pieces) / len(pieces)


def _of_piece(piece: Piece) -> float:
    return sum(_of_patch(patch) for patch in piece.patches)


def _of_patch(patch: Patch) -> float:
    threads = degrees(atan2(patch.grain[1], patch.grain[0]))
    found = 0.0
    for i, end in enumerate(patch.points):
        start = patch.points[i - 1]
        across, down = end[0] - start[0], end[1] - start[1]
        apart = (degrees(atan2(down, across)) - threads) % 90
        if min(apart, 90 - apart) > STRAIGHT:
            found += hypot(across, down)
    return found

"""The set in hand in words, every fabric with letter and name."""

from __future__ import annotations

from collections.abc import Mapping

from sewalong.progress.record.state import State
from sewalong.progress.sets.in_hand import InHand
from sewalong.quilt.quilt import Quilt

NOT_KNOWN = "one not known"
"""In place of a fabric that is not known any more."""


def called(quilt: Quilt) -> Mapping[str, str]:
    """What her fabrics are called, by letter: letter and name."""
    return {fabric.letter: fabric.called for fabric in quilt.counted_fabrics}


NAMED = 2
"""Squares of a piece that are named: enough to know it by. All of them stand on the screen of sets."""


def piece_words(names: Mapping[str, str], fabrics: tuple[str, ...]) -> str:
    """The fabrics of one piece: "A rust dots + F moss", and how many more where it has more."""
    named = " + ".join(names.get(one, one) if one else NOT_KNOWN for one in fabrics[:NAMED])
    more = len(fabrics) - NAMED
    return f"{named} + {more} more" if more > 0 else named


def in_hand_words(state: State, found: InHand) -> str:
    """ "Set 7 of 21: F moss on A rust dots"; a second, third count of the set says so.

    Of two pieces the second is laid, or sewn, on the first.
    """
    names = called(state.quilt)
    pieces = [piece_words(names, piece) for piece in found.pieces]
    said = f"{pieces[1]} on {pieces[0]}" if len(pieces) == 2 else ", ".join(pieces)
    of = f"Set {found.number} of {len(state.sets.sets)}"
    which = f", {found.count} of {found.counts}" if found.counts > 1 else ""
    doubt = "" if found.sure else " (not sure: a piece of the pile is gone)"
    return f"{of}{which}: {said}{doubt}."

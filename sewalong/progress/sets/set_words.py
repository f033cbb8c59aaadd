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
    return {
        fabric.letter: f"{fabric.letter} {fabric.name}".strip() for fabric in quilt.counted_fabrics
    }


def piece_words(names: Mapping[str, str], fabrics: tuple[str, ...]) -> str:
    """The fabrics of one piece: "A rust dots + F moss"."""
    return " + ".join(names.get(one, one) if one else NOT_KNOWN for one in fabrics)


def in_hand_words(state: State, found: InHand) -> str:
    """ "set 7 of 21: A rust dots on D navy"; a second, third count of the set says so."""
    names = called(state.quilt)
    pieces = " on ".join(piece_words(names, piece) for piece in reversed(found.pieces))
    of = f"set {found.number} of {len(state.sets.sets)}"
    which = f", {found.count} of {found.counts}" if found.counts > 1 else ""
    doubt = "" if found.sure else " (not sure: one of the pile is gone)"
    return f"{of}{which}: {pieces}{doubt}"

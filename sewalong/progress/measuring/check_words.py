"""A measurement in a few words: what was measured and what the tape read."""

from __future__ import annotations

from sewalong.progress.measuring.length_words import plainly
from sewalong.progress.record.state import Check, State


def check_in_words(state: State, check: Check) -> str:
    """What was measured and what it read: "unit measured 6 3/8 in"."""
    from sewalong.progress.record.measurable import Unmeasurable, read_piece

    unit = state.quilt.unit
    read = " and ".join(dict.fromkeys(plainly(reading, unit) for reading in check.readings))
    try:
        words = read_piece(state.quilt, state.target, check.piece).words
    except Unmeasurable:
        words = check.piece
    return f"{words} measured {read}"

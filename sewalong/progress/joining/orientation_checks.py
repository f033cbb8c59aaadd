"""Two things to look at before a seam that turns a piece the wrong way round: edge and end.

Working practice reported by makers (thefabricofherreality.blogspot.com: a border pinned
upside down, then sewn on back to front; woolyquilter.blogspot.com: rows flipped between
floor and machine).
"""

from __future__ import annotations

from sewalong.progress.record.route import ADD_SASHES, JOIN_ROWS


def which_way_up(stage: str) -> tuple[str, ...]:
    """What to look at before sewing at a stage of the assembly, one thing a line; empty where
    nothing can be turned round."""
    return _LOOK.get(stage, ())


_LOOK = {
    "sew-rows": (
        "Which unit is first? The tag and the tape are on it.",
        "Which end of each unit is towards row 1?",
    ),
    ADD_SASHES: (
        "Which edge of the row is away from row 1?",
        "Does the tag still show once the sash is on?",
    ),
    JOIN_ROWS: (
        "Do both tags lie at the edge with the tape?",
        "Which edge is joined: the one towards the neighbour named on the tag?",
    ),
    "add-borders": (
        "Which edge of the border is inner?",
        "Which end of it is the top?",
    ),
}

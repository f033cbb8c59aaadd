"""Two things to look at before a seam that turns a piece the wrong way round: edge and end.

Working practice reported by makers (thefabricofherreality.blogspot.com: a border pinned
upside down, then sewn on back to front; woolyquilter.blogspot.com: rows flipped between
floor and machine).
"""

from __future__ import annotations

from sewalong.progress.record.route import JOIN_ROWS

AFTER_AN_INTERRUPTION = (
    "Before the next one, lay the top piece beside the last one: the same edge, the same end?"
)
"""thecolorfulfabriholic.blogspot.com: picked up turned a quarter, a whole column was wrong."""


def which_way_up(stage: str, *, one_way: bool = False) -> tuple[str, ...]:
    """What to look at before sewing at a stage of the assembly, one thing a line; empty where
    nothing can be turned round. `one_way` is whether a print has a top and a bottom."""
    lines = _LOOK.get(stage, ())
    if lines and one_way:
        return (*lines, "Does the print stand the right way up?")
    return lines


_LOOK = {
    "sew-rows": (
        "Which unit is first? The tag and the tape are on it.",
        "Which end of each unit is towards row 1?",
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

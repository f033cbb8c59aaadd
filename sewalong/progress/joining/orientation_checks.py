"""Two things to look at before a seam that turns a piece the wrong way round: edge and end.

Working practice reported by makers (thefabricofherreality.blogspot.com: a border pinned
upside down, then sewn on back to front; woolyquilter.blogspot.com: rows flipped between
floor and machine).
"""

from __future__ import annotations

from sewalong.progress.joining.web import before_the_seam
from sewalong.progress.record.route import ADD_BORDERS, ADD_SASHES, JOIN_ROWS, SEW_ROWS
from sewalong.progress.record.state import State
from sewalong.quilt.web import SEW_WEB, START_WEB


def which_way_up(stage: str, *, is_web: bool = False) -> tuple[str, ...]:
    """What to look at before sewing at a stage of the assembly, one thing a line; empty where
    nothing can be turned round. `is_web`: the rows hang together by their threads."""
    if is_web and stage == JOIN_ROWS:
        return _LONG_SEAM_OF_A_WEB
    return _LOOK.get(stage, ())


def before_the_next(state: State, stage: str) -> str:
    """The same in a few words, before a long seam of the top, which nobody likes to unpick, and
    where a pass of a web begins and ends; empty for every other seam."""
    if state.quilt.is_web:
        if stage in (START_WEB, SEW_WEB):
            return before_the_seam(state)
        if stage == JOIN_ROWS:
            return "Before you sew: which end is up (row 1 first)? Is no thread between rows cut?"
    return " ".join(filter(None, (_of_the_wall(state, stage), _SHORT.get(stage, ""))))


def _of_the_wall(state: State, stage: str) -> str:
    """The first thing the wall says of the next join; `join` says all of it."""
    if stage != JOIN_ROWS or not state.wall.is_laid:
        return ""
    from sewalong.progress.joining.before_joining import before_the_join

    return next(iter(before_the_join(state)), "")


_SHORT = {
    JOIN_ROWS: "Before you sew: which end is up (R first)? Both tags at the same edge? Which edge do you join?",
    ADD_BORDERS: "Before you sew: which edge of the border is inner, and which end is the top?",
}


_IN_A_PASS = (
    "Is the first unit of the pile row 1's, and the last one the last row's?",
    "Which end of each unit is towards row 1?",
)

_LONG_SEAM_OF_A_WEB = (
    "Which end is up: is row 1 the first?",
    "Is no thread between rows cut? Where one is, compare with the row before which row this is.",
    "Which edge is joined: the one the threads run along?",
)

_LOOK = {
    START_WEB: _IN_A_PASS,
    SEW_WEB: _IN_A_PASS,
    SEW_ROWS: (
        "Which unit is first? The tag is pinned on it.",
        "Which end of each unit is towards row 1?",
    ),
    ADD_SASHES: (
        "Which edge of the row is away from row 1?",
        "Does the tag still show once the sash is on?",
    ),
    JOIN_ROWS: (
        "Which end is up: does the R come first on both tags?",
        "Do both tags lie at the same edge, where the rows begin?",
        "Which edge is joined: the one towards the neighbour named on the tag?",
    ),
    ADD_BORDERS: (
        "Which edge of the border is inner?",
        "Which end of it is the top?",
    ),
}

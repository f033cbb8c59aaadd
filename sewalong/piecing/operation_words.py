"""The words a method file uses for its operations, and what each of them does."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from fractions import Fraction

from sewalong.piecing import operations as do
from sewalong.piecing.cloth import Piece
from sewalong.piecing.faults import MethodFault

_TAKE = "take "
TRIM = "trim"

WORDS: dict[str, do.Operation] = {
    "lay": do.lay,
    "lay on corner 1": do.lay_on_corner(1),
    "lay on corner 2": do.lay_on_corner(2),
    "lay on corner 3": do.lay_on_corner(3),
    "lay on corner 4": do.lay_on_corner(4),
    "sew edge": do.sew_edge,
    "sew all round": do.sew_all_round,
    "sew both sides of diagonal": do.sew_beside_diagonal(),
    "sew both sides of other diagonal": do.sew_beside_diagonal(other=True),
    "sew across corners": do.sew_across_corners,
    "cut diagonal": do.cut_diagonal(),
    "cut other diagonal": do.cut_diagonal(other=True),
    "cut both diagonals": do.cut_both_diagonals,
    "cut in quarters": do.cut_quarters,
    "cut in eighths": do.cut_eighths,
    "cut segments": do.cut_segments(square=False),
    "cut square segments": do.cut_segments(square=True),
    "trim corners": do.trim_corners,
    TRIM: do.trim,
    "open": do.open_out,
    "join in a row": do.join_row,
    "join in a column": do.join_column,
    "turn last a quarter": do.turn_last(2),
    "turn last half way": do.turn_last(4),
    "turn last three quarters": do.turn_last(6),
    "stand on longest edge": do.stand_on_longest_edge,
}
"""Every operation but `take PILE`. The whole table is worked on, or its last piece or two."""


def taken(words: Sequence[str]) -> tuple[str, ...]:
    """The piles that the operations take from, in order, one entry a piece."""
    return tuple(word.removeprefix(_TAKE) for word in words if word.startswith(_TAKE))


MOST_PATCHES = 200
"""Patches on the table at once: more than 14 rows of 14 in one unit."""


def run(words: Sequence[str], pieces: Sequence[Piece], seam: Fraction, most_work: int) -> do.Table:
    """The table after all operations, with `pieces` standing for what was taken, in order.

    Raises MethodFault (without file and stage) if a word is unknown or doesn't fit, or if there
    is more to do than `most_work`, SizeRefused if the sizes don't.
    """
    table = do.Table(float(seam))
    waiting = iter(pieces)
    for word in words:
        if word.startswith(_TAKE):
            table.pieces.append(next(waiting))
        else:
            _add_work(table, word, most_work)
            _operation(word)(table)
    if not table.pieces:
        raise MethodFault("nothing is left of what was taken")
    return table


def _add_work(table: do.Table, word: str, most_work: int) -> None:
    patches = sum(len(piece.patches) for piece in table.pieces)
    if patches > MOST_PATCHES:
        raise MethodFault(f"more than {MOST_PATCHES} patches lie on the table at once")
    # What is joined already is gone through again for each piece that is added.
    table.work += patches * (len(table.pieces) if word.startswith("join") else 1)
    if table.work > most_work:
        raise MethodFault("there is more to sew and cut in one batch than can be worked out")


def _operation(word: str) -> Callable[[do.Table], None]:
    if word not in WORDS:
        raise MethodFault(f"the operation {word!r} is not known")
    return WORDS[word]

"""Sets of a proposal that she holds while the others are proposed anew."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence

from msgspec.structs import replace

from sewalong.fabrics.sets.asked import Asked
from sewalong.progress.record.refused import Refused


def holding(asked: Asked, held: Sequence[tuple[str, ...]]) -> Asked:
    """What is asked for beside the sets `held`: their squares are not dealt again, and so many
    fewer sets are wanted.

    Raises Refused where none is wanted although there are squares.
    """
    taken = Counter(letter for squares in held for letter in squares)
    free = [replace(one, squares=one.squares - taken[one.letter]) for one in asked.swatches]
    wanted = asked.sets - len(held)
    if wanted < 1 and sum(one.squares for one in free) >= len(asked.places):
        raise Refused(
            "No more sets are wanted: those that stand are enough for the target. Take a larger "
            "target, or unlock a set."
        )
    return replace(
        asked,
        swatches=tuple(one for one in free if one.squares > 0),
        sets=wanted,
        locked=(*asked.locked, *held),
    )

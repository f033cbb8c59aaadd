"""Sets of a proposal that she holds while the others are proposed anew."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence

from msgspec.structs import replace

from sewalong.fabrics.sets.proposing import Asked


def holding(asked: Asked, held: Sequence[tuple[str, ...]]) -> Asked:
    """What is asked for beside the sets `held`: their squares are not dealt again, and so many
    fewer sets are wanted."""
    taken = Counter(letter for squares in held for letter in squares)
    free = (replace(one, squares=one.squares - taken[one.letter]) for one in asked.swatches)
    return replace(
        asked,
        swatches=tuple(one for one in free if one.squares > 0),
        sets=asked.sets - len(held),
        locked=(*asked.locked, *held),
    )

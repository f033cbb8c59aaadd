"""How many squares her fabrics have, held against the plan, in words."""

from __future__ import annotations

from collections.abc import Sequence

from sewalong.fabrics.swatch import Swatch
from sewalong.quilt.quilt import Quilt
from sewalong.quilt.set_shape import SetShape
from sewalong.quilt.worksheet.line import plural

NO_SETS = (
    "This method takes no sets of squares that differ, so there is nothing to choose among them."
)


def count_words(swatches: Sequence[Swatch], quilt: Quilt, shape: SetShape | None) -> str:
    """The count, beside what the plan begins with. `shape` is that of the sets of her method, None
    where it has none."""
    squares = sum(swatch.squares for swatch in swatches)
    of = plural(len(swatches), "fabric")
    return f"{plural(squares, 'square')} of {of}, {_beside(squares, _begun_with(quilt, shape))}."


def _begun_with(quilt: Quilt, shape: SetShape | None) -> int:
    piles = {start.pile: start.count for start in quilt.starts}
    return piles[shape.pile] if shape else quilt.starts[0].count


def _beside(squares: int, begun_with: int) -> str:
    if squares == begun_with:
        return "as many as the plan begins with"
    if squares < begun_with:
        return f"{begun_with - squares:,} fewer than the {begun_with:,} the plan begins with"
    return f"{squares - begun_with:,} more than the {begun_with:,} the plan begins with"

"""How many squares her fabrics have, held against the plan, in words; and what is not known."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from sewalong.fabrics.swatch import Swatch
from sewalong.quilt.quilt import Quilt
from sewalong.quilt.set_shape import SetShape


def count_words(
    swatches: Sequence[Swatch], quilt: Quilt, shape: SetShape | None
) -> tuple[str, ...]:
    """A line for each fact, the count first. `shape` is that of the sets of her method, None where
    it has none."""
    return tuple(_lines(swatches, quilt, shape))


def _lines(swatches: Sequence[Swatch], quilt: Quilt, shape: SetShape | None) -> Iterator[str]:
    squares = sum(swatch.squares for swatch in swatches)
    of = "1 fabric" if len(swatches) == 1 else f"{len(swatches)} fabrics"
    yield f"{_squares(squares)} of {of}, {_beside(squares, _begun_with(quilt, shape))}."
    if shape is None:
        yield (
            "This method takes no sets of squares that differ, so there is nothing to choose "
            "among them."
        )
    else:
        yield _sets(squares, shape)
    unknown = [swatch.called for swatch in swatches if swatch.value is None]
    if unknown:
        named = ", ".join(unknown[:_NAMED])
        more = f" and {len(unknown) - _NAMED} more" if len(unknown) > _NAMED else ""
        yield (
            f"How light or dark is not known of {named}{more}. Give a colour, or a value such as "
            "dark."
        )


_NAMED = 3
"""Fabrics that are named in a line before the rest are counted."""


def _begun_with(quilt: Quilt, shape: SetShape | None) -> int:
    piles = {start.pile: start.count for start in quilt.starts}
    return piles[shape.pile] if shape else quilt.starts[0].count


def _beside(squares: int, begun_with: int) -> str:
    if squares == begun_with:
        return "as many as the plan begins with"
    if squares < begun_with:
        return f"{begun_with - squares:,} fewer than the {begun_with:,} the plan begins with"
    return f"{squares - begun_with:,} more than the {begun_with:,} the plan begins with"


def _sets(squares: int, shape: SetShape) -> str:
    of = len(shape.places)
    sets, over = divmod(squares, of)
    left = f"{_squares(over)} over" if over else "nothing over"
    return f"They make {sets:,} {'set' if sets == 1 else 'sets'} of {of}, {left}."


def _squares(count: int) -> str:
    return "1 square" if count == 1 else f"{count:,} squares"

"""Fabrics put in rows: the lightest first, and within a value family by family."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct

from sewalong.fabrics.families import Family
from sewalong.fabrics.swatch import Swatch
from sewalong.fabrics.value_words import WORDS


class ValueRow(Struct, frozen=True):
    """Fabrics of one value word and one colour family, the lightest first; None is not known."""

    word: str | None
    family: Family | None
    swatches: tuple[Swatch, ...]

    @property
    def value(self) -> str:
        """The value word, or that none was said."""
        return self.word or "value not said"


def by_value(swatches: Sequence[Swatch]) -> tuple[ValueRow, ...]:
    """The rows there are of these, the lightest value first, those of which none is known last."""
    rows: dict[tuple[str | None, Family | None], list[Swatch]] = {}
    for swatch in sorted(swatches, key=lambda one: -(one.value or 0.0)):
        rows.setdefault((swatch.word, swatch.family), []).append(swatch)
    return tuple(
        ValueRow(word, family, tuple(rows[word, family]))
        for word in (*reversed(WORDS), None)
        for family in (*Family, None)
        if (word, family) in rows
    )

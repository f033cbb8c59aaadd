"""How fabrics read beside each other, the weakest two first, in words."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import combinations
from math import inf

from msgspec import Struct

from sewalong.fabrics.advice import Met, met_between
from sewalong.fabrics.sight import contrast, difference
from sewalong.fabrics.swatch import Swatch


class TwoFabrics(Struct, frozen=True):
    """Two fabrics side by side. `difference` is CIEDE2000 and `ratio` that of their luminances, 1 to
    21; None where a colour is not known."""

    met: Met
    difference: float | None
    ratio: float | None

    @property
    def facts(self) -> tuple[str, ...]:
        """One each: how the seam reads, and how far the colours are apart."""
        if self.difference is None:
            return (self.met.words,)
        pair = f"{self.met.one.called} and {self.met.other.called}"
        return (
            self.met.words,
            f"{pair}: colour difference {self.difference:.1f}.",
            f"{pair}: ratio of light {self.ratio:.1f} to 1.",
        )


def two_by_two(fabrics: Sequence[Swatch]) -> tuple[TwoFabrics, ...]:
    """Every two of these, the weakest first; what is not known comes last."""
    pairs = [_two(one, other) for one, other in combinations(fabrics, 2)]
    return tuple(sorted(pairs, key=lambda two: inf if two.met.apart is None else two.met.apart))


def _two(one: Swatch, other: Swatch) -> TwoFabrics:
    met = met_between(one, other)
    if one.colour is None or other.colour is None:
        return TwoFabrics(met, None, None)
    return TwoFabrics(met, difference(one.colour, other.colour), contrast(one.colour, other.colour))

"""Which squares are likely of one fabric, and the letters that says."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from msgspec import Struct

from sewalong.fabrics.colours import Colour
from sewalong.fabrics.photo.tones import Numbers
from sewalong.fabrics.sight import difference, value
from sewalong.quilt.letters import letter

ONE_FABRIC = 2.5
"""CIEDE2000 under which two colours pass for one fabric (common practice, see `sight`)."""

_OF_COARSE = 1 / 6
"""What is added to that for each unit of coarse spread: the middles of two squares of a bold print
show other parts of it. Measured on made dots cut at random: with it 17 of 20 pairs are found of
prints that repeat every third of a square, and nearly all of finer ones."""

_TONES_WITHIN = 2.0
_OF_SPREAD = 0.15
"""L* by which the shares of light and dark may differ on the average, and what is added for each
unit of spread: measured on the same dots, above what 19 in 20 pairs of one print differ by."""

_SPREAD_TIMES, _SPREAD_MORE = 1.5, 1.5
"""How much more one may spread than the other: times so much, and so much more. Pieces of one made
print stay within 1.5 times; the second is what noise does to solids."""

_HEAVIEST = 1.75
"""L* that CIEDE2000 may count as one at most: from that on, it is farther than it allows whatever
else (its S_L; Sharma, Wu and Dalal 2005). Spares the slow reckoning for most pairs."""


class Look(Struct, frozen=True):
    """What a square is compared by: its colour from afar, its spread when looked at finely and less
    so, its shares of light and dark."""

    colour: Colour
    spreads: Numbers
    tones: Numbers

    def like(self, other: Look) -> bool:
        """Whether the two are likely of one fabric."""
        low, high = np.minimum(self.spreads, other.spreads), np.maximum(self.spreads, other.spreads)
        if (high > _SPREAD_TIMES * low + _SPREAD_MORE).any():
            return False
        if np.abs(self.tones - other.tones).mean() > _TONES_WITHIN + _OF_SPREAD * high[0]:
            return False
        within = ONE_FABRIC + _OF_COARSE * float(high[-1])
        lighter = abs(value(self.colour) - value(other.colour))
        return lighter < _HEAVIEST * within and difference(self.colour, other.colour) < within


def lettered(looks: Sequence[Look]) -> list[str]:
    """A letter for each, in their order; those that are like every one of a letter share it."""
    groups: list[list[Look]] = []
    letters = []
    for look in looks:
        for number, group in enumerate(groups):
            if all(look.like(other) for other in group):
                group.append(look)
                letters.append(letter(number))
                break
        else:
            letters.append(letter(len(groups)))
            groups.append([look])
    return letters

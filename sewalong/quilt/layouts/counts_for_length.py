"""How many units side by side reach a length, in a setting that grows by the same step with each."""

from __future__ import annotations

from collections.abc import Callable
from math import ceil, floor

from sewalong.lengths import Length


def counts_for_length(length_of: Callable[[int], Length], wanted: Length) -> tuple[int, int]:
    """The fewest that reach `wanted` and the most that do not pass it (0: not even one).

    `length_of` says how long so many are. The fewest are one at least.
    """
    one, step = length_of(1), length_of(2) - length_of(1)
    more = (wanted - one) / step
    return max(1, 1 + ceil(more)), max(0, 1 + floor(more))

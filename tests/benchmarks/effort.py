"""How thoroughly to measure: as the README's figures are, or only to see that it still can be."""

from __future__ import annotations

from msgspec import Struct


class Effort(Struct, frozen=True):
    """How often each pair is measured, how many keys are pressed and for how many seconds the
    idle app is watched; every record is `smaller` times smaller than the table says."""

    rounds: int
    keys: int
    idle_seconds: float
    smaller: int

    def size(self, full: int) -> int:
        """Of a record with `full` things in it, how many are measured."""
        return full // self.smaller


FULL = Effort(rounds=9, keys=60, idle_seconds=10, smaller=1)
QUICK = Effort(rounds=1, keys=4, idle_seconds=1, smaller=10)

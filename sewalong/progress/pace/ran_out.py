"""The bobbin ran out and nobody saw: from which piece on the chain is not sewn."""

from __future__ import annotations

from math import ceil

from msgspec import Struct

from sewalong.piecing.method import Noun


class RanOut(Struct, frozen=True):
    """Of a run, `sewn` pieces hold and `unsewn` do not, counted from the end of the chain."""

    sewn: int
    unsewn: int

    def sentence(self, noun: Noun) -> str:
        """What to look for and where."""
        return (
            f"Likely from piece {self.sewn + 1} on: {noun.count(self.unsewn)} of "
            f"{self.sewn + self.unsewn} not sewn. Look from the end of the chain back to the "
            "first that holds."
        )


def ran_out(pieces: int, run_minutes: float, without_thread: float) -> RanOut:
    """Of `pieces` fed through at an even pace in `run_minutes`, the last `without_thread`
    minutes' worth is unsewn, a begun one with them.

    Raises ValueError for no pieces, no time, or more time without thread than there was.
    """
    if pieces < 1 or run_minutes <= 0 or not 0 <= without_thread <= run_minutes:
        raise ValueError("a run has pieces and minutes, and lasts as long as any part of it")
    unsewn = ceil(pieces * without_thread / run_minutes - 1e-9)
    return RanOut(pieces - unsewn, unsewn)

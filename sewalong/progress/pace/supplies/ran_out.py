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


def ran_out(pieces: int, run: float, without_thread: float) -> RanOut:
    """Of `pieces` fed through at an even pace, the last `without_thread` of the `run` is unsewn, a
    begun one with them; both in minutes, or both in inches of seam.

    Raises ValueError for no pieces, no run, or more of it without thread than there was.
    """
    if pieces < 1 or run <= 0 or not 0 <= without_thread <= run:
        raise ValueError("a run has pieces and a length, and is as long as any part of it")
    unsewn = ceil(pieces * without_thread / run - 1e-9)
    return RanOut(pieces - unsewn, unsewn)

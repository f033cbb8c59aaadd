"""One cause of what was measured, with its numbers."""

from __future__ import annotations

from msgspec import Struct

from sewalong.lengths import Length
from sewalong.progress.measuring.causes.feet import Foot
from sewalong.progress.measuring.causes.priors import Why


class Cause(Struct, frozen=True):
    """One cause, in inches.

    `short` is what the readings at `places` (from 0) lack on average, below zero for what is over:
    the rule of all readings (`all_alike`) or some among right ones, `uneven` where no two need be
    alike. `likely` is its share among the causes that fit.

    Of a seam: `seam` is the allowance the readings come to, surely between `least` and `most`,
    `off_each` what each is too wide (below zero: too narrow), `foot` the foot it is within what a
    tape can tell. `pieces` are too few or too many, each of which adds `adds`. `cut_short` is what
    one mis-cut piece lacks, or each where all were cut so. `like` is the other kind it measures
    as. Cloth stretched the other way (`crosswise`) draws in this way.
    """

    why: Why
    short: Length
    places: tuple[int, ...]
    all_alike: bool
    uneven: bool = False
    likely: float = 1.0
    seam: Length | None = None
    least: Length | None = None
    most: Length | None = None
    off_each: Length | None = None
    foot: Foot | None = None
    pieces: int = 0
    adds: Length | None = None
    cut_short: Length | None = None
    like: str = ""
    crosswise: bool = False

    @property
    def is_seam(self) -> bool:
        """Whether the seam is at fault."""
        return self.why in (Why.WIDE, Why.NARROW)

    @property
    def named_seam(self) -> Length | None:
        """The seam as it is told: the foot's where it is one, else what the readings come to."""
        return self.seam if self.foot is None else self.foot.seam

    @property
    def off_a_seam(self) -> Length | None:
        """What every seam takes too much, of both its allowances; below zero: too little."""
        return None if self.off_each is None else 2 * self.off_each

"""Sewing thread for piecing: seam length by what a lockstitch takes, with waste, in two threads.

The lockstitch is stitch type 301 of ISO 4915: a needle thread and a bobbin thread that lock in the
middle of the cloth, ideally as much of the one as of the other. Two published ways agree:

- the ratio: 2.5 of thread for 1 of seam (Coats, Standard Stitch Type Classification; Carr and
  Latham, Technology of Clothing Manufacture, as reproduced);
- the formula 2 + 2 * T * S for cloth T inches thick at S stitches an inch (Union Special, as given
  by Textile Calculations): 2.5 at ten stitches an inch through 0.025 in.

Quilting through batting takes more and is not counted here.
"""

from collections.abc import Sequence
from fractions import Fraction
from math import ceil

from msgspec import Struct

from sewalong.lengths import METRE, YARD, Length, Unit
from sewalong.quilt.as_fraction import as_fraction
from sewalong.quilt.refusal import NumbersFault, above_zero, at_least, not_below_zero

LOCKSTITCH_RATIO = Fraction(5, 2)
"""Thread by seam for stitch type 301, both threads together (Coats)."""

WASTE = Fraction(15, 100)
"""Added for tails, starts and unpicking. Published: 10 to 20 in 100."""


class SeamRun(Struct, frozen=True):
    """Seams of one stage: `each` inches long, `times` of them."""

    stage: str
    each: Length
    times: int

    @property
    def length(self) -> Length:
        """All of them, in inches."""
        return self.each * self.times


class Thread(Struct, frozen=True):
    """Lengths in inches: `total` is what the `needle` and the `bobbin` take, waste included."""

    seam: Length
    ratio: Fraction
    waste: Fraction
    total: Length
    needle: Length
    bobbin: Length
    reason: str


def lockstitch_ratio(thickness: Length, stitches_an_inch: Fraction) -> Fraction:
    """Thread by seam for stitch type 301 by the formula, 2 + 2 * T * S.

    `thickness` is that of all layers sewn through, in inches. Raises `NumbersFault` when a
    value is not above zero.
    """
    above_zero(thickness, "thickness of the cloth")
    above_zero(stitches_an_inch, "number of stitches an inch")
    return 2 + 2 * thickness * stitches_an_inch


def seam_run(stage: str, each: float | Fraction, times: int) -> SeamRun:
    """Seams of one stage, the length of one possibly a computed diagonal.

    Raises `NumbersFault` for a length or a count below zero.
    """
    return SeamRun(
        stage, not_below_zero(as_fraction(each), "seam"), at_least(0, times, f"seams of '{stage}'")
    )


def thread(
    runs: Sequence[SeamRun],
    *,
    ratio: Fraction = LOCKSTITCH_RATIO,
    waste: Fraction = WASTE,
    unit: Unit = Unit.INCH,
) -> Thread:
    """The thread for all of `runs`, half of it from the needle, as the tension is balanced.

    Raises `NumbersFault` when there is nothing to sew, for a ratio below 2 (each thread is at
    least as long as the seam), or a waste below zero.
    """
    seam = sum((run.length for run in runs), Fraction(0))
    above_zero(seam, "seam length")
    not_below_zero(waste, "waste")
    if ratio < 2:
        raise NumbersFault(
            "Less thread than twice the seam cannot hold: two threads run along it. "
            "Give a ratio of 2 or more."
        )
    total = seam * ratio * (1 + waste)
    needle = total / 2
    words = (
        f"{length_said(seam, unit)} of seam, {float(ratio):g} times as much thread and "
        f"{float(waste * 100):g} % waste: {length_said(total, unit)}, {length_said(needle, unit)} in the "
        f"needle and {length_said(total - needle, unit)} in the bobbin"
    )
    return Thread(seam, ratio, waste, total, needle, total - needle, words)


def metres(length: Length | float) -> float:
    """A length in inches as metres, which is how thread is sold."""
    return float(length / METRE)


def length_said(length: Length | float, unit: Unit) -> str:
    """A length of seam or thread, in inches, as whole yards or metres: "32 yd", "29 m"."""
    if unit is Unit.INCH:
        return f"{float(length / YARD):.0f} yd"
    return f"{metres(length):.0f} m"


class Wound(Struct, frozen=True):
    """Spools or bobbins: `count` of a `capacity`, with `over` left on the last (inches)."""

    count: int
    capacity: Length
    over: Length
    reason: str


def wound(length: Length, capacity: Length, unit: Unit = Unit.INCH) -> Wound:
    """How many spools or bobbins hold `length`, for a capacity read off the label or measured.

    No capacity is assumed: what a bobbin holds depends on the thread and on who wound it. Both
    in inches; raises `NumbersFault` when either is not above zero.
    """
    above_zero(length, "thread")
    above_zero(capacity, "thread it holds")
    count = ceil(length / capacity)
    words = f"{count}: {length_said(length, unit)} at {length_said(capacity, unit)} each"
    return Wound(count, capacity, count * capacity - length, words)

"""How large the start pieces of a method are: from the main one, or from the unit wanted.

Nothing here knows a rule such as "add seven eighths": the method is run at two sizes,
and as every operation moves edges by amounts in proportion, the size wanted lies on the
straight line through both.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from fractions import Fraction
from functools import lru_cache

from msgspec import Struct

from sewalong.lengths import Rounding, Unit, round_to, show
from sewalong.piecing.cloth import Flat
from sewalong.piecing.definition import Definition, StartDefinition
from sewalong.piecing.faults import MethodFault, SizeRefused
from sewalong.piecing.flow import Batch, make_batch
from sewalong.piecing.geometry import box

EIGHTH = Fraction(1, 8)
"""Cutting sizes go up to a whole eighth of an inch unless told otherwise."""

_LENGTH = 24.0
"""Strip length for working out sizes, in strip widths; sizes don't depend on it."""


class StartSize(Struct, frozen=True):
    """The size of one start pile: a square's side or a strip's width, in inches.

    `exact` is what the geometry asks for; `cutting` is that rounded up to the fineness
    of the ruler, or the size the owner gave.
    """

    pile: str
    exact: float
    cutting: Fraction


def main_start(written: Definition) -> StartDefinition:
    """The start whose size the owner chooses: the first in the file."""
    return written.starts[0]


def starts_from(
    written: Definition, main: float | Fraction, seam: Fraction, fineness: Fraction
) -> dict[str, StartSize]:
    """The exact and cutting sizes of all starts when the main one measures `main` inches.

    A main size given as a Fraction is what the owner cuts and is left as it is; a float
    has been worked out and is rounded up to `fineness`, as the others are.
    """
    exact = float(main)
    cutting = main if isinstance(main, Fraction) else round_to(main, fineness, Rounding.UP)
    starts = {start.pile: StartSize(start.pile, exact, cutting) for start in written.starts}
    for start in written.starts[1:]:
        if start.share is not None or start.shape is not None:
            slope, more = _suited(written, start.pile, seam)
            size = slope * exact + more
            starts[start.pile] = StartSize(start.pile, size, round_to(size, fineness, Rounding.UP))
    return starts


@lru_cache(maxsize=64)
def _suited(written: Definition, pile: str, seam: Fraction) -> tuple[float, float]:
    """The size at which the `share` or `shape` of a start comes true, as a line.

    Returns (a, b): the size is a * main + b, in inches.
    """
    ample = 400 * float(seam)
    once, twice = (_suited_at(written, pile, main, seam) for main in (ample, 2 * ample))
    slope = (twice - once) / ample
    return slope, once - slope * ample


def _suited_at(written: Definition, pile: str, main: float, seam: Fraction) -> float:
    start = next(entry for entry in written.starts if entry.pile == pile)
    part = start.shape if start.share is None else start.share
    assert part is not None

    def error(size: float) -> float:
        sizes = {entry.pile: main for entry in written.starts} | {pile: size}
        batch = run_sizes(written, sizes, seam, whole=False)
        unit, allowance = batch.units[0], float(seam)
        width, height = (side - 2 * allowance for side in unit.size)
        if start.share is None:
            return height - float(part) * width
        letters = {letter for letter, cut_for in batch.letters.items() if cut_for == pile}
        return _shown_width(unit, letters, allowance) - float(part) * width

    # Two sizes not far from the answer: further off, pieces would overlap or leave gaps.
    near = main * float(part)
    try:
        return on_line(error, 0.0, near + float(seam), near + 1.5 * float(seam))
    except ZeroDivisionError:
        why = "its size changes nothing that it is fitted to."
        index = next(i for i, entry in enumerate(written.piles) if entry.id == pile)
        key = "shape" if start.share is None else "share"
        place = f"{written.file}, pile '{pile}'"
        raise MethodFault(f"{place}: {why}", why, ("piles", index, key)) from None


def _shown_width(unit: Flat, letters: set[str], seam: float) -> float:
    """How wide the first patch with one of `letters` shows, seams taken."""
    for patch in unit.finished(seam):
        if patch.letter in letters:
            x0, _, x1, _ = box([patch.points])
            return x1 - x0
    return 0.0


def on_line(value: Callable[[float], float], wanted: float, a: float, b: float) -> float:
    """The x at which the straight line through two values of a function is `wanted`.

    Raises ZeroDivisionError if the two values are the same.
    """
    at_a, at_b = value(a), value(b)
    return a + (wanted - at_a) * (b - a) / (at_b - at_a)


def run_sizes(
    written: Definition,
    sizes: Mapping[str, float],
    seam: Fraction,
    *,
    strip_length: float | None = None,
    whole: bool = True,
) -> Batch:
    """Runs the method with squares of these sides and strips of these widths, in inches."""
    return make_batch(written, piece_sizes(written, sizes, strip_length), seam, whole=whole)


def piece_sizes(
    written: Definition, sizes: Mapping[str, float], strip_length: float | None = None
) -> dict[str, tuple[float, float]]:
    """Width and height of the start pieces: squares of these sides and strips of these widths."""
    pieces: dict[str, tuple[float, float]] = {}
    for start in written.starts:
        size = sizes[start.pile]
        length = strip_length if strip_length is not None else _LENGTH * size
        pieces[start.pile] = (size, length if start.strip else size)
    return pieces


def unit_width(written: Definition, main: float, seam: Fraction) -> float:
    """Width to the raw edges of a unit from a main start of `main` inches."""
    starts = starts_from(written, main, seam, EIGHTH)
    sizes = {pile: start.exact for pile, start in starts.items()}
    return run_sizes(written, sizes, seam, whole=False).units[0].size[0]


@lru_cache(maxsize=64)
def main_for(written: Definition, unfinished: float, seam: Fraction) -> float:
    """The main start, in inches, whose unit is `unfinished` inches wide to the raw edges."""
    # Large against the seams, so that every operation has room to work.
    ample = 100 * float(seam) + 4 * unfinished
    try:
        return on_line(lambda main: unit_width(written, main, seam), unfinished, ample, 2 * ample)
    except ZeroDivisionError:
        why = "the unit's width does not follow from the first pile cut from cloth."
        raise MethodFault(f"{written.file}: {why}", why, ("piles",)) from None


def refuse_unless_over(
    written: Definition, main: Fraction, seam: Fraction, unit: Unit = Unit.INCH
) -> None:
    """Raises SizeRefused if a main start of `main` inches leaves nothing of a unit to see."""
    noun = written.noun(main_start(written).pile).one
    said, allowance = _exactly(main, unit), _exactly(seam, unit)
    if main <= 0:
        raise SizeRefused(f"A {noun} of {said} cannot be cut; give a size larger than nothing.")
    if seam <= 0:
        raise SizeRefused(f"A seam of {allowance} cannot be sewn; give one larger than nothing.")
    if main <= 2 * seam:
        raise SizeRefused(f"2 seams of {allowance} leave nothing of a {said} {noun}; cut larger.")
    least = main_for(written, float(2 * seam), seam)
    if float(main) <= least + 1e-9:
        over = show(least, unit, rounding=Rounding.UP)
        raise SizeRefused(
            f"A {noun} of {said} is all used up by its seams of {allowance}; cut it over {over}."
        )


def _exactly(length: Fraction, unit: Unit) -> str:
    return show(length, unit, fineness=Fraction(1, 1000))

"""Layouts: rows down by columns across, what size each makes and how many units it leaves over."""

from __future__ import annotations

from enum import StrEnum
from fractions import Fraction

from msgspec import Struct

from sewalong.lengths import Length, Unit
from sewalong.quilt.cloth.strips import QUARTER
from sewalong.quilt.layouts.centre import finished_centre
from sewalong.quilt.layouts.fit import Fit, fit
from sewalong.quilt.refusal import at_least, not_below_zero
from sewalong.quilt.set_rows import most_columns, units_in
from sewalong.quilt.setting import Setting
from sewalong.quilt.size import Size


class Shape(StrEnum):
    """How a top looks from the foot of the bed."""

    SQUARE = "square"
    UPRIGHT = "longer than wide"
    WIDE = "wider than long"


class Layout(Struct, frozen=True):
    """One arrangement. `size` is what the top finishes at, borders included.

    It holds `units`. `spare` units are over and `short` are still to make; one of them is zero.
    `fit` is there when a size is wanted.
    """

    rows: int
    columns: int
    units: int
    size: Size
    spare: int
    short: int
    fit: Fit | None

    @property
    def shape(self) -> Shape:
        """By its size, not by its count of rows."""
        if self.size.width == self.size.length:
            return Shape.SQUARE
        return Shape.UPRIGHT if self.size.length > self.size.width else Shape.WIDE

    @property
    def leaves(self) -> str:
        """What it leaves of the units there are, in words."""
        if self.short:
            return f"{self.short:,} short"
        return f"{self.spare:,} spare" if self.spare else "takes every unit"

    @property
    def corners_alike(self) -> bool:
        """Whether two alternating units leave the same one in all four corners."""
        return corners_alike(self.rows, self.columns)

    @property
    def stretch(self) -> Fraction:
        """The longer side by the shorter."""
        a, b = self.size.width, self.size.length
        return max(a, b) / min(a, b)


MOST_SPARE = 4
"""Layouts that would leave more than one unit in so many unused are not shown unasked.
From memory: nobody likes to leave a quarter of the work in a drawer."""


class Reach(Struct, frozen=True):
    """Which layouts are worth showing.

    `fewest` and `most` bound the rows and the columns; `stretch` is the longer side by the
    shorter, at most. `spare` units at most may be over (None: any number), and `short` at most
    may still have to be made. What is meant where nothing is said is from memory: a runner is
    seldom more than twice as long as wide, and 60 rows are more than a large bed takes.
    """

    fewest: int = 2
    most: int = 60
    stretch: Fraction = Fraction(2)
    spare: int | None = None
    short: int = 0


def usual_reach(have: int) -> Reach:
    """What is shown unasked with so many units at hand."""
    return Reach(spare=have // MOST_SPARE)


class LayoutChoice(Struct, frozen=True):
    """What every layout of one quilt shares.

    `have` units in hand or to come; the size one finishes at; what the borders add on each side
    (finished, all borders together); the size wanted, if one is. `setting` is how the units are
    set, sewn with `seam`; straight where None.
    """

    have: int
    unit: Size
    border: Length = Fraction(0)
    wanted: Size | None = None
    shown_in: Unit = Unit.INCH
    setting: Setting | None = None
    seam: Length = QUARTER

    def __post_init__(self) -> None:
        at_least(0, self.have, "units")
        not_below_zero(self.border, "border")

    def layout(self, rows: int, columns: int) -> Layout:
        """This many rows and columns. Raises `NumbersFault` when either is below one."""
        at_least(1, rows, "rows")
        at_least(1, columns, "columns")
        size = self.size(rows, columns)
        units = units_in(self.setting, rows, columns)
        over = self.have - units
        meets = None if self.wanted is None else fit(size, self.wanted, self.shown_in)
        return Layout(rows, columns, units, size, max(over, 0), max(-over, 0), meets)

    def size(self, rows: int, columns: int) -> Size:
        """What so many rows and columns finish at, borders included."""
        inner = finished_centre(
            self.setting, rows, columns, self.unit, seam=self.seam, shown_in=self.shown_in
        )
        return inner.grown(self.border)


def corners_alike(rows: int, columns: int) -> bool:
    """Whether two alternating units put the same one in all four corners: both counts odd."""
    return rows % 2 == 1 and columns % 2 == 1


def layouts(
    choice: LayoutChoice, reach: Reach | None = None, *, alike: bool = False
) -> tuple[Layout, ...]:
    """Every layout within reach, nearest to the size wanted first.

    With no size wanted, those that leave least over come first, the squarer before the longer.
    `alike` keeps only layouts whose four corners match when two units alternate. Empty when
    nothing is within reach.
    """
    within = reach or Reach()
    at_least(1, within.fewest, "rows and columns")
    found = []
    for rows in range(within.fewest, within.most + 1):
        widest = min(within.most, most_columns(choice.setting, rows, choice.have + within.short))
        for columns in range(within.fewest, widest + 1):
            over = choice.have - units_in(choice.setting, rows, columns)
            if within.spare is not None and over > within.spare:
                continue
            if alike and not corners_alike(rows, columns):
                continue
            if _stretch(choice, rows, columns) <= within.stretch:
                found.append((rows, columns))
    return tuple(sorted((choice.layout(*one) for one in found), key=_nearest_first))


def _stretch(choice: LayoutChoice, rows: int, columns: int) -> Fraction:
    size = choice.size(rows, columns)
    return max(size.width, size.length) / min(size.width, size.length)


def _nearest_first(layout: Layout) -> tuple[Fraction, bool, int, Fraction, int]:
    """Nearness, then covering before short, then least left over or to make, then squareness,
    then upright before wide."""
    left = layout.spare + layout.short
    if layout.fit is None:
        return Fraction(0), False, left, layout.stretch, layout.columns
    return layout.fit.off, not layout.fit.covers, left, layout.stretch, layout.columns

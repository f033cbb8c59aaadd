"""Everything that follows from a method's operations at the owner's sizes and seam."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction
from functools import lru_cache

from msgspec import Struct

from sewalong.lengths import Rounding, Unit, round_to, show
from sewalong.piecing.catalogue import written_method
from sewalong.piecing.cloth import Flat, Piece
from sewalong.piecing.definition import Definition
from sewalong.piecing.edges import EdgeGrain, outer_edges
from sewalong.piecing.faults import MethodFault, SizeRefused
from sewalong.piecing.flow import Batch, Drawn
from sewalong.piecing.method import FINAL_PILE, Pieces
from sewalong.piecing.start_sizes import (
    EIGHTH,
    StartSize,
    main_for,
    main_start,
    refuse_unless_over,
    run_sizes,
    starts_from,
)

SEAM = Fraction(1, 4)
"""The seam allowance of the trade unless the owner's own is known, in inches."""

STRIP_LENGTH = Fraction(40)
"""Usable length of a strip cut across the cloth unless told otherwise, in inches."""


_DO_NOT_FIT = (
    "Cut at these sizes, the pieces leave a gap or a fold in the unit; "
    "give the main size alone and cut the others as worked out from it."
)


class StageWork(Struct, frozen=True):
    """One count of a stage: pieces taken and made, inches sewn and inches cut.

    `longest_cut` is the longest cut through a whole piece, in inches. `per_unit` is the number of counts to one unit, over many batches.
    """

    id: str
    takes: tuple[Pieces, ...]
    makes: Pieces
    sewn: float
    cut: float
    longest_cut: float
    per_unit: Fraction


class UnitSize(Struct, frozen=True):
    """A unit's size in inches, to the raw edges and once its seams are taken.

    `width_per_seam` and `height_per_seam` are the inches lost for every inch of seam
    allowance beyond the one used. `shape` is the finished height as a share of the finished
    width where the method fixes it (flying geese: 1/2), else None.
    """

    width: float
    height: float
    seam: Fraction
    width_per_seam: float
    height_per_seam: float
    shape: Fraction | None = None

    @property
    def finishes(self) -> tuple[float, float]:
        """Width and height the untrimmed unit finishes at, in inches."""
        lost = 2 * float(self.seam)
        return (self.width - lost, self.height - lost)

    def trim_to(self, step: Fraction = EIGHTH) -> tuple[Fraction, Fraction]:
        """The largest width and height in whole steps (inches) that every unit can reach.

        A shape that the method fixes is kept once the seams are taken: only so does a point
        keep its allowance. Where no two whole steps have it, the width is one. Raises
        SizeRefused if nothing but seam would be left.
        """
        if self.shape is None:
            width = round_to(self.width, step, Rounding.DOWN)
            height = round_to(self.height, step, Rounding.DOWN)
        else:
            width, height = self._in_shape(self.shape, step)
        if min(width, height) <= 2 * self.seam:
            raise SizeRefused("Trimmed to a whole step, only the seams are left; cut larger.")
        return (width, height)

    def _in_shape(self, shape: Fraction, step: Fraction) -> tuple[Fraction, Fraction]:
        lost = 2 * self.seam
        widest = min(self.width, (self.height - float(lost)) / float(shape) + float(lost))
        first = round_to(widest, step, Rounding.DOWN)
        # A step of the width moves the height by `shape` of one, so that marks of both meet
        # again after as many steps as the shape's denominator says.
        for steps in range(shape.denominator):
            width = first - steps * step
            height = self.height_for(width)
            if height % step == 0:
                return (width, height)
        return (first, self.height_for(first))

    def height_for(self, width: Fraction) -> Fraction:
        """The height to the raw edges of a unit so wide, in the method's shape (1 by default)."""
        lost = 2 * self.seam
        return (width - lost) * (Fraction(1) if self.shape is None else self.shape) + lost

    def seam_room_for(self, trim: tuple[Fraction, Fraction]) -> float | None:
        """How much wider every seam may be sewn before a trim size is out of reach, in inches.

        0 means that any seam too wide makes the unit too small; below 0 it can't be had at
        all. None if no seam of the method changes the unit's size (plain squares, flipped
        corners).
        """
        rooms = [
            (side - float(wanted)) / rate
            for side, wanted, rate in (
                (self.width, trim[0], self.width_per_seam),
                (self.height, trim[1], self.height_per_seam),
            )
            if rate > 1e-9
        ]
        return round(min(rooms), 9) if rooms else None


class PileShape(Struct, frozen=True):
    """The different pieces that lie in a pile during one batch, and the size of the first."""

    pile: str
    pieces: tuple[Piece, ...]

    @property
    def size(self) -> tuple[float, float]:
        """Width and height to the raw edges, in inches."""
        return self.pieces[0].size

    @property
    def seams(self) -> int:
        """The seams a person sews in one piece: three in a four-patch, eight in a nine-patch.

        Every seam makes one piece of two, so there is one fewer than there are patches.
        """
        return len(self.pieces[0].patches) - 1


class Derivation(Struct, frozen=True):
    """What a method comes to at the owner's sizes and seam allowance.

    `units` are the different units of one batch in order of making, their patches in the
    same order; cut exactly, all show the same shapes once seams are taken. `unit_count` is how many the batch has in all. `letters`
    says which start pile each fabric letter was cut for, in order of taking up: A is the
    first piece, unless the method gives all pieces of a pile one letter. `per_unit` is
    the exact number of start pieces to one unit, over many batches. `trim_stage` is the id of
    the stage that trims the units, if one does. `drawn` has every count of the batch in order.
    """

    trim_stage: str | None
    seam: Fraction
    starts: Mapping[str, StartSize]
    stages: tuple[StageWork, ...]
    piles: Mapping[str, PileShape]
    unit: UnitSize
    units: tuple[Flat, ...]
    unit_count: int
    letters: Mapping[str, str]
    per_unit: Mapping[str, Fraction]
    drawn: tuple[Drawn, ...] = ()

    def stage(self, id: str) -> StageWork:
        """The work of the stage called `id`; raises KeyError if there is none."""
        for stage in self.stages:
            if stage.id == id:
                return stage
        raise KeyError(id)

    @property
    def has_bias_edges(self) -> bool:
        """True if any outer edge of any unit stretches."""
        return any(
            edge.grain is not EdgeGrain.STRAIGHT
            for unit in self.units
            for edge in outer_edges(unit)
        )


def derive(
    method: str | Definition,
    start: Fraction | Mapping[str, Fraction],
    seam: Fraction = SEAM,
    *,
    strip_length: Fraction = STRIP_LENGTH,
    fineness: Fraction = EIGHTH,
    unit: Unit = Unit.INCH,
) -> Derivation:
    """Everything that follows from start pieces of size `start`, in inches.

    `start` is the size of the main start (its other starts are then cut to suit, rounded
    up to `fineness`), or the size of each start pile. `unit` is only for the words of a
    refusal. Raises SizeRefused if the sizes cannot be, MethodFault if the method's
    operations don't fit together, UnknownMethod for an id there is none of.
    """
    written = written_method(method)
    given = dict(start) if isinstance(start, Mapping) else {main_start(written).pile: start}
    unknown = [pile for pile in given if written.start(pile) is None]
    if unknown or main_start(written).pile not in given:
        wanted = ", ".join(entry.pile for entry in written.starts)
        raise SizeRefused(f"Give a size for the start piles of this method: {wanted}.")
    return _derive(written, tuple(sorted(given.items())), seam, strip_length, fineness, unit)


@lru_cache(maxsize=64)
def _derive(
    written: Definition,
    given: tuple[tuple[str, Fraction], ...],
    seam: Fraction,
    strip_length: Fraction,
    fineness: Fraction,
    unit: Unit,
) -> Derivation:
    owner = dict(given)
    main = owner[main_start(written).pile]
    refuse_unless_over(written, main, seam, unit)
    starts = starts_from(written, main, seam, fineness)
    for pile, size in owner.items():
        starts[pile] = StartSize(pile, starts[pile].exact, size)
    cut = {pile: float(entry.cutting) for pile, entry in starts.items()}
    try:
        batch = run_sizes(written, cut, seam, strip_length=float(strip_length))
    except MethodFault as fault:
        if len(owner) == 1:
            raise
        # The method works at sizes that suit, so it is the owner's that don't.
        raise SizeRefused(_DO_NOT_FIT) from fault
    stages, need = _stages(written, batch)
    return Derivation(
        trim_stage=written.trim_stage,
        seam=seam,
        starts=starts,
        stages=stages,
        piles={pile.id: PileShape(pile.id, tuple(batch.seen[pile.id])) for pile in written.piles},
        unit=_unit_size(written, cut, seam, batch),
        units=tuple(unit.in_order(float(seam)) for unit in batch.different_units()),
        unit_count=len(batch.units),
        letters=batch.letters,
        per_unit={start.pile: need[start.pile] for start in written.starts},
        drawn=tuple(batch.drawn),
    )


def _unit_size(
    written: Definition, cut: Mapping[str, float], seam: Fraction, batch: Batch
) -> UnitSize:
    if not all(unit.is_rectangle for unit in batch.different_units()):
        raise SizeRefused(_DO_NOT_FIT)
    width, height = batch.units[0].size
    # Every operation is in proportion to the seam, so a second run gives the whole line.
    less = seam * Fraction(15, 16)
    wide, high = run_sizes(written, cut, less, whole=False).units[0].size
    step = float(seam - less)
    shape = next((start.shape for start in written.starts if start.shape is not None), None)
    return UnitSize(width, height, seam, (wide - width) / step, (high - height) / step, shape)


def _stages(written: Definition, batch: Batch) -> tuple[tuple[StageWork, ...], dict[str, Fraction]]:
    """All stages' work, and how many pieces of each pile one unit needs."""
    need = {pile.id: Fraction(0) for pile in written.piles}
    need[FINAL_PILE] = Fraction(1)
    works: list[StageWork] = []
    for stage in reversed(written.stages):
        run = batch.runs[stage.id]
        counts = need[stage.makes] / run.makes
        for pile, count in run.takes.items():
            need[pile] += counts * count
        takes = tuple(Pieces(pile, count) for pile, count in run.takes.items())
        makes = Pieces(stage.makes, run.makes)
        works.append(StageWork(stage.id, takes, makes, run.sewn, run.cut, run.longest_cut, counts))
    return tuple(reversed(works)), need


def start_for(
    method: str | Definition,
    *,
    finishes: Fraction | None = None,
    unfinished: Fraction | None = None,
    seam: Fraction = SEAM,
    fineness: Fraction = EIGHTH,
    unit: Unit = Unit.INCH,
) -> dict[str, StartSize]:
    """The sizes of all start piles for units of a wanted width, the main one first.

    Give `finishes` (width once the seams are taken) or `unfinished` (to the raw edges),
    in inches, not both: ValueError. Raises SizeRefused for a width that cannot be.
    """
    if (finishes is None) == (unfinished is None):
        raise ValueError("give either `finishes` or `unfinished`")
    written = written_method(method)
    if seam <= 0:
        raise SizeRefused("The seam allowance must be larger than nothing.")
    raw = unfinished if unfinished is not None else (finishes or Fraction(0)) + 2 * seam
    if raw <= 2 * seam:
        allowance = show(seam, unit, fineness=Fraction(1, 1000))
        raise SizeRefused(
            f"2 seams of {allowance} leave nothing of such a unit; ask for a larger one."
        )
    starts = starts_from(written, main_for(written, float(raw), seam), seam, fineness)
    # Sizes follow on paper however small; sewing one unit shows whether they can be.
    sizes = {pile: entry.exact for pile, entry in starts.items()}
    run_sizes(written, sizes, seam, whole=False)
    return starts


def unit_size(
    method: str | Definition,
    start: Fraction | Mapping[str, Fraction],
    seam: Fraction = SEAM,
) -> UnitSize:
    """The unit's size alone; raises as `derive` does."""
    return derive(method, start, seam).unit

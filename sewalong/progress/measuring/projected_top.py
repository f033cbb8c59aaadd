"""What unit, row and top come to when every piece is like the one measured."""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction

from msgspec import Struct
from msgspec.structs import replace

from sewalong.lengths import Length
from sewalong.progress.record.measurable import (
    ACROSS,
    DOWN,
    Measured,
    Unmeasurable,
    decided,
    made_of,
    read_piece,
    untrimmed,
)
from sewalong.quilt.as_fraction import ROOT_TWO, as_fraction
from sewalong.quilt.cloth.borders import BorderNumbers, borders
from sewalong.quilt.layouts.centre import centre, in_a_line
from sewalong.quilt.quilt import Quilt, Target
from sewalong.quilt.refusal import NumbersFault
from sewalong.quilt.size import Size
from sewalong.quilt.unit_size import joined_from
from sewalong.quilt.worksheet.basis import border_plans


class Outlook(Struct, frozen=True):
    """Raw edge to raw edge, in inches: unit, centre and top, and the borders to cut for it.

    `row` is a whole row, the longest of `in_row` units where they differ; `row_loses` is what a whole row is shorter than planned (below zero: longer).
    """

    unit: Size
    centre: Size
    top: Size
    borders: tuple[BorderNumbers, ...]
    row: Length
    in_row: int
    row_loses: Length


def if_like(quilt: Quilt, target: Target, piece: Measured, reading: Length) -> Outlook:
    """When every piece comes out as this reading and every later seam is sewn right.

    Sizes of pieces are in proportion to what they were cut at and to the seam, so a pile that
    is short takes the unit down by its share. Raises Unmeasurable when nothing would be left.
    """
    short = piece.expected - reading
    if piece.is_long:
        # The row is what it is; the units in it are each short by their share.
        unit, each = decided(quilt), short / piece.of
        if quilt.is_on_point and piece.kind not in ("row", "column"):
            # Along the edge of the top it is the diagonals of units that are short.
            each = as_fraction(float(each) / ROOT_TWO)
        joined = _a_unit((unit.width - each, unit.length - each))
        return _outlook(quilt, target, joined, quilt.seam)
    if piece.kind == quilt.method.unit:
        share = reading / piece.expected
        other = read_piece(quilt, target, _other_way(quilt, piece)).expected * share
        sides = (other, reading) if piece.id.endswith(f":{DOWN}") else (reading, other)
        unit = _a_unit(sides)
        if piece.at_least is not None:
            unit = joined_from(quilt, made_of(quilt), unit)
        return _outlook(quilt, target, unit, quilt.seam)
    seam = float(quilt.seam)
    grows = float(piece.expected) + piece.allowances * seam

    def like(one: Measured) -> Length:
        share = (float(one.expected) + one.allowances * seam) / grows
        lost = short if one.id == piece.id else as_fraction(float(short) * share)
        return one.expected - lost

    return _outlook(quilt, target, _unit(quilt, like), quilt.seam)


def if_seam(quilt: Quilt, target: Target, off_each: Length) -> Outlook:
    """When every seam, of units, rows and borders, is off by as much each allowance."""

    def like(one: Measured) -> Length:
        return one.expected - as_fraction(float(off_each) * one.allowances)

    return _outlook(quilt, target, _unit(quilt, like), quilt.seam + off_each)


def _unit(quilt: Quilt, like: Callable[[Measured], Length]) -> Size:
    """The unit as it is joined: where it is trimmed, no larger than it is trimmed to."""
    raw = _a_unit((like(untrimmed(quilt, ACROSS)), like(untrimmed(quilt, DOWN))))
    return joined_from(quilt, made_of(quilt), raw)


def _other_way(quilt: Quilt, unit: Measured) -> str:
    return quilt.method.unit if unit.id.endswith(f":{DOWN}") else f"{quilt.method.unit}:{DOWN}"


def _a_unit(sides: tuple[Length, Length]) -> Size:
    try:
        return Size(*sides)
    except NumbersFault as fault:
        raise Unmeasurable(f"Nothing would be left of the unit. {fault}") from fault


def _outlook(quilt: Quilt, target: Target, unit: Size, seam: Length) -> Outlook:
    plan = _sewn(quilt, target, decided(quilt), quilt.seam)
    now = _sewn(quilt, target, unit, seam)
    return replace(now, row_loses=plan.row - now.row)


def _sewn(quilt: Quilt, target: Target, unit: Size, seam: Length) -> Outlook:
    try:
        inner = centre(quilt, target, unit, seam)
        found = borders(
            inner, border_plans(quilt), seam=seam, usable=quilt.choices.usable, unit=quilt.unit
        )
    except NumbersFault as fault:
        raise Unmeasurable(str(fault)) from fault
    top = found[-1].outer if found else inner
    longest = max(row.units for row in quilt.rows_for(target))
    row = in_a_line(quilt, unit.width, longest, seam, whole=True)
    return Outlook(unit, inner, top, found, row, longest, Fraction(0))

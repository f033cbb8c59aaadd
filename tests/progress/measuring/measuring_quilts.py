"""Quilts to measure pieces of."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from msgspec.structs import replace

from sewalong.lengths import Unit
from sewalong.piecing.derive import derive
from sewalong.progress.measuring.diagnosis import Diagnosis, diagnose
from sewalong.quilt.quilt import Quilt
from tests.progress.building import a_quilt

STACKED = a_quilt(borders=1)
"""9 × 9 units of 6.364 in from four-patches of 5 in squares, one border cut at 3 in."""


def of_size(method_id: str, size: str, rows: int = 9, columns: int = 9) -> Quilt:
    """A quilt whose main start is cut at `size` inches and the others to suit."""
    quilt = a_quilt(method_id, 400, rows, columns)
    cut = derive(method_id, Fraction(size)).starts
    starts = tuple(replace(start, size=cut[start.pile].cutting) for start in quilt.starts)
    return replace(quilt, starts=starts)


def in_cm(quilt: Quilt) -> Quilt:
    """The same for an owner who works in centimetres."""
    return replace(quilt, unit=Unit.CM)


def measured(quilt: Quilt, piece: str, *readings: str, pieces: int | None = None) -> Diagnosis:
    """The diagnosis of readings in inches, written as "3 1/4"-like fractions or decimals."""
    return diagnose(quilt, quilt.target, piece, inches(readings), pieces=pieces)


def inches(readings: Sequence[str]) -> tuple[Fraction, ...]:
    """ "3 1/4" or "3.25" as exact inches."""
    return tuple(sum(map(Fraction, reading.split()), Fraction(0)) for reading in readings)

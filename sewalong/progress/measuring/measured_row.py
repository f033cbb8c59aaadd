"""What a measured row of pieces says, by itself: no quilt is needed for it."""

from __future__ import annotations

from msgspec import Struct

from sewalong.lengths import Length, Unit
from sewalong.progress.measuring.causes.cause import Cause
from sewalong.progress.measuring.causes.causes import causes
from sewalong.progress.measuring.causes.evidence import Evidence
from sewalong.progress.measuring.causes.further import Further, further
from sewalong.progress.measuring.diagnosis_words import causes_said, further_said
from sewalong.progress.measuring.tape import near_enough
from sewalong.quilt.cloth.row import RowNumbers
from sewalong.quilt.refusal import above_zero, at_least


class MeasuredRow(Struct, frozen=True):
    """`short` is below zero for a row that is over, in inches. `causes` are those that fit, the
    likeliest first, none where the row is right as near as a tape is read; `lines` says them."""

    short: Length
    causes: tuple[Cause, ...]
    further: Further | None
    lines: tuple[str, ...]


def measured_row(
    row: RowNumbers, measured: Length, *, seam_read: Length | None = None, unit: Unit = Unit.INCH
) -> MeasuredRow:
    """What comes of a row that measures so; `seam_read` is what its own seams measure, if known.

    Raises `NumbersFault` for fewer than two pieces, or a measure that is not above zero.
    """
    at_least(2, len(row.cuts), "pieces in a row that is measured")
    above_zero(measured, "measured length")
    short = row.sewn - measured
    if abs(short) <= near_enough(row.sewn):
        return MeasuredRow(short, (), None, ())
    evidence = Evidence(
        expected=row.sewn,
        allowances=2.0 * row.seams,
        seam=row.seam,
        readings=(measured,),
        of=len(row.cuts),
        adds=tuple(sorted({cut - 2 * row.seam for cut in row.cuts})),
        counted=True,
        largest=max(row.cuts),
        slip=row.finishes_at,
        seam_read=seam_read,
        unit=unit,
    )
    found = causes(evidence)
    tells = further(evidence, found)
    lines = (*causes_said(evidence, found), *further_said(evidence, tells))
    return MeasuredRow(short, found, tells, lines)

"""What does this measurement mean? Readings of the tape turned into causes, outlook, choices."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct

from sewalong.lengths import Length
from sewalong.progress.measuring.choices import Choice, choices
from sewalong.progress.measuring.diagnosis_words import (
    cause_said,
    outlook_said,
    spread_said,
    verdict_said,
)
from sewalong.progress.measuring.likely_cause import Cause, Why, cause_of
from sewalong.progress.measuring.projected_top import Outlook, if_like, if_seam
from sewalong.progress.measuring.spread import Spread, spread
from sewalong.progress.measuring.verdict import Outcome, near_enough, outcome, passes
from sewalong.progress.record.measurable import Measured, Unmeasurable, measurable, read_piece
from sewalong.quilt.quilt import Quilt, Target


class Diagnosis(Struct, frozen=True):
    """All lengths in inches.

    `outcomes` is what becomes of each reading, in order; `cause` is of the typical reading.
    `later_right` is what row and top come to if all are like it and later seams are sewn
    right, `later_same` if every seam goes on as this one did (None where it is no seam).
    `looks_like` names another piece of the quilt that measures so, "" when none does.
    `lines` says it all in words, the most important first.
    """

    piece: Measured
    readings: tuple[Length, ...]
    outcomes: tuple[Outcome, ...]
    spread: Spread
    cause: Cause
    later_right: Outlook | None
    later_same: Outlook | None
    choices: tuple[Choice, ...]
    looks_like: str
    lines: tuple[str, ...]

    @property
    def passed(self) -> bool:
        """Whether every reading passes."""
        return all(one is Outcome.PASS for one in self.outcomes)

    @property
    def per_seam(self) -> Length | None:
        """What each seam takes too much, both allowances together (below zero: too little)."""
        return None if self.cause.off_each is None else 2 * self.cause.off_each


def diagnose(
    quilt: Quilt,
    target: Target,
    piece: str,
    readings: Sequence[Length],
    *,
    pieces: int | None = None,
) -> Diagnosis:
    """What the readings of a piece (see `read_piece`) mean, in the owner's units.

    `pieces` is how many there are like it, for the cost of resewing; the number of readings
    unless told. Raises Unmeasurable when there is no such piece or a reading is no length.
    """
    measured = read_piece(quilt, target, piece)
    if not readings or min(readings) <= 0:
        raise Unmeasurable("Give at least one reading of the tape, above zero.")
    apart = spread(readings, quilt.unit)
    cause = cause_of(measured, apart.typical, quilt.seam)
    outcomes = tuple(outcome(measured, reading) for reading in readings)
    right, same = _outlooks(quilt, target, measured, apart.typical, cause)
    looks = _looks_like(quilt, target, measured, apart.typical) if cause.why in _ODD else ""
    lines: tuple[str, ...] = (verdict_said(measured, apart, outcomes, quilt.unit),)
    found: tuple[Choice, ...] = ()
    if not passes(measured, readings):
        one = measured.id.startswith(("centre", "top"))
        like = pieces or (1 if one else len(readings))
        found = choices(quilt, target, measured, readings, cause, apart, like)
        lines += (
            *cause_said(measured, cause, looks, quilt),
            *(outlook_said(target, right, same, quilt.unit) if cause.why is not Why.OTHER else ()),
            *spread_said(readings, apart, quilt.unit),
            *(choice.words for choice in found),
        )
    return Diagnosis(
        piece=measured,
        readings=tuple(readings),
        outcomes=outcomes,
        spread=apart,
        cause=cause,
        later_right=right,
        later_same=same,
        choices=found,
        looks_like=looks,
        lines=lines,
    )


_ODD = (Why.OTHER, Why.MISSING, Why.TOO_MANY, Why.CUT)


def _outlooks(
    quilt: Quilt, target: Target, piece: Measured, reading: Length, cause: Cause
) -> tuple[Outlook | None, Outlook | None]:
    if cause.why in (Why.MISSING, Why.TOO_MANY):
        return None, None
    head = piece.id.partition(":")[0]
    right = same = None
    try:
        if head not in ("strips", "middle"):
            right = if_like(quilt, target, piece, reading)
        if cause.off_each is not None and cause.why is not Why.OTHER:
            same = if_seam(quilt, target, cause.off_each)
    except Unmeasurable:
        # So far off that nothing would be left of the unit: there is no row to speak of.
        pass
    return right, same


def _looks_like(quilt: Quilt, target: Target, piece: Measured, reading: Length) -> str:
    """Another pile's piece that measures so; only pieces of a pile can be mixed up."""
    piles = {pile.id for pile in quilt.method.piles}
    if piece.id.partition(":")[0] not in piles:
        return ""
    near = near_enough(piece.expected)
    for other in measurable(quilt, target):
        of_a_pile = other.id in piles
        if of_a_pile and other.id != piece.id and abs(other.expected - reading) <= near:
            return other.words
    return ""

"""What does this measurement mean? Readings of the tape turned into what to do, causes, outlook."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct

from sewalong.lengths import Length
from sewalong.progress.measuring import diagnosis_words as words
from sewalong.progress.measuring.causes.cause import Cause
from sewalong.progress.measuring.causes.causes import causes
from sewalong.progress.measuring.causes.evidence_of import evidence_of
from sewalong.progress.measuring.causes.further import Further, further
from sewalong.progress.measuring.causes.priors import Why
from sewalong.progress.measuring.causes.seam_hypothesis import shared_out
from sewalong.progress.measuring.choices import Choice, choices
from sewalong.progress.measuring.decision import LOOK, Decision, decide, trim_size
from sewalong.progress.measuring.projected_top import Outlook, if_like, if_seam
from sewalong.progress.measuring.spread import Spread, spread
from sewalong.progress.measuring.verdict import Outcome, outcome
from sewalong.progress.record.measurable import Measured, Unmeasurable, read_piece
from sewalong.quilt.quilt import Quilt, Target


class Diagnosis(Struct, frozen=True):
    """All lengths in inches.

    `outcomes` is what becomes of each reading, in order; `causes` are those that fit, the likeliest
    first, empty where all is right; `further` is what tells them apart. `trim_to` is the size that
    all can be trimmed to. `later_right` is what row
    and top come to if all are like the typical reading and later seams are sewn right, `later_same`
    if every seam goes on as this one did (None where it is no seam). `lines` says it all in words,
    what to do first.
    """

    piece: Measured
    readings: tuple[Length, ...]
    outcomes: tuple[Outcome, ...]
    spread: Spread
    trim_to: Length
    decision: Decision
    causes: tuple[Cause, ...]
    further: Further | None
    later_right: Outlook | None
    later_same: Outlook | None
    choices: tuple[Choice, ...]
    lines: tuple[str, ...]

    @property
    def passed(self) -> bool:
        """Whether every reading passes."""
        return all(one is Outcome.PASS for one in self.outcomes)

    @property
    def why(self) -> Why:
        """The likeliest cause."""
        return self.causes[0].why if self.causes else Why.RIGHT

    @property
    def short(self) -> Length:
        """What the typical reading lacks, below zero for what is over."""
        return self.piece.expected - self.spread.typical

    @property
    def looks_like(self) -> str:
        """Another kind that it measures as, "" for none."""
        return next((cause.like for cause in self.causes if cause.like), "")


def diagnose(
    quilt: Quilt,
    target: Target,
    piece: str,
    readings: Sequence[Length],
    *,
    pieces: int | None = None,
    other_way: Sequence[Length] = (),
    seam_read: Length | None = None,
) -> Diagnosis:
    """What the readings of a piece (see `read_piece`) mean, in the owner's units.

    `pieces` is how many there are like it, for the cost of resewing; the number of readings
    unless told. `other_way` and `seam_read` as in `evidence_of`. Raises Unmeasurable when there is
    no such piece or a reading is no length.
    """
    measured = read_piece(quilt, target, piece)
    if not readings or min(readings) <= 0:
        raise Unmeasurable("Give at least one reading of the tape, above zero.")
    apart = spread(readings, quilt.unit)
    outcomes = tuple(outcome(measured, reading) for reading in readings)
    passed = all(one is Outcome.PASS for one in outcomes)
    evidence = evidence_of(
        quilt, target, measured, readings, other_way=other_way, seam_read=seam_read
    )
    found = () if passed else causes(evidence)
    tells = further(evidence, found)
    decision = decide(measured, outcomes, found, apart, quilt.unit)
    right, same = _outlooks(quilt, target, measured, apart.typical, found)
    lines = [
        words.decision_said(decision, measured, readings, found, quilt.unit),
        words.reading_said(measured, apart, outcomes, quilt.unit),
    ]
    ways: tuple[Choice, ...] = ()
    if found:
        like = pieces or (1 if evidence.is_one else len(readings))
        ways = choices(quilt, target, measured, readings, found[0], apart, like)
        lines += [
            *words.causes_said(evidence, found),
            *words.further_said(evidence, tells),
            *words.outcome_said(measured, outcomes, decision),
            *words.outlook_said(right, same, quilt.unit),
            *words.spread_said(readings, apart, quilt.unit),
            *(way.words for way in ways),
        ]
    return Diagnosis(
        piece=measured,
        readings=tuple(readings),
        outcomes=outcomes,
        spread=apart,
        trim_to=trim_size(measured, apart, quilt.unit),
        decision=decision,
        causes=found,
        further=tells,
        later_right=right,
        later_same=same,
        choices=ways,
        lines=tuple(lines),
    )


def _outlooks(
    quilt: Quilt, target: Target, piece: Measured, reading: Length, found: Sequence[Cause]
) -> tuple[Outlook | None, Outlook | None]:
    cause = found[0] if found else None
    if cause is not None and cause.why in LOOK:
        return None, None
    right = same = None
    try:
        if not (piece.is_test or piece.is_border):
            right = if_like(quilt, target, piece, reading)
        off = next((one.off_each for one in found if one.is_seam), None)
        if cause is None and piece.allowances:
            off = shared_out(piece.expected - reading, piece.allowances)
        if off is not None:
            same = if_seam(quilt, target, off)
    except Unmeasurable:
        # So far off that nothing would be left of the unit: there is no row to speak of.
        pass
    return right, same

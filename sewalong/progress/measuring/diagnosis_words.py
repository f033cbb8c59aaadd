"""A diagnosis in words: the verdict, the cause, what it comes to, how far readings lie apart."""

from __future__ import annotations

from collections.abc import Sequence

from sewalong.lengths import Length, Unit
from sewalong.progress.measuring.length_words import finely, plainly
from sewalong.progress.measuring.likely_cause import Cause, Why
from sewalong.progress.measuring.projected_top import Outlook
from sewalong.progress.measuring.spread import Spread
from sewalong.progress.measuring.verdict import Outcome, limit_for, near_enough
from sewalong.progress.record.measurable import Measured
from sewalong.quilt.cloth.ease import most_off
from sewalong.quilt.quilt import Quilt, Target


def verdict_said(piece: Measured, apart: Spread, outcomes: Sequence[Outcome], unit: Unit) -> str:
    """What it should be, what it reads, and what becomes of it."""
    should = f"{_first_upper(piece.words)} should be {plainly(piece.expected, unit)}"
    off = piece.expected - apart.typical
    if all(one is Outcome.PASS for one in outcomes):
        if off > 0 and piece.at_least is not None and off > near_enough(piece.expected):
            return f"{should}: right, it still trims to {plainly(piece.at_least, unit)}."
        return f"{should}: right."
    reads = f"reads {plainly(apart.typical, unit)}"
    way = "short" if off > 0 else "over"
    much = f", {plainly(abs(off), unit)} {way}" if off else ""
    if piece.is_test:
        return f"{should}, {reads}{much}: the seam is not right."
    return f"{should}, {reads}{much}: {_ruling(piece, outcomes, unit)}."


def _ruling(piece: Measured, outcomes: Sequence[Outcome], unit: Unit) -> str:
    """What is done with it or with each of several, and the convention by which."""
    limit = limit_for(piece)
    rule = f"{float(limit * 100):.0f} % of it, {finely(most_off(piece.expected, limit), unit)}"
    words = _LONG if piece.is_long else _PIECE
    if len(set(outcomes)) == 1:
        within = "beyond" if outcomes[0] is Outcome.REMAKE else "within"
        return f"{words[outcomes[0]]} ({within} {rule})"
    each = ", ".join(f"{outcomes.count(one)} {words[one]}" for one in Outcome if one in outcomes)
    return f"of {len(outcomes)}, {each} (up to {rule}, can be saved)"


_PIECE = {Outcome.PASS: "right", Outcome.BLOCK: "block to shape", Outcome.REMAKE: "remake"}
_LONG = {Outcome.PASS: "right", Outcome.BLOCK: "can be eased", Outcome.REMAKE: "too much to ease"}


def cause_said(piece: Measured, cause: Cause, looks: str, quilt: Quilt) -> list[str]:
    """What the measurement points to; empty when it is right."""
    unit = quilt.unit
    if cause.why is Why.RIGHT:
        return []
    if cause.why in (Why.MISSING, Why.TOO_MANY):
        lack = "too few" if cause.why is Why.MISSING else "too many"
        count = "one piece" if cause.pieces == 1 else f"{cause.pieces} pieces"
        assert piece.each is not None
        return [
            f"That is {count} {lack}, not drift (each adds {plainly(piece.each, unit)}): "
            f"count them, there should be {piece.of}."
        ]
    said = [f"It measures as a {looks} should: is it one?"] if looks else []
    if cause.why is Why.CUT:
        return [*said, "No seam decides this size: look at how it was cut."]
    assert cause.off_each is not None
    assert cause.seam is not None
    each = finely(abs(cause.off_each), unit)
    if cause.is_seam:
        way = "wide" if cause.why is Why.WIDE else "narrow"
        over = f" over {_seams(piece.seams)}" if piece.seams else ""
        return [
            *said,
            f"Shared out{over}, each seam allowance is {each} too {way}: "
            f"{finely(cause.seam, unit)} was sewn, not {finely(quilt.seam, unit)}.",
        ]
    if cause.seam <= 0:
        why = "longer than its pieces laid edge to edge"
    else:
        why = f"it would take seams of {finely(cause.seam, unit)}"
    return [
        *said,
        f"No seam can do this ({why}): a piece is mis-cut, the wrong kind, or the measure "
        "itself is wrong. Measure one piece of it first.",
    ]


def outlook_said(
    target: Target, right: Outlook | None, same: Outlook | None, unit: Unit
) -> list[str]:
    """What row and top come to, where that is another than planned."""
    said = []
    if right is not None and right.row_loses:
        said.append(
            f"If all are like it, a row of {right.in_row} comes to {plainly(right.row, unit)} "
            f"({_change(right.row_loses, unit)}) and the top to {right.top.show(unit)}."
        )
    if same is not None and same.row_loses and (right is None or same.row != right.row):
        said.append(
            f"If every seam goes on so, the row comes to {plainly(same.row, unit)} "
            f"({_change(same.row_loses, unit)}) and the top to {same.top.show(unit)}."
        )
    return said


def spread_said(readings: Sequence[Length], apart: Spread, unit: Unit) -> list[str]:
    """How far several readings lie apart."""
    if len(readings) < 2 or apart.apart == 0:
        return []
    return [
        f"{len(readings)} readings from {plainly(apart.smallest, unit)} to "
        f"{plainly(apart.largest, unit)}, {plainly(apart.apart, unit)} apart."
    ]


def _change(lost: Length, unit: Unit) -> str:
    return f"{plainly(abs(lost), unit)} {'less' if lost > 0 else 'more'}"


def _seams(n: int) -> str:
    return "1 seam" if n == 1 else f"{n} seams"


def _first_upper(text: str) -> str:
    return text[:1].upper() + text[1:]

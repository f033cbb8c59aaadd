"""What can be done about pieces of the wrong size, and what each way costs."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct

from sewalong.lengths import Length, Unit, show
from sewalong.progress.measuring.causes.cause import Cause
from sewalong.progress.measuring.causes.priors import Why
from sewalong.progress.measuring.decision import LOOK, trim_size
from sewalong.progress.measuring.length_words import plainly
from sewalong.progress.measuring.projected_top import Outlook, if_like
from sewalong.progress.measuring.seams_sewn import seams_sewn
from sewalong.progress.measuring.spread import Spread
from sewalong.progress.record.measurable import Measured, Unmeasurable
from sewalong.quilt.cloth.border_length import border_length
from sewalong.quilt.cloth.ease import ease
from sewalong.quilt.quilt import Quilt, Target


class EaseIn(Struct, frozen=True):
    """Ease each edge into the piece it joins: `each_edge` is how much, `share` of its length."""

    each_edge: Length
    share: float
    possible: bool
    words: str


class TrimAll(Struct, frozen=True):
    """Trim all to one size; `outlook` has the new top and border lengths (None when the size
    of the unit does not follow)."""

    to: Length
    most_lost: Length
    outlook: Outlook | None
    words: str


class Resew(Struct, frozen=True):
    """Unpick and sew again: the seams sewn in one piece, and those of all pieces together."""

    seams_each: int
    pieces: int
    words: str

    @property
    def seams(self) -> int:
        """Seams in all."""
        return self.seams_each * self.pieces


class SetAside(Struct, frozen=True):
    """Leave the few worst out; `places` are theirs in the order of the readings (from 0)."""

    places: tuple[int, ...]
    common: Length
    words: str


class CutBordersTo(Struct, frozen=True):
    """Take the centre as it is and cut both borders of that way to `length`.

    `ease_each` is the most that an edge has to be eased (or give) for it.
    """

    length: Length
    ease_each: Length
    outlook: Outlook
    words: str


Choice = EaseIn | TrimAll | Resew | SetAside | CutBordersTo


def choices(
    quilt: Quilt,
    target: Target,
    piece: Measured,
    readings: Sequence[Length],
    cause: Cause,
    spread: Spread,
    pieces: int,
) -> tuple[Choice, ...]:
    """The ways out, the gentlest first; none when the piece is right.

    Where pieces are to be counted or sorted there is nothing to choose yet. `pieces` is how
    many there are like it, for the cost of resewing.
    """
    if cause.why in LOOK:
        return (_set_aside(spread, quilt.unit),) if spread.set_aside else ()
    found: list[Choice] = []
    cut_off = piece.is_border and spread.typical > piece.expected
    if not (piece.is_test or cut_off) and spread.typical != piece.expected:
        found.append(_ease(piece, spread.typical, quilt.unit))
    if spread.set_aside and not piece.is_long:
        found.append(_set_aside(spread, quilt.unit))
    if piece.kind == "centre":
        found.append(_borders(quilt, target, piece, readings))
    elif not (piece.is_long or piece.is_test):
        found.append(_trim(quilt, target, piece, spread))
    if cause.is_seam and not piece.is_test:
        found.append(_resew(seams_sewn(quilt, target, piece), cause, pieces))
    return tuple(found)


def _ease(piece: Measured, reading: Length, unit: Unit) -> EaseIn:
    eased = ease(piece.expected, reading, unit=unit)
    much = abs(eased.difference)
    percent = f"{float(eased.share * 100):.1f} %"
    if eased.within:
        words = f"Ease in {plainly(much, unit)} on each edge ({percent}): it can be hidden."
    else:
        words = f"Easing in {plainly(much, unit)} on each edge ({percent}) is too much to hide."
    return EaseIn(much, float(eased.share), eased.within, words)


def _trim(quilt: Quilt, target: Target, piece: Measured, spread: Spread) -> TrimAll:
    """To one size, and what the top comes to."""
    unit = quilt.unit
    to = trim_size(piece, spread, unit)
    most_lost = spread.largest - to
    try:
        outlook = if_like(quilt, target, piece, to)
    except (Unmeasurable, ZeroDivisionError):
        outlook = None
    words = f"Trim all to {show(to, unit)}"
    if most_lost:
        words += f"; the largest loses {plainly(most_lost, unit)}"
    if outlook is not None:
        words += f". The top comes to {outlook.top.show(unit)}{borders_said(outlook, unit)}"
    return TrimAll(to, most_lost, outlook, f"{words}.")


def borders_said(outlook: Outlook, unit: Unit) -> str:
    """The lengths to cut for each border, behind a top: empty without borders."""
    said = [
        f"; border {number}: sides {show(one.each_side, unit)}, "
        f"top and bottom {show(one.each_end, unit)}"
        for number, one in enumerate(outlook.borders, start=1)
    ]
    return "".join(said)


def _borders(
    quilt: Quilt, target: Target, piece: Measured, readings: Sequence[Length]
) -> CutBordersTo:
    """Both borders of one way are cut alike, to the mean when several places were measured."""
    length, ease_each = readings[0], Length(0)
    if len(readings) > 1:
        cut = border_length(readings, fineness=quilt.unit.step, unit=quilt.unit)
        length, ease_each = cut.length, max(abs(one) for one in cut.to_ease)
    outlook = if_like(quilt, target, piece, length)
    words = f"Take it as it is, {plainly(length, quilt.unit)}"
    if ease_each:
        words += f", easing at most {plainly(ease_each, quilt.unit)} on an edge"
    words += f": the top comes to {outlook.top.show(quilt.unit)}"
    return CutBordersTo(length, ease_each, outlook, f"{words}{borders_said(outlook, quilt.unit)}.")


def _resew(each: int, cause: Cause, pieces: int) -> Resew:
    how = "Unpick and resew" if cause.why is Why.WIDE else "Sew again, deeper, no unpicking"
    seams = "1 seam" if each == 1 else f"{each} seams"
    words = f"{how}: {seams}."
    if pieces > 1:
        words = f"{how}: {seams} in each, {each * pieces} in all {pieces}."
    return Resew(each, pieces, words)


def _set_aside(spread: Spread, unit: Unit) -> SetAside:
    n = len(spread.set_aside)
    words = f"Set {n} aside as too small; the others trim to {show(spread.common_without, unit)}."
    return SetAside(spread.set_aside, spread.common_without, words)

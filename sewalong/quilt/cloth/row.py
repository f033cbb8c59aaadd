"""Pieces sewn side by side: how long the row comes out, and what a measured row says of the seam.

A row of n pieces has n - 1 seams, and each seam takes an allowance from both pieces.
"""

from collections.abc import Sequence

from msgspec import Struct

from sewalong.lengths import Length, Unit, show, show_some
from sewalong.quilt.refusal import NumbersFault, above_zero, at_least, not_below_zero


def row_length(pieces: int, cut: Length, seam: Length) -> Length:
    """The length of `pieces` alike, each `cut` along the row, raw edge to raw edge.

    n * cut - 2 * seam * (n - 1). Raises `NumbersFault` when the seams would eat the pieces.
    """
    at_least(1, pieces, "pieces")
    return row_of((cut,) * pieces, seam)


def row_of(cuts: Sequence[Length], seam: Length) -> Length:
    """The length of pieces of different sizes sewn side by side, raw edge to raw edge.

    Raises `NumbersFault` as `row_length` does.
    """
    at_least(1, len(cuts), "pieces")
    not_below_zero(seam, "seam allowance")
    for place, cut in enumerate(cuts):
        above_zero(cut, "piece")
        ends = place in (0, len(cuts) - 1)
        taken = seam if ends else 2 * seam
        if len(cuts) > 1 and cut <= taken:
            raise NumbersFault(
                f"A piece of {show(cut)} is used up by its own seams of {show(seam)}. "
                "Cut it larger or sew a narrower seam."
            )
    return sum(cuts, Length(0)) - 2 * seam * (len(cuts) - 1)


class RowReading(Struct, frozen=True):
    """What a measured row says. `short` is below zero for a row that is over.

    `off_each` is how much each seam allowance is too wide (above zero) or too narrow, and
    `seam` the allowance that was really taken.
    """

    expected: Length
    measured: Length
    short: Length
    off_each: Length
    seam: Length
    reason: str


def read_row(
    pieces: int, cut: Length, seam: Length, measured: Length, unit: Unit = Unit.INCH
) -> RowReading:
    """The allowance that gives `measured` from pieces cut right: the shortfall shared out.

    short / (2 * (n - 1)), because every seam takes it from two pieces. Raises `NumbersFault`
    for fewer than two pieces, or a row longer than its pieces laid end to end.
    """
    at_least(2, pieces, "pieces in a row that is measured")
    above_zero(measured, "measured length")
    expected = row_length(pieces, cut, seam)
    if measured > pieces * cut:
        raise NumbersFault(
            f"{pieces} pieces of {show(cut, unit)} cannot come to {show(measured, unit)}. "
            "Measure again, or check what the pieces were cut at."
        )
    short = expected - measured
    seams = pieces - 1
    off_each = short / (2 * seams)
    return RowReading(
        expected,
        measured,
        short,
        off_each,
        seam + off_each,
        _reading_words(expected, short, off_each, seams, unit),
    )


def _reading_words(
    expected: Length, short: Length, off_each: Length, seams: int, unit: Unit
) -> str:
    if short == 0:
        return f"{show(expected, unit)}, as it should be"
    each = show_some(abs(off_each), unit, unit.finest)
    way, wrong = ("short", "wide") if short > 0 else ("over", "narrow")
    plural = "seam" if seams == 1 else "seams"
    return (
        f"{show_some(abs(short), unit, unit.finest)} {way} of {show(expected, unit)} "
        f"over {seams} {plural}: each allowance is {each} too {wrong}"
    )


def carried_across(loss: Length, units: int) -> Length:
    """What a loss in every unit comes to in a row or column of `units`."""
    return loss * at_least(1, units, "units")

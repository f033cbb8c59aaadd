"""Binding on the bias from a left-over piece, all of it, whatever its shape.

Two ways are tried. As a tube, the piece is sheared square to slanting and cut round and round (see
`bias_binding`). As strips, it is cut at 45 degrees from corner to corner, the short strips of the
corners too, and their ends, cut along the straight grain, are joined. Which gives more depends on
how the strips fall, so both are worked out (plane geometry).
"""

from fractions import Fraction
from math import floor

from msgspec import Struct

from sewalong.lengths import Length, Rounding, Unit, as_given, show
from sewalong.quilt.as_fraction import ROOT_TWO
from sewalong.quilt.cloth.bias_binding import bias_tube
from sewalong.quilt.cloth.strips import QUARTER
from sewalong.quilt.cloth.to_cut import to_cut
from sewalong.quilt.refusal import NumbersFault, above_zero, not_below_zero
from sewalong.quilt.size import Size


class BiasRemnant(Struct, frozen=True):
    """What a left-over piece gives on the bias, in inches: `tube` from so many `loops`, or `joined`
    from so many `strips`; `gives` is the more of the two. `over` is below zero when it is short."""

    loops: int
    tube: float
    strips: int
    joined: float
    gives: float
    over: float
    enough: bool
    reason: str


def bias_from_remnant(
    piece: Size,
    need: Length,
    strip: Length,
    *,
    seam: Length = QUARTER,
    unit: Unit = Unit.INCH,
) -> BiasRemnant:
    """Whether a left-over piece gives `need` inches of bias strip.

    Raises `NumbersFault` when nothing can be cut from it.
    """
    above_zero(need, "length needed")
    strip = to_cut(above_zero(strip, "strip width"), unit).length
    not_below_zero(seam, "seam allowance")
    loops, tube = bias_tube(piece, strip, seam)
    lengths = bias_strips(piece, strip, seam)
    joined = sum(lengths) - (len(lengths) - 1) * _join(seam) if lengths else 0.0
    gives = max(tube, joined)
    if gives == 0:
        raise NumbersFault(
            f"{piece.show(unit)} gives no bias strip of {as_given(strip, unit)}. "
            "Use a larger piece, a narrower strip, or cut the binding on the straight grain."
        )
    over = gives - float(need)
    # Never told better than it is: what is over rounded down, what is short rounded up.
    verdict = (
        f"{show(over, unit, rounding=Rounding.DOWN)} over"
        if over >= 0
        else f"{show(-over, unit, rounding=Rounding.UP)} short"
    )
    found = (
        f"{loops} loops of {show(tube / loops, unit)} cut round a tube"
        if tube >= joined
        else f"{len(lengths)} strips cut corner to corner and joined"
    )
    words = (
        f"{piece.show(unit)} gives {show(gives, unit, rounding=Rounding.DOWN)} on the bias in "
        f"{found}: {verdict}"
    )
    return BiasRemnant(loops, tube, len(lengths), joined, gives, over, over >= 0, words)


def bias_strips(piece: Size, strip: Length, seam: Length = QUARTER) -> tuple[float, ...]:
    """The strips at 45 degrees that join to the longest binding, in inches, as they come off.

    A strip's ends are cut along one straight edge of the piece, the same for all, so that they
    can be joined; a strip no longer than what its join takes is left out.
    """
    width, length = float(piece.width), float(piece.length)
    step = float(strip) * ROOT_TWO
    ways = [
        _ways(across, along, step, start, _join(seam))
        for across, along in ((width, length), (length, width))
        # The best cutting begins where a strip just reaches a corner (all between is linear).
        for start in {edge % step for edge in (0.0, across, along - step, across + along)}
    ]
    return max(ways, key=lambda lengths: sum(lengths) - len(lengths) * _join(seam))


def _ways(across: float, along: float, step: float, start: float, join: float) -> tuple[float, ...]:
    """The strips between the lines x + y = start, start + step, start + 2 * step and so on."""
    found = []
    for n in range(-1, floor((across + along) / step) + 1):
        line = start + n * step
        reach = min(across, line) - max(0.0, line + step - along)
        if reach * ROOT_TWO > join:
            found.append(reach * ROOT_TWO)
    return tuple(found)


def _join(seam: Fraction) -> float:
    """What a join takes along the strip: an allowance from both, lying at a slant."""
    return 2 * float(seam) * ROOT_TWO

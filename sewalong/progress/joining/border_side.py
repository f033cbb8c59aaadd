"""How long the side of a border in hand is expected to be, before the top is measured."""

from __future__ import annotations

from functools import lru_cache

from sewalong.lengths import Rounding, as_given, round_to
from sewalong.progress.record.route import SIDES_OF_A_BORDER
from sewalong.quilt.quilt import Quilt, Target


@lru_cache(maxsize=16)
def expected_in_words(quilt: Quilt, target: Target, done: int) -> str:
    """ "About 53 1/4 in: measure the top first." for the side after `done` of them; empty where
    no numbers can be had, or all are sewn on."""
    number, side = divmod(done, SIDES_OF_A_BORDER)
    if number >= len(quilt.borders):
        return ""
    # The geometry is loaded only where a border is sewn on.
    from sewalong.piecing.faults import SizeRefused
    from sewalong.quilt.cloth.borders import Corners
    from sewalong.quilt.refusal import NumbersFault
    from sewalong.quilt.worksheet.basis import basis

    try:
        border = basis(quilt, target).bordered()[number]
    except (SizeRefused, NumbersFault):
        return ""
    # Twice as coarse as what is cut to: nobody shall cut by it.
    along, across = (
        as_given(round_to(one, 2 * quilt.unit.step, Rounding.NEAREST), quilt.unit)
        for one in (border.each_side, border.each_end)
    )
    if border.plan.corners is Corners.MITRED and along != across:
        return f"About {along} for the sides, {across} for the ends: measure the top first."
    ends_first = border.plan.corners is Corners.ENDS_FIRST
    is_end = (side >= SIDES_OF_A_BORDER // 2) is not ends_first
    return f"About {across if is_end else along}: measure the top first."

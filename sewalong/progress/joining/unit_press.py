"""Which way the seams inside units are pressed so that units nest with their neighbours.

Only a seam that runs out straight at an edge meets one of the next unit; seams that run into the
corners, or slanting into an edge, meet otherwise and are left out. Seams sewn before the last are
pressed opposite ways in the two halves of a unit, so that the last one nests, and so meet those of
the next unit opposite already. What is left to plan is the last one.
"""

from __future__ import annotations

from functools import lru_cache

from sewalong.piecing.cloth import Flat
from sewalong.piecing.derive import Derivation
from sewalong.piecing.method import Stage, Station
from sewalong.progress.joining.press_directions import unit_ways
from sewalong.quilt.derived import derived_if_any
from sewalong.quilt.quilt import Quilt, Target

NEAR = 1e-6
"""Inches: nearer than this, two ends are one."""


@lru_cache(maxsize=64)
def pressed_last(quilt: Quilt) -> tuple[str, str]:
    """The stage at which the seam to plan is pressed, and how it lies: "level" or "upright".

    Two empty texts where units have none.
    """
    sewn = ironed = None
    for stage in quilt.method.stages:
        if stage.station is Station.MACHINE:
            sewn, ironed = stage, None
        elif stage.station is Station.IRON and sewn is not None and ironed is None:
            ironed = stage
    if sewn is None or ironed is None:
        return "", ""
    made = derived_if_any(quilt)
    if made is None:
        return "", ""
    lies = _lies(made, sewn)
    if lies not in _runs_out(made.units[0], float(made.seam)):
        return "", ""
    return ironed.id, lies


def unit_press_words(quilt: Quilt, target: Target) -> str:
    """The rule for units, and how many are pressed each way; empty where there is none to plan."""
    _, lies = pressed_last(quilt)
    # Across a sash no seam meets another.
    if not lies or quilt.sashing is not None:
        return ""
    even, odd = (
        ways.along if lies == "level" else ways.upright
        for ways in (unit_ways(1, 1), unit_ways(1, 2))
    )
    if quilt.is_on_point:
        whole, between = target.rows * target.columns, quilt.units_for(target)
        return (
            f"The {lies} seam lies by turns along every row: {even} in the 1st, 3rd, 5th unit of it "
            f"({whole} in all), {odd} in those between ({between - whole}). So it nests with the "
            "units beside it. Not settled where units go? Press it open."
        )
    many = -(-quilt.units_for(target) // 2)
    return (
        f"The {lies} seam lies by turns, like the squares of a chessboard: {even} in "
        f"the {many} where row and column add up to an even number, {odd} in the other "
        f"{quilt.units_for(target) - many}. So it nests with the units beside it. Not settled where units go? "
        "Press it open."
    )


def _lies(made: Derivation, sewn: Stage) -> str:
    """How the seam of a stage lies in what it makes: the side that grew is across it."""
    after = made.piles[sewn.makes.pile].size
    before = made.piles[sewn.takes[0].pile].size
    taller, wider = after[1] - before[1], after[0] - before[0]
    return "level" if taller > wider else "upright"


def _runs_out(unit: Flat, seam: float) -> frozenset[str]:
    """How the seams lie that run out straight at an edge, away from the corners."""
    width, height = (side - 2 * seam for side in unit.size)
    found = set()
    for patch in unit.finished(seam):
        for i, (x, y) in enumerate(patch.points):
            for other_x, other_y in (
                patch.points[i - 1],
                patch.points[(i + 1) % len(patch.points)],
            ):
                at_a_side = min(x, width - x) < NEAR
                at_an_end = min(y, height - y) < NEAR
                if at_a_side and not at_an_end and abs(other_y - y) < NEAR:
                    found.add("level")
                if at_an_end and not at_a_side and abs(other_x - x) < NEAR:
                    found.add("upright")
    return frozenset(found)

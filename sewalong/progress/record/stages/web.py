"""The stages of pieces of a web: every row started with two units, then one unit more a pass.

Both count seams, so that a pass is as many counts as there are rows. The minutes are common
practice, first guesses only.
"""

from __future__ import annotations

from sewalong.piecing.method import Hazard, Noun, Pieces, Stage, Station
from sewalong.quilt.quilt import Target
from sewalong.quilt.web import IN_A_START, SEW_WEB, START_WEB, WEB_ROW, WEB_UNIT, added_to_a_row

_SEAM = Noun("seam", "seams")
_HAZARDS = (Hazard.NEEDLE, Hazard.PINS, Hazard.IRON)


def web_stages(unit: str, target: Target) -> tuple[Stage, ...]:
    """The first pass, and all others in one; a web of two columns has only the first."""
    check = (
        f"The first of each column's pile is row 1's, the right way up; after the last, row "
        f"{target.rows} holds as many as row 1."
    )
    start = Stage(
        id=START_WEB,
        label="start web",
        station=Station.MACHINE,
        takes=(Pieces(unit, IN_A_START),),
        makes=Pieces(WEB_ROW.id, 1),
        counts=_SEAM,
        hazards=_HAZARDS,
        do="Tag row 1. Sew each row's second unit to its first, from row 1 on, right sides together; "
        "don't cut the thread between the rows.",
        check=check,
        minutes=1.5,
    )
    if not added_to_a_row(target.columns):
        return (start,)
    sew = Stage(
        id=SEW_WEB,
        label="sew web",
        station=Station.MACHINE,
        takes=(Pieces(unit, 1),),
        makes=Pieces(WEB_UNIT.id, 1),
        counts=_SEAM,
        hazards=_HAZARDS,
        do="Sew the next column's unit to each row in turn, right sides together; don't cut the "
        "thread between the rows. Press each row by its number before the long seams.",
        check=check,
        minutes=1.5,
    )
    return (start, sew)

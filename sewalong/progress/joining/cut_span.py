"""How long a ruler must be for the cuts of a stage, so that none is made in two goes."""

from __future__ import annotations

from functools import lru_cache

from sewalong.lengths import Rounding, show
from sewalong.piecing.method import Hazard
from sewalong.quilt.quilt import Quilt


@lru_cache(maxsize=64)
def ruler_words(quilt: Quilt, stage_id: str) -> str:
    """ "13 1/2 in or longer" for a stage that cuts through whole pieces, else nothing.

    It is the longest such cut of the stage, by the geometry of the pieces as they are planned,
    up to the next mark of a ruler.
    """
    stage = next((one for one in quilt.method.stages if one.id == stage_id), None)
    if stage is None or Hazard.CUTTER not in stage.hazards:
        return ""
    # The geometry is loaded only where something is cut.
    from sewalong.quilt.derived import derived_if_any

    made = derived_if_any(quilt)
    if made is None:
        return ""
    span = next(work.longest_cut for work in made.stages if work.id == stage_id)
    return f"{show(span, quilt.unit, rounding=Rounding.UP)} or longer" if span else ""

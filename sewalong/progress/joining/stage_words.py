"""What to do at a stage, with the sizes of this quilt in it."""

from __future__ import annotations

from functools import lru_cache

from sewalong.piecing.method import Hazard
from sewalong.progress.record.route import RouteStage
from sewalong.quilt.quilt import Quilt

TO_SIZE = "to size"
"""What stands in a method for the size that units are trimmed to."""


def what_to_do(quilt: Quilt, stage: RouteStage) -> str:
    """The words of a stage; where units are trimmed, with the size they are trimmed to.

    A method that has no stage for it is followed by one sentence more at its last stage.
    """
    last = quilt.trim is not None and stage.id == quilt.method.stages[-1].id
    # No file is read for a stage where nothing can be trimmed.
    if Hazard.CUTTER not in stage.hazards and not last:
        return stage.do
    trims = quilt.written_method.trim_stage
    if stage.id == trims and (size := _size(quilt)):
        do = stage.do.replace(TO_SIZE, f"to {size}")
        if do == stage.do:
            do = f"{do} Trim to {size}."
        return f"{do} {what_is_left_of_the_point(quilt, briefly=True)}".strip()
    if last and trims is None:
        return f"{stage.do} Then trim it to {_size(quilt)}."
    return stage.do


@lru_cache(maxsize=64)
def _size(quilt: Quilt) -> str:
    """What units are trimmed to, in words; empty when it cannot be had."""
    # The geometry is loaded only where something is trimmed.
    from sewalong.quilt.derived import derived_if_any
    from sewalong.quilt.unit_size import decided_unit, trim_text

    if quilt.trim is not None:
        return trim_text(quilt.trim, quilt.unit)
    made = derived_if_any(quilt)
    return "" if made is None else trim_text(decided_unit(quilt, made), quilt.unit)


@lru_cache(maxsize=64)
def what_is_left_of_the_point(quilt: Quilt, *, briefly: bool = False) -> str:
    """What small squares cut smaller than asked take of the point of a unit; empty for nothing."""
    from sewalong.quilt.derived import derived_if_any
    from sewalong.quilt.point import point_briefly, point_words

    made = derived_if_any(quilt)
    return "" if made is None else (point_briefly if briefly else point_words)(quilt, made)

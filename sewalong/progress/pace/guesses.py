"""What a count of a stage takes before the record knows: a guess from handling and length.

The method's own minutes (common practice) are for pieces of the usual size: squares of 5 in,
strips of 2 1/2 in. A part of them is handling, which stays as it is (`HANDLING`); the other is
sewing or cutting and goes with its length.
"""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction
from functools import lru_cache

from msgspec import Struct

from sewalong.lengths import CENTIMETRE, Unit
from sewalong.piecing.catalogue import written_for
from sewalong.piecing.derive import derive
from sewalong.piecing.faults import MethodFault, SizeRefused, UnknownMethod
from sewalong.piecing.method import MethodKey
from sewalong.progress.pace.duration_words import each_takes
from sewalong.progress.pace.stage_lengths import StageLength, stage_lengths
from sewalong.progress.record.route import ADD_CORNERS, ADD_SASHES, JOIN_ROWS, RouteStage, route_for
from sewalong.progress.record.stages.on_point import ADD_SIDES
from sewalong.progress.record.stages.sashes import SEW_SASH_ROWS
from sewalong.quilt.quilt import Quilt, Target
from sewalong.quilt.refusal import NumbersFault
from sewalong.quilt.web import SEW_WEB, START_WEB
from sewalong.quilt.worksheet.basis import basis

USUAL_SQUARE = Fraction(5)
USUAL_STRIP = Fraction(5, 2)
USUAL_UNIT = 5.0
"""Side of a unit, to the raw edges, that the minutes of rows and of quilting are for (inches)."""
USUAL_FINISHED = USUAL_UNIT - 0.5
"""The same less two allowances of 1/4 in."""
USUAL_SASH = 2.0
"""Width sashes are cut at that the minutes of sash rows are for (inches)."""
USUAL_TOP = 45.0
"""Side of a top that the minutes of layering are for (inches)."""
USUAL_BORDER = 45.0
USUAL_BINDING = 60.0
"""Length of one side that the minutes of borders and binding are for (inches)."""
HANDLING = 0.5
"""The part of a usual count's minutes that does not go with its size. From memory."""


class Guess(Struct, frozen=True):
    """Minutes for one count, and what they are guessed from, in words."""

    minutes: float
    reason: str


@lru_cache(maxsize=64)
def guesses(quilt: Quilt, target: Target) -> Mapping[str, Guess]:
    """By stage id, for every stage on the route of `quilt` towards `target`."""
    lengths = stage_lengths(quilt, target)
    usual = _usual(quilt, target)
    area = _unit_area(quilt, target)
    found = {}
    for stage in route_for(quilt, target).stages:
        if stage.id in ("layer", "quilt") and area:
            units = quilt.units_for(target) if stage.id == "layer" else 1
            found[stage.id] = _from_area(stage, area * units)
        else:
            found[stage.id] = _guess(quilt, stage, lengths[stage.id], usual.get(stage.id))
    return found


def _from_area(stage: RouteStage, area: float) -> Guess:
    minutes = _by_size(stage, area, (USUAL_TOP if stage.id == "layer" else USUAL_FINISHED) ** 2)
    return Guess(minutes, f"a guess from its size: {each_takes(minutes)} each")


def _guess(quilt: Quilt, stage: RouteStage, now: StageLength, usual: StageLength | None) -> Guess:
    length, compared = _known(now), _known(usual)
    minutes = _by_size(stage, length, compared) if length and compared else stage.minutes
    by = _from(quilt, now)
    return Guess(minutes, f"a guess{f' from {by}' if by else ''}: {each_takes(minutes)} each")


def _by_size(stage: RouteStage, size: float, usual: float) -> float:
    return stage.minutes * (HANDLING + (1 - HANDLING) * size / usual)


def _known(length: StageLength | None) -> float:
    return (length.sewn or 0.0) + (length.cut or 0.0) if length else 0.0


def _from(quilt: Quilt, length: StageLength) -> str:
    parts = [
        f"{_inches(quilt, inches)} of {what}"
        for inches, what in ((length.sewn, "seam"), (length.cut, "cutting"))
        if inches
    ]
    return " and ".join(parts)


def _inches(quilt: Quilt, inches: float) -> str:
    if quilt.unit is Unit.INCH:
        return f"{inches:.0f} in"
    return f"{inches / CENTIMETRE:.0f} cm"


def _usual(quilt: Quilt, target: Target) -> dict[str, StageLength]:
    """The lengths that the stages' minutes are meant for."""
    columns, sashing = target.columns, quilt.sashing
    pieces = columns + (sashing.among(columns) if sashing is not None else 0)
    if quilt.is_on_point:
        # A count of rows on point is one unit, with one seam.
        pieces = 2
    along = StageLength(USUAL_FINISHED * columns + 0.5)
    usual = {
        "sew-rows": StageLength(USUAL_UNIT * (pieces - 1)),
        SEW_SASH_ROWS: StageLength(USUAL_SASH * (pieces - 1)),
        ADD_SASHES: along,
        ADD_SIDES: StageLength(USUAL_UNIT),
        ADD_CORNERS: StageLength(USUAL_UNIT),
        JOIN_ROWS: along,
        START_WEB: StageLength(USUAL_UNIT),
        SEW_WEB: StageLength(USUAL_UNIT),
        "add-borders": StageLength(USUAL_BORDER),
        "bind": StageLength(USUAL_BINDING),
    }
    return {**usual, **_usual_of_method(quilt.method_key)}


@lru_cache(maxsize=32)
def _usual_of_method(key: MethodKey) -> Mapping[str, StageLength]:
    try:
        written = written_for(key)
        made = derive(written, USUAL_STRIP if written.starts[0].strip else USUAL_SQUARE)
    except (SizeRefused, MethodFault, UnknownMethod):
        return {}
    return {work.id: StageLength(work.sewn, work.cut) for work in made.stages}


def _unit_area(quilt: Quilt, target: Target) -> float | None:
    """Square inches of the centre that fall to one unit, or None where they cannot be had."""
    try:
        inner = basis(quilt, target).centre.grown(-quilt.seam)
    except (NumbersFault, SizeRefused, MethodFault, UnknownMethod):
        return None
    return float(inner.width * inner.length / quilt.units_for(target))

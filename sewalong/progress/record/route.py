"""The whole route of a quilt: the method's stages, then rows, joining, borders, finishing.

A stage of pieces (`piecing.Stage`) turns one pile into another. A stage of the top
(`TopStage`) is a number of steps on the one top: seams between rows, sides of borders.
With sashes, each is sewn along its row first, then the rows are joined as they always are:
the seams of both stages together are those between rows and sash rows. A web has no rows of its
own: its stages of pieces count the seams of each pass.
"""

from __future__ import annotations

from collections.abc import Mapping
from functools import lru_cache

from msgspec import Struct

from sewalong.piecing.method import Either, Hazard, Noun, Pieces, Pile, Stage, Station
from sewalong.progress.record.stages.on_point import point_piles, slanting_rows
from sewalong.progress.record.stages.sashes import (
    between_rows,
    cut_sashes,
    sash_piles,
    sew_sash_rows,
    standing_sashes,
)
from sewalong.progress.record.stages.web import web_stages
from sewalong.quilt.quilt import Quilt, Target
from sewalong.quilt.set_rows import CORNERS
from sewalong.quilt.setting import CORNER, LONG, Sashing
from sewalong.quilt.web import WEB_PILES

JOIN_ROWS = "join-rows"
SEW_ROWS = "sew-rows"
ADD_SASHES = "add-sashes"
ADD_CORNERS = "add-corners"
ADD_BORDERS = "add-borders"
ROW = Pile("row", Noun("row", "rows"))
SIDES_OF_A_BORDER = 4


class TopStage(Struct, frozen=True):
    """`steps` counted steps on the top, open once the stage before it is done.

    Joining rows and adding sashes are the exceptions: a seam needs only two neighbouring rows,
    so it is open as soon as there are more rows than seams plus one, and their sash. What each
    step uses up of the piles is in `takes`.
    """

    id: str
    label: str
    station: Station
    steps: int
    counts: Noun
    hazards: tuple[Hazard, ...]
    do: str
    check: str
    minutes: float
    takes: tuple[Pieces, ...] = ()
    either: tuple[Either, ...] = ()


RouteStage = Stage | TopStage


class Route(Struct, frozen=True):
    """Every stage of one quilt in working order, and its piles."""

    stages: tuple[RouteStage, ...]
    piles: Mapping[str, Pile]
    starts: tuple[str, ...]

    def stage(self, id: str) -> RouteStage | None:
        """The stage called `id`, or None."""
        return next((stage for stage in self.stages if stage.id == id), None)

    @property
    def of_pieces(self) -> tuple[Stage, ...]:
        """The stages that turn one pile into another, in order."""
        return tuple(stage for stage in self.stages if isinstance(stage, Stage))

    @property
    def of_the_top(self) -> tuple[TopStage, ...]:
        """The stages done on the one top, in order."""
        return tuple(stage for stage in self.stages if isinstance(stage, TopStage))


@lru_cache(maxsize=64)
def route_for(quilt: Quilt, target: Target) -> Route:
    """The route of `quilt` towards `target`; the same arguments give the same route."""
    method = quilt.method
    stages: list[RouteStage] = [*method.stages]
    sashing = quilt.sashing
    if sashing is not None:
        stages += cut_sashes(sashing, target)
    if quilt.is_on_point:
        stages += slanting_rows(quilt, target, sew_rows=SEW_ROWS)
    elif quilt.is_web:
        stages += web_stages(method.unit, target)
    else:
        stages.append(_sew_rows(method.unit, target, sashing))
    if sashing is not None:
        stages += sew_sash_rows(sashing, target)
        stages += _add_sashes(sashing, target)
    rows = len(quilt.rows_for(target))
    if rows > 1:
        stages.append(_join_rows(target, rows, sashing, is_web=quilt.is_web))
    if quilt.is_on_point:
        stages.append(_add_corners())
    if quilt.borders:
        stages.append(_add_borders(quilt))
    stages += [_FINISHING[name](target) for name in FINISHING if name in quilt.finishing]
    between = sash_piles(sashing) if sashing is not None else ()
    rest = point_piles() if quilt.is_on_point else (*between, ROW)
    if quilt.is_web:
        rest = tuple(WEB_PILES.values())
    piles = {pile.id: pile for pile in (*method.piles, *rest)}
    return Route(tuple(stages), piles, method.starts)


# The minutes of the assembly and finishing stages are common practice, first guesses only.


def _sew_rows(unit: str, target: Target, sashing: Sashing | None) -> Stage:
    sashes = standing_sashes(sashing, target) if sashing is not None else ()
    do = "Pin a tag on its first unit; sew its units edge to edge, right sides together; press."
    if sashes:
        first = "a sash" if sashing is not None and sashing.frame else "a unit"
        do = f"Tag the first unit. Sew units and sashes in turn, {first} at both ends, easing unit to sash."
    return Stage(
        id=SEW_ROWS,
        label="sew rows",
        station=Station.MACHINE,
        takes=(Pieces(unit, target.columns), *sashes),
        makes=Pieces(ROW.id, 1),
        counts=ROW.noun,
        hazards=(Hazard.NEEDLE, Hazard.PINS, Hazard.IRON),
        do=do,
        check="tag on its first unit; each unit the right way up",
        minutes=1.5 * (target.columns + sum(sash.count for sash in sashes)),
    )


def _add_sashes(sashing: Sashing, target: Target) -> tuple[TopStage, ...]:
    steps = sashing.among(target.rows)
    if not steps:
        return ()
    pile = between_rows(sashing)
    row_1 = " Row 1 has one along both edges." if sashing.frame else ""
    pinned = "at every crossing" if pile.id != LONG.id else "at both ends and the middle"
    lies = "seams nested at each cornerstone" if pile.id != LONG.id else "neither edge pulled"
    stage = TopStage(
        id=ADD_SASHES,
        label="add sashes",
        station=Station.MACHINE,
        steps=steps,
        counts=Noun("seam", "seams"),
        hazards=(Hazard.NEEDLE, Hazard.PINS, Hazard.IRON),
        do=f"Pin it along the row, right sides together, {pinned}; sew, press towards the sash.{row_1}",
        check=f"Row and sash end together, {lies}.",
        minutes=0.8 * target.columns,
        takes=(Pieces(pile.id, 1),),
    )
    return (stage,)


def _join_rows(target: Target, rows: int, sashing: Sashing | None, *, is_web: bool) -> TopStage:
    do = "Pin two neighbouring rows right sides together at every crossing, then sew the seam."
    check = "Row tags: neighbours? Seams nested at each crossing?"
    if sashing is not None and sashing.cornerstones is None:
        do = "Mark on the sash where its row's seams end; pin the next row's seams to the marks, sew."
        check = "Row tags: neighbours? Do units stand in line across the sash?"
    elif sashing is not None:
        do = "Pin the sash of one row to the next, right sides together, at every crossing, then sew."
    if is_web:
        do = (
            "Fold a row onto the next, as their threads hold them, pin at every crossing, then sew."
        )
        check = "The threads keep the order: no row skipped? Seams nested at each crossing?"
    return TopStage(
        id=JOIN_ROWS,
        label="join rows",
        station=Station.MACHINE,
        steps=rows - 1,
        counts=Noun("seam", "seams"),
        hazards=(Hazard.NEEDLE, Hazard.PINS),
        do=do,
        check=check,
        minutes=1.0 * target.columns,
        either=(Either.CROSSINGS,),
    )


def _add_corners() -> TopStage:
    return TopStage(
        id=ADD_CORNERS,
        label="add corners",
        station=Station.MACHINE,
        steps=CORNERS,
        counts=CORNER.noun,
        hazards=(Hazard.NEEDLE, Hazard.PINS, Hazard.IRON, Hazard.CUTTER),
        do="Fold the triangle to find its middle, pin it to the middle of the unit, sew, press out. "
        "Last trim the edges one seam allowance beyond the points.",
        check="All four corners square; no unit's point in the seam to come.",
        minutes=4.0,
        takes=(Pieces(CORNER.id, 1),),
    )


def _add_borders(quilt: Quilt) -> TopStage:
    return TopStage(
        id=ADD_BORDERS,
        label="add borders",
        station=Station.MACHINE,
        steps=SIDES_OF_A_BORDER * len(quilt.borders),
        counts=Noun("side", "sides"),
        hazards=(Hazard.NEEDLE, Hazard.PINS, Hazard.CUTTER),
        do="Measure the top through its middle, cut the strip to that, mark quarters, pin, sew.",
        check="The strip fits without pulling; which edge is inner, which end is the top?",
        minutes=20.0,
    )


def _layer(target: Target) -> TopStage:
    return TopStage(
        id="layer",
        label="layer",
        station=Station.TABLE,
        steps=1,
        counts=Noun("sandwich", "sandwiches"),
        hazards=(Hazard.PINS,),
        do="Back right side down and smooth, batting on it, top right side up; baste from the middle.",
        check="Backing and batting show past the top on all four sides.",
        minutes=90.0,
    )


def _quilt(target: Target) -> TopStage:
    return TopStage(
        id="quilt",
        label="quilt",
        station=Station.MACHINE,
        steps=target.rows,
        counts=Noun("row", "rows"),
        hazards=(Hazard.NEEDLE, Hazard.PINS),
        do="Quilt from the middle outwards; count one for each row of units quilted through.",
        check="Turn it over: no folds in the back, pins out of the way of the needle.",
        minutes=6.0 * target.columns,
    )


def _bind(target: Target) -> TopStage:
    return TopStage(
        id="bind",
        label="bind",
        station=Station.MACHINE,
        steps=SIDES_OF_A_BORDER,
        counts=Noun("side", "sides"),
        hazards=(Hazard.NEEDLE, Hazard.PINS),
        do="Sew the binding on with mitred corners, turn it to the back, and fasten it down.",
        check="Corners square; the fold covers the seam all along.",
        minutes=45.0,
    )


_FINISHING = {"layer": _layer, "quilt": _quilt, "bind": _bind}
FINISHING = tuple(_FINISHING)
"""The optional stages after the top, in order."""

"""The whole route of a quilt: the method's stages, then rows, joining, borders, finishing.

A stage of pieces (`piecing.Stage`) turns one pile into another. A stage of the top
(`TopStage`) is a number of steps on the one top: seams between rows, sides of borders.
"""

from __future__ import annotations

from collections.abc import Mapping
from functools import lru_cache

from msgspec import Struct

from sewalong.piecing.method import Either, Hazard, Noun, Pieces, Pile, Stage, Station
from sewalong.quilt.quilt import Quilt, Target

JOIN_ROWS = "join-rows"
SEW_ROWS = "sew-rows"
ADD_BORDERS = "add-borders"
ROW = Pile("row", Noun("row", "rows"))
SIDES_OF_A_BORDER = 4


class TopStage(Struct, frozen=True):
    """`steps` counted steps on the top, open once the stage before it is done.

    Joining rows is the exception: a seam needs only two neighbouring rows, so it is
    open as soon as there are more rows than seams plus one.
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
    stages: list[RouteStage] = [*method.stages, _sew_rows(method.unit, target)]
    if target.rows > 1:
        stages.append(_join_rows(target))
    if quilt.borders:
        stages.append(_add_borders(quilt))
    stages += [_FINISHING[name](target) for name in FINISHING if name in quilt.finishing]
    piles = {pile.id: pile for pile in (*method.piles, ROW)}
    return Route(tuple(stages), piles, method.starts)


# The minutes of the assembly and finishing stages are common practice, first guesses only.


def _sew_rows(unit: str, target: Target) -> Stage:
    return Stage(
        id=SEW_ROWS,
        label="sew rows",
        station=Station.MACHINE,
        takes=(Pieces(unit, target.columns),),
        makes=Pieces(ROW.id, 1),
        counts=ROW.noun,
        hazards=(Hazard.NEEDLE, Hazard.PINS, Hazard.IRON),
        do="Sew its units edge to edge, right sides together; press as said.",
        check="tag on its first unit; each unit the right way up",
        minutes=1.5 * target.columns,
    )


def _join_rows(target: Target) -> TopStage:
    return TopStage(
        id=JOIN_ROWS,
        label="join rows",
        station=Station.MACHINE,
        steps=target.rows - 1,
        counts=Noun("seam", "seams"),
        hazards=(Hazard.NEEDLE, Hazard.PINS),
        do="Pin two neighbouring rows right sides together at every crossing, then sew the seam.",
        check="Row tags: neighbours? Every crossing pinned, seams matching?",
        minutes=1.0 * target.columns,
        either=(Either.CROSSINGS,),
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
        counts=Noun("row's worth", "rows' worth"),
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

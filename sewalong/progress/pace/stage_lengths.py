"""Inches sewn and inches cut in one count of every stage of a quilt's route."""

from __future__ import annotations

from collections.abc import Mapping
from functools import lru_cache

from msgspec import Struct

from sewalong.piecing.faults import MethodFault, SizeRefused, UnknownMethod
from sewalong.progress.record.route import (
    ADD_CORNERS,
    ADD_SASHES,
    JOIN_ROWS,
    SIDES_OF_A_BORDER,
    route_for,
)
from sewalong.progress.record.stages.on_point import ADD_SIDES, FROM_A_SQUARE
from sewalong.progress.record.stages.sashes import SEW_SASH_ROWS, cutting_stage
from sewalong.quilt.as_fraction import diagonal
from sewalong.quilt.layouts.centre_seams import centre_seams
from sewalong.quilt.layouts.joining_seams import binding_seams, border_seams
from sewalong.quilt.quilt import Quilt, Target
from sewalong.quilt.refusal import NumbersFault
from sewalong.quilt.web import SEW_WEB, START_WEB
from sewalong.quilt.worksheet.basis import Basis, basis
from sewalong.quilt.worksheet.setting_cloth import SettingCut, setting_cuts


class StageLength(Struct, frozen=True):
    """Inches in one count. None: there is sewing or cutting, but its length isn't known."""

    sewn: float | None = 0.0
    cut: float | None = 0.0


UNKNOWN = StageLength(None, None)


@lru_cache(maxsize=64)
def stage_lengths(quilt: Quilt, target: Target) -> Mapping[str, StageLength]:
    """By stage id, for every stage on the route of `quilt` towards `target`.

    Quilting is of unknown length, as nobody has said how close its lines are; the borders'
    strips are cut to length in their stage, a few short cuts that are not counted. Where
    the quilt's numbers cannot be had, every length is unknown.
    """
    stages = route_for(quilt, target).stages
    try:
        now = basis(quilt, target)
    except (NumbersFault, SizeRefused, MethodFault, UnknownMethod):
        return {stage.id: UNKNOWN for stage in stages}
    known = {work.id: StageLength(work.sewn, work.cut) for work in now.made.stages}
    known |= _of_the_top(now)
    return {stage.id: known.get(stage.id, UNKNOWN) for stage in stages}


def _of_the_top(now: Basis) -> dict[str, StageLength]:
    seams = centre_seams(now.quilt, now.target, now.unit)
    counts = now.units if now.quilt.is_on_point else now.target.rows
    found = {
        "sew-rows": StageLength(float(seams.rows.length / counts)),
        JOIN_ROWS: StageLength(float(seams.joins.each)),
        START_WEB: StageLength(float(seams.rows.each)),
        SEW_WEB: StageLength(float(seams.rows.each)),
        "layer": StageLength(),
        "quilt": StageLength(sewn=None),
        "bind": StageLength(float(binding_seams(now.top).length) / SIDES_OF_A_BORDER),
    }
    for id, run in ((ADD_SIDES, seams.sides), (ADD_CORNERS, seams.corners)):
        if run is not None:
            found[id] = StageLength(float(run.each))
    if seams.sashes is not None:
        found[ADD_SASHES] = StageLength(float(seams.sashes.each))
    if seams.sash_rows is not None and seams.sashes is not None and seams.sashes.times:
        found[SEW_SASH_ROWS] = StageLength(float(seams.sash_rows.length / seams.sashes.times))
    for one in _setting_cuts(now):
        # A strip is cut along once, and across for every piece; a square corner to corner, too.
        along = one.strips * now.choices.usable + one.count * one.size.length
        slant = FROM_A_SQUARE.get(one.pile.id, 0) // 2 * diagonal(one.size.length)
        found[cutting_stage(one.pile)] = StageLength(cut=float(along) / one.count + slant)
    if now.quilt.borders:
        try:
            around = sum(float(border_seams(one).length) for one in now.bordered())
        except NumbersFault:
            return found
        sides = SIDES_OF_A_BORDER * len(now.quilt.borders)
        found["add-borders"] = StageLength(around / sides)
    return found


def _setting_cuts(now: Basis) -> tuple[SettingCut, ...]:
    """None where a piece is wider than the cloth: how far it is cut along nobody knows then."""
    try:
        return setting_cuts(now)
    except NumbersFault:
        return ()

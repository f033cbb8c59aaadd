"""Inches sewn and inches cut in one count of every stage of a quilt's route."""

from __future__ import annotations

from collections.abc import Mapping
from functools import lru_cache

from msgspec import Struct

from sewalong.piecing.faults import MethodFault, SizeRefused, UnknownMethod
from sewalong.progress.record.route import ADD_SASHES, JOIN_ROWS, SIDES_OF_A_BORDER, route_for
from sewalong.progress.record.sash_stages import SEW_SASH_ROWS, cutting_stage
from sewalong.quilt.layouts.centre_seams import centre_seams
from sewalong.quilt.layouts.joining_seams import binding_seams, border_seams
from sewalong.quilt.quilt import Quilt, Target
from sewalong.quilt.refusal import NumbersFault
from sewalong.quilt.worksheet.basis import Basis, basis
from sewalong.quilt.worksheet.setting_cloth import setting_cuts


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
    found = {
        "sew-rows": StageLength(float(seams.rows.length / now.target.rows)),
        JOIN_ROWS: StageLength(float(seams.joins.each)),
        "layer": StageLength(),
        "quilt": StageLength(sewn=None),
        "bind": StageLength(float(binding_seams(now.top).length) / SIDES_OF_A_BORDER),
    }
    if seams.sashes is not None:
        found[ADD_SASHES] = StageLength(float(seams.sashes.each))
    if seams.sash_rows is not None and seams.sashes is not None and seams.sashes.times:
        found[SEW_SASH_ROWS] = StageLength(float(seams.sash_rows.length / seams.sashes.times))
    for one in setting_cuts(now):
        # A strip is cut along once, and across for every piece.
        along = one.strips * now.choices.usable + one.count * one.size.length
        found[cutting_stage(one.pile)] = StageLength(cut=float(along) / one.count)
    if now.quilt.borders:
        try:
            around = sum(float(border_seams(one).length) for one in now.bordered())
        except NumbersFault:
            return found
        sides = SIDES_OF_A_BORDER * len(now.quilt.borders)
        found["add-borders"] = StageLength(around / sides)
    return found

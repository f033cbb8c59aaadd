"""What lies between units already and would not go with another setting of them."""

from __future__ import annotations

from collections.abc import Iterator

from msgspec.structs import replace

from sewalong.piecing.method import Pile
from sewalong.progress.record.limits import are
from sewalong.progress.record.on_the_top import unpick_rows_first
from sewalong.progress.record.route import ROW
from sewalong.progress.record.stages.on_point import point_piles
from sewalong.progress.record.stages.sashes import between_rows, sash_piles
from sewalong.progress.record.state import State
from sewalong.quilt.quilt import Quilt
from sewalong.quilt.setting import CORNER, SIDE, Sashing, SetOnPoint, Setting


def set_otherwise(state: State, wanted: Quilt) -> Iterator[str]:
    """Rows sewn, and pieces cut for between them, that `wanted` would have otherwise."""
    was, now = state.quilt.setting, wanted.setting
    if _same(was, now):
        return
    rows = state.piles.get(ROW.id, 0)
    if rows:
        yield (
            f"{ROW.noun.count(rows)} {are(rows)} sewn already, set as the plan has them. "
            f"{unpick_rows_first(state, 'that setting')}"
        )
    if state.begun:
        yield "A row is begun, set as the plan has it. Take it apart first, or keep that setting."
    for pile in _of_that_setting_alone(was, now):
        there = state.piles[pile.id]
        if there:
            yield (
                f"{pile.noun.count(there)} {are(there)} made already for the setting as it was. "
                "Say first what became of them, unpicked, spoiled or recounted to none, or keep "
                "that setting."
            )


def _same(was: Setting | None, now: Setting | None) -> bool:
    """Whether pieces of the one are those of the other, cloth and colours aside."""
    if isinstance(was, Sashing) and isinstance(now, Sashing):
        return _cuts(was) == _cuts(now)
    if isinstance(was, SetOnPoint) and isinstance(now, SetOnPoint):
        return was.larger == now.larger
    return was is now


def _cuts(sashing: Sashing) -> tuple[object, ...]:
    return sashing.cut, sashing.frame, sashing.cornerstones is None


def _of_that_setting_alone(was: Setting | None, now: Setting | None) -> tuple[Pile, ...]:
    """The piles whose pieces are others in another setting."""
    if isinstance(was, SetOnPoint):
        # Squares cut larger than they need be make no row another.
        return (SIDE, CORNER) if isinstance(now, SetOnPoint) else point_piles()
    if was is None:
        return ()
    if isinstance(now, Sashing) and _cuts(was) == _cuts(replace(now, frame=was.frame)):
        # A frame wants longer sashes between the rows; those within a row stay as they are.
        return (between_rows(was),)
    return sash_piles(was)

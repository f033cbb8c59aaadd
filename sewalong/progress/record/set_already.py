"""What lies between units already and would not go with another setting of them."""

from __future__ import annotations

from collections.abc import Iterator

from msgspec.structs import replace

from sewalong.progress.record.limits import are
from sewalong.progress.record.route import ROW
from sewalong.progress.record.sash_stages import between_rows, sash_piles
from sewalong.progress.record.state import State
from sewalong.quilt.quilt import Quilt
from sewalong.quilt.setting import Sashing


def set_otherwise(state: State, wanted: Quilt) -> Iterator[str]:
    """Rows sewn, and pieces cut for between them, that `wanted` would have otherwise."""
    was, now = state.quilt.setting, wanted.setting
    if _same(was, now):
        return
    rows = state.piles[ROW.id]
    if rows:
        yield (
            f"{ROW.noun.count(rows)} {are(rows)} sewn already, set as the plan has them. Unpick "
            f"{'it' if rows == 1 else 'them'} first, or keep that setting."
        )
    if was is None:
        return
    frame_alone = now is not None and _same(was, replace(now, frame=was.frame))
    for pile in (between_rows(was),) if frame_alone else sash_piles(was):
        there = state.piles[pile.id]
        if there:
            yield (
                f"{pile.noun.count(there)} {are(there)} made already for the setting as it was. "
                "Say first what became of them, spoiled or recounted to none, or keep that setting."
            )


def _same(was: Sashing | None, now: Sashing | None) -> bool:
    """Whether pieces of the one are those of the other, cloth and colours aside."""
    if was is None or now is None:
        return was is now
    return (was.cut, was.frame, was.cornerstones is None) == (
        now.cut,
        now.frame,
        now.cornerstones is None,
    )

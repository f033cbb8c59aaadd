"""What was measured beside a piece already: the same the other way, and the allowance at the back."""

from __future__ import annotations

from datetime import datetime, timedelta

from msgspec import Struct

from sewalong.lengths import Length
from sewalong.progress.record.measurable import ALLOWANCE, other_way_of
from sewalong.progress.record.state import State

AT_ONCE = timedelta(hours=1)
"""Measurements no further apart are of the same pieces; later, other pieces may lie there.
From memory."""


class Beside(Struct, frozen=True):
    """Readings in inches; none where it was not measured."""

    other_way: tuple[Length, ...] = ()
    seam_read: Length | None = None


def beside(state: State, piece: str, now: datetime, by: str = "") -> Beside:
    """What was measured within the hour, and since anything was changed at the machine, of what the
    same person sewed."""
    since = max((change.seq for change in state.seam_changes), default=0)
    last = {
        check.piece: check.readings
        for check in state.checks
        if check.by == by and check.seq > since and now - check.at <= AT_ONCE
    }
    seams = last.get(ALLOWANCE, ())
    return Beside(
        other_way=last.get(other_way_of(piece), ()),
        seam_read=sum(seams, Length(0)) / len(seams) if seams else None,
    )

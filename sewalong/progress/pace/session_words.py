"""One session in words: its length, and what its measured hours leave out."""

from __future__ import annotations

from sewalong.progress.pace.sessions import SessionFacts
from sewalong.progress.record.route import Route
from sewalong.progress.record.time_words import day, spoken


def session_line(one: SessionFacts, route: Route) -> str:
    """ "Session 2 (3 Nov 2026): 50 minutes, 12 four-patches at sew, 4 without a time." """
    did = [
        f"{stage.counts.count(abs(n))} {'at' if n > 0 else 'unpicked at'} {stage.label}"
        for stage_id, n in one.counts.items()
        if n and (stage := route.stage(stage_id)) is not None
    ]
    still = ", still open" if one.is_open else ""
    return (
        f"Session {one.number} ({day(one.opened)}{still}): {spoken(one.length)}, "
        f"{', '.join(did) or 'nothing in the end'}{what_is_missing(one)}."
    )


def what_is_missing(one: SessionFacts) -> str:
    """What is in no measured hour: counts without a time, and gaps."""
    untimed = f"; {one.untimed} without a time" if one.untimed else ""
    if not one.gaps:
        return untimed
    gaps = "a gap" if one.gaps == 1 else f"{one.gaps} gaps"
    return f"{untimed}, {gaps} in it"

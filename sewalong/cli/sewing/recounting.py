"""After a recount: what is missing now, and what its difference may be said to be."""

from __future__ import annotations

from msgspec.structs import replace

from sewalong.cli.frame.report import Report
from sewalong.progress.record.events import Recounted
from sewalong.progress.record.recount_rules import ways
from sewalong.progress.record.state import State
from sewalong.service.open_quilt import OpenQuilt


def recounted(report: Report, before: State, quilt: OpenQuilt, pile: str, *, said: bool) -> Report:
    """`report` with what is missing, and, when nothing was said of a difference, what it can be.

    `before` is how the quilt stood when it was counted.
    """
    event = quilt.record[-1].event
    assert isinstance(event, Recounted)
    difference = event.counted - event.recorded
    missing = quilt.state.missing.get(pile, 0)
    may_be = [way for way in ways(before, pile, difference) if way != "stands"]
    lines = list(report.lines)
    if missing:
        noun = quilt.state.route.piles[pile].noun
        lines.append(f"Missing: {noun.count(missing)}, made, whereabouts unknown.")
    if difference and not said and may_be:
        lines.append(
            f"The difference may be: {', '.join(may_be)}. "
            f"To say so: sewalong undo, then recount again with --as {may_be[0]}"
        )
    data = {
        **report.data,
        "recorded_before": event.recorded,
        "difference": difference,
        "how": event.how,
        "may_be": may_be,
        "missing": missing,
        "places": dict(quilt.state.places.get(pile, {})),
    }
    return replace(report, lines=tuple(lines), data=data)

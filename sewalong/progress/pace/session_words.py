"""One session in words: its length, and what its measured hours leave out."""

from __future__ import annotations

from sewalong.progress.pace.sessions import SessionFacts
from sewalong.progress.record.route import Route
from sewalong.progress.record.time_words import day, spoken


def session_lines(one: SessionFacts, route: Route) -> tuple[str, ...]:
    """ "Session 2, 3 Nov 2026: 50 minutes", "Session 2: 12 four-patches at sew", and so on."""
    did = [
        f"{stage.counts.count(abs(n))} {'at' if n > 0 else 'unpicked at'} {stage.label}"
        for stage_id, n in one.counts.items()
        if n and (stage := route.stage(stage_id)) is not None
    ]
    facts = did or ["nothing in the end"]
    if one.is_open:
        facts.append("still open")
    if one.untimed:
        facts.append(f"{one.untimed} without a time")
    if one.gaps:
        facts.append(f"{_gaps(one)} in it")
    name = f"Session {one.number}"
    first = f"{name}, {day(one.opened)}: {spoken(one.length)}."
    return (first, *(f"{name}: {fact}." for fact in facts))


def _gaps(one: SessionFacts) -> str:
    return "a gap" if one.gaps == 1 else f"{one.gaps} gaps"


def what_is_missing(one: SessionFacts) -> str:
    """What is in no measured hour: counts without a time, and gaps."""
    untimed = f"; {one.untimed} without a time" if one.untimed else ""
    if not one.gaps:
        return untimed
    return f"{untimed}, {_gaps(one)} in it"

"""The seams of others who sew at this quilt: each by what was last measured of it.

Whoever sews elsewhere has a machine of her own. A piece she sewed says nothing of the owner's seam;
and the record knows which of the pieces counted were hers only as far as they came in as a number
from her.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import datetime

from sewalong.piecing.method import Station
from sewalong.progress.measuring.check_words import check_in_words
from sewalong.progress.measuring.proof import tells
from sewalong.progress.record.events.elsewhere import MadeElsewhere
from sewalong.progress.record.events.event import Recorded
from sewalong.progress.record.events.undoing import effective
from sewalong.progress.record.state import Check, State
from sewalong.progress.record.time_words import ago


def by_others(state: State) -> tuple[Check, ...]:
    """The last measurement that tells of each person's seam, in order of their names."""
    last = {check.by: check for check in state.checks if check.by and tells(state, check)}
    return tuple(last[name] for name in sorted(last))


def person_meant(state: State, typed: str) -> str:
    """Somebody's name as it was written before; else as it is typed."""
    known = (*(check.by for check in state.checks), *state.elsewhere.values())
    return next((one for one in known if one.casefold() == typed.casefold()), typed)


def others_in_words(state: State, now: datetime) -> Iterator[tuple[str, str]]:
    """Each person's seam that measured right: a label and a sentence."""
    for check in by_others(state):
        if check.passed:
            yield _told(state, check, now)


def others_measured(state: State, now: datetime) -> Iterator[tuple[str, str]]:
    """The same of each person's seam, however it measured."""
    for check in by_others(state):
        yield _told(state, check, now)


def _told(state: State, check: Check, now: datetime) -> tuple[str, str]:
    verdict = "right" if check.passed else "not right"
    return f"Seam of {check.by}", f"{_measured(state, check, now)}, {verdict}."


def others_in_doubt(
    state: State, record: Sequence[Recorded], now: datetime
) -> Iterator[tuple[Check, tuple[str, ...]]]:
    """Each person's seam that measured wrong, with what it means, one fact each."""
    for check in by_others(state):
        if not check.passed:
            since = _made_since(state, record, check.by)
            known = (f"Counted from {check.by} since: {since}.", "Measure some of them.")
            unknown = (
                "The record does not know which pieces those are: measure some where they lie."
            )
            yield (
                check,
                (
                    f"{_measured(state, check, now)}, not right.",
                    f"What {check.by} sewed since the last one that was right may be wrong.",
                    *(known if since else (unknown,)),
                ),
            )


def seam_to_test(state: State, stage: str, by: str) -> str:
    """What is owed of somebody's seam when what she sewed at a stage is counted; empty where her
    last measurement was right, nobody said who it was, or nothing is sewn there."""
    found = state.route.stage(stage)
    if not by or found is None or found.station is not Station.MACHINE:
        return ""
    last = next((check for check in by_others(state) if check.by == by), None)
    if last is None:
        return f"The seam of {by} is not tested yet. Measure one of these, and say who sewed it."
    if last.passed:
        return ""
    return f"The seam of {by} measured wrong the last time. Measure one of these first."


def _made_since(state: State, record: Sequence[Recorded], by: str) -> str:
    """What somebody counted at the machine since the last of hers that was right; empty for
    nothing that was said to be hers."""
    right = [check.seq for check in state.checks if check.by == by and check.passed]
    since = max(right, default=0)
    made: dict[str, int] = {}
    for one in effective(record):
        event = one.event
        if isinstance(event, MadeElsewhere) and event.by == by and one.seq > since:
            made[event.stage] = made.get(event.stage, 0) + event.n
    machine = [one for one in state.route.stages if one.station is Station.MACHINE]
    return " and ".join(
        f"{stage.counts.count(made[stage.id])} at {stage.label}"
        for stage in machine
        if stage.id in made
    )


def _measured(state: State, check: Check, now: datetime) -> str:
    words = check_in_words(state, check)
    return f"{words[:1].upper()}{words[1:]} ({ago(check.at, now)})"

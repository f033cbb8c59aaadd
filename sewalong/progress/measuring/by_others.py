"""The seams of others who sew at this quilt: each by what was last measured of it.

Whoever sews elsewhere has a machine of her own. A piece she sewed says nothing of the owner's seam;
and the record does not know which of the pieces counted were hers.
"""

from __future__ import annotations

from collections.abc import Iterator
from datetime import datetime

from sewalong.progress.measuring.check_words import check_in_words
from sewalong.progress.measuring.proof import tells
from sewalong.progress.record.state import Check, State
from sewalong.progress.record.time_words import ago


def by_others(state: State) -> tuple[Check, ...]:
    """The last measurement that tells of each person's seam, in order of their names."""
    last = {check.by: check for check in state.checks if check.by and tells(state, check)}
    return tuple(last[name] for name in sorted(last))


def others_in_words(state: State, now: datetime) -> Iterator[tuple[str, str]]:
    """Each person's seam that measured right: a label and a sentence."""
    for check in by_others(state):
        if check.passed:
            yield f"Seam of {check.by}", f"{_measured(state, check, now)}, right."


def others_in_doubt(state: State, now: datetime) -> Iterator[tuple[Check, tuple[str, ...]]]:
    """Each person's seam that measured wrong, with what it means, one fact each."""
    for check in by_others(state):
        if not check.passed:
            yield (
                check,
                (
                    f"{_measured(state, check, now)}, not right.",
                    f"What {check.by} sewed since the last one that was right may be wrong.",
                    "The record does not know which pieces those are: measure some where they lie.",
                ),
            )


def _measured(state: State, check: Check, now: datetime) -> str:
    words = check_in_words(state, check)
    return f"{words[:1].upper()}{words[1:]} ({ago(check.at, now)})"

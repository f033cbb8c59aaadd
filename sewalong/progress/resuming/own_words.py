"""What she wrote for the next time, in her own words, unless it only repeats the program's."""

from __future__ import annotations

import re

from sewalong.progress.record.state import State


def own_words(state: State, ours: str) -> str:
    """Her words of the last session; empty where she wrote none or they say nothing that `ours`,
    what the program says now, does not say.

    On closing, the next thing is offered ready to be taken as it is. It begins with a stage and its
    station, and its numbers are those of that evening.
    """
    last = state.last_session
    hers = last.next_step if last is not None else ""
    offered = any(
        re.match(rf"{re.escape(stage.label)}[ (,]+at the {stage.station}\b", hers, re.IGNORECASE)
        for stage in state.route.stages
    )
    return "" if offered or _words(hers) <= _words(ours) else hers


def _words(text: str) -> set[str]:
    return set(re.findall(r"[^\W_]+(?:['’][^\W_]+)*", text.casefold()))

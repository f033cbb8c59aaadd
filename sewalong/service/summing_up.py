"""The summary of a quilt, worked out from its record and its plan."""

from __future__ import annotations

from sewalong.progress.plan.plan import Plan, plan
from sewalong.progress.record.fold import fold
from sewalong.progress.record.state import Standing, State
from sewalong.progress.resuming.resume_facts import next_thing
from sewalong.service.summary import Summary
from sewalong.store.faults import StoreFault
from sewalong.store.library import Library, Shelved


def worked_out(library: Library, entry: Shelved) -> tuple[Summary, int]:
    """The summary of a quilt on the shelf, and the number of its last event.

    Raises StoreFault where not all of its record can be read.
    """
    loaded = library.load(entry)
    if loaded.damage:
        raise StoreFault(loaded.damage)
    state = fold(loaded.quilt, loaded.record)
    return summary_of(state, plan(state)), state.seq


def summary_of(state: State, now: Plan) -> Summary:
    """The summary of a quilt and its plan."""
    suggestion = now.suggestion
    line = now.line(suggestion.stage) if suggestion else None
    return Summary(
        standing=state.standing.value,
        work_done=round(now.work_done, 4),
        next_stage=line.stage.id if line else None,
        label=line.stage.label if line else None,
        pick_up=_pick_up(state, now),
    )


def _pick_up(state: State, now: Plan) -> str:
    if state.standing is not Standing.IN_PROGRESS:
        reason = f": {state.aside_reason}" if state.aside_reason else ""
        return f"{state.standing.value}{reason}"
    if now.suggestion is not None:
        return next_thing(now.line(now.suggestion.stage))
    return "every stage is done" if now.complete else "short of pieces: open it to see the choices"

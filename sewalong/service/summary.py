"""How a quilt stands, in short: what the list of quilts shows of it, kept beside its record.

Derived, never trusted over the record: it is stamped with the number of the last event, and
worked out anew whenever that or the program's version differs.
"""

from __future__ import annotations

import msgspec

from sewalong.progress.plan.plan import Plan
from sewalong.progress.record.state import Standing, State
from sewalong.progress.resuming.resume_facts import next_thing


class Summary(msgspec.Struct, frozen=True):
    """`work_done` is from 0 to 1; `next_stage` and its `label` are None where none can be done.

    `pick_up` is the next thing to pick up in one sentence, or how the quilt stands.
    """

    standing: Standing
    work_done: float
    next_stage: str | None
    label: str | None
    pick_up: str


def summary_of(state: State, now: Plan) -> Summary:
    """The summary of a quilt and its plan."""
    suggestion = now.suggestion
    line = now.line(suggestion.stage) if suggestion else None
    return Summary(
        standing=state.standing,
        work_done=round(now.work_done, 4),
        next_stage=line.stage.id if line else None,
        label=line.stage.label if line else None,
        pick_up=_pick_up(state, now),
    )


def to_json(summary: Summary) -> str:
    """The summary as it is kept."""
    return msgspec.json.encode(summary).decode()


def from_json(text: str) -> Summary | None:
    """A summary that was kept; None where it cannot be read and has to be worked out anew."""
    try:
        return msgspec.json.decode(text, type=Summary)
    except msgspec.MsgspecError:
        return None


def _pick_up(state: State, now: Plan) -> str:
    if state.standing is not Standing.IN_PROGRESS:
        reason = f": {state.aside_reason}" if state.aside_reason else ""
        return f"{state.standing.value}{reason}"
    if now.suggestion is not None:
        return next_thing(now.line(now.suggestion.stage))
    return "every stage is done" if now.complete else "short of pieces: open it to see the choices"

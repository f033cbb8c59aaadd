"""What to say after something was recorded: what it was, and how the quilt stands now."""

from __future__ import annotations

import json
from collections.abc import Sequence

from sewalong.cli.frame.report import Report
from sewalong.cli.sewing.log_words import event_words
from sewalong.progress.plan.plan import Plan, plan
from sewalong.progress.record.events import Recorded
from sewalong.progress.record.state import Standing, State
from sewalong.progress.resuming.resume_facts import next_thing, shortfall_in_words
from sewalong.progress.safety.closing_questions import Question, leaving_question
from sewalong.service.open_quilt import OpenQuilt
from sewalong.store.codec import event_to_json


def aftermath(
    quilt: OpenQuilt,
    recorded: Sequence[Recorded],
    *,
    first: Sequence[str] = (),
    aside: Sequence[str] = (),
    more: dict[str, object] | None = None,
) -> Report:
    """The report on a command: the events, `first`, then what comes next and what is owed.

    `more` is added to the data.
    """
    state = quilt.state
    now = plan(state)
    asked = owed(state, now)
    lines = [event_words(one.event, state, quilt.record) for one in recorded]
    lines += first
    lines += _next(state, now)
    if asked is not None:
        lines.append(f"{asked.ask} Answer with: sewalong answer {asked.id} yes (or no)")
    data: dict[str, object] = {
        "quilt": quilt.entry.name,
        "recorded": [event_data(one, state, quilt.record) for one in recorded],
        "suggested_stage": now.suggestion.stage if now.suggestion else None,
        "short": shortfall_in_words(state, now) or None,
        "ask": {"id": asked.id, "question": asked.ask} if asked else None,
        **(more or {}),
    }
    return Report(tuple(lines), data, aside=tuple(aside))


def _next(state: State, now: Plan) -> list[str]:
    if state.standing is not Standing.IN_PROGRESS:
        return []
    lines = []
    if now.suggestion is not None:
        lines.append(f"Next: {next_thing(now.line(now.suggestion.stage))}")
    elif now.complete:
        lines.append("Every stage is done. Mark the quilt done with: sewalong done")
    short = shortfall_in_words(state, now)
    if short:
        lines.append(f"Short: {short}")
    return lines


def owed(state: State, now: Plan) -> Question | None:
    """The question about the iron, when the person has turned or should turn from it."""
    turning_to = [state.chosen] if state.chosen else []
    if now.suggestion is not None:
        turning_to.append(now.suggestion.stage)
    for stage in turning_to:
        question = leaving_question(state, stage)
        if question is not None:
            return question
    return None


def event_data(one: Recorded, state: State, record: Sequence[Recorded]) -> dict[str, object]:
    """An event as data: its number, all it holds, and its words."""
    return {
        "seq": one.seq,
        **json.loads(event_to_json(one.event)),
        "words": event_words(one.event, state, record),
    }

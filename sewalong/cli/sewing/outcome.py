"""What to say after something was recorded: what it was, and how the quilt stands now."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

import msgspec

from sewalong.cli.frame.facts import sentences
from sewalong.cli.frame.report import Report
from sewalong.piecing.method import Stage
from sewalong.progress.joining.current_stage import which_facts
from sewalong.progress.plan.plan import Plan
from sewalong.progress.record.events.event import Recorded
from sewalong.progress.record.events.said import Mentioned
from sewalong.progress.record.events.sessions import SESSION_GAP
from sewalong.progress.record.state import Standing, State
from sewalong.progress.record.time_words import ago
from sewalong.progress.resuming.resume_facts import next_thing, shortfall_in_words
from sewalong.service.acting import Outcome
from sewalong.service.open_quilt import OpenQuilt


def aftermath(
    quilt: OpenQuilt,
    outcome: Outcome,
    *,
    first: Sequence[str] = (),
    aside: Sequence[str] = (),
    more: Mapping[str, object] | None = None,
) -> Report:
    """The report on an act: what happened, `first`, what comes next, and one thing besides.

    `more` is added to the data.
    """
    state, now = quilt.state, outcome.plan
    asked, short = outcome.question, shortfall_in_words(state, now)
    also = said_besides(outcome, short)
    lines = [*_which(quilt)]
    for one in done(outcome):
        lines += one.event.facts(state, quilt.record)
    lines += first
    lines += _next(state, now)
    if short and (also is None or also[0] != "short"):
        lines += sentences(f"Short: {short}")
    if also is not None:
        lines += sentences(also[1])
    data: dict[str, object] = {
        "quilt": quilt.entry.name,
        "recorded": [event_data(one, state, quilt.record) for one in done(outcome)],
        "suggested_stage": now.suggestion.stage if now.suggestion else None,
        "short": short or None,
        "ask": {"id": asked.id, "question": asked.ask} if asked else None,
        "also": {"kind": also[0], "line": also[1]} if also else None,
        **(more or {}),
    }
    return Report(tuple(lines), data, aside=tuple(aside), recorded=bool(outcome.recorded))


def _which(quilt: OpenQuilt) -> list[str]:
    """The quilt's name, where nobody named it and it was not touched just now."""
    last, now = quilt.entry.last_at, quilt.now()
    if quilt.named or abs(now - last) < SESSION_GAP:
        return []
    return [f"This quilt: {quilt.entry.name}, last touched {ago(last, now)}."]


def done(outcome: Outcome) -> list[Recorded]:
    """What the person did; that the program said something is no doing of hers."""
    return [one for one in outcome.recorded if not isinstance(one.event, Mentioned)]


def _next(state: State, now: Plan) -> list[str]:
    if state.standing is not Standing.IN_PROGRESS:
        return []
    if now.suggestion is not None:
        line = now.line(now.suggestion.stage)
        told = sentences(f"Next: {next_thing(line)}")
        # Told as it is: names of fabrics are hers, and are not taken apart.
        which = which_facts(state, line.stage) if isinstance(line.stage, Stage) else ()
        return [*told, *which]
    return [*_ALL_DONE] if now.complete else []


_ALL_DONE = ("Every stage is done.", "Mark the quilt done with: sewalong done")


def said_besides(outcome: Outcome, short: str) -> tuple[str, str] | None:
    """At most one thing, its kind and its line: a question owed, else the notice.

    A shortage is no notice but how things stand, and is told beside either.
    """
    asked, notice = outcome.question, outcome.notice
    if asked is not None:
        return "ask", f"{asked.ask} Answer with: sewalong answer {asked.id} yes (or no)"
    if notice is None or notice.kind == "short":
        return ("short", f"Short: {short}") if short else None
    if notice.kind == "at risk":
        return notice.kind, f"{notice.text} See: sewalong proof"
    return notice.kind, notice.text


def event_data(one: Recorded, state: State, record: Sequence[Recorded]) -> dict[str, object]:
    """An event as data: its number, all it holds, and its words."""
    held: dict[str, object] = msgspec.to_builtins(one.event)
    kind = held.pop("kind")
    return {"seq": one.seq, **held, "kind": kind, "words": one.event.in_full(state, record)}

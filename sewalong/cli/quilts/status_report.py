"""Where a quilt stands, as lines that read well aloud and as data for a script."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import datetime

from msgspec.structs import asdict

from sewalong.cli.frame.facts import each, sentences
from sewalong.piecing.method import Pieces
from sewalong.progress.joining.next_stage import then_in_words
from sewalong.progress.plan.plan import Plan, Shortfall, StageLine, out_of, plan
from sewalong.progress.record.events.every_kind import Recorded
from sewalong.progress.record.route import Route
from sewalong.progress.record.state import SessionRecord, State
from sewalong.progress.record.web_rows import next_seam, units_in_web
from sewalong.progress.resuming.coming_back import coming_back, facts
from sewalong.quilt.quilt import Target
from sewalong.quilt.web import passes


def status_lines(state: State, now: datetime, record: Sequence[Recorded] = ()) -> tuple[str, ...]:
    """One fact a line: the quilt, where the person was, every stage, what is over."""
    now_plan = plan(state)
    unit = state.route.piles[state.quilt.method.unit].noun
    units = now_plan.units
    lines = [
        f"This quilt: {state.quilt.name}",
        f"Method: {state.quilt.method.name}",
        f"Target: {state.target}",
        f"Wanted: {unit.count(state.units_wanted)} in all.",
    ]
    told = [*facts(coming_back(state, record, now)), *_afterwards(state, now_plan, now)]
    lines += (f"{label}: {text}" if label else text for label, text in told)
    for stage in now_plan.lines:
        lines += stage_words(stage)
    lines.append(f"Made: {unit.count(units.made)} so far.")
    lines.append(f"Possible: {unit.count(units.possible)} in all from what there is.")
    over = over_words(now_plan.over, state.route)
    lines += sentences(over) if over else []
    if state.quilt.notes:
        lines.append(f"About: {state.quilt.notes}")
    return tuple(lines)


def _afterwards(state: State, now_plan: Plan, now: datetime) -> Sequence[tuple[str, str]]:
    """What comes after the next stage, where that is near; of a quilt that is done what it came to."""
    if now_plan.suggestion is not None:
        then = then_in_words(state, now_plan, now_plan.line(now_plan.suggestion.stage))
        return [("", then)] if then else []
    # Loaded only for a quilt of which nothing more can be done.
    from sewalong.progress.resuming.done_facts import done_facts, is_done

    return done_facts(state, now_plan, now) if is_done(state, now_plan) else []


def stage_words(line: StageLine) -> list[str]:
    """A stage as it stands: "Sew around: 7 of 21 done.", "Sew around: 28 four-patches wait."."""
    facts = [f"{out_of(line.done, line.needed, 'done')}."]
    if line.from_cloth:
        facts.append("From cloth.")
    elif line.waiting:
        verb = "waits" if line.waiting == 1 else "wait"
        facts.append(f"{line.waiting_noun.count(line.waiting)} {verb}.")
    return each(line.stage.label.capitalize(), facts)


def over_words(over: tuple[Pieces, ...], route: Route) -> str:
    """What cannot make a whole unit; empty when nothing is over."""
    if not over:
        return ""
    pieces = " and ".join(route.piles[one.pile].noun.count(one.count) for one in over)
    return f"Over: {pieces}; not enough to make another whole one."


def status_data(state: State, key: str) -> dict[str, object]:
    """The same as data. `work_done` is from 0 to 1; times are ISO 8601 with their offset."""
    now_plan = plan(state)
    suggestion = now_plan.suggestion
    return {
        "quilt": state.quilt.name,
        "key": key,
        "standing": state.standing.value,
        "method": state.quilt.method_id,
        "method_name": state.quilt.method.name,
        "target": _layout(state, state.target),
        "suggested_stage": suggestion.stage if suggestion else None,
        "suggested_because": suggestion.reason if suggestion else None,
        "units": asdict(now_plan.units),
        "stages": [_stage(line) for line in now_plan.lines],
        "piles": {pile: state.piles[pile] for pile in state.route.piles},
        "places": dict(state.where),
        "missing": dict(state.missing),
        "press": dict(state.press),
        # Where nothing is begun the data are what they were before this could be said.
        **({"begun": _begun(state)} if state.begun else {}),
        **({"web": _web(state)} if state.quilt.is_web else {}),
        "over": _pieces(now_plan.over),
        "shortfall": _shortfall(state, now_plan),
        "last_session": _session(state.last_session),
        "settings": asdict(state.settings) if state.settings else None,
        "notes": [
            {"at": note.at.isoformat(), "session": note.session, "text": note.text}
            for note in state.notes
        ],
        "spoiled": [
            {"at": one.at.isoformat(), "pile": one.pile, "n": one.n, "reason": one.reason}
            for one in state.spoilage
        ],
        "work_done": round(now_plan.work_done, 4),
        "complete": now_plan.complete,
        "events": state.seq,
    }


def _begun(state: State) -> list[dict[str, int]]:
    return [{"pieces": n, "units": units} for n, units in state.begun]


def _web(state: State) -> dict[str, object]:
    """Units in each row, and the short seam that comes next; None once there is none."""
    seam = next_seam(state)
    place = None
    if seam is not None:
        place = {"pass": seam.number, "row": seam.row, "column": seam.column}
    passes_in_all = passes(state.target.columns)
    return {"passes": passes_in_all, "units_in_rows": list(units_in_web(state)), "next": place}


def _stage(line: StageLine) -> dict[str, object]:
    return {
        "id": line.stage.id,
        "label": line.stage.label,
        "station": line.stage.station.value,
        "counts": line.stage.counts.many,
        "needed": line.needed,
        "done": line.done,
        "to_do": line.to_do,
        "ready": line.ready,
        "waiting": line.waiting,
        "waiting_pieces": line.waiting_noun.many,
    }


def _layout(state: State, layout: Target) -> dict[str, int]:
    units = state.quilt.units_for(layout)
    return {"rows": layout.rows, "columns": layout.columns, "units": units}


def _pieces(pieces: tuple[Pieces, ...]) -> list[dict[str, object]]:
    return [{"pile": one.pile, "count": one.count} for one in pieces]


def _shortfall(state: State, now_plan: Plan) -> dict[str, object] | None:
    short: Shortfall | None = now_plan.shortfall
    if short is None:
        return None
    return {
        "units": short.units,
        "pieces": _pieces(short.pieces),
        "spare_after": short.spare_after,
        "layouts": [_layout(state, layout) for layout in short.layouts],
    }


def _session(session: SessionRecord | None) -> dict[str, object] | None:
    if session is None:
        return None
    return {
        "number": session.number,
        "opened": session.opened.isoformat(),
        "last_at": session.last_at.isoformat(),
        "ended": session.ended.isoformat() if session.ended else None,
        "open": session.is_open,
        "forgotten": session.forgotten,
        "counts": dict(session.counts),
        "answers": dict(session.answers),
        "next_step": session.next_step,
    }

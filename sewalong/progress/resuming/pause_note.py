"""The pause note: what has to be known next time, gathered from the record and not typed.

All of it is in the record already, or is asked as one answer with the last one offered;
closing a session can so forget nothing.
"""

from __future__ import annotations

from collections.abc import Iterator
from datetime import datetime

from msgspec import Struct

from sewalong.piecing.method import Noun
from sewalong.progress.measuring.proof import proof
from sewalong.progress.plan.plan import Plan
from sewalong.progress.record.state import State
from sewalong.progress.record.web_rows import lies_in_the_web
from sewalong.progress.resuming.concerns import missing_facts
from sewalong.progress.resuming.resume_facts import (
    next_thing,
    press_in_words,
    proved_by,
    rows_begun_in_words,
    settings_in_words,
)
from sewalong.progress.resuming.stop_advice import StopHere, stop_here


class PileToPlace(Struct, frozen=True):
    """A pile that was worked at in this session. `offered` is the last place said, if any:
    saying nothing keeps it."""

    pile: str
    n: int
    noun: Noun
    offered: str


class PauseNote(Struct, frozen=True):
    """`next_step` is the next thing to do with the hands as the plan has it. `piles` are asked
    about; `lines` are what the note says besides, each a label and a sentence. `stop` says
    whether this is a good place to stop."""

    next_step: str
    piles: tuple[PileToPlace, ...]
    stop: StopHere
    lines: tuple[tuple[str, str], ...]


def pause_note(state: State, now: datetime, now_plan: Plan) -> PauseNote:
    """The note for leaving now."""
    suggestion = now_plan.suggestion
    next_step = next_thing(now_plan.line(suggestion.stage)) if suggestion else ""
    missing = "; ".join(missing_facts(state))
    stale = proof(state, now)
    answers = state.session.answers if state.session else {}
    lines = [
        ("Next", next_step),
        ("Begun", rows_begun_in_words(state)),
        ("Machine", settings_in_words(state.settings) if state.settings else ""),
        ("Tested by", proved_by(state, now)),
        ("Seam", f"Not tested as it is now: {stale.why}." if stale.last and stale.why else ""),
        *_others(state, now),
        *(("Press", text) for text in press_in_words(state, now_plan)),
        ("Missing", f"{missing}." if missing else ""),
        *(("Asked", f"{thing}: {answer}.") for thing, answer in answers.items()),
    ]
    return PauseNote(
        next_step=next_step,
        piles=piles_to_place(state),
        stop=stop_here(state, now_plan),
        lines=tuple((label, text) for label, text in lines if text),
    )


def _others(state: State, now: datetime) -> Iterator[tuple[str, str]]:
    """The seams of others who sew at it, as they measured last."""
    if any(check.by for check in state.checks):
        from sewalong.progress.measuring.by_others import others_measured  # only where others sew

        yield from others_measured(state, now)


def piles_to_place(state: State) -> tuple[PileToPlace, ...]:
    """The piles touched in this session that hold something, in the order of making.

    A pile not touched lies where it lay, so it is not asked about.
    """
    session = state.session
    if session is None:
        return ()
    touched: set[str] = set()
    for stage in state.route.of_pieces:
        if session.counts.get(stage.id):
            touched |= {stage.makes.pile, *(taken.pile for taken in stage.takes)}
    return tuple(
        PileToPlace(id, state.piles[id], pile.noun, state.where.get(id, ""))
        for id, pile in state.route.piles.items()
        if id in touched and state.piles[id] and not lies_in_the_web(state, id)
    )

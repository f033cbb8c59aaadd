"""What now? The one stage in hand, and the words for it."""

from __future__ import annotations

from msgspec import Struct

from sewalong.piecing.method import Pieces, Stage
from sewalong.progress.joining.next_joins import join_in_words, joining
from sewalong.progress.joining.press_directions import press_words
from sewalong.progress.plan.plan import Plan, StageLine
from sewalong.progress.record.begun_rows import pieces_in_words
from sewalong.progress.record.route import (
    JOIN_ROWS,
    ROW,
    SEW_ROWS,
    SIDES_OF_A_BORDER,
    RouteStage,
    TopStage,
)
from sewalong.progress.record.state import State


class InHand(Struct, frozen=True):
    """The stage to show: its line in the plan, and its takes and makes in words.

    `which` says which row, seam or side comes next ("Join R2 to R3."), and is empty for the
    stages of the method. `makes` is empty where the top itself is worked on. `makes_pile` is the pile it fills, None for the top.
    """

    line: StageLine
    takes: str
    makes: str
    which: str
    makes_pile: str | None


def in_hand(state: State, now: Plan) -> InHand:
    """The stage chosen by hand until it is counted; else the suggested; else the last one."""
    if state.chosen_by_hand and state.chosen is not None:
        stage_id = state.chosen
    elif now.suggestion is not None:
        stage_id = now.suggestion.stage
    else:
        stage_id = state.chosen or now.lines[-1].stage.id
    line = now.line(stage_id)
    return InHand(
        line=line,
        takes=_takes(state, line.stage),
        makes=_makes(state, line.stage),
        which=_which(state, line),
        makes_pile=line.stage.makes.pile if isinstance(line.stage, Stage) else None,
    )


def _takes(state: State, stage: RouteStage) -> str:
    if isinstance(stage, TopStage):
        return "two rows, or rows already joined" if stage.id == JOIN_ROWS else "the top"
    return " and ".join(_pieces(state, taken) for taken in stage.takes)


def _makes(state: State, stage: RouteStage) -> str:
    if isinstance(stage, Stage):
        return _pieces(state, stage.makes)
    return "one wider piece of the top" if stage.id == JOIN_ROWS else ""


def _pieces(state: State, pieces: Pieces) -> str:
    return state.route.piles[pieces.pile].noun.count(pieces.count)


def _which(state: State, line: StageLine) -> str:
    stage = line.stage
    if not line.to_do:
        return ""
    done = state.done[stage.id]
    if stage.id == SEW_ROWS:
        begun = f"Begun: {pieces_in_words(state.begun)}. " if state.begun else ""
        return f"{begun}{press_words(state.piles[ROW.id] + 1)}"
    if not isinstance(stage, TopStage):
        return ""
    if stage.id == JOIN_ROWS:
        joins = joining(state).joins
        return join_in_words(joins[0]) if joins else ""
    if stage.id == "add-borders":
        border = state.quilt.borders[done // SIDES_OF_A_BORDER]
        side = done % SIDES_OF_A_BORDER + 1
        edge = "the two sides first" if side <= 2 else "now the top and bottom edges"
        return f"Border “{border.cloth}”: edge {side} of {SIDES_OF_A_BORDER}, {edge}."
    return f"{stage.counts.one.capitalize()} {done + 1} of {stage.steps}."

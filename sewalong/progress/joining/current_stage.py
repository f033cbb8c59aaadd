"""What now? The one stage in hand, and the words for it."""

from __future__ import annotations

from msgspec import Struct

from sewalong.piecing.method import Pieces, Stage
from sewalong.progress.joining.next_joins import join_in_words, joining
from sewalong.progress.joining.press_directions import press_words
from sewalong.progress.joining.web import seam_in_words
from sewalong.progress.plan.plan import Plan, StageLine, scarcest
from sewalong.progress.record.begun_rows import pieces_in_words
from sewalong.progress.record.route import (
    ADD_BORDERS,
    ADD_SASHES,
    JOIN_ROWS,
    SEW_ROWS,
    SIDES_OF_A_BORDER,
    RouteStage,
    TopStage,
)
from sewalong.progress.record.rows_sewn import row_begun, rows_of, rows_pile, rows_sewn
from sewalong.progress.record.stages.on_point import ADD_SIDES
from sewalong.progress.record.state import State
from sewalong.quilt.setting import SET_SIDE, SET_UNIT
from sewalong.quilt.web import SEW_WEB, START_WEB, WEB_PILES

ROW_STAGES = (SEW_ROWS, START_WEB, SEW_WEB)
"""The stages that sew units to rows."""


class InHand(Struct, frozen=True):
    """The stage to show: its line in the plan, and its takes and makes in words.

    `which` says which set, row, seam or side comes next ("Join R2 to R3."), and is empty where
    there is no telling. `makes` is empty where the top itself is worked on. `makes_pile` is the
    pile it fills, None for the top. `where` says where what waits lies, empty where nobody wrote
    it down.
    """

    line: StageLine
    takes: str
    makes: str
    which: str
    makes_pile: str | None
    where: str = ""


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
        where=_where(state, line),
    )


def _where(state: State, line: StageLine) -> str:
    """Where the pile lies that waits for a stage: of several the one that holds the fewest counts."""
    stage = line.stage
    pile = rows_pile(state.quilt).id if stage.id == JOIN_ROWS else scarcest(state, stage)
    return state.where.get(pile, "") if pile and line.waiting else ""


def _takes(state: State, stage: RouteStage) -> str:
    if stage.id == JOIN_ROWS:
        return "two rows, or rows already joined"
    pieces = " and ".join(_pieces(state, taken) for taken in stage.takes)
    if isinstance(stage, TopStage):
        return f"a row and {pieces}" if pieces else "the top"
    return pieces or "cloth"


def _makes(state: State, stage: RouteStage) -> str:
    if isinstance(stage, Stage):
        return _pieces(state, stage.makes)
    if stage.id == ADD_SASHES:
        return "a row with its sash"
    return "one wider piece of the top" if stage.id == JOIN_ROWS else ""


def _pieces(state: State, pieces: Pieces) -> str:
    return state.route.piles[pieces.pile].noun.count(pieces.count)


def _which(state: State, line: StageLine) -> str:
    stage = line.stage
    if not line.to_do:
        return ""
    done = state.done[stage.id]
    if stage.id == SEW_ROWS:
        return _which_row(state)
    if stage.id == ADD_SIDES:
        return _which_ends(state)
    if not isinstance(stage, TopStage):
        return " ".join(which_facts(state, stage))
    if stage.id == JOIN_ROWS:
        joins = joining(state).joins
        return join_in_words(joins[0]) if joins else ""
    if stage.id == ADD_SASHES:
        return _which_sash(state, done)
    if stage.id == ADD_BORDERS:
        border = state.quilt.borders[done // SIDES_OF_A_BORDER]
        side = done % SIDES_OF_A_BORDER + 1
        edge = _which_edge(state.quilt.choices.corners, side)
        return f"Border “{border.cloth}”: edge {side} of {SIDES_OF_A_BORDER}, {edge}."
    return f"{stage.counts.one.capitalize()} {done + 1} of {stage.steps}."


def which_facts(state: State, stage: Stage) -> tuple[str, ...]:
    """The seam of the web, the set or the unit that comes next at a stage of pieces, a sentence each;
    none for none."""
    if state.quilt.is_web and stage.makes.pile in WEB_PILES:
        return tuple(filter(None, (seam_in_words(state), *_which_unit(state, stage.id))))
    if which := which_set(state, stage.id):
        return (which,)
    return _which_unit(state, stage.id)


def _which_unit(state: State, stage: str) -> tuple[str, ...]:
    """The row in hand of a top that is laid, and the unit that is sewn to it next; none where no row
    is sewn there, or nothing lies on the wall."""
    if not state.wall.is_laid or stage not in ROW_STAGES:
        return ()
    from sewalong.progress.joining.row_in_hand import next_unit_facts, row_facts

    return next_unit_facts(state) if state.quilt.is_web else row_facts(state)


def next_unit(state: State, stage: str) -> str:
    """The unit that is sewn next to the row in hand, and how it lies; empty where no row is sewn
    there, nothing lies on the wall, or nobody knows."""
    if not state.wall.is_laid or stage not in ROW_STAGES:
        return ""
    # Nobody without a wall has to load what lies on one.
    from sewalong.progress.joining.row_in_hand import next_unit_words

    return next_unit_words(state)


def which_set(state: State, stage: str) -> str:
    """The set in hand at a stage of the method, in a sentence; empty where there is none."""
    if not state.sets.sets:
        return ""
    # It takes the geometry of the method, which nobody without sets has to load.
    from sewalong.progress.sets.in_hand import set_in_hand
    from sewalong.progress.sets.set_words import in_hand_words

    found = set_in_hand(state, stage)
    return in_hand_words(state, found) if found else ""


def _which_edge(corners: str, side: int) -> str:
    """Which edges a border goes on by turns; mitred, all four before the corners."""
    if corners == "mitred":
        return "to one seam allowance from each corner; the corners are sewn last"
    sides, ends = "the two sides", "the top and bottom edges"
    first, then = (sides, ends) if corners == "sides first" else (ends, sides)
    return f"{first} first" if side <= SIDES_OF_A_BORDER // 2 else f"now {then}"


def _which_sash(state: State, done: int) -> str:
    """Sashes taken to be put on from row 1 down: the outer one first, then one below each row."""
    sashing = state.quilt.sashing
    row = done if sashing is not None and sashing.frame else done + 1
    if not row:
        return "Row 1: the outer edge first, the one no other row is joined to."
    if row == 1:
        return "Row 1: the edge towards row 2."
    return f"Row {row}: the edge away from row 1."


def _which_row(state: State) -> str:
    """The row in hand and how its seams are pressed; on point how many units it has, too."""
    if not state.quilt.is_on_point:
        unit = " ".join(_which_unit(state, SEW_ROWS))
        begun = f"Begun: {pieces_in_words(state.begun)}. " if state.begun and not unit else ""
        press = press_words(rows_sewn(state) + 1, sashed=state.quilt.sashing is not None)
        return f"{unit} {press}" if unit else f"{begun}{press}"
    row = row_begun(state, SET_UNIT.id)
    if not row:
        return ""
    noun = state.route.piles[state.quilt.method.unit].noun
    words = f"{press_words(row)} It has {noun.count(rows_of(state)[row - 1].units)}."
    return " ".join((*_which_unit(state, SEW_ROWS), words))


def _which_ends(state: State) -> str:
    """The ends the next side triangles go on; at a corner of the top there is none."""
    row = row_begun(state, SET_SIDE.id)
    if not row:
        return ""
    sides = rows_of(state)[row - 1].sides
    ends = "at both ends" if sides == 2 else "at one end: the other is a corner of the top"
    return f"Row {row}: {ends}."

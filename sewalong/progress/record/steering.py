"""Where to go: the stage to work at, and the layout wanted."""

from __future__ import annotations

from collections.abc import Sequence
from typing import ClassVar

from sewalong.progress.record.begun_rows import rows_begun
from sewalong.progress.record.event import Event, Recorded, label_of
from sewalong.progress.record.limits import a_stage, are
from sewalong.progress.record.on_the_top import joined_rows, last_on_the_top
from sewalong.progress.record.refused import Refused
from sewalong.progress.record.route import JOIN_ROWS, ROW
from sewalong.progress.record.state import State
from sewalong.progress.record.tally import Tally
from sewalong.quilt.quilt import Target
from sewalong.quilt.rules import MOST_ROWS


class StageChosen(Event, frozen=True, kw_only=True, tag="stage chosen"):
    """The person turned to another stage."""

    undoable: ClassVar[bool] = False

    stage: str

    def check(self, state: State) -> None:
        a_stage(state, self.stage)

    def apply(self, tally: Tally, seq: int) -> None:
        # The change of target that brought this stage may have been undone since.
        if tally.route.stage(self.stage) is not None:
            tally.chosen, tally.chosen_by_hand = self.stage, True

    def words(self, state: State, record: Sequence[Recorded]) -> str:
        return f"Working at {label_of(state, self.stage)}."


class TargetChanged(Event, frozen=True, kw_only=True, tag="target changed"):
    """Other rows and columns are wanted."""

    rows: int
    columns: int

    def check(self, state: State) -> None:
        must_be_within_reach(state, self.rows, self.columns)

    def apply(self, tally: Tally, seq: int) -> None:
        tally.retarget(Target(self.rows, self.columns))
        tally.can_undo(seq)

    def words(self, state: State, record: Sequence[Recorded]) -> str:
        return f"The target is now {self.rows} × {self.columns}."


def must_be_within_reach(state: State, rows: int, columns: int) -> None:
    """Raise Refused for a layout that contradicts what is sewn, or is wanted already."""
    if not (1 <= rows <= MOST_ROWS and 1 <= columns <= MOST_ROWS):
        raise Refused(f"Rows and columns are numbers from 1 to {MOST_ROWS}.")
    if (rows, columns) == (state.target.rows, state.target.columns):
        raise Refused(f"The target is {state.target} already.")
    sewn = state.piles[ROW.id]
    if sewn and columns != state.target.columns:
        raise Refused(
            f"{ROW.noun.count(sewn)} of {state.target.columns} {are(sewn)} sewn already. "
            f"Unpick {'it' if sewn == 1 else 'them'} first, "
            f"or keep {state.target.columns} across."
        )
    _rows_begun_stay(state, rows, columns)
    past_joining = last_on_the_top(state, after=state.route.stage(JOIN_ROWS))
    if past_joining is not None:
        raise Refused(
            f"The top has been through {past_joining.label} already. Unpick that first, "
            f"or keep {state.target}."
        )
    last = max((second for _, second in state.joints), default=0)
    if last > rows:
        raise Refused(
            f"Rows {last - 1} and {last} are joined already. Unpick that first, "
            f"or keep {last} rows."
        )
    in_the_top = joined_rows(state)
    if in_the_top > rows:
        raise Refused(
            f"{ROW.noun.count(in_the_top)} are joined already. "
            f"Unpick {in_the_top - rows} first, or keep {in_the_top} rows."
        )


def _rows_begun_stay(state: State, rows: int, columns: int) -> None:
    """A piece of a row begun must be shorter than a row, and no more rows begun than are to sew."""
    longest = max((units for _, units in state.begun), default=0)
    if longest >= columns:
        raise Refused(
            f"A row is begun with {longest} units sewn together. Say what is still sewn of it, or "
            f"keep more than {longest} across."
        )
    rows_to_be = state.piles[ROW.id] + len(rows_begun(state.begun, columns))
    if state.begun and rows_to_be > rows:
        raise Refused(
            f"{ROW.noun.count(rows_to_be)} {are(rows_to_be)} sewn or begun already. Say what is "
            f"still sewn of those begun, or keep {ROW.noun.count(rows_to_be)}."
        )

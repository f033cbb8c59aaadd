"""Rows that are begun and not whole yet, so that half a row or a chain of pairs is not lost."""

from __future__ import annotations

from collections.abc import Sequence

from sewalong.progress.record.begun_rows import (
    Begun,
    in_order,
    pieces_in,
    pieces_in_words,
    rows_begun,
    units_across,
)
from sewalong.progress.record.events.counting import count_after_going_on
from sewalong.progress.record.events.event import Event, Recorded, noun_of
from sewalong.progress.record.limits import MOST_AT_ONCE, a_stage, are, lie
from sewalong.progress.record.refused import Refused
from sewalong.progress.record.route import ROW, SEW_ROWS
from sewalong.progress.record.state import State
from sewalong.progress.record.tally import Tally


class RowsBegun(Event, frozen=True, kw_only=True, tag="rows begun"):
    """What lies sewn of the rows in hand now, whatever was written down of them before.

    `pieces` are so many of so many units each, the longest first: 5 of the 9 units of a row are
    ((1, 5),), all pairs of the next four ((16, 2),). Empty: nothing is begun any more, and what
    was is loose again. `rows` is how many rows they begin.
    """

    pieces: Begun
    rows: int

    def check(self, state: State) -> None:
        if state.quilt.is_on_point:
            raise Refused(
                "Rows on point differ in length and are counted unit by unit: count the units that "
                "are sewn into them at sew rows."
            )
        if state.quilt.is_web:
            raise Refused(
                "In a web no row is begun by itself: count each seam of a pass at start web or sew web."
            )
        unit = state.quilt.method.unit
        across, now = units_across(state.route, unit), self.pieces
        for n, units in now:
            _a_piece(n, units, across)
        if in_order(now) != now or len(rows_begun(now, across)) != self.rows:
            raise Refused("Say each length of piece once, the longest first.")
        if now == state.begun:
            raise Refused("That is how it stands already. Nothing was recorded.")
        to_sew = max(0, state.target.rows - state.piles[ROW.id])
        if self.rows > to_sew:
            raise Refused(
                f"{ROW.noun.count(self.rows)} would be begun with {pieces_in_words(now)}, and "
                f"{ROW.noun.count(to_sew)} {are(to_sew)} still to sew. Count the rows that are "
                "whole, or change the target first."
            )
        stage = a_stage(state, SEW_ROWS)
        held = pieces_in(stage, unit, state.begun)
        for pile, wanted in pieces_in(stage, unit, now).items():
            there = state.piles[pile] + held[pile]
            if wanted > there:
                noun = noun_of(state, pile)
                raise Refused(
                    f"{noun.count(wanted)} would be in {pieces_in_words(now)}, and only "
                    f"{noun.count(there)} {lie(there)} there. If more do, recount that pile first."
                )

    def apply(self, tally: Tally, seq: int) -> None:
        stage, unit = tally.route.stage(SEW_ROWS), tally.quilt.method.unit
        if stage is not None:
            held = pieces_in(stage, unit, tally.begun)
            for pile, wanted in pieces_in(stage, unit, self.pieces).items():
                tally.change(pile, held[pile] - wanted)
        tally.begun = self.pieces
        tally.work_at(SEW_ROWS)
        count_after_going_on(self, tally, seq)

    def words(self, state: State, record: Sequence[Recorded]) -> str:
        if not self.pieces:
            return "No row is begun any more."
        return f"Begun: {pieces_in_words(self.pieces)}, for {ROW.noun.count(self.rows)}."


def _a_piece(n: int, units: int, across: int) -> None:
    if not 1 <= n <= MOST_AT_ONCE or units < 2:
        raise Refused("A piece of a row is two units or more sewn together. Say how many units.")
    if units == across:
        raise Refused(f"{units} units are a whole row: count it instead.")
    if units > across:
        raise Refused(
            f"A row has {across} units, so no piece of one has {units}. Count its units again."
        )

"""Writing down rows that are begun."""

from __future__ import annotations

from typing import ClassVar

from sewalong.progress.acts.act import Act, Now
from sewalong.progress.acts.counting import before_a_count
from sewalong.progress.record.begun_rows import Begun, in_order, rows_begun, units_across
from sewalong.progress.record.events.begun import RowsBegun
from sewalong.progress.record.events.event import Event
from sewalong.progress.record.limits import a_stage
from sewalong.progress.record.route import SEW_ROWS
from sewalong.progress.record.state import State


class BeginRows(Act, frozen=True):
    """So many pieces of so many units lie sewn of the rows in hand; see `RowsBegun`.

    `caution_read` says that the caution now due was read.
    """

    needs_progress: ClassVar[bool] = True

    pieces: Begun
    caution_read: bool = False

    def decide(self, state: State, now: Now) -> tuple[Event, ...]:
        pieces = in_order(self.pieces)
        across = units_across(state.route, state.quilt.method.unit)
        # Whole rows, or more, are refused by the check; they are no rows begun.
        fits = all(units <= across for _, units in pieces)
        begun = RowsBegun(
            at=now.at,
            session=now.session,
            pieces=pieces,
            rows=len(rows_begun(pieces, across)) if fits else 0,
        )
        begun.check(state)
        if not pieces:
            return (begun,)
        stage = a_stage(state, SEW_ROWS)
        return (*before_a_count(state, stage, now, caution_read=self.caution_read), begun)

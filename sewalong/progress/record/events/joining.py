"""Rows joined by their numbers."""

from __future__ import annotations

from collections.abc import Sequence

from sewalong.progress.record.events.counting import can_count, count_after_going_on
from sewalong.progress.record.events.event import Event, Recorded
from sewalong.progress.record.joined_rows import joined, neighbours
from sewalong.progress.record.limits import a_stage, short
from sewalong.progress.record.refused import Refused
from sewalong.progress.record.route import JOIN_ROWS
from sewalong.progress.record.rows_sewn import rows_wanted
from sewalong.progress.record.state import State
from sewalong.progress.record.tally import Tally


class RowsJoined(Event, frozen=True, kw_only=True, tag="rows joined"):
    """One seam between two neighbouring rows, `first` the one nearer row 1."""

    first: int
    second: int

    def check(self, state: State) -> None:
        """The rows must be neighbours before it matters whether a seam can be sewn."""
        rows = rows_wanted(state)
        for row in (self.first, self.second):
            if not 1 <= row <= rows:
                raise Refused(
                    f"There is no row {short(row)}: the rows are numbered from 1 to {rows}. "
                    "Read the tag again, the right way up."
                )
        if not neighbours(self.first, self.second) or self.first > self.second:
            raise Refused(
                f"Rows {self.first} and {self.second} are not neighbours. Nothing was counted. "
                f"Row {self.first} goes to {_beside(self.first, rows)}, row {self.second} to "
                f"{_beside(self.second, rows)}. Read both tags again, the right way up."
            )
        if joined(state, self.first, self.second):
            raise Refused(
                f"Rows {self.first} and {self.second} are joined already. Read the tags again."
            )
        can_count(state, a_stage(state, JOIN_ROWS), 1)

    def apply(self, tally: Tally, seq: int) -> None:
        tally.count(JOIN_ROWS, 1)
        tally.joints.append((self.first, self.second))
        count_after_going_on(self, tally, seq)

    def words(self, state: State, record: Sequence[Recorded]) -> str:
        return f"Joined rows {self.first} and {self.second}."


def _beside(row: int, rows: int) -> str:
    return " or ".join(str(other) for other in (row - 1, row + 1) if 1 <= other <= rows)

"""Whether two rows may be joined."""

from __future__ import annotations

from datetime import datetime

from sewalong.progress.acts import commands as c
from sewalong.progress.acts.commands import Refused
from sewalong.progress.record import events as e
from sewalong.progress.record.joined_rows import joined, neighbours
from sewalong.progress.record.state import State


def join_rows(state: State, command: c.JoinRows, at: datetime, session: int) -> e.RowsJoined:
    """One seam between two rows called by their numbers; whether a seam can be sewn at all is
    asked before this. Raises Refused when they are no neighbours or joined already."""
    first, second = sorted((command.first, command.second))
    rows = state.target.rows
    for row in (first, second):
        if not 1 <= row <= rows:
            raise Refused(
                f"There is no row {row}: the rows are numbered from 1 to {rows}. "
                "Read the tag again, the right way up."
            )
    if not neighbours(first, second):
        raise Refused(
            f"Rows {first} and {second} are not neighbours. Nothing was counted. "
            f"Row {first} goes to {_beside(first, rows)}, row {second} to "
            f"{_beside(second, rows)}. Read both tags again, the right way up."
        )
    if joined(state, first, second):
        raise Refused(f"Rows {first} and {second} are joined already. Read the tags again.")
    return e.RowsJoined(at=at, session=session, first=first, second=second)


def _beside(row: int, rows: int) -> str:
    return " or ".join(str(other) for other in (row - 1, row + 1) if 1 <= other <= rows)

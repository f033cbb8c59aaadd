"""The top sewn as a web: column by column without cutting a thread, then the rows to one another.

Each pass sews one more unit to every row; the threads between the rows keep them in order until
the long seams. There are as many seams as by rows.
"""

from __future__ import annotations

from sewalong.quilt.quilt import Target


def in_place_reversed(rows: int) -> int:
    """Units of a column that lie in their row though it was picked up the wrong way round: the
    middle one of an odd number, else none."""
    return rows % 2


def web_words(target: Target) -> str:
    """How it is done and counted here, and what to look at before each pass; empty for a layout of
    one row or one column."""
    rows, columns = target.rows, target.columns
    if rows < 2 or columns < 2:
        return ""
    passes = columns - 1
    seams = passes * rows
    right = f"only the unit of row {(rows + 1) // 2}" if in_place_reversed(rows) else "none"
    return (
        f"Or as a web: {passes} pass{'' if passes == 1 else 'es'} of {rows}, {seams} short seams, a "
        f"column to the one before, the threads between the rows uncut; then {rows - 1} long ones: "
        f"{seams + rows - 1} seams, as many as by rows. Before each pass compare the first and the "
        f"last unit of the column: picked up the wrong way round, {right} would lie in its row. "
        f"{_written_down(rows, columns)}"
    )


def _written_down(rows: int, columns: int) -> str:
    if columns < 3:
        return f"After it count {rows} rows."
    then = f", then {rows} of 3" if columns > 3 else ""
    return f"Write down each pass as rows begun: {rows} pairs{then}."

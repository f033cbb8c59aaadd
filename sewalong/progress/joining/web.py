"""The top sewn as a web: column by column without cutting a thread, then the rows to one another.

Each pass sews one more unit to every row; the threads between the rows keep them in order until
the long seams. There are as many seams as by rows.
"""

from __future__ import annotations

from itertools import groupby

from sewalong.progress.record.state import State
from sewalong.progress.record.web_rows import next_seam, units_in_web
from sewalong.quilt.quilt import Target
from sewalong.quilt.web import passes as passes_of


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
    passes = passes_of(columns)
    seams = passes * rows
    right = f"only the unit of row {(rows + 1) // 2}" if in_place_reversed(rows) else "none"
    return (
        f"Or as a web: {passes} pass{'' if passes == 1 else 'es'} of {rows}, {seams} short seams, a "
        f"column to the one before, the threads between the rows uncut; then {rows - 1} long ones: "
        f"{seams + rows - 1} seams, as many as by rows. Before each pass compare the first and the "
        f"last unit of the column: picked up the wrong way round, {right} would lie in its row. "
        f"{_IN_THE_PLAN}"
    )


def seam_in_words(state: State) -> str:
    """ "Pass 4 of 8: next column 5, row 6."; empty once all short seams are sewn."""
    seam = next_seam(state)
    if seam is None:
        return ""
    next_one = f"next column {seam.column}, row {seam.row}"
    if seam.number == 1:
        next_one = f"next row {seam.row}, columns 1 and 2"
    return f"Pass {seam.number} of {seam.passes}: {next_one}."


def web_begun_facts(state: State) -> tuple[str, ...]:
    """How far the web is, and what holds its order, a sentence each; none where nothing of it is
    sewn, or all."""
    seam = next_seam(state)
    if seam is None or (seam.number, seam.row) == (1, 1):
        return ()
    done = f"A web, {seam.number - 1} of {seam.passes} passes sewn."
    uncut = "Leave the threads between the rows uncut."
    return tuple(filter(None, (done, seam_in_words(state), rows_hold(state), uncut)))


def rows_hold(state: State) -> str:
    """What can be counted on the table inside a pass, such as "Rows 1 to 5 hold 5 units, rows 6 to 9
    hold 4."; empty where no pass is half sewn."""
    seam = next_seam(state)
    if seam is None or seam.is_first:
        return ""
    numbered = enumerate(units_in_web(state), start=1)
    runs = [
        (units, [row for row, _ in run]) for units, run in groupby(numbered, key=lambda one: one[1])
    ]
    (most, long_ones), *others = runs
    said = [_hold(run[0], run[-1], str(units or "none yet")) for units, run in others]
    first = _hold(long_ones[0], long_ones[-1], f"{most} units")
    return f"{', '.join([first, *said]).capitalize()}."


def _hold(first: int, last: int, units: str) -> str:
    if first == last:
        return f"row {first} holds {units}"
    return f"rows {first} {'and' if last == first + 1 else 'to'} {last} hold {units}"


def before_the_seam(state: State) -> str:
    """What to look at before the first and the last seam of a pass, where a column picked up the
    wrong way round shows; empty before every other."""
    seam = next_seam(state)
    if seam is None:
        return ""
    if seam.is_first:
        return (
            f"Before you sew: is the first unit of column {seam.column}'s pile row 1's, the end "
            "towards row 1 first?"
        )
    if seam.is_last:
        return (
            f"After this seam: does row {seam.rows} hold as many units as row 1, and is its last one "
            f"row {seam.rows}'s?"
        )
    return ""


_IN_THE_PLAN = 'To count it seam by seam, write joined = "web" under [layout] in the quilt file.'

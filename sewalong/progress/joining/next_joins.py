"""Which joins can be sewn now, and how far joining has come."""

from __future__ import annotations

from msgspec import Struct

from sewalong.progress.joining.join_order import Join, Run, join_tree, levels
from sewalong.progress.joining.row_tags import row_label
from sewalong.progress.record.joined_rows import unnumbered
from sewalong.progress.record.on_the_top import sashed_rows
from sewalong.progress.record.readiness import ready
from sewalong.progress.record.route import ADD_SASHES, JOIN_ROWS
from sewalong.progress.record.rows_sewn import rows_sewn, rows_wanted
from sewalong.progress.record.state import State


class Joining(Struct, frozen=True):
    """How far joining is. `seams` are wanted in all, `done` sewn, `can` possible now.

    `unnumbered` seams were counted without saying which rows; while there are any, nobody
    can say which joins are left, and `joins` is empty. `pieces` are the runs of rows that
    are one piece, single rows included. `joins` come next in the order to sew them: all of
    the level in hand, as far as the rows sewn so far can be rows 1 and on.
    """

    seams: int
    done: int
    can: int
    unnumbered: int
    levels: int
    pieces: tuple[Run, ...]
    joins: tuple[Join, ...]
    lines: tuple[str, ...]


def joining(state: State) -> Joining:
    """How far joining is, and which joins come next, in pairs."""
    rows = rows_wanted(state)
    stage = state.route.stage(JOIN_ROWS)
    done = state.done.get(JOIN_ROWS, 0)
    can = ready(state, stage) if stage is not None else 0
    loose = unnumbered(state)
    joins = _next(state, rows) if can and not loose else ()
    return Joining(
        seams=max(0, rows - 1),
        done=done,
        can=can,
        unnumbered=loose,
        levels=levels(rows),
        pieces=pieces(state),
        joins=joins[:can],
        lines=_lines(state, joins[:can], can, loose),
    )


def pieces(state: State) -> tuple[Run, ...]:
    """The rows of the target as far as they are joined by their numbers, from row 1."""
    runs: list[Run] = []
    for row in range(1, rows_wanted(state) + 1):
        if runs and (row - 1, row) in state.joints:
            runs[-1] = (runs[-1][0], row)
        else:
            runs.append((row, row))
    return tuple(runs)


def _next(state: State, rows: int) -> tuple[Join, ...]:
    """The joins whose own parts are whole, the lowest level first.

    Rows are taken to be sewn from row 1 on while some are still to sew, and sashes put on so.
    """
    sewn = min(rows, rows_sewn(state))
    # A sash lies between two rows, so the row above must have its own.
    sashed = sashed_rows(state) if ADD_SASHES in state.done else rows
    joined = set(state.joints)
    left = [join for join in join_tree(rows) if (join.first, join.second) not in joined]
    return tuple(
        join
        for join in left
        if join.below[1] <= sewn
        and join.first <= sashed
        and not any(_within(other, join.above) or _within(other, join.below) for other in left)
    )


def _within(join: Join, run: Run) -> bool:
    return run[0] <= join.above[0] and join.below[1] <= run[1]


def _lines(state: State, joins: tuple[Join, ...], can: int, loose: int) -> tuple[str, ...]:
    rows = rows_wanted(state)
    if rows < 2:
        return ("One row is the whole top: there is nothing to join.",)
    stage_done = state.done.get(JOIN_ROWS, 0)
    if stage_done >= rows - 1:
        return (f"All {rows} rows are joined.",)
    seams = rows - 1 - stage_done
    left = f"{seams} seam{'' if seams == 1 else 's'} to go"
    if loose:
        return (
            f"{left}.",
            f"{loose} of those sewn {'was' if loose == 1 else 'were'} counted without numbers, "
            "so which come next is not known: look at the tags.",
        )
    if not joins:
        if not can and ADD_SASHES in state.done and rows_sewn(state) > stage_done + 1:
            return (f"{left}.", "Add the sash between two rows first.")
        sew = (
            "Sew more rows first."
            if not can
            else "Sew the next row first: rows are joined two by two."
        )
        return (f"{left}.", sew)
    said = [f"{left}.", *(join_in_words(join) for join in joins)]
    if (most := levels(rows)) > 1:
        said.append(f"Joined so, two by two, no row goes under the needle more than {most} times.")
    if rows_sewn(state) < rows:
        said.append("That is if the rows are sewn from row 1 on, else the tags decide.")
    return tuple(said)


def join_in_words(join: Join) -> str:
    """ "Join R2 to R3: rows 1 and 2 to rows 3 and 4." """
    seam = f"Join {row_label(join.first)} to {row_label(join.second)}"
    if join.rows == 2:
        return f"{seam}."
    return f"{seam}: {_run(join.above)} to {_run(join.below)}."


def _run(run: Run) -> str:
    first, last = run
    if first == last:
        return f"row {first}"
    return f"rows {first} {'and' if last == first + 1 else 'to'} {last}"

"""One square more of the row in hand is sewn: as what is said of rows begun, or as the count it is.

Nothing of its own is recorded: a row that is begun is as many units sewn together as it always was,
so each square is on the disk at once, and each is taken back by one undo.
"""

from __future__ import annotations

from sewalong.progress.acts.begun import BeginRows
from sewalong.progress.acts.counting import Count
from sewalong.progress.joining.row_in_hand import row_in_hand
from sewalong.progress.record.begun_rows import in_order, left_begun
from sewalong.progress.record.events.wall import must_be_laid
from sewalong.progress.record.refused import Refused
from sewalong.progress.record.route import SEW_ROWS
from sewalong.progress.record.state import State
from sewalong.quilt.web import IN_A_START, SEW_WEB, START_WEB


def sew_next(state: State) -> BeginRows | Count:
    """One unit more is sewn to the row in hand: what is begun grows by it, and the last one makes the
    row. On point and in a web units are counted one by one anyhow.

    Raises Refused where nothing is laid, every row is sewn, or nobody knows which place is next.
    """
    now = row_in_hand(state)
    if now is None:
        must_be_laid(state)
        raise Refused("Every row is sewn, or nothing lies on the wall: there is no row in hand.")
    if not now.next:
        raise Refused(
            f"Row {now.row} is sewn in several pieces, so nobody can say which place is next. Sew "
            "them together and say how many units hang together then."
        )
    if state.quilt.is_on_point or state.quilt.is_web:
        first = state.quilt.is_web and now.next == (1, IN_A_START)
        return Count(START_WEB if first else SEW_WEB if state.quilt.is_web else SEW_ROWS)
    sewn = now.next[-1]
    if sewn == now.units:
        return Count(SEW_ROWS)
    others = left_begun(state.begun, now.units, 1) if now.sewn else state.begun
    return BeginRows(in_order((*others, (1, sewn))))

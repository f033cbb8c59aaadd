"""Which neighbouring rows are joined, as far as their numbers were given, and what lies there."""

from __future__ import annotations

from sewalong.piecing.method import Noun
from sewalong.progress.record.limits import a_stage
from sewalong.progress.record.readiness import ready
from sewalong.progress.record.route import JOIN_ROWS, ROW
from sewalong.progress.record.rows_sewn import rows_sewn, rows_wanted
from sewalong.progress.record.state import State


def unnumbered(state: State) -> int:
    """Seams between rows that were counted without saying which rows."""
    return state.done.get(JOIN_ROWS, 0) - len(state.joints)


def asks_which_rows(state: State, stage: str) -> bool:
    """Whether a join that is counted at `stage` is to be told by its rows: while all so far were.

    Once one was counted without, nobody can say which are left, and no further one is asked about.
    """
    return stage == JOIN_ROWS and not unnumbered(state) and ready(state, a_stage(state, stage)) > 0


def joined(state: State, first: int, second: int) -> bool:
    """Whether these two neighbours are joined by their numbers, in either order."""
    return (min(first, second), max(first, second)) in state.joints


def neighbours(first: int, second: int) -> bool:
    """Whether rows of these numbers lie side by side."""
    return abs(first - second) == 1


def pieces_to_join(state: State) -> tuple[int, Noun]:
    """What lies there to be joined, and what to call it: "4 pairs of rows", "3 pieces of 1 to 4
    rows", "5 pieces (9 rows in all)"; nothing once the top is one piece.

    Every seam makes one piece of two, so how many there are is known even where rows were
    joined without their numbers; which rows are in which is not known then.
    """
    rows, seams = rows_sewn(state), state.done.get(JOIN_ROWS, 0)
    if seams and seams >= rows_wanted(state) - 1:
        return 0, ROW.noun
    if not seams:
        return rows, ROW.noun
    sizes = _sizes(state)
    single = rows - sum(sizes)
    if unnumbered(state) or single < 0:
        what = f"{{}} ({ROW.noun.count(rows)} in all)"
    elif single or len(set(sizes)) > 1:
        least, most = 1 if single else min(sizes), max(sizes)
        what = f"{{}} of {least} {'or' if most == least + 1 else 'to'} {most} rows"
    elif sizes[0] == 2:
        return rows - seams, Noun("pair of rows", "pairs of rows")
    else:
        what = f"{{}} of {sizes[0]} rows"
    return rows - seams, Noun(what.format("piece"), what.format("pieces"))


def _sizes(state: State) -> list[int]:
    """The rows in every piece that is joined by numbers."""
    sizes: list[int] = []
    last = 0
    for first, second in sorted(state.joints):
        if first == last:
            sizes[-1] += 1
        else:
            sizes.append(2)
        last = second
    return sizes

"""Whether the seams of rows nest as the rows lie now, by what each was pressed under."""

from __future__ import annotations

from sewalong.progress.record.sewn_places import units_sewn
from sewalong.progress.record.state import State
from sewalong.progress.record.web_rows import rows_joined
from sewalong.wall.laying.pressing import NotNesting, not_nesting

ALL_NEST = NotNesting((), ())


def nesting(state: State) -> NotNesting:
    """Where rows that are sewn do not nest, and which to press anew. Rows of a wall that was never
    laid lie as they were sewn; with sashes all are pressed towards these, and nest in any order; on
    point none changes places."""
    if state.quilt.setting is not None or not state.wall.pressed:
        return ALL_NEST
    rows = zip(state.wall.pressed, units_sewn(state), strict=False)
    pressed = [under if units else None for under, units in rows]
    return not_nesting(pressed, rows_joined(state))


def press_anew_words(state: State, first: int, second: int) -> str:
    """What to do before two neighbouring rows are joined that were pressed the same way; empty where
    they nest."""
    found = nesting(state)
    if (first, second) not in found.collide:
        return ""
    row = next(row for row in (first, second) if row in found.anew)
    return (
        f"Rows {first} and {second} were pressed the same way: press row {row} the other way before "
        "you join them."
    )


def nesting_facts(state: State) -> tuple[str, ...]:
    """Neighbours that are not joined yet and do not nest as they lie, and which rows to press anew, a
    sentence each; none where all nest."""
    found = nesting(state)
    joins = [pair for pair in found.collide if pair not in state.joints]
    if not joins:
        return ()
    joined = rows_joined(state)
    anew, then = found.anew, ", and all nest"
    if not joined.isdisjoint(anew):
        # Its allowances are caught in the seam: only the loose row of a pair can still be pressed.
        anew, then = tuple(sorted({row for pair in joins for row in pair} - joined)), ""
    rows = ", ".join(map(str, anew))
    press = f"Press row{'' if len(anew) == 1 else 's'} {rows} the other way{then}."
    return (
        *(f"Rows {a} and {b} lie ridge on ridge." for a, b in joins),
        *([press] if anew else []),
    )

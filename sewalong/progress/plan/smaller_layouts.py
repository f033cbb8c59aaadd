"""Smaller layouts that so many units would fill, when the one wanted is out of reach."""

from __future__ import annotations

from sewalong.quilt.quilt import Target
from sewalong.quilt.set_rows import most_columns, units_in
from sewalong.quilt.setting import Setting

MOST_OFFERED = 3
"""Layouts offered at once: what one line of the screen holds."""
LONGEST_SHAPE = 2.0
"""No layout more than twice as long as wide is offered unasked; common practice."""


def layouts_within(
    units: int,
    wanted: Target,
    *,
    setting: Setting | None = None,
    columns: int | None = None,
    least_rows: int = 1,
    rows: int | None = None,
) -> tuple[Target, ...]:
    """At most three layouts of at most `units` units, nearest to `wanted` first.

    Nearest means: fewest units left over, then the shape closest to the one wanted.
    `columns` fixes the row length, and `least_rows` the rows, once rows are sewn; `rows` fixes
    their number, once a web is begun. Of the two ways round of one layout the one shaped like
    `wanted` is kept. `setting` is how the units are set; straight where None.
    """
    if rows is not None:
        across = units // rows
        return (Target(rows, across),) if 0 < across < wanted.columns else ()
    if columns is not None:
        many = min(units // columns, wanted.rows)
        found = [Target(many, columns)] if many >= least_rows else []
        return tuple(target for target in found if target != wanted)
    found = [
        Target(down, across)
        for down in range(1, units + 1)
        for across in [most_columns(setting, down, units)]
        if across
        and _shape(down, across) <= LONGEST_SHAPE
        and (down == across or (down < across) == (wanted.rows <= wanted.columns))
    ]
    shape = _shape(wanted.rows, wanted.columns)
    found.sort(
        key=lambda t: (
            -units_in(setting, t.rows, t.columns),
            abs(_shape(t.rows, t.columns) - shape),
        )
    )
    return tuple(found[:MOST_OFFERED])


def _shape(rows: int, columns: int) -> float:
    return max(rows, columns) / min(rows, columns)

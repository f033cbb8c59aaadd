"""Units put together as a web: column by column for all rows, the threads between the rows uncut.

Pass 1 sews the second unit of every row to its first, pass 2 the third, and so on to the last
column; then the long seams join the rows, whose order the threads kept. There are as many seams as
row by row (common practice; counted in `tests/progress/joining`).
"""

from __future__ import annotations

from sewalong.piecing.method import Method, Noun, Pile
from sewalong.quilt.setting import Setting

ROWS, WEB = "rows", "web"
JOINED = (ROWS, WEB)
"""How units can be put together: row by row, or as a web."""

WEB_ROW = Pile("web-row", Noun("row started", "rows started"))
"""The first two units of a row of the web."""
WEB_UNIT = Pile("web-unit", Noun("unit added", "units added"))
"""A unit sewn on to a row of the web after its first two. It lies where the web lies."""
WEB_PILES = {pile.id: pile for pile in (WEB_ROW, WEB_UNIT)}

START_WEB = "start-web"
SEW_WEB = "sew-web"
IN_A_START = 2
"""Units that a row of the web begins with."""


def passes(columns: int) -> int:
    """Passes of a web: one seam for every row in each."""
    return columns - 1


def added_to_a_row(columns: int) -> int:
    """Units sewn on to one row after its first two."""
    return columns - IN_A_START


def why_no_web(setting: Setting | None, rows: int, columns: int) -> str:
    """Why such a layout cannot be put together as a web, and what to do; empty where it can."""
    if setting is not None:
        return (
            "A web is for units set edge to edge: with sashes, or on point, there is more between "
            f'them than it holds in order. Sew it row by row, joined = "{ROWS}", or set the units edge to edge.'
        )
    if rows < 2 or columns < 2:
        return (
            "A web has at least two rows and two columns, or there is nothing its threads could "
            f'keep in order. Sew it row by row, joined = "{ROWS}", or take a larger layout.'
        )
    return ""


def why_names_clash(method: Method) -> str:
    """Why a method that calls something of its own by a name of the web has none; else empty."""
    ids = {pile.id for pile in method.piles} | {stage.id for stage in method.stages}
    for id in (*WEB_PILES, START_WEB, SEW_WEB):
        if id in ids:
            return (
                f"The method has a stage or pile of its own called {id}, as a web has. Sew it row "
                f'by row, joined = "{ROWS}".'
            )
    return ""

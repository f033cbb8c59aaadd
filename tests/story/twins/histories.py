"""Histories that the twins begin with."""

from __future__ import annotations

from fractions import Fraction

from msgspec.structs import replace

from sewalong.lengths import Unit
from sewalong.progress.record.settings import Settings
from tests.progress import every_act as c
from tests.screens.sewing_room import ALL_YES, a_quilt, up_to

METRIC = replace(a_quilt(), unit=Unit.CM)
FOUR_PATCH = Fraction(19, 2)
"""Two five-inch squares and one seam: 2 * 5 - 2 * 1/4."""

SAT_DOWN = (c.OpenSession(),)
PAIRED = (c.Count("pair", 20),)
SEWN = (*PAIRED, c.Count("sew", 8))
FOOT = Settings(foot="patchwork foot", proof="3 strips gave 3 1/2 in")
PROVED = (
    *PAIRED,
    c.RecordSettings(FOOT),
    c.Count("sew", 4),
    c.Measure("four-patch", (FOUR_PATCH,)),
)
FOOT_CHANGED = (*PROVED, c.ChangeTool("foot"))
WENT_ON = (*FOOT_CHANGED, c.GoOn("sew"))
"""Another foot went on, and she went on all the same."""
MEASURED_WRONG = (*SEWN, c.Measure("four-patch", (Fraction(9),)))
AT_THE_IRON = (*PAIRED, c.Count("sew", 10), c.Count("press", 4))
ROWS = (
    *up_to("cut-twice"),
    c.Count("cut-twice", 5),
    c.Count("press-open", 20),
    c.Count("sew-rows", 4),
)
UNITS = ROWS[:-1]
"""Twenty units, for rows of five or of four."""
IN_TWO_PLACES = (
    *PAIRED,
    c.PutPileAway("pair", "tin"),
    c.PutPileAway("pair", "blue bag", 5),
    c.PutPileAway("pair", "tin", 15),
)
LAID_ASIDE = (*PAIRED, c.CloseSession({}), c.LayAside("no backing yet"))
DONE = (*PAIRED, c.CloseSession({}), c.MarkDone())
PUT_AWAY_IN_CLOSING = (
    *SEWN,
    c.CloseSession(ALL_YES, "sew the last two", {"pair": "tin", "four-patch": "tray"}),
)

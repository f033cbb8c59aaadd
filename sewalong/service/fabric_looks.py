"""The fabrics of an open quilt looked at: in rows by value, and what is to be said of them.

Colours are reckoned with here, so it is loaded only by whoever looks at fabrics.
"""

from __future__ import annotations

from msgspec import Struct

from sewalong.fabrics.by_value import ValueRow, by_value
from sewalong.fabrics.counted import count_words
from sewalong.fabrics.swatch import Swatch, swatches
from sewalong.quilt.quilt import Quilt
from sewalong.quilt.set_shape import set_shape
from sewalong.service.open_quilt import OpenQuilt

NONE_YET = (
    "No fabrics are said yet, and none need be: counting goes on without them.",
    "Say them, such as lights 60, mediums 70, darks 38; or read them from one photograph.",
)
"""What is said where there is none."""


class FabricsNow(Struct, frozen=True):
    """`rows` hold the fabrics by value and family; `verdict` comes first, `facts` stand behind."""

    rows: tuple[ValueRow, ...]
    verdict: str
    facts: tuple[str, ...]

    @property
    def swatches(self) -> tuple[Swatch, ...]:
        """All fabrics, in the order in which they stand in the rows."""
        return tuple(swatch for row in self.rows for swatch in row.swatches)


def fabrics_now(quilt: OpenQuilt) -> FabricsNow:
    """The fabrics of the plan as it stands."""
    return of_plan(quilt.state.quilt)


def of_plan(plan: Quilt) -> FabricsNow:
    """The same of a plan."""
    found = swatches(plan.counted_fabrics)
    if not found:
        return FabricsNow((), NONE_YET[0], NONE_YET[1:])
    verdict, *facts = count_words(found, plan, set_shape(plan))
    return FabricsNow(by_value(found), verdict, tuple(facts))

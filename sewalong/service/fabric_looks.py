"""The fabrics of an open quilt looked at: in rows by value, and what is to be said of them.

Colours are reckoned with here, so it is loaded only by whoever looks at fabrics.
"""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct
from msgspec.structs import replace

from sewalong.fabrics.by_value import ValueRow, by_value
from sewalong.fabrics.counted import NO_SETS, count_words
from sewalong.fabrics.possible_words import what_can_be
from sewalong.fabrics.swatch import Swatch, swatches
from sewalong.progress.record.events.replanning import planned
from sewalong.progress.sets.contrast import set_contrast
from sewalong.progress.sets.left_words import left_words
from sewalong.quilt.quilt import Quilt
from sewalong.quilt.set_shape import SetShape, set_shape
from sewalong.service.open_quilt import OpenQuilt

NONE_YET = "No fabrics are said yet, and none need be: counting goes on without them."
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
    """The fabrics of the plan as it stands; once sets are accepted, first what is over by them."""
    found = of_plan(planned(quilt.state))
    return replace(found, facts=(*left_words(quilt.state), *found.facts))


def of_plan(plan: Quilt) -> FabricsNow:
    """The same of a plan, before any set is laid."""
    found = swatches(plan.counted_fabrics)
    if not found:
        return FabricsNow((), NONE_YET, ())
    shape = set_shape(plan)
    verdict = count_words(found, plan, shape)
    facts = (NO_SETS,) if shape is None else _possible(found, plan, shape)
    return FabricsNow(by_value(found), verdict, facts)


def _possible(found: Sequence[Swatch], plan: Quilt, shape: SetShape) -> tuple[str, ...]:
    """What these squares can give in the sets that the whole top takes."""
    wanted = -(-plan.units_for(plan.target) // shape.units)
    return what_can_be(found, set_contrast(plan).meeting, shape.places, wanted)

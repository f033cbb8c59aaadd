"""What all numbers of one quilt rest on: the derived unit, the centre, and each border's edge."""

from __future__ import annotations

from collections.abc import Mapping

from msgspec import Struct

from sewalong.lengths import Length, Unit
from sewalong.piecing.derive import Derivation
from sewalong.quilt.choices import Choices
from sewalong.quilt.cloth.borders import BorderNumbers, BorderPlan, Corners, borders
from sewalong.quilt.cloth.strips import Join
from sewalong.quilt.cloth.to_cut import to_cut
from sewalong.quilt.derived import derived
from sewalong.quilt.layouts.centre import centre
from sewalong.quilt.quilt import Quilt, Target
from sewalong.quilt.refusal import NumbersFault
from sewalong.quilt.size import Size
from sewalong.quilt.unit_size import decided_unit, is_trimmed, raw_unit

_CORNERS = {
    "sides first": Corners.SIDES_FIRST,
    "ends first": Corners.ENDS_FIRST,
    "mitred": Corners.MITRED,
}


class Basis(Struct, frozen=True):
    """`unit` and `centre` run from raw edge to raw edge, the unit as it is decided; `edges` are
    the top after each border, raw edge to raw edge, beginning with the centre. `plans` are the
    borders as they are wanted, and `borders` their numbers or why they cannot be had. `short` is
    how many starting pieces the record says are missing by pile, None when only the plan is
    known."""

    quilt: Quilt
    target: Target
    made: Derivation
    unit: Size
    edges: tuple[Size, ...]
    plans: tuple[BorderPlan, ...]
    borders: tuple[BorderNumbers, ...] | NumbersFault
    short: Mapping[str, int] | None = None

    @property
    def choices(self) -> Choices:
        """The owner's choices of cloth and strips."""
        return self.quilt.choices

    @property
    def shown_in(self) -> Unit:
        """The owner's unit."""
        return self.quilt.unit

    @property
    def raw_unit(self) -> Size:
        """The unit as it comes from its seams, before any trimming."""
        return raw_unit(self.made.unit)

    @property
    def is_trimmed(self) -> bool:
        """Whether units are trimmed to `unit`."""
        return is_trimmed(self.quilt)

    @property
    def units(self) -> int:
        """Units the target holds, as they are set."""
        return self.quilt.units_for(self.target)

    @property
    def centre(self) -> Size:
        """The units as they are set, with what lies between them."""
        return self.edges[0]

    @property
    def top(self) -> Size:
        """The whole top, raw edge to raw edge."""
        return self.edges[-1]

    @property
    def finishes_at(self) -> Size:
        """The top once it is bound."""
        return self.top.grown(-self.quilt.seam)

    @property
    def join(self) -> Join:
        """How strips are joined."""
        return Join(self.choices.joins)

    def bordered(self) -> tuple[BorderNumbers, ...]:
        """The borders in numbers; raises NumbersFault when no strip reaches."""
        if isinstance(self.borders, NumbersFault):
            raise self.borders
        return self.borders

    @property
    def border_in_all(self) -> Length:
        """What all borders together add on each side, finished."""
        return (self.top.width - self.centre.width) / 2


def basis(
    quilt: Quilt, target: Target | None = None, short: Mapping[str, int] | None = None
) -> Basis:
    """The basis for `target`, that of the quilt itself where it is None.

    Raises UnknownMethod, SizeRefused or NumbersFault for a quilt no numbers can be had of.
    """
    wanted = quilt.target if target is None else target
    made = derived(quilt)
    unit = decided_unit(quilt, made)
    edges = [centre(quilt, wanted, unit)]
    for border in quilt.borders:
        cut = to_cut(border.cut, quilt.unit).length
        edges.append(edges[-1].grown(cut - 2 * quilt.seam))
    plans = border_plans(quilt)
    found = _borders(quilt, edges[0], plans)
    return Basis(quilt, wanted, made, unit, tuple(edges), plans, found, short)


def border_plans(quilt: Quilt) -> tuple[BorderPlan, ...]:
    """The borders as they are wanted, the innermost first."""
    corners = _CORNERS[quilt.choices.corners]
    return tuple(BorderPlan(border.cut, corners) for border in quilt.borders)


def _borders(
    quilt: Quilt, centre: Size, plans: tuple[BorderPlan, ...]
) -> tuple[BorderNumbers, ...] | NumbersFault:
    """Worked out once; a fault is kept, since only what needs the borders fails by it."""
    chosen = quilt.choices
    join = Join(chosen.joins)
    try:
        return borders(
            centre, plans, seam=quilt.seam, usable=chosen.usable, join=join, unit=quilt.unit
        )
    except NumbersFault as fault:
        return fault

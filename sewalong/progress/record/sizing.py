"""The size units are trimmed to, decided anew: from the plan's, or from what was measured.

What units come to is loaded only when it is asked for: it takes the geometry of the method.
"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from typing import TYPE_CHECKING

from msgspec.structs import replace

from sewalong.lengths import LONGEST, Unit, show
from sewalong.progress.record.event import Event, Recorded
from sewalong.progress.record.limits import are
from sewalong.progress.record.refused import Refused
from sewalong.progress.record.route import ROW
from sewalong.progress.record.state import State
from sewalong.progress.record.tally import Tally
from sewalong.quilt.size import Size

if TYPE_CHECKING:
    from sewalong.piecing.derive import UnitSize


class UnitDecided(Event, frozen=True, kw_only=True, tag="unit decided"):
    """What all units are trimmed to from now on, and what they were before.

    Width and height to the raw edges are exact inches as text: "25/4". `usual` is true where the
    owner's own size is given up again, for the one the method gives.
    """

    width: str
    height: str
    was_width: str
    was_height: str
    usual: bool = False

    @property
    def size(self) -> Size:
        """The size decided."""
        return Size(Fraction(self.width), Fraction(self.height))

    def check(self, state: State) -> None:
        from sewalong.progress.record.measurable import Unmeasurable, decided, made_of
        from sewalong.quilt.unit_size import usual_unit, why_not_trimmed_to

        self._check_lengths()
        quilt = state.quilt
        try:
            made, now = made_of(quilt), decided(quilt)
        except Unmeasurable as error:
            raise Refused(str(error)) from error
        if self.size == now:
            raise Refused(f"Units are {_said(now, quilt.unit)} already. Nothing was changed.")
        if self.usual:
            sentence = ""
            if self.size != usual_unit(made, quilt.unit):
                sentence = f"The method does not give units of {_said(self.size, quilt.unit)}."
        else:
            as_measured = _as_measured(state, made.unit)
            sentence = why_not_trimmed_to(as_measured, self.size, quilt.unit)
        if sentence:
            raise Refused(sentence)
        _refuse_if_sewn(state, now)

    def _check_lengths(self) -> None:
        from sewalong.progress.record.measurable import read_fraction

        for text in (self.width, self.height, self.was_width, self.was_height):
            length = read_fraction(text)
            if length is None or not 0 < length <= LONGEST:
                raise Refused("Give the size that units are trimmed to, such as 6 1/4.")

    def apply(self, tally: Tally, seq: int) -> None:
        tally.quilt = replace(tally.quilt, trim=None if self.usual else self.size)
        tally.can_undo(seq)

    def words(self, state: State, record: Sequence[Recorded]) -> str:
        unit = state.quilt.unit
        was = Size(Fraction(self.was_width), Fraction(self.was_height))
        now = f"trimmed to {_said(self.size, unit)}"
        if self.usual:
            now = f"{_said(self.size, unit)}, as the method gives them,"
        return f"Units are {now} from now on, instead of {_said(was, unit)}."


def _as_measured(state: State, made: UnitSize) -> UnitSize:
    """The unit as large as it was measured last, where that is larger than the plan's."""
    from sewalong.progress.record.measurable import proof_pile

    piles = (proof_pile(state.quilt), state.quilt.method.unit)
    last = next((check for check in reversed(state.checks) if check.piece in piles), None)
    share = float(min(last.readings)) / made.width if last is not None else 1.0
    if share <= 1.0:
        return made
    return replace(made, width=made.width * share, height=made.height * share)


def _refuse_if_sewn(state: State, now: Size) -> None:
    """Rows hold units of the size they were sewn at."""
    rows = state.piles[ROW.id]
    on_the_top = [
        stage.counts.count(state.done[stage.id]) + f" at {stage.label}"
        for stage in reversed(state.route.of_the_top)
        if state.done[stage.id]
    ]
    if not rows and not on_the_top:
        if state.begun:
            raise Refused(
                f"A row is begun with units of {_said(now, state.quilt.unit)}. Take it apart "
                "first, or keep that size."
            )
        return
    size = _said(now, state.quilt.unit)
    sewn = f"{ROW.noun.count(rows)} {are(rows)} sewn already with units of {size}."
    if not on_the_top:
        raise Refused(f"{sewn} Unpick {'it' if rows == 1 else 'them'} first, or keep that size.")
    first = ", then ".join([*on_the_top, ROW.noun.count(rows)])
    raise Refused(f"{sewn} That would have to be unpicked first: {first}. Or keep that size.")


def _said(size: Size, unit: Unit) -> str:
    """As it was typed where a ruler shows it, else as it is shown everywhere."""
    fine = Fraction(1, 16) if unit is Unit.INCH else Fraction(1, 10)
    if any(side % (fine * unit.length) for side in (size.width, size.length)):
        fine = unit.step / unit.length
    width, length = (show(side, unit, fineness=fine) for side in (size.width, size.length))
    return width if size.width == size.length else f"{width} across × {length} down"

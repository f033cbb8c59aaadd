"""The size units are trimmed to, decided anew: from the plan's, or from what was measured.

What units come to is loaded only when it is asked for: it takes the geometry of the method.
"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from typing import TYPE_CHECKING

from msgspec.structs import replace

from sewalong.lengths import LONGEST
from sewalong.progress.record.events.event import Event, Recorded
from sewalong.progress.record.refused import Refused
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
        from sewalong.progress.record.sewn_already import sewn_of_units
        from sewalong.quilt.unit_size import unit_text, usual_unit, why_not_trimmed_to

        self._check_lengths()
        quilt = state.quilt
        try:
            made, now = made_of(quilt), decided(quilt)
        except Unmeasurable as error:
            raise Refused(str(error)) from error
        if self.size == now:
            raise Refused(f"Units are {unit_text(now, quilt.unit)} already. Nothing was changed.")
        if self.usual:
            sentence = ""
            if self.size != usual_unit(made, quilt.unit):
                sentence = f"The method does not give units of {unit_text(self.size, quilt.unit)}."
        else:
            as_measured = _as_measured(state, made.unit)
            sentence = why_not_trimmed_to(as_measured, self.size, quilt.unit)
        if sentence:
            raise Refused(sentence)
        for reason in sewn_of_units(state, now):
            raise Refused(reason)

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
        from sewalong.quilt.unit_size import unit_text

        unit = state.quilt.unit
        was = Size(Fraction(self.was_width), Fraction(self.was_height))
        now = f"trimmed to {unit_text(self.size, unit)}"
        if self.usual:
            now = f"{unit_text(self.size, unit)}, as the method gives them,"
        return f"Units are {now} from now on, instead of {unit_text(was, unit)}."


def _as_measured(state: State, made: UnitSize) -> UnitSize:
    """The unit as large as it was measured last, where that is larger than the plan's."""
    from sewalong.progress.record.measurable import proof_pile

    piles = (proof_pile(state.quilt), state.quilt.method.unit)
    last = next((check for check in reversed(state.checks) if check.piece in piles), None)
    share = float(min(last.readings)) / made.width if last is not None else 1.0
    if share <= 1.0:
        return made
    return replace(made, width=made.width * share, height=made.height * share)

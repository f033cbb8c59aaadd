"""What happened to a pile besides sewing: spoiled, found or bought, put away."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Literal

from sewalong.progress.record.begun_rows import units_in
from sewalong.progress.record.events.event import Event, Recorded, noun_of, stopped
from sewalong.progress.record.limits import a_number, a_pile, are, lie, quoted, short
from sewalong.progress.record.on_the_top import loose
from sewalong.progress.record.places import put_away
from sewalong.progress.record.refused import Refused
from sewalong.progress.record.state import Spoilage, State
from sewalong.progress.record.tally import Tally

HowFound = Literal["found", "bought"]
"""How pieces came to a pile; what was cut new is bought."""


class Spoiled(Event, frozen=True, kw_only=True, tag="spoiled", omit_defaults=True):
    """`n` pieces of a pile cannot be used any more: of set `set` (0: nobody said), or squares of
    the fabric with this letter (empty: nobody said)."""

    pile: str
    n: int
    reason: str
    set: int = 0
    fabric: str = ""

    def check(self, state: State) -> None:
        pile, n = a_pile(state, self.pile), a_number(self.n)
        there = loose(state, pile)
        if n > there:
            raise Refused(
                f"Only {noun_of(state, pile).count(there)} {lie(there)} there, "
                f"so {n} cannot be spoiled. If more lie there, recount that pile first."
                f"{beside_the_pile(state, pile)}"
            )
        if self.set and not any(one.set == self.set for one in state.sets.lying.get(pile, ())):
            noun = noun_of(state, pile)
            raise Refused(
                f"No {noun.one} of set {short(self.set)} is known to lie there. Say it without the "
                "set, or ask which set has these fabrics."
            )
        if self.fabric and self.fabric not in {one.letter for one in state.quilt.fabrics}:
            raise Refused(f"There is no fabric {quoted(self.fabric)}. Say it without the fabric.")

    def apply(self, tally: Tally, seq: int) -> None:
        tally.spoil(Spoilage(self.at, self.pile, self.n, self.reason, self.set, self.fabric))
        tally.can_undo(seq)

    def words(self, state: State, record: Sequence[Recorded]) -> str:
        noun = noun_of(state, self.pile).count(self.n)
        return f"Spoiled {noun}{self._of_what(state)}: {stopped(self.reason)}"

    def _of_what(self, state: State) -> str:
        """ " of set 7, with C shell dots"; empty where nobody said so."""
        names = {fabric.letter: fabric.name for fabric in state.quilt.fabrics}
        fabric = f"{self.fabric} {names.get(self.fabric, '')}".strip()
        if self.set:
            return f" of set {self.set}" + (f", with {fabric}" if fabric else "")
        return f" of {fabric}" if fabric else ""


def beside_the_pile(state: State, pile: str) -> str:
    """A sentence for the pieces of a pile that are sewn into rows begun, with a space before it;
    empty where there are none."""
    n = units_in(state.begun) if pile == state.quilt.method.unit else 0
    if not n:
        return ""
    return f" {noun_of(state, pile).count(n)} more {are(n)} sewn into rows begun."


class Found(Event, frozen=True, kw_only=True, tag="found"):
    """More pieces came to a pile: found again, or bought or cut new."""

    pile: str
    n: int
    how: HowFound

    def check(self, state: State) -> None:
        a_pile(state, self.pile)
        a_number(self.n)

    def apply(self, tally: Tally, seq: int) -> None:
        if self.how == "found":
            tally.turn_up(self.pile, self.n)
        tally.find(self.pile, self.n)
        tally.can_undo(seq)

    def words(self, state: State, record: Sequence[Recorded]) -> str:
        return f"{self.how.capitalize()} {noun_of(state, self.pile).count(self.n)}."


class PutAway(Event, frozen=True, kw_only=True, tag="put away"):
    """A pile, or `n` of it, was put somewhere."""

    pile: str
    place: str
    n: int | None = None

    def check(self, state: State) -> None:
        pile = a_pile(state, self.pile)
        if self.n is None:
            return
        there = state.piles[pile]
        if a_number(self.n) > there:
            raise Refused(
                f"Only {noun_of(state, pile).count(there)} {lie(there)} there, so {self.n} "
                "cannot be put away. If more lie there, recount that pile first."
            )

    def apply(self, tally: Tally, seq: int) -> None:
        places = tally.places.get(self.pile, {})
        there = tally.piles[self.pile]
        tally.places[self.pile] = put_away(places, self.place, self.n, there)
        tally.can_undo(seq)
        first, last = tally.put_away
        goes_on = last == seq - 1 and tally.last_at == self.at
        tally.put_away = (first if goes_on else seq, seq)

    def words(self, state: State, record: Sequence[Recorded]) -> str:
        noun = noun_of(state, self.pile)
        pieces = f"the {noun.many}" if self.n is None else noun.count(self.n)
        return f"Put {pieces} away: {stopped(self.place)}"

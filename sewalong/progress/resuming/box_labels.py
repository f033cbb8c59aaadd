"""A label for each box or bag in which piles of a quilt lie: what is in it, and what comes next."""

from __future__ import annotations

from msgspec import Struct

from sewalong.progress.plan.plan import Plan
from sewalong.progress.record.state import State
from sewalong.progress.resuming.by_place import NOWHERE, AtPlace, by_place


class BoxLabel(Struct, frozen=True):
    """`number` of `of` boxes. `place` is empty where nobody wrote down where the pieces lie. `holds`
    is what lies there, pile by pile; `next` what to do with it, empty where nothing can be done yet."""

    number: int
    of: int
    place: str
    holds: tuple[str, ...]
    next: str


def box_labels(state: State, now: Plan) -> tuple[BoxLabel, ...]:
    """One for each place with something in it; last what nobody put anywhere."""
    found = by_place(state, now)
    return tuple(_label(state, at, number, len(found)) for number, at in enumerate(found, start=1))


def _label(state: State, at: AtPlace, number: int, of: int) -> BoxLabel:
    nouns = {pile: state.route.piles[pile].noun for pile in at.there}
    holds = tuple(
        f"some {nouns[pile].many}" if n is None else nouns[pile].count(n)
        for pile, n in at.there.items()
    )
    then = ""
    if at.next_there is not None:
        stage, n = at.next_there
        then = f"{stage.label}, {stage.counts.count(n)}"
    return BoxLabel(number, of, "" if at.place == NOWHERE else at.place, holds, then)

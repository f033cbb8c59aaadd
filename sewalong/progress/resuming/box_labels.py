"""A label for each box or bag in which piles of a quilt lie: what is in it, and what comes next."""

from __future__ import annotations

from msgspec import Struct

from sewalong.progress.plan.plan import Plan
from sewalong.progress.record.state import State
from sewalong.progress.resuming.by_place import (
    NOWHERE,
    AtPlace,
    by_place,
    next_in_words,
    piles_in_words,
)


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
    place = "" if at.place == NOWHERE else at.place
    return BoxLabel(number, of, place, piles_in_words(state, at), next_in_words(at))

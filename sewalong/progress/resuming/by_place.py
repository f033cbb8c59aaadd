"""What lies at each place, and the next thing to do there: for work that was carried elsewhere."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from msgspec import Struct

from sewalong.piecing.method import Stage
from sewalong.progress.plan.plan import Plan
from sewalong.progress.record.places import held_at, known
from sewalong.progress.record.state import State
from sewalong.progress.record.web_rows import lies_in_the_web

NOWHERE = "not written down"


class AtPlace(Struct, frozen=True):
    """`there` is by pile, None where nobody can say how many; `next_there` the furthest-along stage
    that can and must be done with what lies there, and how many, or None."""

    place: str
    there: Mapping[str, int | None]
    next_there: tuple[Stage, int] | None


def by_place(state: State, now: Plan) -> tuple[AtPlace, ...]:
    """Every place with something in it, in order of writing; last what nobody put anywhere."""
    lies: dict[str, dict[str, int | None]] = {}
    for pile, places in state.places.items():
        there = state.piles[pile]
        for place in places if there else ():
            held = held_at(places, place, there)
            if held != 0:
                lies.setdefault(place, {})[pile] = held
    for pile, there in state.piles.items():
        places = state.places.get(pile, {})
        loose = there - known(places)
        if lies_in_the_web(state, pile):
            continue
        if loose > 0 and None not in places.values():
            lies.setdefault(NOWHERE, {})[pile] = loose
    nowhere = lies.pop(NOWHERE, None)
    if nowhere is not None:
        lies[NOWHERE] = nowhere
    return tuple(AtPlace(place, there, _next(state, now, there)) for place, there in lies.items())


def _next(state: State, now: Plan, there: Mapping[str, int | None]) -> tuple[Stage, int] | None:
    for stage in reversed(state.route.of_pieces):
        # What is cut from cloth takes no pile, so it is in hand at no place.
        could = min(((there.get(t.pile) or 0) // t.count for t in stage.takes), default=0)
        if n := min(could, now.line(stage.id).to_do):
            return stage, n
    return None


def in_words(state: State, at: AtPlace) -> Iterator[str]:
    """One fact a line: what lies there, pile by pile, and the next thing to do with it."""
    for pile, n in at.there.items():
        noun = state.route.piles[pile].noun
        yield f"{at.place}: {f'some {noun.many}' if n is None else noun.count(n)}"
    if at.next_there is not None:
        stage, n = at.next_there
        yield f"{at.place}, next there: {stage.label}, {stage.counts.count(n)}"

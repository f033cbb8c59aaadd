"""What lies at each place, who sews there, and the next thing to do there: for work that was carried
elsewhere, and for what a box is labelled with."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from msgspec import Struct

from sewalong.progress.plan.plan import Plan
from sewalong.progress.record.places import held_at, known
from sewalong.progress.record.route import JOIN_ROWS, RouteStage, TopStage
from sewalong.progress.record.rows_sewn import rows_pile
from sewalong.progress.record.state import State
from sewalong.progress.record.web_rows import lies_in_the_web

NOWHERE = "not written down"


class AtPlace(Struct, frozen=True):
    """`there` is by pile, None where nobody can say how many; `next_there` the furthest-along stage
    that can and must be done with what lies there, and how many, or None. `elsewhere` says that
    counts came in from there, `by` from whom, empty where nobody said."""

    place: str
    there: Mapping[str, int | None]
    next_there: tuple[RouteStage, int] | None
    elsewhere: bool = False
    by: str = ""


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
    return tuple(
        AtPlace(
            place,
            there,
            _next(state, now, there),
            place in state.elsewhere,
            state.elsewhere.get(place, ""),
        )
        for place, there in lies.items()
    )


def _next(
    state: State, now: Plan, there: Mapping[str, int | None]
) -> tuple[RouteStage, int] | None:
    for stage in reversed(state.route.stages):
        if n := min(_could(state, now, stage, there), now.line(stage.id).to_do):
            return stage, n
    return None


def _could(state: State, now: Plan, stage: RouteStage, there: Mapping[str, int | None]) -> int:
    """How many of a stage what lies there is enough for."""
    if isinstance(stage, TopStage):
        rows = rows_pile(state.quilt).id
        here = there.get(rows) or 0
        if here and here == state.piles[rows]:
            return now.line(stage.id).ready
        # Of a share of the rows its own can be joined.
        return max(0, here - 1) if stage.id == JOIN_ROWS else 0
    # What is cut from cloth takes no pile, so it is in hand at no place.
    return min(((there.get(t.pile) or 0) // t.count for t in stage.takes), default=0)


def next_in_words(at: AtPlace) -> str:
    """ "cut twice, 12 stacks"; empty where nothing is next there."""
    if at.next_there is None:
        return ""
    stage, n = at.next_there
    return f"{stage.label}, {stage.counts.count(n)}"


def piles_in_words(state: State, at: AtPlace) -> tuple[str, ...]:
    """What lies there, pile by pile: "12 sewn stacks"."""
    nouns = {pile: state.route.piles[pile].noun for pile in at.there}
    return tuple(
        f"some {nouns[pile].many}" if n is None else nouns[pile].count(n)
        for pile, n in at.there.items()
    )


def in_words(state: State, at: AtPlace) -> Iterator[str]:
    """One fact a line: who sews there, what lies there, pile by pile, and the next thing to do."""
    if at.by:
        yield f"{at.place}: {at.by} sews there"
    for pile in piles_in_words(state, at):
        yield f"{at.place}: {pile}"
    if then := next_in_words(at):
        yield f"{at.place}, next there: {then}"


def places_in_words(state: State, now: Plan) -> tuple[str, ...]:
    """A sentence for each place with the next thing to do there; none where all lies in one."""
    found = by_place(state, now)
    if len(found) < 2:
        return ()
    return tuple(f"{at.place}: {' '.join(_facts(state, at))}" for at in found)


def _facts(state: State, at: AtPlace) -> tuple[str, ...]:
    then = next_in_words(at)
    return (
        *((f"{at.by} sews there.",) if at.by else ()),
        f"{', '.join(piles_in_words(state, at)).capitalize()}.",
        *((f"Next there: {then}.",) if then else ()),
    )


def elsewhere_in_words(state: State, now: Plan) -> Iterator[tuple[str, tuple[str, ...]]]:
    """The places counts came in from: a label, and what lies and is to be done there."""
    if not state.elsewhere:
        return
    for at in by_place(state, now):
        if at.elsewhere:
            yield f"At {at.place}", _facts(state, at)

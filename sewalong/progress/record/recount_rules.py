"""A recount and what its difference is said to be: what may be, and what it changes."""

from __future__ import annotations

from typing import Literal

from msgspec import Struct

from sewalong.piecing.method import Stage
from sewalong.progress.record.places import expected_at, held_at
from sewalong.progress.record.readiness import ready
from sewalong.progress.record.route import Route
from sewalong.progress.record.state import State

Accepted = Literal["stands", "made", "found", "lost", "spoiled", "missing"]
"""What the person says the difference of a recount is.

stands: nothing is said of it. made: it was counted wrongly at the stage that makes the
pile. missing: made, but not found yet. lost: given up, and with it what was
missing of this pile before.
"""

MORE: tuple[Accepted, ...] = ("made", "found")
"""What pieces over the record can be said to be."""

FEWER: tuple[Accepted, ...] = ("made", "lost", "spoiled", "missing")
"""What pieces under the record can be said to be; "made" then: they were never made."""


def maker(route: Route, pile: str) -> Stage | None:
    """The stage that fills a pile; None for what is cut or bought."""
    return next((stage for stage in route.of_pieces if stage.makes.pile == pile), None)


def recorded_there(state: State, pile: str, counted: int, how: Accepted, place: str) -> int:
    """What the record says beside `counted`: of the pile, or of the one `place` counted."""
    there = state.piles[pile]
    if not place:
        return there
    new = how in ("made", "found")
    return expected_at(state.places.get(pile, {}), place, there, counted, new=new)


def counts_made(stage: Stage, difference: int) -> int | None:
    """How many counts of a stage a difference in its pile comes to; None if no whole number."""
    counts, over = divmod(difference, stage.makes.count)
    return None if over else counts


def ways(state: State, pile: str, difference: int) -> tuple[Accepted, ...]:
    """What a difference of a recount can be said to be, the plain count first."""
    if difference == 0:
        return ("stands",)
    others = MORE if difference > 0 else FEWER
    fits = tuple(how for how in others if how != "made" or can_be_made(state, pile, difference))
    return ("stands", *fits)


def can_be_made(state: State, pile: str, difference: int) -> bool:
    """Whether the difference can be counts at the stage that fills the pile."""
    stage = maker(state.route, pile)
    if stage is None:
        return False
    counts = counts_made(stage, difference)
    if counts is None:
        return False
    return counts <= ready(state, stage) if counts > 0 else -counts <= state.done[stage.id]


class ToCount(Struct, frozen=True):
    """One pile, or what of it lies at one place, to be counted: what the record says beside it.

    `recorded` is None where the record cannot say how many lie at that place.
    """

    pile: str
    place: str
    recorded: int | None


def to_count(state: State, pile: str) -> tuple[ToCount, ...]:
    """A pile as it is to be counted: place by place where it lies in several."""
    places = state.places.get(pile, {})
    there = state.piles[pile]
    if len(places) < 2:
        return (ToCount(pile, "", there),)
    return tuple(ToCount(pile, place, held_at(places, place, there)) for place in places)

"""A pile counted by hand. The count stands; the difference is kept, and what it is said to be."""

from __future__ import annotations

from collections.abc import Sequence

from sewalong.piecing.method import Noun, Stage
from sewalong.progress.record.events.event import Event, Recorded, noun_of
from sewalong.progress.record.limits import MOST_AT_ONCE, a_pile, are, short
from sewalong.progress.record.on_the_top import loose
from sewalong.progress.record.readiness import ready
from sewalong.progress.record.recount_rules import (
    Accepted,
    can_be_made,
    counts_made,
    maker,
    recorded_there,
)
from sewalong.progress.record.refused import Refused
from sewalong.progress.record.state import Spoilage, State
from sewalong.progress.record.tally import Tally, plus

FOUND_AT_A_RECOUNT = "found spoiled at a recount"


class Recounted(Event, frozen=True, kw_only=True, tag="recounted"):
    """A pile was counted by hand. The count stands; the difference is kept.

    With a `place`, only what lies there was counted, and `recorded` is what the record
    said of that place.
    """

    pile: str
    recorded: int
    counted: int
    how: Accepted = "stands"
    place: str = ""

    @property
    def difference(self) -> int:
        """Pieces more than recorded (below zero: fewer)."""
        return self.counted - self.recorded

    def check(self, state: State) -> None:
        pile, difference = a_pile(state, self.pile), self.difference
        if not 0 <= self.counted <= MOST_AT_ONCE:
            raise Refused(f"A recount is a number from 0 to {MOST_AT_ONCE}.")
        there = recorded_there(state, pile, self.counted, self.how, self.place)
        if there != self.recorded:
            raise Refused(
                f"The record says {there}, not {short(self.recorded)}. Look again, then recount."
            )
        _the_top_is_there(state, pile, difference)
        if self.how == "found" and difference < 0:
            raise Refused(
                f"{self.counted} are fewer than the {self.recorded} recorded, so none were found. "
                "Say made, lost, spoiled or missing, or let the count stand."
            )
        if self.how in ("lost", "spoiled", "missing") and difference > 0:
            raise Refused(
                f"{self.counted} are more than the {self.recorded} recorded, so none are "
                f"{self.how}. Say made or found, or let the count stand."
            )
        if self.how == "made" and (difference == 0 or not can_be_made(state, pile, difference)):
            raise Refused(_not_made(state, pile, difference))

    def apply(self, tally: Tally, seq: int) -> None:
        pile, difference = self.pile, self.difference
        if self.place:
            tally.places[pile] = {**tally.places.get(pile, {}), self.place: self.counted}
        if difference > 0 and self.how in ("found", "stands"):
            tally.turn_up(pile, difference)
        if self.how == "found":
            tally.find(pile, difference)
        elif self.how == "spoiled" and difference < 0:
            tally.spoil(Spoilage(self.at, pile, -difference, FOUND_AT_A_RECOUNT))
        elif not (self.how == "made" and _made_after_all(tally, pile, difference)):
            if self.how == "missing":
                tally.miss(pile, -difference)
            elif self.how == "lost":
                tally.miss(pile, -tally.missing.get(pile, 0))
            tally.differ(pile, difference)
            plus(tally.recounted, pile, difference)
        tally.can_undo(seq)

    def words(self, state: State, record: Sequence[Recorded]) -> str:
        noun, difference = noun_of(state, self.pile), self.difference
        where = f" – {self.place}" if self.place else ""
        counted = f"Recounted the {noun.many}{where}: {self.counted}"
        if difference == 0:
            given_up = "; what was missing is given up" if self.how == "lost" else ""
            return f"{counted}, as recorded{given_up}."
        more = f"{abs(difference)} {'more' if difference > 0 else 'fewer'}"
        if self.how == "made" and difference < 0:
            return f"{counted}, {more} than recorded, never made."
        how = f";{_SAID[self.how]}" if _SAID[self.how] else ""
        return f"{counted}, {more} than recorded{how}."


_SAID: dict[Accepted, str] = {
    "stands": "",
    "made": " made but not counted",
    "found": " found",
    "lost": " lost",
    "spoiled": " spoiled",
    "missing": " made, but not found",
}


def _made_after_all(tally: Tally, pile: str, difference: int) -> bool:
    """The stage that fills the pile was counted wrongly: its count is put right.

    No one turned to that stage or heated an iron now, and no session made more by it.
    False, and nothing changed, where no stage's count comes to the difference.
    """
    stage = maker(tally.route, pile)
    counts = counts_made(stage, difference) if stage else None
    if stage is None or counts is None:
        return False
    tally.change(pile, difference)
    tally.take(stage, counts)
    if isinstance(stage, Stage):
        tally.sets.flow(tally.quilt, stage, counts, tally.piles)
    plus(tally.done, stage.id, counts)
    return True


def _the_top_is_there(state: State, pile: str, difference: int) -> None:
    joined, noun = state.piles[pile] - loose(state, pile), state.route.piles[pile].noun
    if state.piles[pile] + difference < joined:
        raise Refused(
            f"{noun.count(joined)} {are(joined)} in the top already, so there "
            f"{are(joined)} at least that many. Count the {noun.many} in the top too."
        )


def _not_made(state: State, pile: str, difference: int) -> str:
    """Why a difference cannot be counts at the stage that fills the pile."""
    stage, noun = maker(state.route, pile), state.route.piles[pile].noun
    if stage is None:
        return f"{noun.many.capitalize()} are not made here. Say found or lost instead."
    if difference % stage.makes.count:
        return _no_whole_count(noun, difference, stage.counts, stage.makes.count)
    if difference < 0:
        return (
            f"Only {stage.counts.count(state.done[stage.id])} counted at {stage.label} so far. "
            "Say lost, spoiled or missing instead."
        )
    possible = ready(state, stage)
    waits = f"only enough for {possible} waits" if possible else "nothing waits"
    return (
        f"{noun.count(difference).capitalize()} cannot have been made at {stage.label}: {waits} "
        "there. Recount the pile before it first, or say found."
    )


def _no_whole_count(noun: Noun, difference: int, counts: Noun, each: int) -> str:
    return (
        f"{noun.count(abs(difference)).capitalize()} cannot be made: "
        f"each {counts.one} gives {each}. Count again, or say found or lost."
    )

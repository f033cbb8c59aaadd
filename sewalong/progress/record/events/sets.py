"""The sets of squares: accepted, laid otherwise, put behind, held back, taken in hand."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from itertools import count
from typing import ClassVar, Literal

from msgspec.structs import replace

from sewalong.piecing.method import Stage
from sewalong.progress.record.events.event import Event, Recorded, label_of
from sewalong.progress.record.limits import a_stage
from sewalong.progress.record.refused import Refused
from sewalong.progress.record.sets.flow import first_in_hand
from sewalong.progress.record.sets.laid import LaidSet, SetsNow
from sewalong.progress.record.sets.lying_pile import LyingPile
from sewalong.progress.record.sets.track import all_of
from sewalong.progress.record.state import State
from sewalong.progress.record.tally import Tally

MOST_SETS = 1000
"""Sets of one quilt: of eight squares they take nearly as many as a pile may begin with."""

MOST_SQUARES = 100
"""Squares in one set: more places than any method has letters for."""

HowLaid = Literal["swapped", "own"]
Mark = Literal["skipped", "held back", "back in", "locked", "unlocked"]


class SetsAccepted(Event, frozen=True, kw_only=True, tag="sets accepted"):
    """These sets are to be laid, in this order, in place of all that are not begun, locked or held
    back: by number, her letter for the fabric at each place. `rule` is how they were chosen."""

    most_values: ClassVar[int] = MOST_SETS * (MOST_SQUARES + 1) + 10

    sets: tuple[tuple[int, tuple[str, ...]], ...]
    rule: str = ""

    def check(self, state: State) -> None:
        # Loaded only here: it takes the geometry of the method.
        from sewalong.progress.record.squares_left import refuse_what_there_is_not

        numbers = [number for number, _ in self.sets]
        kept = {number: state.sets.sets[number] for number in kept_sets(state)}
        if len(set(numbers)) != len(numbers) or not kept.keys().isdisjoint(numbers):
            raise Refused("Each set has a number of its own. Propose the sets anew.")
        if len(numbers) + len(kept) > MOST_SETS or any(not 1 <= n <= MOST_SETS for n in numbers):
            raise Refused(f"There are at most {MOST_SETS} sets, numbered from 1 on.")
        new = [LaidSet(number, squares) for number, squares in self.sets]
        after = SetsNow(kept | {one.number: one for one in new}, {}, state.sets.gone)
        refuse_what_there_is_not(state, after, new)

    def apply(self, tally: Tally, seq: int) -> None:
        tally.sets.accept(tally.quilt, self.sets, tally.piles)
        tally.can_undo(seq)

    def words(self, state: State, record: Sequence[Recorded]) -> str:
        if not self.sets:
            return "No set is proposed any more beyond those begun."
        n = len(self.sets)
        how = f", {self.rule}" if self.rule else ""
        return f"Accepted {n} set{'' if n == 1 else 's'}{how}."


class SetsLaid(Event, frozen=True, kw_only=True, tag="sets laid"):
    """These sets have these squares from now on: two were swapped, or she laid her own, which stays
    when the rest is proposed anew."""

    sets: tuple[tuple[int, tuple[str, ...]], ...]
    how: HowLaid

    def check(self, state: State) -> None:
        from sewalong.progress.record.squares_left import laid_set, refuse_what_there_is_not

        changed = [
            replace(laid_set(state, number), squares=squares, lost=())
            for number, squares in self.sets
        ]
        if all(one == state.sets.sets[one.number] for one in changed):
            raise Refused("That is how it is laid already. Nothing was recorded.")
        after = {**state.sets.sets, **{one.number: one for one in changed}}
        refuse_what_there_is_not(state, SetsNow(after, {}, state.sets.gone), changed)

    def apply(self, tally: Tally, seq: int) -> None:
        for number, squares in self.sets:
            if number in tally.sets.sets:
                one = tally.sets.sets[number]
                locked = one.locked or self.how == "own"
                tally.sets.sets[number] = replace(one, squares=squares, lost=(), locked=locked)
        tally.can_undo(seq)

    def words(self, state: State, record: Sequence[Recorded]) -> str:
        numbers = " and ".join(str(number) for number, _ in self.sets)
        if self.how == "swapped":
            return f"Swapped squares in set{'' if len(self.sets) == 1 else 's'} {numbers}."
        names = {fabric.letter: fabric.called for fabric in state.quilt.fabrics}
        laid = "; ".join(
            ", ".join(names.get(letter, letter) for letter in squares) for _, squares in self.sets
        )
        return f"Set {numbers} is your own, and stays: {laid}."


class SetMarked(Event, frozen=True, kw_only=True, tag="set marked"):
    """A set goes behind all others, is held back or comes back in, is locked or no longer."""

    number: int
    mark: Mark

    def check(self, state: State) -> None:
        from sewalong.progress.record.squares_left import laid_set

        one = laid_set(state, self.number)
        if self.mark in ("locked", "unlocked"):
            if one.locked is (self.mark == "locked"):
                raise Refused(f"Set {self.number} is {self.mark} already. Nothing was recorded.")
            return
        if self.mark == "back in":
            if not one.held_back:
                raise Refused(f"Set {self.number} is not held back. Nothing was recorded.")
            return
        if one.held_back:
            raise Refused(f"Set {self.number} is held back already. Let it back in first.")
        if self.number in state.sets.begun(state.quilt.starts[0].pile):
            raise Refused(
                f"Set {self.number} is begun. What is sewn of it can be unpicked, or its pieces laid "
                "by; choose another set in hand where you need one."
            )

    def apply(self, tally: Tally, seq: int) -> None:
        start, sets, number = tally.quilt.starts[0].pile, tally.sets, self.number
        one = sets.sets.get(number)
        if one is not None:
            others = tuple(piece for piece in sets.lying.get(start, ()) if piece.set != number)
            squares = all_of(number, len(one.squares))
            if self.mark in ("skipped", "back in"):
                sets.lying[start] = LyingPile((*others, *squares))
            elif self.mark == "held back":
                sets.lying[start] = LyingPile(others)
            sets.sets[number] = replace(one, **_MARKED[self.mark])
        tally.can_undo(seq)

    def words(self, state: State, record: Sequence[Recorded]) -> str:
        return f"Set {self.number} {_SAID[self.mark]}."


_MARKED: Mapping[Mark, Mapping[str, bool]] = {
    "skipped": {},
    "held back": {"held_back": True},
    "back in": {"held_back": False},
    "locked": {"locked": True},
    "unlocked": {"locked": False},
}

_SAID: Mapping[Mark, str] = {
    "skipped": "comes last now",
    "held back": "is held back",
    "back in": "is back in, the last of them",
    "locked": "is locked: it stays when the rest is proposed anew",
    "unlocked": "is no longer locked",
}


class SetTakenUp(Event, frozen=True, kw_only=True, tag="set taken up"):
    """The set in hand at a stage is this one, whatever was thought to lie first."""

    stage: str
    number: int

    def check(self, state: State) -> None:
        from sewalong.progress.record.squares_left import laid_set

        stage = a_stage(state, self.stage)
        if laid_set(state, self.number).held_back:
            raise Refused(f"Set {self.number} is held back. Let it back in first.")
        if not any(
            piece.set == self.number
            for taken in stage.takes
            for piece in state.sets.lying.get(taken.pile, ())
        ) or not isinstance(stage, Stage):
            raise Refused(
                f"No piece of set {self.number} waits at {stage.label}. Ask where it is: which set "
                "has these fabrics."
            )

    def apply(self, tally: Tally, seq: int) -> None:
        stage = tally.route.stage(self.stage)
        for taken in stage.takes if stage else ():
            if pieces := tally.sets.lying.get(taken.pile):
                first = first_in_hand(pieces, self.number)
                tally.sets.lying[taken.pile] = LyingPile(first)
        tally.can_undo(seq)

    def words(self, state: State, record: Sequence[Recorded]) -> str:
        return f"In hand at {label_of(state, self.stage)}: set {self.number}."


def kept_sets(state: State) -> frozenset[int]:
    """The sets that stay when others are accepted: begun, locked or held back."""
    return state.sets.kept(state.quilt.starts[0].pile)


def numbered(
    state: State, new: Sequence[tuple[str, ...]]
) -> tuple[tuple[int, tuple[str, ...]], ...]:
    """New sets with the numbers they get: the lowest that are free."""
    kept = kept_sets(state)
    free = (number for number in count(1) if number not in kept)
    return tuple(zip(free, new, strict=False))

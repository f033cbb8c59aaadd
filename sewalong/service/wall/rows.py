"""Whole rows of the wall: what moving them does, and their order where it was lost; in words."""

from __future__ import annotations

from msgspec import Struct

from sewalong.progress.acts.act import Act
from sewalong.progress.acts.wall import ExchangeRows, OrderRows, TurnRow
from sewalong.progress.joining.nesting import nesting_facts
from sewalong.progress.record.events.wall import must_be_laid
from sewalong.progress.record.refused import Refused
from sewalong.progress.record.state import State
from sewalong.progress.sets.set_words import called
from sewalong.progress.wall.on_wall import on_wall
from sewalong.service.open_quilt import OpenQuilt
from sewalong.service.wall.changes import effect_of, would_be
from sewalong.wall.laying.laying import Laying, touches
from sewalong.wall.laying.moves import Effect
from sewalong.wall.laying.rows import InOrder, order_of_rows, with_rows_ordered
from sewalong.wall.laying.touch_words import effect_words


def what_moving_rows_does(quilt: OpenQuilt, act: Act) -> tuple[str, ...]:
    """What it would mend and make, and what becomes of the pressing; a sentence each. Raises Refused
    where it cannot be done."""
    after = would_be(quilt, act)
    effect = between_rows(effect_of(quilt.state, after), act)
    return (*effect_words(effect, called(quilt.state.quilt)), *nesting_facts(after))


def between_rows(effect: Effect, act: Act) -> Effect:
    """Of whole rows that are moved, only what touches between two rows or around them: what touches
    within a row goes with it."""
    if not isinstance(act, TurnRow | ExchangeRows):
        return effect
    mends, makes = (
        tuple(
            one for one in some if len({row for row, _ in one.places}) != 1 or len(one.places) == 1
        )
        for some in (effect.mends, effect.makes)
    )
    return Effect(effect.before, effect.after, mends, makes)


class OrderFound(Struct, frozen=True):
    """An order in which neighbouring rows touch least: all touches `before` and `after`, and how all
    would lie `then`."""

    found: InOrder
    before: int
    after: int
    then: Laying

    @property
    def act(self) -> OrderRows:
        """The act by which the rows lie so."""
        turned = tuple(n for n, turns in enumerate(self.found.turned, start=1) if turns)
        return OrderRows(tuple(row + 1 for row in self.found.order), turned)

    @property
    def lines(self) -> tuple[str, ...]:
        """What it comes to, a sentence each."""
        return (*(self._otherwise() if self.after != self.before else self._as_it_lies()),)

    def _as_it_lies(self) -> tuple[str, ...]:
        n = f"{self.before} touch{'' if self.before == 1 else 'es'}"
        none = "no order of these rows has fewer"
        fewer = none if self.found.is_least else "no order with fewer was found"
        return (f"As the rows lie there are {n}, and {fewer}.", *self._as_good())

    def _otherwise(self) -> tuple[str, ...]:
        claim = ", and no order has fewer" if self.found.is_least else ""
        now = f"{self.before} touch{'' if self.before == 1 else 'es'} now"
        rows = zip(self.found.order, self.found.turned, strict=True)
        return (
            f"{now}, {self.after} in this order{claim}.",
            *(
                f"As row {number}: row {row + 1}{', turned end for end' if turns else ''}."
                for number, (row, turns) in enumerate(rows, start=1)
            ),
            *self._as_good(),
        )

    def _as_good(self) -> tuple[str, ...]:
        others = (self.found.as_good or 1) - 1
        if not others:
            return ()
        return (f"{others} other order{' is' if others == 1 else 's are'} as good.",)


def order_found(state: State, *, turning: bool = False, seed: int = 1) -> OrderFound:
    """The order of the rows as they lie, in which neighbours touch least; with `turning` they may lie
    either way round. Raises Refused where rows do not tell, or nothing is laid."""
    if state.quilt.setting is not None:
        raise Refused("Rows with sashes or on point do not show by their edges how they followed.")
    must_be_laid(state)
    now = on_wall(state)
    assert now is not None
    found = order_of_rows(now.laying.places, now.units, now.rules, turning=turning, seed=seed)
    then = with_rows_ordered(now.laying, found)
    before, after = (len(touches(one, now.units, now.rules)) for one in (now.laying, then))
    return OrderFound(found, before, after, then)

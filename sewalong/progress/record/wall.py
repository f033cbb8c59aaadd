"""What lies on the wall: which unit at which place, how turned, and in which rows they were sewn.

The wall is where units are laid before they are joined, be it a floor or a bed. Places are named by
row and place in the row, both from 1, as rows are sewn.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Sequence
from typing import Literal

from msgspec import Struct
from msgspec.structs import replace

At = tuple[int, int]
"""A place: its row and its place in it, from 1."""

Lies = tuple[int, int]
"""What lies at a place: the number of a unit on the wall, from 0, and its quarter turns."""

Row = tuple[Lies | None, ...]

TouchWord = Literal["edge", "corner"]

OF_NO_SET = 0
BY_LETTER = -1
"""In place of the number of a unit in its set: nothing is known of it but one letter."""


class LaidUnit(Struct, frozen=True):
    """One unit that can be laid: of the set `set` the unit `unit`, from 0 on in order of making.

    `squares` are her letters at the places of that set, as they were when it was laid; "" for one
    that is not known. Of no set (0) they are what its patches were seen to be; a unit known by one
    letter only has just that, and the number BY_LETTER.
    """

    set: int
    unit: int
    squares: tuple[str, ...]


class WallNow(Struct, frozen=True):
    """What lies there, row by row; None where nothing does. Units that lie nowhere are spares.

    `touch`, `stacks` and `rim` are the rules by which it was laid: whether like fabrics may touch
    at a point, whether units of one stack are kept apart, and the fabric that is kept from the rim
    ("" for none). `pressed` has for each row the number it was sewn and pressed under, below zero
    where it was turned end for end since, so that its seams point the other way.
    """

    units: tuple[LaidUnit, ...] = ()
    rows: tuple[Row, ...] = ()
    locked: frozenset[At] = frozenset()
    touch: TouchWord = "edge"
    stacks: bool = True
    rim: str = ""
    pressed: tuple[int, ...] = ()

    @property
    def is_laid(self) -> bool:
        """Whether anything lies there."""
        return any(lies is not None for row in self.rows for lies in row)

    def has(self, at: At) -> bool:
        """Whether there is such a place."""
        row, place = at
        return 1 <= row <= len(self.rows) and 1 <= place <= len(self.rows[row - 1])

    def at(self, at: At) -> Lies | None:
        """What lies at a place that there is."""
        return self.rows[at[0] - 1][at[1] - 1]

    def spares(self) -> tuple[int, ...]:
        """The numbers of the units that lie nowhere."""
        laid = {lies[0] for row in self.rows for lies in row if lies is not None}
        return tuple(n for n in range(len(self.units)) if n not in laid)

    def where(self, unit: int) -> At | None:
        """The place where a unit lies; None for a spare."""
        for row, there in enumerate(self.rows, start=1):
            for place, lies in enumerate(there, start=1):
                if lies is not None and lies[0] == unit:
                    return row, place
        return None

    def with_moves(self, moves: Iterable[tuple[At, Lies | None]]) -> WallNow:
        """The same with this at these places; nothing is known to lie where there is no place."""
        rows: dict[int, list[Lies | None]] = {}
        for (row, place), lies in moves:
            if self.has((row, place)):
                rows.setdefault(row, list(self.rows[row - 1]))[place - 1] = lies
        changed = tuple(
            tuple(rows[number]) if number in rows else there
            for number, there in enumerate(self.rows, start=1)
        )
        return replace(self, rows=changed)

    def unpicked_to(self, whole: int) -> WallNow:
        """The same once only so many rows are sewn: the others will be pressed as they lie then."""
        return replace(
            self, pressed=(*self.pressed[:whole], *range(whole + 1, len(self.pressed) + 1))
        )

    def with_rows(
        self, order: Sequence[int], turned: Collection[int], sewn: Collection[int]
    ) -> WallNow:
        """The same rows in another order: for each place from row 1 on the number of the row that
        lies there now; those of `turned`, by their new numbers, lie end for end. Rows of `sewn`,
        by their old numbers, take along what they were pressed under."""
        rows, pressed, locked = [], [], set()
        for number, was in enumerate(order, start=1):
            there, under = self.rows[was - 1], self.pressed[was - 1]
            turns = number in turned
            rows.append(_half_turned(there) if turns else there)
            pressed.append((-under if turns else under) if was in sewn else number)
            locked |= {
                (number, len(there) + 1 - place if turns else place)
                for row, place in self.locked
                if row == was
            }
        return replace(self, rows=tuple(rows), pressed=tuple(pressed), locked=frozenset(locked))

    def fitted(self, lengths: Sequence[int], *, anew: bool = False) -> WallNow:
        """The same on a layout with rows of these lengths: what has its place keeps it, all else is
        spare. `anew`: no place of the old layout is one of the new."""
        old: Sequence[Row] = () if anew else self.rows
        rows = tuple(
            (*old[n][:length], *[None] * (length - len(old[n])))
            if n < len(old)
            else (None,) * length
            for n, length in enumerate(lengths)
        )
        kept = () if anew else self.pressed[: len(rows)]
        return replace(
            self,
            rows=rows,
            locked=frozenset()
            if anew
            else frozenset(filter(replace(self, rows=rows).has, self.locked)),
            pressed=(*kept, *range(len(kept) + 1, len(rows) + 1)),
        )


NOTHING_LAID = WallNow()


def _half_turned(row: Row) -> Row:
    return tuple(None if lies is None else (lies[0], (lies[1] + 2) % 4) for lies in reversed(row))

"""Sets as they were accepted, and where their pieces lie by now, as far as that is known.

Squares are numbered by their place in the set from 0 on (`quilt.set_shape`).
"""

from __future__ import annotations

from collections.abc import Mapping

from msgspec import Struct

NOBODY_KNOWS = 0
"""In place of the number of a set: a piece of which nobody knows the set."""


class LaidSet(Struct, frozen=True):
    """The squares of one set: her letter for the fabric at each place.

    `lost` are the places whose square was spoiled and replaced by nobody knows what. `held_back`:
    not to be sewn for now. `locked`: kept when the rest is proposed anew.
    """

    number: int
    squares: tuple[str, ...]
    lost: tuple[int, ...] = ()
    held_back: bool = False
    locked: bool = False

    @property
    def known(self) -> tuple[str, ...]:
        """The fabrics at all its places, in order, as `fabrics`."""
        return self.fabrics(tuple(range(len(self.squares))))

    def fabrics(self, places: tuple[int, ...]) -> tuple[str, ...]:
        """The fabrics at these places; empty for one that is not known any more."""
        return tuple("" if place in self.lost else self.squares[place] for place in places)


class Lying(Struct, frozen=True):
    """A piece in a pile: of which set, which of the set's pieces of this pile, and whether that is
    sure. It is not once one of the pile is gone and nobody said which."""

    set: int
    index: int
    sure: bool = True


UNKNOWN = Lying(NOBODY_KNOWS, 0)


class SetsNow(Struct, frozen=True):
    """All sets by number, and by pile their pieces in the order in which they lie.

    In a pile with pieces that are not sure there may be more of them here than lie there. In the
    pile of units are all that were made and not spoiled, those in rows too. `gone` counts, by
    fabric, squares that were spoiled or set aside for good.
    """

    sets: Mapping[int, LaidSet] = {}
    lying: Mapping[str, tuple[Lying, ...]] = {}
    gone: Mapping[str, int] = {}

    def begun(self, start: str) -> frozenset[int]:
        """The sets of which a square left the start pile."""
        there: dict[int, int] = {}
        for piece in self.lying.get(start, ()):
            there[piece.set] = there.get(piece.set, 0) + 1
        return frozenset(
            number
            for number, one in self.sets.items()
            if not one.held_back and there.get(number, 0) < len(one.squares)
        )

    def kept(self, start: str) -> frozenset[int]:
        """The sets that stay when others are accepted: begun, locked or held back."""
        begun = self.begun(start)
        return begun | {n for n, one in self.sets.items() if one.locked or one.held_back}

    def order(self, start: str) -> tuple[int, ...]:
        """The sets not begun and not held back, the next one first."""
        begun = self.begun(start)
        lying = dict.fromkeys(piece.set for piece in self.lying.get(start, ()))
        return tuple(number for number in lying if number and number not in begun)

    def used(self) -> Mapping[str, int]:
        """By fabric, the squares that are in a set, or gone."""
        counts = dict(self.gone)
        for one in self.sets.values():
            for place, letter in enumerate(one.squares):
                if place not in one.lost:
                    counts[letter] = counts.get(letter, 0) + 1
        return counts

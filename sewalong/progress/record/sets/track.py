"""What happens to the sets she accepted, and to their pieces, as events come in."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import TYPE_CHECKING

from msgspec import Struct, field
from msgspec.structs import replace

from sewalong.piecing.method import Stage
from sewalong.progress.record.sets.flow import count_on, doubtful, take_apart
from sewalong.progress.record.sets.laid import UNKNOWN, LaidSet, Lying, SetsNow
from sewalong.progress.record.sets.lying_pile import LyingPile
from sewalong.quilt.quilt import Quilt

if TYPE_CHECKING:
    from sewalong.quilt.set_shape import SetShape

NO_SETS = SetsNow()


class SetTrack(Struct):
    """The running state of `SetsNow`; as long as no set was accepted it costs nothing."""

    sets: dict[int, LaidSet] = field(default_factory=dict)
    lying: dict[str, LyingPile] = field(default_factory=dict)
    gone: dict[str, int] = field(default_factory=dict)

    def copy(self) -> SetTrack:
        """The same, changed apart from this one."""
        piles = {pile: LyingPile(pieces) for pile, pieces in self.lying.items()}
        return SetTrack(dict(self.sets), piles, dict(self.gone))

    def frozen(self) -> SetsNow:
        """As it stands now."""
        if not self.sets and not self.gone:
            return NO_SETS
        piles = {pile: tuple(pieces) for pile, pieces in self.lying.items()}
        return SetsNow(dict(self.sets), piles, dict(self.gone))

    def flow(self, quilt: Quilt, stage: Stage, n: int, left: Mapping[str, int]) -> None:
        """`n` of a stage were counted, or taken apart (below zero); `left` is what lies in each
        pile now."""
        shape = _shape(quilt) if self.sets else None
        if shape is None or stage.id not in shape.runs:
            return
        if n < 0:
            take_apart(shape, self.lying, stage, -n)
            return
        count_on(shape, self.sets, self.lying, stage, n)
        for taken in stage.takes:
            self._hold_to_count(quilt, taken.pile, left)

    def leave(
        self,
        quilt: Quilt,
        pile: str,
        n: int,
        left: Mapping[str, int],
        number: int = 0,
        fabric: str = "",
    ) -> None:
        """`n` pieces left a pile for good; of set `number`, with a fabric in it, where somebody
        said so."""
        shape = _shape(quilt) if self.sets else None
        if shape is None or pile == shape.pile or pile not in self.lying:
            return
        there = tuple(self.lying[pile])
        mine = [one for one in there if number and one.set == number]
        if not mine:
            self.lying[pile] = LyingPile(doubtful(there))
            self._hold_to_count(quilt, pile, left)
            return
        laid = self.sets[number]
        held = {one: shape.squares_of[(pile, one.index)] for one in mine}
        with_it = [one for one in mine if fabric in (laid.squares[at] for at in held[one])]
        mine = with_it or mine
        gone = mine[-n:]
        # Where the set has more such pieces in the pile than are gone, nobody knows which are left.
        lost = {at for one in mine for at in held[one]}.difference(laid.lost)
        for at in {at for one in gone for at in held[one]}.difference(laid.lost):
            self.lose(laid.squares[at], 1)
        self.sets[number] = replace(laid, lost=tuple(sorted({*laid.lost, *lost})))
        rest = tuple(one for one in there if one not in gone)
        # Of more than are known to be of the set nobody said which the others were.
        self.lying[pile] = LyingPile(doubtful(rest) if n > len(gone) else rest)
        self._hold_to_count(quilt, pile, left)

    def lose(self, fabric: str, n: int) -> None:
        """`n` squares of a fabric are gone for good."""
        self.gone[fabric] = self.gone.get(fabric, 0) + n

    def come(self, quilt: Quilt, pile: str, n: int) -> None:
        """`n` more pieces came to a pile, nobody knows of what."""
        if self.sets and pile in self.lying and pile != quilt.starts[0].pile:
            self.lying[pile].lay([UNKNOWN] * n)

    def accept(
        self,
        quilt: Quilt,
        new: Sequence[tuple[int, tuple[str, ...]]],
        piles: Mapping[str, int],
    ) -> None:
        """New sets, by number, in place of all that are not begun, locked or held back."""
        shape = _shape(quilt)
        if shape is None:
            return
        stay = self.frozen().kept(shape.pile)
        self.sets = {number: one for number, one in self.sets.items() if number in stay}
        if not self.lying:
            self.lying = {
                pile.id: LyingPile([UNKNOWN] * piles[pile.id])
                for pile in quilt.method.piles
                if pile.id != shape.pile
            }
        kept = tuple(one for one in self.lying.get(shape.pile, ()) if one.set in self.sets)
        self.sets |= {number: LaidSet(number, squares) for number, squares in new}
        laid = (piece for number, squares in new for piece in all_of(number, len(squares)))
        self.lying[shape.pile] = LyingPile((*kept, *laid))

    def _hold_to_count(self, quilt: Quilt, pile: str, left: Mapping[str, int]) -> None:
        """What is over by name in a pile was what had gone: where all that is sure is counted, the
        others are no more than the rest."""
        if pile not in (quilt.starts[0].pile, quilt.method.unit):
            self.lying[pile].shrink_to(left[pile])


def all_of(number: int, squares: int) -> tuple[Lying, ...]:
    """The squares of a set as they lie before it is begun."""
    return tuple(Lying(number, place) for place in range(squares))


def _shape(quilt: Quilt) -> SetShape | None:
    # It takes the geometry of the method, which nobody without sets has to load.
    from sewalong.quilt.set_shape import set_shape

    return set_shape(quilt)

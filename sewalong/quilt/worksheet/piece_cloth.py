"""The starting pieces of the target: how many, what of them is there, what is short, and the cloth
they come from, shared out among the fabrics the method uses."""

from __future__ import annotations

from math import ceil

from msgspec import Struct

from sewalong.lengths import Length
from sewalong.piecing.method import Noun
from sewalong.quilt.cloth.squares import ClothFor, cloth_for
from sewalong.quilt.layouts.yield_of_method import pieces_for
from sewalong.quilt.quilt import StartPile
from sewalong.quilt.size import Size
from sewalong.quilt.worksheet.basis import Basis


class StartNeed(Struct, frozen=True):
    """One starting pile: `need` pieces for the target, of which `short` are still to be had.

    `there` are those begun with; by the record, those of the needed that lie there or are sewn.
    """

    start: StartPile
    noun: Noun
    need: int
    short: int
    there: int

    @property
    def words(self) -> str:
        """`60 for the target: 42 there, 18 short`."""
        short = f"{self.short:,} short" if self.short else "none short"
        return f"{self.need:,} for the target: {self.there:,} there, {short}"


class PieceCloth(Struct, frozen=True):
    """One fabric for one starting pile. `name` is empty for a fabric that has none."""

    name: str
    letters: str
    pile: str
    strip: bool
    cut: ClothFor

    @property
    def longest(self) -> Length:
        """The longer side of one piece."""
        return max(self.cut.piece.width, self.cut.piece.length)


def start_needs(basis: Basis) -> tuple[StartNeed, ...]:
    """What the target takes of every starting pile, and what is short of it.

    By the record where it is known (`basis.short`), else by what there is to begin with.
    """
    method = basis.quilt.method
    need = pieces_for(method, basis.units)
    found = []
    for start in basis.quilt.starts:
        known, wanted = basis.short, need[start.pile]
        lacking = wanted - start.count if known is None else known.get(start.pile, 0)
        short = min(max(0, lacking), wanted)
        there = start.count if known is None else wanted - short
        found.append(StartNeed(start, method.pile(start.pile).noun, wanted, short, there))
    return tuple(found)


def fabric_counts(one: StartNeed, basis: Basis) -> dict[str, int]:
    """Pieces of the target by the name of their fabric: one part for each letter the name has
    among all the letters of the pile. Those of fabrics with no name stand together under ""."""
    letters = [letter for letter, pile in basis.made.letters.items() if pile == one.start.pile]
    return {
        name: ceil(one.need * len(shared) / len(letters))
        for name, shared in _letters_of(one, basis).items()
    }


def piece_cloths(basis: Basis) -> tuple[PieceCloth, ...]:
    """Cloth for every starting pile that is not from packs, as if it were all cut from cloth.

    Each fabric that has a name has its own count (see `fabric_counts`). Raises NumbersFault when
    a piece is wider than the cloth.
    """
    return tuple(
        PieceCloth(
            name,
            _letters_of(one, basis)[name],
            one.start.pile,
            one.start.length is not None,
            cloth_of(one.start, count, basis),
        )
        for one in start_needs(basis)
        if one.start.packs is None
        for name, count in fabric_counts(one, basis).items()
    )


def cloth_of(start: StartPile, count: int, basis: Basis) -> ClothFor:
    """Cloth for `count` pieces of a starting pile; raises NumbersFault as `cloth_for` does."""
    usable = basis.choices.usable
    piece = Size.square(start.size)
    if start.length is not None:
        # The strips there show how wide their cloth is, whatever is usual.
        piece = Size(start.length, start.size)
        usable = max(usable, start.length)
    return cloth_for(count, piece, usable=usable, unit=basis.shown_in)


def _letters_of(one: StartNeed, basis: Basis) -> dict[str, str]:
    """The letters of a pile by the name of their fabric."""
    named = {fabric.letter: fabric.name for fabric in basis.quilt.named_fabrics}
    groups: dict[str, str] = {}
    for letter, pile in basis.made.letters.items():
        if pile == one.start.pile:
            name = named.get(letter, "")
            groups[name] = groups.get(name, "") + letter
    return groups

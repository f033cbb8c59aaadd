"""The cloth the starting pieces come from, shared out among the fabrics the method uses."""

from __future__ import annotations

from math import ceil

from msgspec import Struct

from sewalong.lengths import Length
from sewalong.quilt.cloth.squares import ClothFor, cloth_for
from sewalong.quilt.quilt import StartPile
from sewalong.quilt.size import Size
from sewalong.quilt.worksheet.basis import Basis


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


def piece_cloths(basis: Basis) -> tuple[PieceCloth, ...]:
    """Cloth for every starting pile that is not from packs, as if it were all cut from cloth.

    Where a fabric has a name it gets its share of the pieces, one part for each of its letters
    among all the letters of the pile; letters of one name go together. What is left is cut from
    fabrics with no name, as one. Raises NumbersFault when a piece is wider than the cloth.
    """
    return tuple(
        one for start in basis.quilt.starts if start.packs is None for one in _of(start, basis)
    )


def _of(start: StartPile, basis: Basis) -> list[PieceCloth]:
    letters = [one for one, pile in basis.made.letters.items() if pile == start.pile]
    named = {fabric.letter: fabric.name for fabric in basis.quilt.fabrics}
    groups: dict[str, str] = {}
    for letter in letters:
        name = named.get(letter, "")
        groups[name] = groups.get(name, "") + letter
    return [
        PieceCloth(
            name,
            shared,
            start.pile,
            start.length is not None,
            _cloth(start, ceil(start.count * len(shared) / len(letters)), basis),
        )
        for name, shared in groups.items()
    ]


def _cloth(start: StartPile, count: int, basis: Basis) -> ClothFor:
    usable = basis.choices.usable
    piece = Size.square(start.size)
    if start.length is not None:
        # The strips there are show how wide their cloth is, whatever is usual.
        piece = Size(start.length, start.size)
        usable = max(usable, start.length)
    return cloth_for(count, piece, usable=usable, unit=basis.shown_in)

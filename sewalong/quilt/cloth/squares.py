"""Squares and other pieces cut from cloth: how many it gives, and how much cloth a number takes.

Pieces are cut as quilters cut them: strips across the cloth, then pieces off the strip. Nothing
is allowed for squaring up the end of the cloth or for shrinking; what is left over is said.
"""

from collections.abc import Sequence
from fractions import Fraction
from math import ceil

from msgspec import Struct

from sewalong.lengths import Length, Unit, as_given
from sewalong.quilt.cloth.narrower import narrower, width_text
from sewalong.quilt.cloth.purchase import Purchase, to_buy
from sewalong.quilt.cloth.strips import USABLE
from sewalong.quilt.cloth.to_cut import cut_size, size_to_cut, to_cut
from sewalong.quilt.refusal import NumbersFault, above_zero, at_least
from sewalong.quilt.size import Size

FAT_QUARTER = Size(Fraction(22), Fraction(18))
"""Half a yard of cloth cut in two along its length, across and down, in inches (convention)."""

SPARE_SHARE = Fraction(2, 100)
"""Pieces to cut over, for each one needed."""


class FromCloth(Struct, frozen=True):
    """What a piece of cloth gives, `across` of them down to `across_down_to` of usable width
    (zero when none fit). `left_across` and `left_down` are the strips of cloth over, and
    `short_of_next` how much longer it would have to be for one more row of pieces."""

    across: int
    down: int
    across_down_to: Length
    left_across: Length
    left_down: Length
    short_of_next: Length
    reason: str

    @property
    def count(self) -> int:
        """Pieces in all."""
        return self.across * self.down


def from_cloth(cloth: Size, piece: Size, unit: Unit = Unit.INCH) -> FromCloth:
    """Pieces that can be cut from cloth of this usable width and this length, all lying one way.

    floor(width / piece) * floor(length / piece); never more, whatever a table says. The piece is
    taken as it is cut (see `to_cut`).
    """
    asked, piece = piece, cut_size(piece, unit)
    across, down = int(cloth.width // piece.width), int(cloth.length // piece.length)
    left_down = cloth.length - down * piece.length
    words = (
        f"{across * down} pieces of {size_to_cut(asked, unit)}: "
        f"{across} across {as_given(cloth.width, unit)}, {down} down {as_given(cloth.length, unit)}"
    )
    return FromCloth(
        across,
        down,
        across * piece.width,
        cloth.width - across * piece.width,
        left_down,
        piece.length - left_down,
        words,
    )


class ClothFor(Struct, frozen=True):
    """Strips across the cloth for a number of pieces; `over` pieces come of the last strip.

    `piece` is the size that is cut, and `strip_text` the width of the strips in words, with any
    rounding said.
    """

    count: int
    piece: Size
    strip_text: str
    per_strip: int
    strips: int
    over: int
    cloth: Length
    purchase: Purchase
    narrower: str
    reason: str


def cloth_for(
    count: int, piece: Size, *, usable: Length = USABLE, unit: Unit = Unit.INCH
) -> ClothFor:
    """The cloth for `count` pieces, whose width lies along the strip and length across it.

    The piece is taken as it is cut (see `to_cut`), so that strips and cloth are those of the
    size that is printed.

    Raises `NumbersFault` when one is wider than the cloth, or for a count below one.
    """
    at_least(1, count, "pieces")
    asked, piece = piece, cut_size(piece, unit)
    per_strip = int(above_zero(usable, "usable width") // piece.width)
    if per_strip == 0:
        raise NumbersFault(
            f"A piece of {piece.show(unit)} is wider than the {as_given(usable, unit)} of usable "
            "cloth. Turn it, or use wider cloth."
        )
    strips = ceil(count / per_strip)
    strip_text = to_cut(asked.length, unit).text
    cloth = strips * piece.length
    over = strips * per_strip - count
    plural = "strip" if strips == 1 else "strips"
    words = (
        f"{strips} {plural} of {strip_text}: {count} pieces, {per_strip} a strip at "
        f"{as_given(usable, unit)} usable, {over} over"
    )
    return ClothFor(
        count,
        piece,
        strip_text,
        per_strip,
        strips,
        over,
        cloth,
        to_buy(cloth, unit),
        narrower(count, piece.width, per_strip, unit),
        words,
    )


class CutsFit(Struct, frozen=True):
    """Whether several cuts come out of one cloth at one usable width. `left` is the length of
    cloth over, below zero when it is short; `down_to` the least usable width they still fit at,
    None when they do not fit."""

    usable: Length
    down_to: Length | None
    need: Length
    left: Length
    fits: bool
    cuts: tuple[ClothFor, ...]
    reason: str


def cuts_fit(
    cuts: Sequence[tuple[int, Size]],
    cloth: Length,
    *,
    usable: Length = USABLE,
    unit: Unit = Unit.INCH,
) -> CutsFit:
    """Whether so many of each piece can be cut from `cloth` inches, each kind from strips of its
    own. Raises `NumbersFault` as `cloth_for` does, and when nothing is to be cut."""
    at_least(1, len(cuts), "kinds of piece")
    above_zero(cloth, "cloth")
    each = tuple(cloth_for(count, piece, usable=usable, unit=unit) for count, piece in cuts)
    need = sum((one.cloth for one in each), Fraction(0))
    left = cloth - need
    down_to = _fits_down_to(each, cloth) if left >= 0 else None
    verdict = f"{as_given(-left, unit)} short"
    if down_to is not None:
        verdict = f"{as_given(left, unit)} left, fits down to {width_text(down_to, unit)} usable"
    needed = f"{as_given(need, unit)} of {as_given(cloth, unit)}"
    words = f"{needed} at {as_given(usable, unit)} usable: {verdict}"
    return CutsFit(usable, down_to, need, left, left >= 0, each, words)


def _fits_down_to(cuts: Sequence[ClothFor], cloth: Length) -> Length:
    """The least width at which these cuts, which fit, still do. Their cloth only changes where
    one piece a strip is lost, so those widths are tried from the widest down."""
    steps = {n * cut.piece.width for cut in cuts for n in range(1, cut.per_strip + 1)}
    fits = max(steps)
    for width in sorted(steps, reverse=True):
        if any(cut.piece.width > width for cut in cuts):
            break
        if sum(_cloth_at(width, cut) for cut in cuts) > cloth:
            break
        fits = width
    return fits


def _cloth_at(usable: Length, cut: ClothFor) -> Length:
    return ceil(cut.count / (usable // cut.piece.width)) * cut.piece.length


def spares_to_cut(count: int) -> int:
    """Pieces to cut over the number needed while there is cloth: 2 in 100, and at least one.

    Common practice; one piece short with the cloth gone stops a quilt.
    """
    return ceil(at_least(1, count, "pieces") * SPARE_SHARE)

"""A quilt in few words, to stand beside the questions it is planned by."""

from __future__ import annotations

from msgspec import Struct

from sewalong.lengths import cloth_length
from sewalong.quilt.size import Size
from sewalong.quilt.unit_size import trim_text, unit_text
from sewalong.quilt.worksheet.basis import Basis
from sewalong.quilt.worksheet.line import CANNOT_BE_HAD


class InShort(Struct, frozen=True):
    """`unit` and `top` are what they finish at, `trim` what units are trimmed to, empty where they
    are not. `makes` says what comes of the pieces, `left` what that leaves of the layout, and
    `borders` the cloth they take, empty where there are none."""

    unit: str
    top: str
    trim: str
    makes: str
    left: str
    borders: str

    @property
    def first(self) -> tuple[str, ...]:
        """What is to be known first, one fact a line."""
        return (self.makes, self.left, self.sizes)

    @property
    def then(self) -> tuple[str, ...]:
        """What is to be known besides."""
        trim = f"Units are trimmed to {self.trim}." if self.trim else ""
        return tuple(filter(None, (trim, self.borders)))

    @property
    def sizes(self) -> str:
        """What unit and top finish at, in a sentence."""
        return f"A unit finishes at {self.unit}, the top at {self.top}."


def in_short(basis: Basis, units: int) -> InShort:
    """The quilt in few words; `units` is how many there are or will be."""
    quilt = basis.quilt
    return InShort(
        unit=_size(basis.unit.grown(-quilt.seam), basis),
        top=_square(basis.finishes_at, basis),
        trim=trim_text(basis.unit, basis.shown_in) if basis.is_trimmed else "",
        makes=_makes(basis, units),
        left=_left(basis, units),
        borders=_borders(basis),
    )


def _size(size: Size, basis: Basis) -> str:
    return unit_text(size, basis.shown_in)


def _square(size: Size, basis: Basis) -> str:
    """`65 3/4 in square`; as wide and as long as it is where the sides differ."""
    if size.width == size.length:
        return f"{size.show(basis.shown_in).split(' × ')[1]} square"
    return size.show(basis.shown_in)


def _makes(basis: Basis, units: int) -> str:
    method = basis.quilt.method
    pieces = " and ".join(
        f"{start.count:,} {method.pile(start.pile).noun.of(start.count)}"
        for start in basis.quilt.starts
    )
    one = len(basis.quilt.starts) == 1 and basis.quilt.starts[0].count == 1
    noun = method.pile(method.unit).noun.of(units)
    return f"{pieces} {'makes' if one else 'make'} {units:,} {noun}."


def _left(basis: Basis, units: int) -> str:
    wanted, target = basis.units, f"{basis.target.rows} × {basis.target.columns}"
    verb = "takes" if wanted != 1 else "takes only"
    if wanted > units:
        return f"{target} {verb} {wanted:,}: {wanted - units:,} short."
    spare = f": {units - wanted:,} spare" if units > wanted else ": no unit spare"
    return f"{target} {verb} {wanted:,}{spare}."


def _borders(basis: Basis) -> str:
    """Cloth by name, since borders of one cloth are cut of it together."""
    try:
        numbers = basis.bordered()
    except CANNOT_BE_HAD as fault:
        return f"Borders: {fault}"
    named = zip(basis.quilt.borders, numbers, strict=True)
    each = [
        f"{cloth_length(one.strips.cloth, basis.shown_in)} for the {border.cloth}"
        for border, one in named
    ]
    return f"Border cloth: {', '.join(each)}." if each else ""

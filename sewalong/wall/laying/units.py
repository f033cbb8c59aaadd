"""The units that are laid on the wall: what each shows, and of what stack, family and value it is."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import TYPE_CHECKING

from msgspec import Struct
from msgspec.structs import replace

from sewalong.piecing.cloth import Flat
from sewalong.wall.laying.edges import Sides, plain_sides, shown_sides, turns_allowed

if TYPE_CHECKING:
    # Colours take long to load, and a unit can be known without them.
    from sewalong.fabrics.swatch import Swatch


class WallUnit(Struct, frozen=True):
    """One unit. `sides` are as it is unturned; `turns` are the quarter turns it may lie in.

    `stack` is the number of the set it comes of. `value` is its lightness from afar, 0 to 100, and
    `family` the colour family that more than half of it is of. None where that is not known.
    """

    sides: Sides
    turns: tuple[int, ...] = (0,)
    stack: int | None = None
    value: float | None = None
    family: str | None = None

    @property
    def plain(self) -> str | None:
        """The one fabric it shows all round; None where it shows several, or nothing."""
        fabrics = {span.fabric for side in self.sides for span in side}
        return fabrics.pop() if len(fabrics) == 1 else None


def wall_unit(
    unit: Flat,
    seam: float,
    fabrics: Mapping[str, str] | None = None,
    swatches: Mapping[str, Swatch] | None = None,
    stack: int | None = None,
) -> WallUnit:
    """A unit of a method. `fabrics` has her fabric for each of the method's letters, `swatches`
    what is known of hers by letter; `seam` inches are taken all round."""
    sides = shown_sides(unit, seam, fabrics)
    shares: dict[str, float] = {}
    for letter, share in unit.shares(seam):
        fabric = (fabrics or {}).get(letter, letter)
        shares[fabric] = shares.get(fabric, 0.0) + share
    known = [((swatches or {}).get(fabric), share) for fabric, share in shares.items()]
    return WallUnit(sides, turns_allowed(sides), stack, _value(known), _family(known))


def plain_unit(fabric: str, swatch: Swatch | None = None) -> WallUnit:
    """A square of one fabric, or a unit known by one letter only; no turn changes it."""
    known = [(swatch, 1.0)]
    return WallUnit(plain_sides(fabric), (0,), None, _value(known), _family(known))


def relabelled(units: Sequence[WallUnit], words: Mapping[str, str]) -> tuple[WallUnit, ...]:
    """The units with a word in place of each fabric, such as its value: to ask where like values
    touch. A fabric without a word stands for itself."""
    return tuple(
        replace(
            unit,
            sides=tuple(
                tuple(span._replace(fabric=words.get(span.fabric, span.fabric)) for span in side)
                for side in unit.sides
            ),
        )
        for unit in units
    )


def _value(known: Sequence[tuple[Swatch | None, float]]) -> float | None:
    """The mean by area: from afar a unit is as light as its patches are together. Known only if
    the value of every fabric is."""
    values = [(swatch.value if swatch else None, share) for swatch, share in known]
    if any(value is None for value, _ in values):
        return None
    return sum((value or 0.0) * share for value, share in values)


def _family(known: Sequence[tuple[Swatch | None, float]]) -> str | None:
    shares: dict[str, float] = {}
    for swatch, share in known:
        if swatch is not None and swatch.family is not None:
            shares[swatch.family] = shares.get(swatch.family, 0.0) + share
    most = max(shares, key=lambda family: shares[family], default=None)
    return most if most is not None and shares[most] > 0.5 else None

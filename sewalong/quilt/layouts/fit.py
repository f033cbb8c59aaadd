"""How one size lies on another: over or short, and by how much across and down."""

from msgspec import Struct

from sewalong.lengths import Length, Unit, as_given
from sewalong.quilt.size import Size


class Fit(Struct, frozen=True):
    """`across` and `down` are what there is over what is wanted; below zero is short."""

    wanted: Size
    across: Length
    down: Length
    covers: bool
    covers_turned: bool
    reason: str

    @property
    def off(self) -> Length:
        """How far off in all, across and down together, whether over or short."""
        return abs(self.across) + abs(self.down)


def fit(size: Size, wanted: Size, unit: Unit = Unit.INCH) -> Fit:
    """How `size` meets `wanted`, both as they lie.

    `covers_turned` says that it would cover on its side when it does not as it lies: a brief
    read the wrong way round shows here.
    """
    across = size.width - wanted.width
    down = size.length - wanted.length
    covers = size.covers(wanted)
    turned = not covers and size.turned.covers(wanted)
    words = f"{_way(across, 'across', unit)}, {_way(down, 'down', unit)}"
    verdict = "covers" if covers else "falls short"
    also = "; turned on its side it covers" if turned else ""
    return Fit(wanted, across, down, covers, turned, f"{verdict}: {words}{also}")


def _way(over: Length, where: str, unit: Unit) -> str:
    if over == 0:
        return f"exact {where}"
    return f"{as_given(abs(over), unit)} {'over' if over > 0 else 'short'} {where}"

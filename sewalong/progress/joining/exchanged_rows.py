"""Two rows that change places after they were pressed: which joins no longer nest."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct

from sewalong.progress.record.limits import short
from sewalong.progress.record.refused import Refused
from sewalong.quilt.quilt import Target
from sewalong.quilt.setting import SetOnPoint, Setting
from sewalong.wall.laying.pressing import not_nesting

KEEPS = "Rows pressed by turns keep their nesting when their numbers differ by an even number."


class Exchanged(Struct, frozen=True):
    """Two rows exchanged: the joins where ridge lies on ridge, each by the rows that meet there,
    out of `joins` in all; `crossings` of seams collide."""

    rows: tuple[int, int]
    joins: int
    collide: tuple[tuple[int, int], ...]
    crossings: int

    @property
    def sentence(self) -> str:
        """What it does and what to do."""
        first, second = self.rows
        said = f"Rows {first} and {second} exchanged"
        if not self.collide:
            return f"{said}: every join still nests."
        n = len(self.collide)
        where = ", ".join(f"{one} on {other}" for one, other in self.collide)
        return (
            f"{said}: at {n} of the {self.joins} joins ridge lies on ridge ({where}), "
            f"{self.crossings} crossing{'' if self.crossings == 1 else 's'}. Press both rows the "
            f"other way, or exchange others. {KEEPS}"
        )


def exchanged(
    target: Target,
    first: int,
    second: int,
    setting: Setting | None = None,
    pressed: Sequence[int] = (),
) -> Exchanged:
    """What exchanging two rows that were pressed by turns does; raises Refused for no such rows,
    and on point, where every row has its own place.

    `setting` is how units are set, straight where None. Rows with sashes are all pressed towards
    the sashes, so their joins still nest. `pressed` has for each row what it was pressed under, where
    some changed places before (`WallNow.pressed`).
    """
    if isinstance(setting, SetOnPoint):
        raise Refused("Rows on point differ in length or in their ends, so none can change places.")
    for row in (first, second):
        if not 1 <= row <= target.rows:
            raise Refused(
                f"There is no row {short(row)}: the rows are numbered from 1 to {target.rows}. "
                "Read the tag again, the right way up."
            )
    if first == second:
        raise Refused("Name two rows: a row cannot change places with itself.")
    order = list(pressed) or list(range(1, target.rows + 1))
    order[first - 1], order[second - 1] = order[second - 1], order[first - 1]
    collide = () if setting is not None else not_nesting(order).collide
    met = tuple((abs(order[one - 1]), abs(order[other - 1])) for one, other in collide)
    crossings = len(collide) * (target.columns - 1)
    return Exchanged((min(first, second), max(first, second)), target.rows - 1, met, crossings)

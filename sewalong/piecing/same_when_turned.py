"""Whether two units are the same once one of them is turned."""

from __future__ import annotations

from collections.abc import Sequence

from sewalong.piecing.cloth import Flat, turned
from sewalong.piecing.geometry import turn


def alike(a: Flat, b: Flat, *, prints: bool = True) -> bool:
    """True if `b`, turned by quarters, shows the same fabrics in the same patches as `a`.

    With `prints`, one-way prints must also stand the same way up. Units that are not
    alike in any turn although their fabrics are the same lean opposite ways: cloth can
    be turned on the table but not turned over.
    """
    wanted = _signature(a, prints)
    return any(_signature(turned(b, turn(eighths)), prints) == wanted for eighths in (0, 2, 4, 6))


def kinds(units: Sequence[Flat]) -> list[list[int]]:
    """The places of `units`, those together that can be turned to look alike, prints apart."""
    found: list[list[int]] = []
    for place, unit in enumerate(units):
        home = next((kind for kind in found if alike(units[kind[0]], unit, prints=False)), None)
        if home is None:
            found.append([place])
        else:
            home.append(place)
    return found


_Signature = frozenset[tuple[str, frozenset[tuple[float, float]], int | None]]


def _signature(unit: Flat, prints: bool) -> _Signature:
    return frozenset(
        (
            patch.letter,
            frozenset((round(x, 4), round(y, 4)) for x, y in patch.points),
            patch.turn if prints else None,
        )
        for patch in unit.patches
    )

"""A verdict in plain sentences, one fact each, the answer first."""

from __future__ import annotations

from collections.abc import Mapping

from sewalong.wall.laying.edges import TouchRule
from sewalong.wall.laying.verdict import Verdict


def verdict_words(
    found: Verdict, rule: TouchRule, called: Mapping[str, str] | None = None
) -> tuple[str, ...]:
    """What is possible. `called` has letter and name of each fabric."""
    names = called or {}
    where = "along a seam" if rule is TouchRule.EDGE else "along a seam or at a point"
    if found.possible:
        return (f"Possible: no like fabrics meet {where}.",)
    if found.possible is None:
        return (
            f"Nothing speaks against it: whether no like fabrics meet {where} is seen as it is laid.",
        )
    times = "once" if found.least == 1 else f"{found.least} times"
    said = [f"Not possible: like fabrics meet {where} {times} at least."]
    for fabric in found.too_many:
        over = fabric.units - fabric.most
        said.append(
            f"{names.get(fabric.fabric, fabric.fabric)}: {fabric.units} units, and {fabric.most} can "
            f"lie apart: {over} too many."
        )
    if found.too_few:
        said.append("Where points count, four fabrics are needed at least.")
    if found.four:
        said.append("Four fabrics lie apart at points only by turns in every row or every column.")
    return tuple(said)

"""How many units the starting pieces give, whole stage by whole stage."""

from __future__ import annotations

from collections.abc import Mapping
from math import ceil

from msgspec import Struct

from sewalong.piecing.method import Method
from sewalong.quilt.quilt import Quilt


def pieces_for(method: Method, units: int) -> dict[str, int]:
    """The starting pieces for `units`, by pile, each stage rounded up to whole counts."""
    need = dict.fromkeys((pile.id for pile in method.piles), 0)
    need[method.unit] = units
    for stage in reversed(method.stages):
        counts = ceil(need[stage.makes.pile] / stage.makes.count)
        for pieces in stage.takes:
            need[pieces.pile] += counts * pieces.count
    return {pile: need[pile] for pile in method.starts}


def units_from(method: Method, pieces: Mapping[str, int]) -> int:
    """The most units that so many starting pieces give; what is over of any stage is not used."""
    most = 1
    while _enough(method, pieces, most):
        most *= 2
    least = 0
    while most - least > 1:
        middle = (least + most) // 2
        if _enough(method, pieces, middle):
            least = middle
        else:
            most = middle
    return least


def units_of(quilt: Quilt) -> int:
    """The units the quilt's own starting pieces give; raises UnknownMethod."""
    return units_from(quilt.method, {start.pile: start.count for start in quilt.starts})


def _enough(method: Method, pieces: Mapping[str, int], units: int) -> bool:
    return all(pieces.get(pile, 0) >= n for pile, n in pieces_for(method, units).items())


class Made(Struct, frozen=True):
    """What one stage makes of all that lies there for it; `over` cannot make a whole one."""

    stage: str
    made: int
    over: Mapping[str, int]


def made_by_stage(method: Method, pieces: Mapping[str, int]) -> tuple[Made, ...]:
    """Every stage done as often as it can be, in order, with what is left over of its piles."""
    lying = {pile.id: pieces.get(pile.id, 0) for pile in method.piles}
    found = []
    for stage in method.stages:
        counts = min(lying[one.pile] // one.count for one in stage.takes)
        for one in stage.takes:
            lying[one.pile] -= counts * one.count
        lying[stage.makes.pile] += counts * stage.makes.count
        over = {one.pile: lying[one.pile] for one in stage.takes if lying[one.pile]}
        found.append(Made(stage.id, counts * stage.makes.count, over))
    return tuple(found)

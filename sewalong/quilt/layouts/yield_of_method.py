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
    return _most(method, {pile.id: 0 for pile in method.piles} | dict(pieces))


def units_of(quilt: Quilt) -> int:
    """The units the quilt's own starting pieces give; raises UnknownMethod."""
    return units_from(quilt.method, {start.pile: start.count for start in quilt.starts})


class Made(Struct, frozen=True):
    """What one stage makes; `over` is what is left in the end of the piles it is the last to take
    from."""

    stage: str
    made: int
    over: Mapping[str, int]


def made_by_stage(method: Method, pieces: Mapping[str, int]) -> tuple[Made, ...]:
    """Every stage, in order, with what is left over of its piles.

    Where two stages take from one pile, the first leaves the second what the most units need:
    done as often as it could be, it would leave fewer units. What no unit can be made of is then
    taken as far as it goes.
    """
    lying = {pile.id: pieces.get(pile.id, 0) for pile in method.piles}
    counts = _counts_for(method, lying, _most(method, lying))
    made: dict[str, int] = {}
    for needed in (counts, None):
        for stage in method.stages:
            could = min(lying[one.pile] // one.count for one in stage.takes)
            times = could if needed is None else needed[stage.id]
            for one in stage.takes:
                lying[one.pile] -= times * one.count
            lying[stage.makes.pile] += times * stage.makes.count
            made[stage.id] = made.get(stage.id, 0) + times * stage.makes.count
    last = {one.pile: stage.id for stage in method.stages for one in stage.takes}
    return tuple(
        Made(
            stage.id,
            made[stage.id],
            {
                one.pile: lying[one.pile]
                for one in stage.takes
                if lying[one.pile] and last[one.pile] == stage.id
            },
        )
        for stage in method.stages
    )


def _most(method: Method, lying: Mapping[str, int]) -> int:
    """The most units of what lies there, pieces half way included."""
    least, most = 0, 1
    while _reaches(method, lying, most):
        least, most = most, most * 2
    while most - least > 1:
        middle = (least + most) // 2
        if _reaches(method, lying, middle):
            least = middle
        else:
            most = middle
    return least


def _reaches(method: Method, lying: Mapping[str, int], units: int) -> bool:
    counts = _counts_for(method, lying, units)
    taken = dict.fromkeys(method.starts, 0)
    for stage in method.stages:
        for one in stage.takes:
            if one.pile in taken:
                taken[one.pile] += counts[stage.id] * one.count
    return all(count <= lying[pile] for pile, count in taken.items())


def _counts_for(method: Method, lying: Mapping[str, int], units: int) -> dict[str, int]:
    """How often each stage is done for `units`, once what lies half way has been used."""
    wants = dict.fromkeys(lying, 0)
    wants[method.unit] = units
    counts: dict[str, int] = {}
    for stage in reversed(method.stages):
        short = max(0, wants[stage.makes.pile] - lying[stage.makes.pile])
        counts[stage.id] = ceil(short / stage.makes.count)
        for one in stage.takes:
            wants[one.pile] += counts[stage.id] * one.count
    return counts

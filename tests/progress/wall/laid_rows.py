"""A small top of sets whose units are all sewn, and laid anyhow."""

from __future__ import annotations

from random import Random

from msgspec.structs import replace

from sewalong.progress.wall.units import units_to_lay
from sewalong.quilt.quilt import Quilt, Target
from tests.progress import every_act as c
from tests.progress.building import everything, play
from tests.progress.sets.fabrics import sets_of, with_fabrics

QUILT = replace(with_fabrics(), name="Meadow", target=Target(3, 4), borders=())


def laid(quilt: Quilt) -> tuple[c.Act, ...]:
    """All units sewn, and laid anyhow."""
    units = everything(quilt, quilt.method.stages[-1].id)
    state, _ = play(quilt, c.AcceptSets(sets_of(8, 6)), *units)
    chance = Random(7)
    there = units_to_lay(state)
    order = iter(chance.sample(range(len(there)), len(there)))
    rows = tuple(tuple((next(order), chance.randrange(4)) for _ in range(4)) for _ in range(3))
    return (c.AcceptSets(sets_of(8, 6)), *units, c.LayWall(there, rows))

"""Packs of squares cut by the maker of the cloth: how many packs, and what they come to.

A pack is not a fixed number: packs sold under one name hold from 22 to 56 squares. So the count is
given: from the label, or better, from counting one.
"""

from math import ceil

from msgspec import Struct

from sewalong.quilt.refusal import at_least


class Packs(Struct, frozen=True):
    """`packs` of `per_pack` make `total`, of which `spare` are over what is needed."""

    need: int
    per_pack: int
    packs: int
    total: int
    spare: int
    reason: str


def packs_for(need: int, per_pack: int) -> Packs:
    """The fewest packs. Raises `NumbersFault` for a count below one."""
    at_least(1, need, "pieces needed")
    at_least(1, per_pack, "pieces in a pack")
    packs = ceil(need / per_pack)
    total = packs * per_pack
    plural = "pack" if packs == 1 else "packs"
    words = (
        f"{packs} {plural} of {per_pack}: {need} needed, {need / per_pack:.2f} packs, "
        f"{total - need} spare"
    )
    return Packs(need, per_pack, packs, total, total - need, words)

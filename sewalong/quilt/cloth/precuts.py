"""Packs of squares cut by the maker of the cloth: how many packs, and what they come to.

A pack is not a fixed number: packs sold under one name hold from 22 to 56 squares. So the count is
given: from the label, or better, from counting one.
"""

from collections.abc import Sequence
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


def packs_between(need: int, fewest: int, most: int) -> tuple[Packs, Packs]:
    """For packs that may hold from `fewest` to `most`: what to buy to be safe, and at best."""
    at_least(fewest, most, "pieces in the fullest pack")
    return packs_for(need, fewest), packs_for(need, most)


class Batch(Struct, frozen=True):
    """One step: `done` times, which makes `made` pieces and leaves `over` of what went in."""

    done: int
    made: int
    over: int


def made_of(pieces: int, steps: Sequence[tuple[int, int]]) -> tuple[Batch, ...]:
    """What so many pieces come to through steps that each take so many and make so many.

    Squares to four-patches to units cut from stacks: `made_of(42, [(4, 1), (2, 4)])`. Only whole
    ones are made, and what is over is kept in sight. Raises `NumbersFault` for counts below one.
    """
    have = at_least(0, pieces, "pieces")
    batches = []
    for takes, makes in steps:
        done, over = divmod(have, at_least(1, takes, "pieces taken"))
        have = done * at_least(1, makes, "pieces made")
        batches.append(Batch(done, have, over))
    return tuple(batches)

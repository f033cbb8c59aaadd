"""The units whose fabrics are known, because their sets are."""

from __future__ import annotations

from msgspec import Struct

from sewalong.progress.record.sets.laid import LaidSet
from sewalong.progress.record.state import State


class KnownUnit(Struct, frozen=True):
    """A unit of a set: `unit` is its number in the set from 0 on, in the order of the method's units
    (`Derivation.units`), whose letters `fabric_at` turns into hers."""

    laid: LaidSet
    unit: int
    sure: bool


def units_known(state: State) -> tuple[KnownUnit, ...]:
    """The units made of known sets, in order of making, those in rows too."""
    pieces = state.sets.lying.get(state.quilt.method.unit, ())
    return tuple(
        KnownUnit(state.sets.sets[one.set], one.index, one.sure)
        for one in pieces
        if one.set in state.sets.sets
    )


def units_unknown(state: State) -> int:
    """Units made of which nobody knows the fabrics: begun before there were sets, or mixed up."""
    pieces = state.sets.lying.get(state.quilt.method.unit, ())
    return sum(one.set not in state.sets.sets for one in pieces)

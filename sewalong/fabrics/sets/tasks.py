"""What each rule asks of a deal: how strongly fabrics part, what may lie where, what is striven for."""

from __future__ import annotations

from collections.abc import Sequence
from math import inf

from msgspec import Struct

from sewalong.fabrics.advice import READABLE
from sewalong.fabrics.pairing import independent_contacts
from sewalong.fabrics.sets.rules import Rule, SetsRefused
from sewalong.fabrics.sets.sides import meeting_places
from sewalong.fabrics.sets.strength import no_strength_asked, value_strength
from sewalong.fabrics.sets.wanted import Wanted, value_bound
from sewalong.fabrics.swatch import Swatch
from sewalong.piecing.contacts import Contact
from sewalong.quilt.choices import ASSORTED


class Task(Struct, frozen=True):
    """A deal by a rule: prints are numbered as her fabrics are.

    `bound` is what no choice of sets passes, None where none is known; `reason` says why, in a
    sentence. `begun` are sets to go on from.
    """

    wanted: Wanted
    bound: float | None
    reason: str = ""
    begun: tuple[tuple[int, ...], ...] = ()

    @property
    def aim(self) -> float:
        """The strength that is striven for: the bound, or what can be read where it says nothing."""
        return self.bound if self.bound is not None and self.bound > 1 else READABLE


def task_of(
    swatches: Sequence[Swatch],
    meeting: Sequence[Contact],
    places: Sequence[str],
    sets: int,
    rule: Rule,
    background: str,
) -> Task:
    """The deal that `rule` asks for, of as many sets as there are squares for. Raises SetsRefused."""
    free = sum(swatch.squares for swatch in swatches)
    sets = min(sets, free // len(places))
    if sets < 1:
        raise SetsRefused(
            f"There are {free} squares, and a set takes {len(places)}. "
            "Give more squares, or unlock a set."
        )
    pairs = meeting_places(meeting, places)
    strength = no_strength_asked(swatches) if rule is Rule.SCRAPPY else value_strength(swatches)
    wanted = Wanted(
        tuple(swatch.squares for swatch in swatches),
        strength,
        pairs,
        len(places),
        sets,
        families(swatches),
        tuple(len(places) if swatch.kind == ASSORTED else 1 for swatch in swatches),
    )
    values = [swatch.value for swatch in swatches if swatch.value is not None]
    if rule is Rule.SCRAPPY or len(values) < len(swatches):
        return Task(wanted, None)
    bound = value_bound(values, wanted, independent_contacts(meeting))
    return Task(wanted, bound if bound < inf else None)


def families(swatches: Sequence[Swatch]) -> tuple[int, ...]:
    """A number for the colour family of each; one of its own where that is not known."""
    number: dict[object, int] = {}
    return tuple(
        number.setdefault(swatch.family or swatch.letter, len(number)) for swatch in swatches
    )

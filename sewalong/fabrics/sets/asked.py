"""What is asked of a proposal of sets."""

from __future__ import annotations

from msgspec import Struct

from sewalong.fabrics.sets.rules import Rule
from sewalong.fabrics.swatch import Swatch
from sewalong.piecing.contacts import Contact


class Asked(Struct, frozen=True):
    """What is to be proposed.

    `swatches` are her fabrics, each with the squares that are free: in no set that is begun or
    stands. `meeting` are the contacts of the method's units, `places` its letters in the order a
    set is laid, `sets` how many are wanted. `background` names a fabric by letter or name, or a
    colour family, for Rule.ONE_BACKGROUND. `locked` are sets that stand, her letters by place:
    they come back in no proposal, and are said where they are weaker than what is proposed.
    """

    swatches: tuple[Swatch, ...]
    meeting: tuple[Contact, ...]
    places: tuple[str, ...]
    sets: int
    rule: Rule
    background: str = ""
    locked: tuple[tuple[str, ...], ...] = ()
    seed: int = 1

"""What the owner chooses about cloth, joins and thread, and what holds until she does."""

from __future__ import annotations

from fractions import Fraction

from msgspec import Struct

from sewalong.lengths import Length

JOINS = ("diagonal", "straight")
"""How strips of borders and binding are joined into one."""

CORNERS = ("sides first", "ends first", "mitred")
"""How borders turn the corner; the ends are top and bottom."""


class Choices(Struct, frozen=True):
    """Lengths in inches. All are conventions that sources differ on, so each can be changed.

    `usable` is the width of cloth between the selvedges that can be used; `margin` what the back
    and the batting have more than the top, each side; `binding` the width its strips are cut at
    and `binding_ends` what is added for corners and the last join; `joins` is one of JOINS and
    `corners` one of CORNERS. `spool_metres` and `bobbin_metres` have no usual value: they are
    read off the spool. `own_seam` is the allowance her own seams measure.
    """

    usable: Length = Fraction(40)
    margin: Length = Fraction(4)
    binding: Length = Fraction(5, 2)
    binding_ends: Length = Fraction(12)
    joins: str = "diagonal"
    corners: str = "sides first"
    spool_metres: int | None = None
    bobbin_metres: int | None = None
    own_seam: Length | None = None


ASSORTED = "assorted"
"""The kind of a pile of squares that are of several prints: "lights, 60"."""

FABRIC_KINDS = ("solid", "small print", "large print", "one-way", ASSORTED)
"""What the eye makes of a cloth: a one-way print has an up."""

VALUES = ("dark", "dark-medium", "medium", "light-medium", "light")
"""The five words makers have for value (common practice)."""


class Fabric(Struct, frozen=True):
    """A fabric of the units.

    Without `squares` it is a name for what the method calls by this `letter`. With them it is one
    of those she has, so many squares of it, to make sets from; its letter is her own. `colour` and
    `second` are "#rrggbb"; `share` is the part of the second colour in a hundred, `kind` one of
    FABRIC_KINDS. Where she gives no colour, `value` may say how light it is: one of VALUES.
    """

    letter: str
    name: str
    colour: str | None = None
    squares: int | None = None
    kind: str | None = None
    second: str | None = None
    share: int | None = None
    value: str | None = None

    @property
    def called(self) -> str:
        """Letter and name: nobody has to know a letter by heart."""
        return f"{self.letter} {self.name}".strip()

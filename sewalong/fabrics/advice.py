"""What the seams of a set will show, the weakest first: where a point will be lost."""

from __future__ import annotations

from collections import Counter
from collections.abc import Collection, Iterator, Mapping, Sequence
from enum import StrEnum
from math import inf

from msgspec import Struct

from sewalong.fabrics.sight import contrast, difference
from sewalong.fabrics.swatch import Swatch, listed
from sewalong.piecing.contacts import Contact
from sewalong.piecing.one_way import standing_one_way

SAME = 2.5
"""CIEDE2000 under which two pass for one fabric. Source: Song and Luo, 9th Color and Imaging
Conference 2001, doi 10.2352/CIC.2001.9.1.art00041: an average of 2.5 can be seen in pictures."""

READABLE = 20.0
"""L* from which a pattern begins to be readable. Source: NASA Ames, color usage,
colorusage.arc.nasa.gov/design_lum_0.php."""

LOST = READABLE / 2
"""L* under which a seam is lost near by, too: half of that. Own choice."""

SOUND = 3.0
"""Ratio of luminances that is sound. Source: the same, guidelines_lum_cont.php, and WCAG 2.1
success criterion 1.4.11."""

PRINTS = ("small print", "large print")


class Reads(StrEnum):
    """How a seam between two fabrics reads."""

    AS_ONE = "they pass for one fabric"
    LOST = "the seam will be lost"
    NEAR_BY = "the seam shows near by and is lost from afar"
    PRINTS = "two prints of one scale and near value read as one"
    WELL = "the seam shows"
    STRONGLY = "the seam shows from afar"
    UNKNOWN = "not known: no colour and no value was given"


class Met(Struct, frozen=True):
    """Two places of a set that share seams, and the fabrics laid there.

    `length` is all that shows of these seams in the units, in inches; `apart` the difference of
    their lightness, None where it is not known.
    """

    letters: tuple[str, str]
    one: Swatch
    other: Swatch
    length: float
    apart: float | None
    reads: Reads

    @property
    def words(self) -> str:
        """ "A rust dots and F moss: both medium, 6 apart: the seam will be lost." """
        pair = f"{self.one.called} and {self.other.called}"
        if self.apart is None:
            return f"{pair}: {self.reads}."
        if self.one.word == self.other.word:
            values = f"both {self.one.word}"
        else:
            values = f"{self.one.word} and {self.other.word}"
        # A value that was only said in a word is taken for so much.
        about = "" if self.one.colour and self.other.colour else "about "
        return f"{pair}: {values}, {about}{self.apart:.0f} apart: {self.reads}."


def seams_of_a_set(meeting: Sequence[Contact], laid: Mapping[str, Swatch]) -> tuple[Met, ...]:
    """Every two places of a set that meet, the weakest first; `laid` has the fabric of each place
    by the letter the method has for it. Those of which a fabric is not there are left out, those of
    which a value is not known come last."""
    lengths: dict[tuple[str, str], float] = {}
    for contact in (one for one in meeting if laid.keys() >= {*one.letters}):
        lengths[contact.letters] = lengths.get(contact.letters, 0.0) + contact.length
    met = [
        met_between(laid[letters[0]], laid[letters[1]], letters, length)
        for letters, length in lengths.items()
    ]
    return tuple(
        sorted(met, key=lambda one: (inf if one.apart is None else one.apart, one.letters))
    )


def met_between(
    one: Swatch, other: Swatch, letters: tuple[str, str] = ("", ""), length: float = 0.0
) -> Met:
    """How two fabrics read side by side, wherever that is."""
    if one.value is None or other.value is None:
        same = _as_one(one, other)
        reads = Reads.AS_ONE if same else Reads.UNKNOWN
        return Met(letters, one, other, length, 0.0 if same else None, reads)
    apart = abs(one.value - other.value)
    return Met(letters, one, other, length, apart, _reads(one, other, apart))


def _reads(one: Swatch, other: Swatch, apart: float) -> Reads:
    if _as_one(one, other):
        return Reads.AS_ONE
    if apart < READABLE and one.kind == other.kind and one.kind in PRINTS:
        return Reads.PRINTS
    if apart < LOST:
        return Reads.LOST
    if apart < READABLE:
        return Reads.NEAR_BY
    if one.colour and other.colour and contrast(one.colour, other.colour) >= SOUND:
        return Reads.STRONGLY
    return Reads.WELL


def _as_one(one: Swatch, other: Swatch) -> bool:
    """Whether they are one fabric or pass for one; of the squares of a pile it is not known."""
    if one.is_pile or other.is_pile:
        return False
    if one.letter == other.letter:
        return True
    if one.colour is None or other.colour is None:
        return False
    return difference(one.colour, other.colour) < SAME


def one_way_in(laid: Mapping[str, Swatch]) -> Collection[str]:
    """The places of a set that have a one-way print."""
    return [letter for letter, swatch in laid.items() if swatch.kind == "one-way"]


def one_way_words(
    laid: Mapping[str, Swatch], ways: Sequence[Mapping[str, frozenset[int]]]
) -> str | None:
    """In how many units the one-way prints of a set stand one way up, or None if it has none.

    `ways` are those of the method's units (`one_way.ways_up`), as the squares will be laid.
    """
    places = one_way_in(laid)
    if not places:
        return None
    prints = listed(list({laid[place].letter: laid[place] for place in places}.values()))
    upright = standing_one_way(ways, places)
    if len(upright) == len(ways):
        return f"{prints}: one way up in every unit, once it is turned so."
    return f"{prints}: one way up in {len(upright)} of {len(ways)} units, however they are turned."


def twice_in(laid: Mapping[str, Swatch]) -> Iterator[Swatch]:
    """The fabrics that lie in a set more than once, once each; of piles it is not known."""
    squares = Counter(swatch.letter for swatch in laid.values())
    for swatch in {swatch.letter: swatch for swatch in laid.values()}.values():
        if squares[swatch.letter] > 1 and not swatch.is_pile:
            yield swatch

"""What the seams of her sets will show: which two squares are the weakest, and what a swap does.

Colours are reckoned with here, so it is loaded only by whoever looks at sets.
"""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from functools import lru_cache

from msgspec import Struct

from sewalong.fabrics.advice import Met, seams_of_a_set, twice_in
from sewalong.fabrics.pairing import independent_contacts
from sewalong.fabrics.possible import possible
from sewalong.fabrics.set_facts import SetFacts, set_facts
from sewalong.fabrics.swatch import Swatch, swatches
from sewalong.piecing.contacts import Contact, contacts
from sewalong.piecing.derive import Derivation
from sewalong.quilt.derived import derived
from sewalong.quilt.quilt import Quilt

Laid = Sequence[str | None]
"""Her letters by place; None or nothing for a fabric that is not known any more."""


class SetContrast(Struct, frozen=True):
    """Her fabrics by letter, and which places of a set meet: `places` are the method's letters in
    the order a set is laid, `made` what the method comes to."""

    fabrics: Mapping[str, Swatch]
    meeting: tuple[Contact, ...]
    places: tuple[str, ...]
    made: Derivation

    def met(self, laid: Laid) -> tuple[Met, ...]:
        """Every two squares of a set that share a seam, the weakest first; those of which a fabric
        is not known are left out."""
        return seams_of_a_set(self.meeting, self._known(laid))

    def weakest(self, laid: Laid, at: Collection[int] = ()) -> Met | None:
        """The two that part least, where `at` names places only of those that meet one of them; None
        where no value is known."""
        letters = {self.places[place] for place in at}
        found = [one for one in self.met(laid) if not letters or letters & set(one.letters)]
        return found[0] if found and found[0].apart is not None else None

    def twice(self, laid: Laid) -> tuple[Swatch, ...]:
        """The fabrics that lie in a set more than once."""
        return tuple(twice_in(self._known(laid)))

    def facts(self, laid: Laid, turned: Mapping[str, int] | None = None) -> SetFacts:
        """The same, and what is to be said of a set beside its seams: doubles, and one-way prints
        that turn. `turned` has the degrees by which the squares at a place were turned before they
        were pieced, by the method's letter."""
        return set_facts(self.made, self.meeting, self._known(laid), turned)

    def _known(self, laid: Laid) -> dict[str, Swatch]:
        """The fabric of each place of which it is known."""
        return {
            place: self.fabrics[letter]
            for place, letter in zip(self.places, laid, strict=False)
            if letter is not None and letter in self.fabrics
        }

    def bound(self, sets: int) -> float | None:
        """What the weakest seam of so many sets cannot pass, however all squares are chosen; None
        where it is not known, or there are too few squares."""
        if sets < 1:
            return None
        apart = independent_contacts(self.meeting)
        return possible([*self.fabrics.values()], sets, len(self.places), apart).bound


@lru_cache(maxsize=4)
def set_contrast(quilt: Quilt) -> SetContrast:
    """Those of a quilt; raises SizeRefused where no unit comes of its sizes."""
    made = derived(quilt)
    return SetContrast(
        {one.letter: one for one in swatches(quilt.counted_fabrics)},
        contacts(made.units, float(made.seam)),
        tuple(made.letters),
        made,
    )


def weakest_words(seams: SetContrast, laid: Laid) -> tuple[str, ...]:
    """The weakest seam of a set in a sentence, none where no value is known."""
    weakest = seams.weakest(laid)
    if weakest is None or weakest.apart is None:
        return ()
    pair = f"{weakest.one.called} and {weakest.other.called}"
    # A value that was only said in a word is taken for so much.
    about = "about " if weakest.one.is_rough or weakest.other.is_rough else ""
    return (f"Weakest here: {pair}, {about}{weakest.apart:.0f} apart.",)


def all_words(seams: SetContrast, sets: Mapping[int, Laid]) -> tuple[str, ...]:
    """The weakest of all sets by number, and what no choice of them passes, in a sentence; none where
    no value is known."""
    found = {number: seams.weakest(laid) for number, laid in sets.items()}
    known = [(one.apart, number) for number, one in found.items() if one and one.apart is not None]
    if not known:
        return ()
    apart, number = min(known)
    bound = seams.bound(len(sets))
    no_more = "" if bound is None else f"; no choice passes {bound:.0f}"
    return (f"Of all sets: {apart:.0f}, in set {number}{no_more}.",)

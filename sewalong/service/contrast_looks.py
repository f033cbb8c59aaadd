"""What meets what: in the method of a quilt, in a set of hers, and any fabrics side by side.

Colours are reckoned with here, so it is loaded only by whoever looks at fabrics.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from msgspec import Struct

from sewalong.fabrics.contrast_words import TwoFabrics, two_by_two
from sewalong.fabrics.meant import side_by_side
from sewalong.fabrics.set_facts import SetFacts
from sewalong.piecing.derive import Derivation
from sewalong.progress.record.refused import Refused
from sewalong.progress.record.sets.laid import LaidSet
from sewalong.progress.record.squares_left import laid_set, shape_of_sets
from sewalong.progress.record.state import State
from sewalong.progress.sets.contrast import set_contrast
from sewalong.quilt.choices import Fabric
from sewalong.quilt.derived import derived
from sewalong.quilt.method_seams import MethodSeams, method_seams
from sewalong.quilt.quilt import Quilt
from sewalong.quilt.worksheet.seam_words import seam_words, units_show
from sewalong.service.set_pictures import known


class MethodMeets(Struct, frozen=True):
    """What meets what in a method, as numbers and in words."""

    made: Derivation
    seams: MethodSeams
    words: tuple[str, ...]


def method_meets(quilt: Quilt, turned: Sequence[int] = ()) -> MethodMeets:
    """What meets what in the quilt's method. `turned` are places, from 1, whose squares lie half
    turned before they are pieced. Raises SizeRefused, and Refused for places there are not."""
    made = derived(quilt)
    seams = method_seams(made, half_turned(quilt, turned))
    return MethodMeets(made, seams, seam_words(made, seams, quilt.unit))


def half_turned(quilt: Quilt, places: Sequence[int]) -> Mapping[str, int]:
    """The degrees by the method's letters of squares that lie half turned. Raises Refused."""
    if not places:
        return {}
    letters = shape_of_sets(quilt).places
    if any(not 1 <= place <= len(letters) for place in places):
        raise Refused(f"Places in a set go from 1 to {len(letters)}.")
    return {letters[place - 1]: 180 for place in places}


def set_meets(state: State, number: int, turned: Sequence[int] = ()) -> tuple[LaidSet, SetFacts]:
    """The set of this number, and what is to be said of it. Raises Refused where there is none."""
    laid = laid_set(state, number)
    return laid, facts_of(state.quilt, laid, turned)


def facts_of(quilt: Quilt, laid: LaidSet, turned: Sequence[int] = ()) -> SetFacts:
    """What is to be said of a set."""
    return set_contrast(quilt).facts(known(laid), half_turned(quilt, turned))


def units_of(quilt: Quilt, laid: LaidSet) -> tuple[tuple[str, ...], ...]:
    """What shows in each unit of a set, her letters in reading order; empty for one not known."""
    places = shape_of_sets(quilt).places
    return units_show(derived(quilt), dict(zip(places, laid.known, strict=True)))


def beside_each_other(texts: Sequence[str], fabrics: Sequence[Fabric]) -> tuple[TwoFabrics, ...]:
    """Every two of the fabrics or colours meant, the weakest first. Raises NumbersFault."""
    return two_by_two(side_by_side(texts, fabrics))

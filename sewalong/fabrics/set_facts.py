"""What is to be said of one set before it is sewn: its seams, doubles, and prints that turn."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from msgspec import Struct

from sewalong.fabrics.advice import Met, one_way_in, one_way_words, seams_of_a_set, twice_in
from sewalong.fabrics.swatch import Swatch
from sewalong.piecing.contacts import Contact
from sewalong.piecing.derive import Derivation
from sewalong.piecing.one_way import ways_up
from sewalong.quilt.worksheet.seam_words import units_words


class SetFacts(Struct, frozen=True):
    """`met` are the seams of the set, the weakest first; `more` is said behind them."""

    met: tuple[Met, ...]
    more: tuple[str, ...]

    @property
    def facts(self) -> tuple[str, ...]:
        """All of it, one fact each."""
        return (*(met.words for met in self.met), *self.more)


def set_facts(
    made: Derivation,
    meeting: Sequence[Contact],
    laid: Mapping[str, Swatch],
    turned: Mapping[str, int] | None = None,
) -> SetFacts:
    """What is to be said of a set of the method that comes to `made`, in which `meeting` share
    seams; `laid` as `seams_of_a_set`, `turned` as `ways_up`."""
    return SetFacts(seams_of_a_set(meeting, laid), tuple(_more(made, laid, turned)))


def _more(
    made: Derivation, laid: Mapping[str, Swatch], turned: Mapping[str, int] | None
) -> Iterator[str]:
    for swatch in twice_in(laid):
        yield f"{swatch.called} lies in it more than once."
    places = one_way_in(laid)
    if not places:
        return
    ways = ways_up(made.units, float(made.seam), turned)
    for letter in places:
        shown = [number for number, unit in enumerate(ways, start=1) if letter in unit]
        turns = {way for unit in ways for way in unit.get(letter, ())}
        how = ", not the same way up in each" if len(turns) > 1 else ""
        yield f"{laid[letter].called} is a one-way print: it shows in {units_words(shown)}{how}."
    words = one_way_words(laid, ways)
    if words is not None:
        yield words

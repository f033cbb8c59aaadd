"""What is said before she starts: what her squares can give, in plain sentences, one fact each."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from sewalong.fabrics.advice import READABLE
from sewalong.fabrics.pairing import independent_contacts
from sewalong.fabrics.possible import Possible, possible
from sewalong.fabrics.sets.sides import meeting_places, sides
from sewalong.fabrics.swatch import ROUGH, Swatch, listed
from sewalong.piecing.contacts import Contact
from sewalong.quilt.worksheet.line import plural


def what_can_be(
    swatches: Sequence[Swatch], meeting: Sequence[Contact], places: Sequence[str], wanted: int
) -> tuple[str, ...]:
    """What can be had of her squares in `wanted` sets of this method, the most needed first.

    `meeting` are the contacts of the method's units and `places` its letters in the order a set
    is laid. Raises ValueError for sets of nothing.
    """
    apart = independent_contacts(meeting)
    found = possible(swatches, wanted, len(places), apart)
    return (
        *_sets(found),
        *_lights_and_darks(meeting, places),
        *_contrast(found, apart),
        *_not_known(found, any(swatch.is_pile for swatch in swatches)),
    )


def _sets(found: Possible) -> Iterator[str]:
    squares, each = plural(found.squares, "square"), plural(found.places, "square")
    if found.sets < found.wanted:
        yield (
            f"{squares}: enough for {plural(found.sets, 'set')} of {each}, "
            f"not for the {found.wanted} that are wanted."
        )
    else:
        over = found.squares - found.wanted * found.places
        yield f"{squares}: enough for {plural(found.wanted, 'set')} of {each}, {over} over."
    if found.places > 1:
        yield f"Sets with no print twice: {found.different} of {found.wanted}."
    for one in found.too_many:
        squares = plural(one.squares, "square")
        yield f"{one.swatch.called}: {squares} too many for sets with no print twice."
    yield f"Pairs of two different fabrics: {found.pairs} at most."


def _lights_and_darks(meeting: Sequence[Contact], places: Sequence[str]) -> Iterator[str]:
    """How many lights a set wants: from the two sides of what meets."""
    pairs = meeting_places(meeting, places)
    two = sides(pairs)
    if not pairs or two is None:
        return
    few, many = sorted(map(len, two))
    if few == many:
        wants = f"{plural(few, 'light')} and {plural(many, 'dark')}"
    else:
        wants = f"{plural(few, 'light')} and {plural(many, 'dark')}, or the other way about"
    yield f"For light against dark at every seam a set wants {wants}."


def _contrast(found: Possible, apart: int) -> Iterator[str]:
    if found.bound is None:
        return
    sets, pairs = plural(found.sets, "set"), plural(apart * found.sets, "pair")
    yield f"Weakest seam in value: no choice of {sets} passes {found.bound:.0f}."
    yield f"In {sets} {pairs} of squares meet, however they lie, and of so many one is {found.bound:.0f} apart or less."
    if found.readable == found.wanted:
        return
    yield (
        f"Sets in which every seam can be {READABLE:.0f} apart, from where a pattern can be read: "
        f"{found.readable} of {found.wanted} at most."
    )
    for more, which, like in (
        (found.lights, "lights", "light as the lightest"),
        (found.darks, "darks", "dark as the darkest"),
    ):
        if more:
            squares = plural(more, "more square", "more squares")
            yield f"With {which} alone, all {found.wanted} take at least {squares} as {like}."


def _not_known(found: Possible, piles: bool) -> Iterator[str]:
    if piles:
        yield "Squares of a pile are taken for different prints, and which are alike is not known."
    if found.unknown:
        unknown = listed(found.unknown)
        yield f"Not known: the value of {unknown}, so how strong the seams can be is not either."
    if found.rough:
        yield ROUGH

"""What each rule asks of a deal: how strongly fabrics part, what lies where, what is striven for."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import chain
from math import inf

from msgspec import Struct
from msgspec.structs import replace

from sewalong.fabrics.advice import READABLE
from sewalong.fabrics.pairing import independent_contacts, strongest_pairs
from sewalong.fabrics.sets.asked import Asked
from sewalong.fabrics.sets.background import background_letters, dealt_out, room_for
from sewalong.fabrics.sets.bounds import matching_bound
from sewalong.fabrics.sets.rules import Rule, SetsRefused
from sewalong.fabrics.sets.sides import from_first, meeting_places, sides
from sewalong.fabrics.sets.strength import (
    background_strength,
    colour_strength,
    light_on_dark_strength,
    no_strength_asked,
    value_strength,
)
from sewalong.fabrics.sets.wanted import Wanted
from sewalong.fabrics.swatch import Swatch


class Task(Struct, frozen=True):
    """A deal by a rule: prints are numbered as her fabrics are.

    `bound` is what no choice of sets passes, None where none is known, and `pairs` the squares
    that meet two by two whatever is laid, or in twos with the background: why it holds. `begun`
    are sets to go on from.
    """

    wanted: Wanted
    bound: float | None = None
    pairs: int = 0
    begun: tuple[tuple[int, ...], ...] = ()

    @property
    def aim(self) -> float:
        """The strength that is striven for: the bound, or what can be read where it says little."""
        return self.bound if self.bound is not None and self.bound > 1 else READABLE


def task_of(asked: Asked) -> Task:
    """The deal that the rule asks for, of as many sets as there are squares for.

    Raises SetsRefused where there are squares for none, or the rule cannot be kept in this method.
    """
    match asked.rule:
        case Rule.SCRAPPY:
            return Task(_wanted(asked, no_strength_asked(asked.swatches)))
        case Rule.BY_COLOUR:
            return _bounded(asked, _wanted(asked, colour_strength(asked.swatches)))
        case Rule.BY_VALUE:
            return _bounded(asked, _wanted(asked, value_strength(asked.swatches)))
        case Rule.LIGHT_ON_DARK:
            return _light_on_dark(asked)
        case Rule.ONE_BACKGROUND:
            return _one_background(asked)


def _wanted(asked: Asked, strength: tuple[tuple[float, ...], ...]) -> Wanted:
    swatches, places = asked.swatches, len(asked.places)
    free = sum(swatch.squares for swatch in swatches)
    if free < places or asked.sets < 1:
        raise SetsRefused(
            f"There are {free} free squares, and a set takes {places}. "
            "Enter more squares, or unlock a set."
        )
    return Wanted(
        tuple(swatch.squares for swatch in swatches),
        strength,
        meeting_places(asked.meeting, asked.places),
        places,
        min(asked.sets, free // places),
        _families(swatches),
        tuple(places if swatch.is_pile else 1 for swatch in swatches),
    )


def _families(swatches: Sequence[Swatch]) -> tuple[int, ...]:
    """A number for the colour family of each; one of its own where that is not known."""
    numbers: dict[str, int] = {}
    return tuple(
        numbers.setdefault(swatch.family or f"only {swatch.letter}", len(numbers))
        for swatch in swatches
    )


def _bounded(asked: Asked, wanted: Wanted) -> Task:
    """With the bound, and where a set is one pair of known values, the best pairs to go on from."""
    pairs = independent_contacts(asked.meeting) * wanted.sets
    bound = matching_bound(wanted.strength, wanted.counts, pairs) if pairs else None
    return Task(wanted, bound, pairs, _best_pairs(asked, wanted))


def _best_pairs(asked: Asked, wanted: Wanted) -> tuple[tuple[int, ...], ...]:
    """Print by print, so that none is paired with itself where that can be."""
    if wanted.places != 2 or not wanted.meeting or asked.rule is Rule.BY_COLOUR:
        return ()
    prints = [print for print, n in enumerate(wanted.counts) for _ in range(n)]
    values = [one for print in prints if (one := asked.swatches[print].value) is not None]
    if len(values) < len(prints):
        return ()
    found = strongest_pairs(values, wanted.sets)
    (lighter, _), *_ = wanted.meeting
    return tuple(
        (prints[high], prints[low]) if lighter == 0 else (prints[low], prints[high])
        for low, high in found
    )


def _light_on_dark(asked: Asked) -> Task:
    wanted = _wanted(asked, light_on_dark_strength(asked.swatches))
    light, dark = _two_sides(wanted)
    values = sorted(
        swatch.value
        for swatch in asked.swatches
        for _ in range(swatch.squares)
        if swatch.value is not None
    )
    if len(light) != len(dark) and values:
        light, dark = max(
            (light, dark), (dark, light), key=lambda two: _parted(values, two, wanted)
        )
    meeting = from_first(wanted.meeting, light)
    return _bounded(asked, replace(wanted, meeting=meeting))


def _parted(
    values: Sequence[float], two: tuple[frozenset[int], frozenset[int]], wanted: Wanted
) -> float:
    """How far the lightest squares, as many as lie light, are from the darkest on average."""
    light, dark = (min(len(side) * wanted.sets, len(values)) for side in two)
    return sum(values[-light:]) / light - sum(values[:dark]) / dark


def _two_sides(wanted: Wanted) -> tuple[frozenset[int], frozenset[int]]:
    two = sides(wanted.meeting)
    if two is None or not wanted.meeting:
        raise SetsRefused(
            "In this method the squares of a set have no two sides of which each meets only the "
            "other. Choose by value, by colour or scrappy."
        )
    return two


def _one_background(asked: Asked) -> Task:
    letters = background_letters(asked.swatches, asked.background)
    wanted = _wanted(asked, background_strength(asked.swatches, letters))
    prints = [print for print, n in enumerate(wanted.counts) for _ in range(n)]
    of_it = [print for print in prints if asked.swatches[print].letter in letters]
    others = [print for print in prints if asked.swatches[print].letter not in letters]
    side, sets = room_for(_two_sides(wanted), wanted, len(of_it), len(others))
    rest = [place for place in range(wanted.places) if place not in side]
    at_best = [max(column) for column in zip(*wanted.strength, strict=True)]
    others.sort(key=lambda print: (-at_best[print], print))
    begun = zip(dealt_out(of_it, sets, len(side)), dealt_out(others, sets, len(rest)), strict=True)
    beside = len(frozenset(chain.from_iterable(wanted.meeting)) - side) * sets
    pairs = independent_contacts(asked.meeting) * sets
    by_pairs = matching_bound(wanted.strength, wanted.counts, pairs)
    bound = min(at_best[others[beside - 1]], inf if by_pairs is None else by_pairs)
    return Task(
        replace(
            wanted,
            sets=sets,
            meeting=from_first(wanted.meeting, side),
            most=tuple(
                wanted.places if swatch.letter in letters else most
                for swatch, most in zip(asked.swatches, wanted.most, strict=True)
            ),
        ),
        bound if bound < inf else None,
        beside,
        tuple(_laid(sorted(side), rest, *two) for two in begun),
    )


def _laid(
    side: Sequence[int], rest: Sequence[int], of_it: Sequence[int], others: Sequence[int]
) -> tuple[int, ...]:
    """One set: these squares at the places of `side`, those at the rest."""
    at = dict(chain(zip(side, of_it, strict=True), zip(rest, others, strict=True)))
    return tuple(at[place] for place in sorted(at))

"""The two sides of a set: places that can be light, and those that are dark beside them."""

from __future__ import annotations

from collections.abc import Sequence

from sewalong.piecing.contacts import Contact


def meeting_places(
    meeting: Sequence[Contact], places: Sequence[str]
) -> tuple[tuple[int, int], ...]:
    """The places of a set that share a seam in some unit, two by two, each two once.

    By their number in `places`, the method's letters; patches that are of no square of the set,
    and a square that meets itself, are left out.
    """
    number = {letter: place for place, letter in enumerate(places)}
    pairs = {contact.letters for contact in meeting}
    return tuple(
        sorted((number[a], number[b]) for a, b in pairs if a != b and a in number and b in number)
    )


def sides(meeting: Sequence[tuple[int, int]]) -> tuple[frozenset[int], frozenset[int]] | None:
    """Places that meet, on two sides so that each contact goes from one to the other; None where
    that cannot be, as where three places meet each other.

    The first place of each group of places that hang together is on the first side. A graph has
    two such sides if it has no odd circle (Kőnig).
    """
    side: dict[int, int] = {}
    for start in sorted({place for pair in meeting for place in pair}):
        if start in side:
            continue
        side[start] = 0
        open_places = [start]
        while open_places:
            place = open_places.pop()
            for pair in meeting:
                if place in pair:
                    other = pair[1] if pair[0] == place else pair[0]
                    if other not in side:
                        side[other] = 1 - side[place]
                        open_places.append(other)
    if any(side[a] == side[b] for a, b in meeting):
        return None
    return (
        frozenset(place for place, one in side.items() if one == 0),
        frozenset(place for place, one in side.items() if one == 1),
    )


def from_first(
    meeting: Sequence[tuple[int, int]], first: frozenset[int]
) -> tuple[tuple[int, int], ...]:
    """The same contacts, each from its place on side `first` to the other."""
    return tuple((a, b) if a in first else (b, a) for a, b in meeting)

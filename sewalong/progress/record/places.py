"""Where the pieces of a pile lie, when they lie in several places.

By place: how many lie there, or None where no number was said. One place without a number
holds the rest; several hold some each, nobody knows how many. What is taken from a pile is
taken to be what was not put away or what is the rest, as that lies nearest to hand; when
that is not enough, the numbers of several places are no longer claimed.
"""

from __future__ import annotations

from collections.abc import Collection, Mapping

Places = Mapping[str, int | None]
"""For one pile: by place, how many lie there."""


def put_away(places: Places, place: str, n: int | None, there: int) -> dict[str, int | None]:
    """The places of a pile of `there` pieces after `n` of them (None: all) went to `place`.

    Pieces that are said to lie here cannot lie elsewhere as well: when the numbers come to
    more than the pile, those of the other places are no longer claimed, and a place that
    cannot hold anything any more is left out.
    """
    if n is None or n >= there:
        return {place: None}
    others = {name: held for name, held in places.items() if name != place}
    if sum(held or 0 for held in others.values()) + n > there:
        others = dict.fromkeys(others, None)
    return {**others, place: n}


def came_to(places: Places, place: str, n: int, there: int) -> dict[str, int | None]:
    """The places of a pile of `there` pieces when `n` more of it come to lie at `place`, or, below
    zero, are used up there.

    The rest that lies there becomes a number, as what is made at home from then on is no part of it.
    Where nobody can say how many lie there, nothing is claimed of it.
    """
    held = held_at(places, place, there) if place in places else 0
    if held is None:
        return dict(places)
    others = {name: number for name, number in places.items() if name != place}
    return {**places, place: held + n} if held + n > 0 else others


def settled(
    places: dict[str, int | None], there: int, away: Collection[str] = ()
) -> dict[str, int | None]:
    """The places of a pile that has come down to `there` pieces.

    A single place holds what is left. Where several numbers come to more than there is,
    nobody said which place the pieces were taken from, so no number stands. They were taken at home
    as far as enough lay there: what lies `away`, where somebody else sews, keeps its number.
    """
    over = known(places) - there
    if over <= 0:
        return places
    home = {name: held for name, held in places.items() if name not in away}
    if known(home) < over or len(home) == len(places):
        return dict.fromkeys(places, None)
    if len(home) > 1:
        return {name: None if name in home else held for name, held in places.items()}
    ((only, held),) = home.items()
    left = (held or 0) - over
    return {name: n for name, n in {**places, only: left}.items() if name != only or left}


def known(places: Places) -> int:
    """Pieces whose place and number are both known."""
    return sum(held for held in places.values() if held is not None)


def held_at(places: Places, place: str, there: int) -> int | None:
    """How many of a pile of `there` lie at `place`; None when nobody can say.

    The only place without a number holds the rest.
    """
    if place not in places:
        return None
    held = places[place]
    if held is not None:
        return held
    alone = sum(other is None for other in places.values()) == 1
    return there - known(places) if alone else None


def expected_at(places: Places, place: str, there: int, counted: int, *, new: bool) -> int:
    """What the record says lies at `place`, to set beside what was `counted` there.

    Where the record gives no number, the count itself is it, as far as the pile has pieces
    with no place of their own; so counting one place after the other brings the whole
    difference to light at the last. `new` says that what lies at a place the record does
    not know cannot have been part of the pile (it was found, or made uncounted).
    """
    held = held_at(places, place, there)
    if held is not None:
        return held
    if new and place not in places:
        return 0
    return min(counted, max(0, there - known(places)))


def in_words(places: Places, there: int) -> str:
    """Where a pile of `there` pieces lies: "tin (40), blue bag (12)"; the place alone if one."""
    unplaced = there - known(places)
    rest = [place for place, held in places.items() if held is None]
    if len(places) == 1 and (rest or unplaced <= 0):
        return next(iter(places))
    words = [f"{place} ({held})" for place, held in places.items() if held is not None]
    if len(rest) == 1:
        words.append(f"{rest[0]} (the rest)")
    elif rest:
        words += [f"{place} (some)" for place in rest]
    elif unplaced > 0:
        words.append(f"{unplaced} not written down")
    return ", ".join(words)

"""Two squares changed for each other: what it mends or costs, before it is done."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping
from typing import NamedTuple

from sewalong.progress.sets.contrast import Laid, SetContrast

OVER = 0
"""In place of the number of a set: what is in none."""


class Square(NamedTuple):
    """A square of fabric `letter`: of set `number` the one at `place`, from 0 on; of what is over
    whichever."""

    number: int
    place: int
    letter: str


def swapped(sets: Mapping[int, Laid], one: Square, other: Square) -> Mapping[int, Laid]:
    """The sets that two squares change, as they are laid then."""
    changed = {n: list(sets[n]) for n in (one.number, other.number) if n != OVER}
    for here, there in ((one, other), (other, one)):
        if here.number != OVER:
            changed[here.number][here.place] = there.letter
    return {number: tuple(laid) for number, laid in changed.items()}


def swap_words(
    seams: SetContrast, sets: Mapping[int, Laid], one: Square, other: Square
) -> tuple[str, ...]:
    """What a swap does to each set it changes, a sentence each."""
    return tuple(
        words
        for number, laid in swapped(sets, one, other).items()
        for words in _effect(seams, number, sets[number], laid)
    )


def _effect(seams: SetContrast, number: int, before: Laid, after: Laid) -> Iterator[str]:
    """What changes of a set: first where the squares are changed, then of the whole set."""
    changed = [place for place, letter in enumerate(after) if letter != before[place]]
    there = _apart(seams, before, after, changed)
    if there is not None:
        yield f"Set {number}: weakest there {there[0]} apart, then {there[1]}: {_by(*there)}."
    whole = _apart(seams, before, after, ())
    if whole is not None and whole != there and whole[0] != whole[1]:
        yield f"Weakest of the set: {whole[0]} apart, then {whole[1]}."
    for swatch in seams.twice(after):
        if swatch not in seams.twice(before):
            yield f"{swatch.called} then lies in set {number} more than once."


def _apart(
    seams: SetContrast, before: Laid, after: Laid, at: Collection[int]
) -> tuple[int, int] | None:
    """How far the weakest is apart before and after, rounded as it is said, so that a sum is right
    to whoever reads it; None where it is not known."""
    was, now = seams.weakest(before, at), seams.weakest(after, at)
    if was is None or now is None or was.apart is None or now.apart is None:
        return None
    return round(was.apart), round(now.apart)


def _by(was: int, now: int) -> str:
    if was == now:
        return "as before"
    return f"mends {now - was}" if now > was else f"costs {was - now}"

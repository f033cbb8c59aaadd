"""Two squares changed for each other: what it mends or costs, before it is done."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
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
    was, now = seams.weakest(before), seams.weakest(after)
    if was is not None and now is not None and was.apart is not None and now.apart is not None:
        # Rounded as they are said, so that the sum is right to whoever reads it.
        apart, then = round(was.apart), round(now.apart)
        change = "as before" if then == apart else _by(then - apart)
        yield f"Set {number}: weakest {apart} apart, then {then}: {change}."
    for swatch in seams.twice(after):
        if swatch not in seams.twice(before):
            yield f"{swatch.called} then lies in set {number} more than once."


def _by(change: int) -> str:
    return f"mends {change}" if change > 0 else f"costs {-change}"

"""A pile that pieces are taken from, held against a plain list of what lies there."""

from __future__ import annotations

from random import Random

import pytest

from sewalong.progress.record.sets.laid import UNKNOWN, Lying
from sewalong.progress.record.sets.lying_pile import LyingPile


@pytest.mark.parametrize("seed", range(20))
def test_whatever_is_laid_and_taken_the_rest_lies_in_order(seed: int) -> None:
    random = Random(seed)
    waiting = [Lying(number, index, sure=random.random() < 0.8)
               for number in (1, 1, 2, 3) for index in range(8)] + [UNKNOWN] * 12  # fmt: skip
    random.shuffle(waiting)
    there: list[Lying] = []
    pile = LyingPile()
    for _ in range(80):
        what = random.randrange(4)
        if what == 0:
            more, waiting = waiting[:3], waiting[3:]
            pile.lay(more)
            there += more
        elif what == 1:
            number, index = random.randint(1, 3), random.randrange(8)
            wanted = [at for at, one in enumerate(there) if (one.set, one.index) == (number, index)]
            assert pile.take(number, index) == (there.pop(wanted[-1]) if wanted else None)
        elif what == 2:
            assert pile.take_unknown() is (UNKNOWN in there)
            if UNKNOWN in there:
                there.remove(UNKNOWN)
        else:
            pile.take_first(2)
            there = there[2:]
        assert list(pile) == there

"""What is reckoned with fabrics: sets proposed, and which squares of a set meet."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from functools import partial
from itertools import islice
from random import Random

from sewalong.fabrics.sets.proposing import ENOUGH, Asked, propose, proposed
from sewalong.fabrics.sets.rules import Rule
from sewalong.fabrics.swatch import Swatch
from sewalong.piecing import derive as engine
from sewalong.piecing import start_sizes as starts
from sewalong.piecing.contacts import contacts
from tests.benchmarks.effort import Effort
from tests.benchmarks.row import Goal, Row, milliseconds
from tests.benchmarks.timing import seconds, turn_about

METHOD, SQUARE, SEAM = "stacked-four-patch", Fraction(5), 0.25

SWAPS = 200_000


def cloth_rows(effort: Effort) -> Iterator[Row]:
    """Sets for four packs of 42 fabrics, how near their weakest seam comes, and the contacts."""
    asked = Asked(
        _four_packs(), contacts(engine.derive(METHOD, SQUARE).units, SEAM), tuple("ABCDEFGH"), 21,
        Rule.BY_VALUE,
    )  # fmt: skip
    taken = turn_about(
        partial(seconds, _bare_swaps), partial(seconds, partial(_strong, asked)), effort.rounds
    )
    what, beside = "168 squares in sets, 80 % of the bound", f"{SWAPS:,} bare swaps"
    yield milliseconds(what, beside, taken, Goal(times=5))
    found = proposed(asked)
    assert found.bound is not None
    assert found.weakest is not None
    short = found.bound - found.weakest
    what, beside = "their weakest, short of the bound", "a fifth of the bound"
    yield Row(what, beside, found.bound / 5, short, "L*", Goal())
    units = engine.derive(METHOD, SQUARE).units
    taken = turn_about(
        partial(seconds, _derive), partial(seconds, partial(contacts, units, SEAM)), effort.rounds
    )
    yield milliseconds("which squares of a stack meet", "deriving the method", taken, Goal())


def _four_packs() -> tuple[Swatch, ...]:
    """Invented: 42 fabrics of any value, four squares of each."""
    chance = Random(1)
    return tuple(
        Swatch(f"{number}", "", 4, None, None, chance.uniform(15, 95), None, None)
        for number in range(42)
    )


def _strong(asked: Asked) -> None:
    """Propose until no print is twice and the weakest contact is four fifths of the bound."""
    for found in islice(propose(asked), ENOUGH):
        if not found.doubles and (found.weakest or 0) >= 0.8 * (found.bound or 0):
            return
    raise AssertionError("four fifths of the bound were not reached")


def _bare_swaps() -> None:
    """Two squares of 168 drawn by chance and exchanged, and nothing weighed."""
    squares, chance = list(range(168)), Random(1).random
    for _ in range(SWAPS):
        i, j = int(chance() * 168), int(chance() * 168)
        squares[i], squares[j] = squares[j], squares[i]


def _derive() -> None:
    engine._derive.cache_clear()
    starts.main_for.cache_clear()
    starts._suited.cache_clear()
    engine.derive(METHOD, SQUARE)

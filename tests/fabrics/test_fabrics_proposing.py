"""Sets proposed by each rule: what was asked for is kept, and what is said of them is true."""

from __future__ import annotations

from collections import Counter
from fractions import Fraction as F
from itertools import islice
from random import Random

from sewalong.fabrics.sets.proposing import Asked, Proposal, propose, proposed
from sewalong.fabrics.sets.rules import Rule
from sewalong.fabrics.swatch import Swatch
from sewalong.piecing.contacts import contacts
from sewalong.piecing.derive import derive

STACK = contacts(derive("stacked-four-patch", F(5)).units, 0.25)


def swatch(letter: str, squares: int, value: float | None, kind: str | None = None) -> Swatch:
    return Swatch(letter, f"fabric {letter}", squares, kind, None, value, None, None)


def drawer(prints: int, squares: int, seed: int = 17) -> tuple[Swatch, ...]:
    """Invented: so many prints of so many squares."""
    chance = Random(seed)
    letters = [f"{a}{b}" for a in "ABCD" for b in "ABCDEFGHIJK"][:prints]
    return tuple(swatch(letter, squares, chance.uniform(15, 95)) for letter in letters)


def stacks(fabrics: tuple[Swatch, ...], sets: int, rule: Rule = Rule.BY_VALUE) -> Asked:
    return Asked(fabrics, STACK, tuple("ABCDEFGH"), sets, rule)


def weakest_seam(asked: Asked, proposal: Proposal) -> float:
    """By the contacts themselves."""
    values = {swatch.letter: swatch.value or 0 for swatch in asked.swatches}
    return min(
        abs(values[laid[a]] - values[laid[b]])
        for one in proposal.sets
        for laid in [dict(zip(asked.places, one, strict=True))]
        for a, b in {contact.letters for contact in asked.meeting}
    )


def test_every_square_is_in_a_set_or_over_and_the_weakest_is_the_weakest() -> None:
    asked = stacks(drawer(11, 3), 4)
    found = proposed(asked, 30)
    lying = Counter(letter for one in found.sets for letter in one) + Counter(found.over)
    assert lying == {swatch.letter: 3 for swatch in asked.swatches}
    assert found.weakest == weakest_seam(asked, found)
    assert found.bound is not None
    assert found.bound >= found.weakest


def test_the_same_seed_proposes_the_same_and_each_is_as_good_as_the_one_before() -> None:
    asked = stacks(drawer(20, 2), 5)
    once, again = (list(islice(propose(asked), 60)) for _ in range(2))
    assert once == again
    ranks = [(-one.doubles, one.weakest or 0) for one in once]
    assert ranks == sorted(ranks)

"""What is said of one set before it is sewn: seams, doubles, and prints that do not stand one way up."""

from __future__ import annotations

from fractions import Fraction as F

from sewalong.fabrics.set_facts import SetFacts, set_facts
from sewalong.fabrics.swatch import Swatch
from sewalong.piecing.contacts import contacts
from sewalong.piecing.derive import Derivation, derive
from tests.fabrics.made_fabrics import swatch

FOUR = derive("four-patch", F(5))
PAIRED = derive("paired-squares", F(5))
VALUES = {"A": 20.0, "B": 40.0, "C": 65.0, "D": 95.0}


def laid(**more: Swatch) -> dict[str, Swatch]:
    return {letter: swatch(letter, 4, value) for letter, value in VALUES.items()} | more


def facts_of(made: Derivation, squares: dict[str, Swatch]) -> SetFacts:
    meeting = [
        contact
        for contact in contacts(made.units, float(made.seam))
        if all(letter in squares for letter in contact.letters)
    ]
    return set_facts(made, meeting, squares)


def test_the_weakest_seam_comes_first_and_a_double_behind_all_seams() -> None:
    facts = facts_of(FOUR, laid(D=swatch("A", 4, 20)))
    # Round the unit lie A, B, C and the fabric of A again: 20, 40, 65 and 20 in L*.
    assert [met.apart for met in facts.met] == [0, 20, 25, 45]
    assert facts.more == ("A fabric A lies in it more than once.",)
    assert facts.facts == (*(met.words for met in facts.met), *facts.more)


def test_a_one_way_print_is_said_with_its_units_and_whether_it_stands_alike_in_them() -> None:
    """Of two squares sewn all round and cut on both diagonals, two units have both prints one way up,
    and in the two between them one is on its head."""
    both = {letter: swatch(letter, 4, VALUES[letter], "one-way") for letter in "AB"}
    told = "is a one-way print: it shows in units 1, 2, 3 and 4, not the same way up in each."
    assert facts_of(PAIRED, both).more == (
        f"A fabric A {told}",
        f"B fabric B {told}",
        "A fabric A, B fabric B: one way up in 2 of 4 units, however they are turned.",
    )
    stacked = facts_of(derive("stacked-four-patch", F(5)), {"B": both["B"]})
    assert stacked.more[0] == (
        "B fabric B is a one-way print: it shows in units 1 and 4, not the same way up in each."
    )
    assert facts_of(FOUR, laid(B=swatch("B", 4, 40, "one-way"))).more == (
        "B fabric B is a one-way print: it shows in unit 1.",
        "B fabric B: one way up in every unit, once it is turned so.",
    )
    assert facts_of(FOUR, laid()).more == ()

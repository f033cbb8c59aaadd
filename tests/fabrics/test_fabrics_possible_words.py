"""What can be had is said in sentences, one fact each."""

from __future__ import annotations

import pytest

from sewalong.fabrics.possible import possible
from sewalong.fabrics.possible_words import what_can_be
from sewalong.fabrics.swatch import Swatch
from sewalong.quilt.choices import ASSORTED
from tests.fabrics.made_fabrics import PLACES, meeting_of, swatch


def said(fabrics: tuple[Swatch, ...], wanted: int, method: str) -> tuple[str, ...]:
    return what_can_be(fabrics, meeting_of(method), PLACES[method], wanted)


def test_the_fabric_that_is_too_many_is_named_with_how_many() -> None:
    # N018: 22 of one fabric, 18 single prints: 18 pairs at most, 4 of the background over.
    fabrics = (swatch("Z", 22, 90), *(swatch(f"A{i}", 1, float(i)) for i in range(18)))
    assert said(fabrics, 20, "paired-squares")[:4] == (
        "40 squares: enough for 20 sets of 2 squares, 0 over.",
        "Sets with no print twice: 18 of 20.",
        "Z fabric Z: 4 squares too many for sets with no print twice.",
        "Pairs of two different fabrics: 18 at most.",
    )


def test_a_stack_wants_as_many_lights_as_darks() -> None:
    # N013: "Say how to lay pairs and stacks so that contrast survives the cut, and how many lights a
    # stack wants": four of each.
    assert "For light against dark at every seam a set wants 4 lights and 4 darks." in said(
        (swatch("A", 8, 20), swatch("B", 8, 80)), 2, "stacked-four-patch"
    )


def test_the_bound_the_sets_that_read_and_the_lights_that_are_missing() -> None:
    fabrics = (swatch("A", 2, 80), swatch("B", 6, 30))
    words = said(fabrics, 4, "paired-squares")
    assert "Weakest seam in value: no choice of 4 sets passes 0." in words
    assert (
        "Sets in which every seam can be 20 apart, from where a pattern can be read: 2 of 4 at most."
        in words
    )
    assert (
        "With lights alone, all 4 take at least 2 more squares as light as the lightest." in words
    )
    assert not any(word.startswith("With darks alone") for word in words)


def test_too_few_squares_are_said_first() -> None:
    fabrics = tuple(swatch(letter, 4, 10.0 * n) for n, letter in enumerate("ABCDE"))
    assert said(fabrics, 6, "four-patch")[0] == (
        "20 squares: enough for 5 sets of 4 squares, not for the 6 that are wanted."
    )


def test_what_is_not_known_is_said_and_nothing_of_it_claimed() -> None:
    words = said((swatch("A", 4, 80), swatch("H", 4, None)), 4, "paired-squares")
    assert words[-2].startswith("Not known: the value of H fabric H")
    assert not any("passes" in word for word in words)


def test_piles_are_never_said_to_lie_twice_or_to_be_too_many() -> None:
    # Invented: "lights 60, mediums 70, darks 38".
    piles = (
        swatch("A", 60, 85, ASSORTED), swatch("B", 70, 50, ASSORTED), swatch("C", 38, 15, ASSORTED)
    )  # fmt: skip
    found = possible(piles, wanted=21, places=8, apart=4)
    assert (found.different, found.pairs, found.too_many) == (21, 84, ())
    words = said(piles, 21, "stacked-four-patch")
    assert not any("too many" in word for word in words)
    assert (
        "Squares of a pile are taken for different prints, and which are alike is not known."
        in words
    )
    assert words[-1] == "Where a value was only said in a word, what is apart is rough."


def test_squares_are_counted_by_fabric() -> None:
    # Q061: 20 wanted of three each of seven prints; "really 8 prints: 24, 4 over".
    eight = tuple(swatch(letter, 3, 50) for letter in "ABCDEFGH")
    assert (
        what_can_be(eight, (), "A", 20)[0] == "24 squares: enough for 20 sets of 1 square, 4 over."
    )
    assert what_can_be(eight[1:], (), "A", 20)[0].endswith("of 1 square, 1 over.")


@pytest.mark.parametrize("method", list(PLACES))
def test_every_line_is_a_sentence(method: str) -> None:
    for fabrics in ((), (swatch("A", 1, None),), (swatch("A", 9, 20), swatch("B", 9, 50))):
        assert all(word.endswith(".") for word in said(fabrics, 3, method))

"""Sets proposed by each rule: what was asked for is kept, and what is said of them is true."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from itertools import islice

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from msgspec.structs import replace

from sewalong.fabrics.sets.background import background_letters
from sewalong.fabrics.sets.proposal_words import proposal_words
from sewalong.fabrics.sets.proposing import Asked, Proposal, propose, proposed
from sewalong.fabrics.sets.rules import Rule, SetsRefused
from sewalong.fabrics.sets.tasks import task_of
from sewalong.fabrics.sets.wanted import Dealt
from sewalong.fabrics.sight import difference
from sewalong.fabrics.swatch import Swatch
from sewalong.quilt.choices import ASSORTED
from tests.fabrics.made_fabrics import LETTERS, asked, colour_drawer, drawer, meeting_of, swatch

LOOKS = 12


def seams(wanted: Asked, one: tuple[str, ...]) -> Iterator[tuple[Swatch, Swatch]]:
    """The two fabrics at each seam of a set."""
    fabrics = {swatch.letter: swatch for swatch in wanted.swatches}
    laid = dict(zip(wanted.places, one, strict=True))
    for a, b in {contact.letters for contact in wanted.meeting}:
        yield fabrics[laid[a]], fabrics[laid[b]]


def all_seams(wanted: Asked, proposal: Proposal) -> list[tuple[Swatch, Swatch]]:
    return [pair for one in proposal.sets for pair in seams(wanted, one)]


def apart(one: Swatch, other: Swatch) -> float:
    assert one.value is not None
    assert other.value is not None
    return abs(one.value - other.value)


def by_colour(one: Swatch, other: Swatch) -> float:
    assert one.colour is not None
    assert other.colour is not None
    return difference(one.colour, other.colour)


def lying(proposal: Proposal) -> Counter[str]:
    return Counter(letter for one in proposal.sets for letter in one) + Counter(proposal.over)


@pytest.mark.parametrize("rule", list(Rule))
def test_by_every_rule_every_square_is_in_a_set_or_over_and_no_print_is_twice(rule: Rule) -> None:
    fabrics = (swatch("Z", 24, 12, ASSORTED), *colour_drawer(17, 3))
    wanted = asked(fabrics, 5, rule, background="z")
    found = proposed(wanted, LOOKS)
    assert lying(found) == {swatch.letter: swatch.squares for swatch in fabrics}
    assert [len(one) for one in found.sets] == [8] * 5
    for one in found.sets:
        prints = [letter for letter in one if letter != "Z"]
        assert len(set(prints)) == len(prints)
    assert found.doubles == 0
    assert "No other print is twice in a set." in found.words


@pytest.mark.parametrize("rule", list(Rule))
def test_the_same_seed_proposes_the_same_and_each_is_as_good_as_the_one_before(rule: Rule) -> None:
    wanted = asked(colour_drawer(20, 2), 4, rule, background="AA")
    wanted = replace(wanted, swatches=(*wanted.swatches, swatch("AM", 16, 40)), background="AM")
    once, again = (list(islice(propose(wanted), 60)) for _ in range(2))
    assert once == again
    ranks = [(-one.doubles, one.weakest or 0) for one in once]
    assert ranks == sorted(ranks)
    if rule is not Rule.ONE_BACKGROUND:  # It begins with the strongest for any seed.
        assert once[0] != proposed(replace(wanted, seed=2), 1)


@pytest.mark.parametrize("rule", [Rule.BY_VALUE, Rule.BY_COLOUR])
def test_the_weakest_is_the_weakest_and_the_bound_is_not_passed(rule: Rule) -> None:
    wanted = asked(colour_drawer(12, 3), 4, rule)
    found = proposed(wanted, LOOKS)
    strength = apart if rule is Rule.BY_VALUE else by_colour
    weakest = min(strength(a, b) for a, b in all_seams(wanted, found))
    assert found.weakest == pytest.approx(weakest)
    assert found.bound is not None
    assert weakest <= found.bound
    by = " by colour" if rule is Rule.BY_COLOUR else ""
    assert found.words[0].startswith("Weakest: ")
    assert f", {weakest:.0f} apart{by}, in set " in found.words[0]
    assert found.words[1:3] == (
        f"No choice of sets passes {found.bound:.0f}.",
        f"In 4 sets 16 pairs of squares meet, however they lie, "
        f"and of so many one is {found.bound:.0f} apart or less.",
    )


def test_the_weakest_seam_that_is_named_is_where_it_is_said_to_be() -> None:
    wanted = asked(drawer(12, 3), 4)
    found = proposed(wanted, LOOKS)
    number = int(found.words[0].removesuffix(".").split(" in set ")[1])
    named = [
        f"Weakest: {a.called} and {b.called}, {apart(a, b):.0f} apart, in set {number}."
        for one, other in seams(wanted, found.sets[number - 1])
        for a, b in ((one, other), (other, one))
        if apart(one, other) == found.weakest
    ]
    assert found.words[0] in named


# N013: "Four lights at A C E G and four darks at B D F H: every contact is light to dark." The
# places follow from what meets, here as in the other methods.
@pytest.mark.parametrize(
    ("method", "light", "sets"),
    [("stacked-four-patch", "ACEG", 3), ("four-patch", "AC", 6), ("paired-squares", "A", 12)],
)
def test_light_on_dark_lays_lights_where_every_seam_has_one(
    method: str, light: str, sets: int
) -> None:
    lights = tuple(swatch(f"L{i}", 2, 70.0 + i) for i in range(6))
    darks = tuple(swatch(f"D{i}", 2, 20.0 + i) for i in range(6))
    wanted = asked((*darks, *lights), sets, Rule.LIGHT_ON_DARK, method)
    found = proposed(wanted, LOOKS)
    for one in found.sets:
        laid = dict(zip(wanted.places, one, strict=True))
        assert {place for place, letter in laid.items() if letter[0] == "L"} == set(light)
    assert found.weakest is not None
    assert 45 <= found.weakest == min(apart(a, b) for a, b in all_seams(wanted, found))
    assert found.words[0].startswith("Weakest: L")
    assert " on D" in found.words[0]


def test_with_a_light_too_few_one_dark_lies_among_the_lights() -> None:
    # N013: "With k lights of 8 at least 3*|4-k| contacts are like: 3 lights 3".
    darks = (swatch("D", 1, 32), *(swatch(f"D{i}", 1, 20 + i) for i in range(4)))
    lights = tuple(swatch(f"L{i}", 1, 80 + i) for i in range(3))
    wanted = asked((*darks, *lights), 1, Rule.LIGHT_ON_DARK)
    found = proposed(wanted, 60)
    like = [pair for pair in all_seams(wanted, found) if apart(*pair) < 20]
    assert len(like) == 3
    # The lightest dark takes the place, and the darkest of the others lie beside it.
    assert all("D fabric D" in (one.called, other.called) for one, other in like)
    assert found.weakest == 32 - 22


def test_what_lies_the_wrong_way_about_is_said() -> None:
    wanted = asked(
        (swatch("B", 1, 10), swatch("C", 1, 50)), 1, Rule.LIGHT_ON_DARK, "paired-squares"
    )
    dark_on_light = Dealt(((0, 1),), (), 0, -40.0, 0.0)
    first, *_ = proposal_words(wanted, task_of(wanted), dark_on_light)
    assert first == (
        "Weakest: B fabric B lies as the light one on C fabric C and is 40 darker, in set 1."
    )


@pytest.mark.parametrize(("lights", "light"), [(5, "ACEGI"), (4, "BDFH")])
def test_of_two_unlike_sides_the_lights_lie_on_the_one_they_are_enough_for(
    lights: int, light: str
) -> None:
    """Nine squares of one set, the lights 70 from the darks: five places meet four."""
    fabrics = tuple(
        swatch(letter, 1, 90 if number < lights else 20)
        for number, letter in enumerate(LETTERS[:9])
    )
    found = proposed(asked(fabrics, 1, Rule.LIGHT_ON_DARK, "nine-patch"), LOOKS)
    assert (found.weakest, found.bound) == (70, 70)
    (one,) = found.sets
    at = dict(zip("ABCDEFGHI", one, strict=True))
    assert {at[place] for place in light} == set(LETTERS[:lights])


def test_one_fabric_is_the_background_at_every_second_place() -> None:
    # Invented: cream, and twelve prints of two squares.
    fabrics = (swatch("C", 14, 90), *drawer(12, 2))
    wanted = asked(fabrics, 3, Rule.ONE_BACKGROUND, background="fabric c")
    found = proposed(wanted, LOOKS)
    assert [{i for i, letter in enumerate(one) if letter == "C"} for one in found.sets] == [
        {0, 2, 4, 6}
    ] * 3
    assert found.over["C"] == 2
    # The background is no print that lies there twice; of the others none does.
    assert found.doubles == 0
    assert all(
        (one.letter == "C") != (other.letter == "C") for one, other in all_seams(wanted, found)
    )
    # Twelve others are taken, the strongest against it: nothing can be better.
    strongest = sorted((90 - (s.value or 0) for s in drawer(12, 2) for _ in range(2)), reverse=True)
    assert found.weakest == found.bound == strongest[11]
    assert found.words[2] == (
        "In 3 sets 12 squares lie beside the background, "
        f"and of so many one is {strongest[11]:.0f} apart or less."
    )


def test_a_colour_family_can_be_the_background() -> None:
    fabrics = colour_drawer(30, 2)
    blues = {swatch.letter for swatch in fabrics if swatch.family == "blue"}
    wanted = asked(fabrics, 3, Rule.ONE_BACKGROUND, "four-patch", "Blue")
    found = proposed(wanted, LOOKS)
    assert len(blues) > 1
    assert background_letters(fabrics, "Blue") == blues
    for one in found.sets:
        assert [letter in blues for letter in one] in ([True, False] * 2, [False, True] * 2)
    assert found.bound is not None
    assert found.weakest is not None
    assert found.weakest <= found.bound


def test_a_background_that_is_short_makes_fewer_sets_and_says_so() -> None:
    fabrics = (swatch("C", 11, 90), *drawer(12, 2))
    found = proposed(asked(fabrics, 3, Rule.ONE_BACKGROUND, background="C"), LOOKS)
    assert len(found.sets) == 2
    assert "The free squares are enough for 2 sets, not for 3." in found.words


def test_scrappy_spreads_the_families_and_asks_no_value() -> None:
    fabrics = tuple(
        replace(one, letter=f"{letter}{i}")
        for letter, one in zip("RGBY", colour_drawer(4, 1, seed=3), strict=True)
        for i in range(4)
    )
    families = {swatch.letter: swatch.family for swatch in fabrics}
    assert len(set(families.values())) == 4
    found = proposed(asked(fabrics, 4, Rule.SCRAPPY, "four-patch"), 60)
    assert all(len({families[letter] for letter in one}) == 4 for one in found.sets)
    assert (found.weakest, found.bound) == (None, None)
    assert found.words == ("Value was not asked for.", "No print is twice in a set.")


def test_what_is_over_is_what_is_least_missed() -> None:
    # Invented: of all one value, one lone square and five prints of three. No lone square is left
    # out, and no print is left out while others are there whole.
    fabrics = (swatch("Z", 1, None), *(swatch(letter, 3, None) for letter in "ABCDE"))
    found = proposed(asked(fabrics, 3, method="four-patch"), 60)
    assert sorted(found.over.values()) == [1, 1, 1, 1]
    assert "Z" not in found.over
    assert any(word.startswith("Over: ") for word in found.words)


def test_a_print_in_no_set_is_named() -> None:
    fabrics = (swatch("A", 4, 20), swatch("B", 4, 80), swatch("C", 1, 50))
    found = proposed(asked(fabrics, 4, method="paired-squares"), LOOKS)
    assert found.over == {"C": 1}
    assert found.words[-2:] == ("Over: 1 C fabric C.", "In no set: C fabric C.")


def test_values_that_are_not_known_stop_nothing_and_are_said() -> None:
    fabrics = (swatch("H", 3, None), *drawer(10, 2))
    wanted = asked(fabrics, 2)
    found = proposed(wanted, LOOKS)
    assert found.weakest == min(
        apart(a, b)
        for a, b in all_seams(wanted, found)
        if a.value is not None and b.value is not None
    )
    assert "Not known: the value of H fabric H." in found.words
    none = proposed(asked(tuple(swatch(letter, 2, None) for letter in "ABCDEFGH"), 2), LOOKS)
    assert (none.weakest, none.bound, none.doubles) == (None, None, 0)
    assert none.words[0] == "How strong the seams are is not known."


@pytest.mark.parametrize("rule", list(Rule))
def test_three_colour_piles_are_enough(rule: Rule) -> None:
    # Invented: "lights 60, mediums 70, darks 38"; their values are those of the words.
    piles = (
        swatch("A", 60, 85, ASSORTED), swatch("B", 70, 50, ASSORTED), swatch("C", 38, 15, ASSORTED)
    )  # fmt: skip
    found = proposed(asked(piles, 21, rule, background="C"), 20)
    assert found.doubles == 0
    assert lying(found) == {"A": 60, "B": 70, "C": 38}
    assert (
        "Squares of one print may lie together: not known of A fabric A, B fabric B, C fabric C."
        in (found.words)
    )
    assert not any("twice" in words for words in found.words)
    if rule in (Rule.BY_VALUE, Rule.LIGHT_ON_DARK):
        assert found.weakest == found.bound == 35
        assert "Where a value was only said in a word, what is apart is rough." in found.words


def test_sets_that_stand_are_kept_out_and_named_where_they_are_weaker() -> None:
    fabrics = (*drawer(8, 2), swatch("X", 0, 50), swatch("Y", 0, 51))
    kept = (("X", "Y") * 4,)
    found = proposed(replace(asked(fabrics, 2), locked=kept), LOOKS)
    assert "X" not in {letter for one in found.sets for letter in one}
    assert any(
        word.startswith("A set that is kept is weaker: ") and ", 1 apart." in word
        for word in found.words
    )
    stronger = replace(
        asked((*drawer(8, 2), swatch("X", 0, 0), swatch("Y", 0, 100)), 2), locked=kept
    )
    assert not any("kept" in word for word in proposed(stronger, LOOKS).words)


def test_the_set_of_a_one_way_print_is_named() -> None:
    fabrics = (swatch("B", 1, 60, "one-way"), *drawer(8, 2))
    found = proposed(asked(fabrics, 2), LOOKS)
    (number,) = [n for n, one in enumerate(found.sets, start=1) if "B" in one] or [0]
    said = f"B fabric B is a one-way print: look which way up it lies in set {number}."
    assert (said in found.words) == bool(number)


def test_doubles_that_cannot_be_helped_are_said_with_their_bound() -> None:
    fabrics = (swatch("A", 6, 20), swatch("B", 2, 60))
    found = proposed(asked(fabrics, 4, method="paired-squares"), LOOKS)
    assert found.doubles == 2
    assert "2 squares lie in a set where the same print lies already." in found.words
    assert "No choice of 4 sets has fewer." in found.words


@pytest.mark.parametrize(
    ("wanted", "words"),
    [
        (asked(drawer(2, 3), 1), "There are 6 free squares, and a set takes 8. Enter more"),
        (asked(drawer(9, 3), 0), "There are 27 free squares"),
        (asked((), 1), "There are 0 free squares"),
        (asked(drawer(9, 3), 2, Rule.ONE_BACKGROUND), "'' is not a background. Name one"),
        (asked(drawer(9, 3), 2, Rule.ONE_BACKGROUND, background="Q"), "'Q' is not a background"),
        (asked(drawer(1, 30), 2, Rule.ONE_BACKGROUND, background="AA"), "'AA' is not"),
        (
            asked(drawer(9, 3), 2, Rule.ONE_BACKGROUND, background="AA"),
            "A set takes 4 squares of the background and 4 others; there are 3 and 24. Choose",
        ),
        (
            Asked(drawer(3, 3), (), ("A",), 2, Rule.LIGHT_ON_DARK),
            "no two sides of which each meets only the other. Choose by value",
        ),
    ],
)
def test_what_cannot_be_proposed_is_refused_at_once_with_what_to_do(
    wanted: Asked, words: str
) -> None:
    with pytest.raises(SetsRefused, match=words.replace(".", r"\.")):
        propose(wanted)


def test_three_squares_that_meet_each_other_have_no_two_sides() -> None:
    meeting = meeting_of("four-patch")
    three = (meeting[0], *(replace(meeting[0], letters=two) for two in (("B", "C"), ("A", "C"))))
    triangle = Asked(drawer(6, 2), three, ("A", "B", "C"), 3, Rule.LIGHT_ON_DARK)
    with pytest.raises(SetsRefused, match="no two sides"):
        propose(triangle)
    found = proposed(replace(triangle, rule=Rule.BY_VALUE), LOOKS)
    assert found.weakest is not None


def test_one_square_a_set_has_nothing_to_part() -> None:
    found = proposed(Asked(drawer(3, 2), (), ("A",), 5, Rule.BY_VALUE), LOOKS)
    assert (len(found.sets), found.weakest, found.bound) == (5, None, None)


KINDS = st.sampled_from((None, "one-way", ASSORTED))
FABRICS = st.lists(
    st.tuples(st.integers(0, 9), st.none() | st.floats(0, 100), KINDS), min_size=1, max_size=9
)


@settings(max_examples=60, deadline=None)
@given(
    FABRICS,
    st.sampled_from(list(Rule)),
    st.sampled_from(("paired-squares", "four-patch")),
    st.integers(1, 9),
)
def test_whatever_she_has_is_proposed_or_refused(
    fabrics: list[tuple[int, float | None, str | None]], rule: Rule, method: str, sets: int
) -> None:
    made = tuple(
        swatch(letter, n, value, kind)
        for letter, (n, value, kind) in zip("ABCDEFGHI", fabrics, strict=False)
    )
    try:
        found = proposed(asked(made, sets, rule, method, "A"), 2)
    except SetsRefused:
        return
    assert lying(found) == Counter({one.letter: one.squares for one in made if one.squares})
    assert 0 < len(found.sets) <= sets
    assert found.bound is None or found.weakest is None or found.weakest <= found.bound + 1e-9
    assert all(word.endswith(".") for word in found.words)

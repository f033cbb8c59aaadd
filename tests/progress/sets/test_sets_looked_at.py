"""What is said of a set: its weakest seam, what a swap does, how it lies, and where."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from sewalong.fabrics.colours import parse_colour
from sewalong.fabrics.possible import possible
from sewalong.fabrics.sets.rules import Rule
from sewalong.fabrics.sight import value
from sewalong.progress.record.refused import Refused
from sewalong.progress.sets.contrast import all_words, set_contrast, weakest_words
from sewalong.progress.sets.finding import WhereASetIs, where_is
from sewalong.progress.sets.groups import groups
from sewalong.progress.sets.holding import holding
from sewalong.progress.sets.read_squares import squares_typed
from sewalong.progress.sets.swapping import OVER, Square, swap_words, swapped
from sewalong.progress.sets.what_to_propose import what_to_propose
from sewalong.progress.sets.where_words import found_words, standing_words, where_words
from sewalong.quilt.choices import Fabric
from sewalong.quilt.quilt import Quilt, Target
from sewalong.quilt.set_shape import set_shape
from tests.progress import every_act as c
from tests.progress.building import go_on, opening, play
from tests.progress.sets.fabrics import sets_of, with_fabrics

QUILT = with_fabrics()
GREYS = (("A", "coal", "#202020"), ("B", "ash", "#606060"), ("C", "fog", "#b0b0b0"),
         ("D", "snow", "#f8f8f8"))  # fmt: skip


def in_greys(method: str = "paired-squares") -> Quilt:
    fabrics = tuple(Fabric(letter, name, colour, 4) for letter, name, colour in GREYS)
    return replace(with_fabrics(method, pieces=16), fabrics=fabrics)


def apart(one: str, other: str) -> int:
    colours = {letter: parse_colour(colour) for letter, _, colour in GREYS}
    return round(abs(value(colours[one]) - value(colours[other])))


def test_the_weakest_of_a_pair_is_its_one_contact() -> None:
    seams = set_contrast(in_greys())
    assert weakest_words(seams, ("A", "C")) == (
        f"Weakest here: A coal and C fog, {apart('A', 'C')} apart.",
    )


def test_the_weakest_of_a_stack_is_that_of_its_twelve_contacts() -> None:
    """Light on dark (A, C, F, H on one side of the cube, by hand from its corners) leaves no two
    alike that meet; one square of the other side there meets three."""
    seams = set_contrast(in_greys("stacked-four-patch"))
    assert len(seams.met(("A",) * 8)) == 12
    sides = {frozenset(one.letters) for one in seams.met(("A",) * 8)}
    beside_first = {next(iter(pair - {"A"})) for pair in sides if "A" in pair}
    assert len(beside_first) == 3
    laid = ["D" if place in beside_first else "A" for place in seams.places]
    met = seams.met(laid)
    strong = [one for one in met if one.apart and one.apart > 50]
    assert len(strong) == 9, "three places in, three times three contacts of which none is shared"


def test_what_was_only_said_in_words_is_about_so_far_apart() -> None:
    """Light is taken for 85 and dark for 15, as `swatch` has it."""
    piles = (
        Fabric("A", "lights", squares=8, kind="assorted", value="light"),
        Fabric("B", "darks", squares=8, kind="assorted", value="dark"),
    )
    seams = set_contrast(replace(in_greys(), fabrics=piles))
    assert weakest_words(seams, ("A", "B")) == (
        "Weakest here: A lights and B darks, about 70 apart.",
    )
    coal = Fabric("C", "coal", "#202020", 8)
    seams = set_contrast(replace(in_greys(), fabrics=(*piles, coal)))
    for pair in (("A", "C"), ("C", "A")):
        assert "about" in weakest_words(seams, pair)[0]


def test_a_one_way_print_that_turns_is_said_to() -> None:
    """Cut both ways and opened, the quarters of the square that lay face up stand at 45, 315, 225 and
    135 degrees, those of the other, which was turned over, at 45, 135, 225 and 315: alike in two."""
    birds = Fabric("A", "birds", "#204060", 8, "one-way")
    dots = Fabric("B", "dots", "#f0e0d0", 8)
    words = Fabric("C", "words", "#806040", 8, "one-way")
    seams = set_contrast(replace(in_greys(), fabrics=(birds, dots, words)))
    assert seams.facts(("B", "B")).more == ("B dots lies in it more than once.",)
    alone = " ".join(seams.facts(("A", "B")).more)
    assert "A birds is a one-way print" in alone
    assert "one way up in every unit, once it is turned so." in alone
    both = seams.facts(("A", "C")).more
    assert both[-1] == "A birds, C words: one way up in 2 of 4 units, however they are turned."


def test_what_is_not_known_any_more_is_left_out() -> None:
    seams = set_contrast(in_greys())
    assert seams.met(("A", None)) == ()
    assert weakest_words(seams, ("A", None)) == ()


def test_of_all_sets_the_weakest_is_named_beside_what_no_choice_passes() -> None:
    seams = set_contrast(in_greys())
    bound = possible([*seams.fabrics.values()], 2, 2, 1).bound
    weakest = apart("A", "B")
    assert all_words(seams, {3: ("A", "C"), 7: ("A", "B")}) == (
        f"Of all sets: {weakest}, in set 7; no choice passes {bound:.0f}.",
    )
    alone = possible([*seams.fabrics.values()], 1, 2, 1).bound
    assert all_words(seams, {1: ("A", "C")}) == (
        f"Of all sets: {apart('A', 'C')}, in set 1; no choice passes {alone:.0f}.",
    )
    assert all_words(seams, {}) == ()
    assert all_words(seams, {1: ("A", None)}) == ()


def test_a_swap_says_what_it_mends_and_what_it_costs() -> None:
    seams = set_contrast(in_greys())
    sets = {1: ("A", "B"), 2: ("C", "D")}
    one, other = Square(1, 1, "B"), Square(2, 0, "C")
    assert swapped(sets, one, other) == {1: ("A", "C"), 2: ("B", "D")}
    was, now = (apart("A", "B"), apart("C", "D")), (apart("A", "C"), apart("B", "D"))
    assert swap_words(seams, sets, one, other) == (
        f"Set 1: weakest there {was[0]} apart, then {now[0]}: mends {now[0] - was[0]}.",
        f"Set 2: weakest there {was[1]} apart, then {now[1]}: mends {now[1] - was[1]}.",
    )
    back = swap_words(seams, {1: ("A", "C"), 2: ("B", "D")}, Square(1, 1, "C"), Square(2, 0, "B"))
    assert [words.rpartition(": ")[2] for words in back] == [
        f"costs {now[0] - was[0]}.", f"costs {now[1] - was[1]}."
    ]  # fmt: skip


def test_a_swap_in_a_stack_speaks_of_the_place_and_then_of_the_whole() -> None:
    """A dark among the seven lights of a stack meets three of them: changed for a light it costs
    all that its own seams had, and the weakest of the set, two lights, stays."""
    seams = set_contrast(in_greys("stacked-four-patch"))
    sets = {1: ("A", *"DDDDDDD")}
    far = apart("A", "D")
    assert swap_words(seams, sets, Square(1, 0, "A"), Square(OVER, 0, "D")) == (
        f"Set 1: weakest there {far} apart, then 0: costs {far}.",
    )
    mended = swap_words(seams, {1: tuple("DDDDDDDD")}, Square(1, 0, "D"), Square(OVER, 0, "A"))
    assert mended == (f"Set 1: weakest there 0 apart, then {far}: mends {far}.",)


def two_sides() -> tuple[tuple[int, ...], tuple[int, ...]]:
    """The places of a stack that can be dark, and those that meet only these: the cube's."""
    seams = set_contrast(in_greys("stacked-four-patch"))
    number = {letter: place for place, letter in enumerate(seams.places)}
    pairs = {tuple(number[letter] for letter in one.letters) for one in seams.meeting}
    dark, light = {0}, set[int]()
    while len(dark) + len(light) < 8:
        light |= {b for a, b in (*pairs, *((b, a) for a, b in pairs)) if a in dark}
        dark |= {b for a, b in (*pairs, *((b, a) for a, b in pairs)) if a in light}
    return tuple(sorted(dark)), tuple(sorted(light))


def test_a_swap_that_changes_the_weakest_of_the_set_says_both() -> None:
    """Light on dark but for one medium; another square of its side is changed for a lighter one."""
    seams = set_contrast(in_greys("stacked-four-patch"))
    dark, light = two_sides()
    assert (len(dark), len(light)) == (4, 4)
    laid = ["D" if place in light else "A" for place in range(8)]
    laid[dark[1]] = "B"
    said = swap_words(seams, {1: tuple(laid)}, Square(1, dark[0], "A"), Square(OVER, 0, "C"))
    was, then = apart("A", "D"), apart("C", "D")
    assert said == (
        f"Set 1: weakest there {was} apart, then {then}: costs {was - then}.",
        f"Weakest of the set: {apart('B', 'D')} apart, then {then}.",
    )


def test_a_swap_with_what_is_over_changes_one_set_and_says_what_is_then_twice() -> None:
    seams = set_contrast(in_greys())
    changed = swap_words(seams, {1: ("A", "D")}, Square(1, 1, "D"), Square(OVER, 0, "A"))
    assert changed[-1] == "A coal then lies in set 1 more than once."
    assert swapped({1: ("A", "D")}, Square(OVER, 0, "B"), Square(1, 0, "A")) == {1: ("B", "D")}


def test_swapping_within_a_set_changes_it_once() -> None:
    sets = {1: tuple("ABCDABCD")}
    assert swapped(sets, Square(1, 0, "A"), Square(1, 3, "D")) == {1: tuple("DBCAABCD")}


@pytest.mark.parametrize(
    ("method", "titles"),
    [
        ("stacked-four-patch", ["front", "back"]),
        ("paired-squares", ["front", "back"]),
        ("hourglass", ["front", "back"]),
        ("four-patch", ["pair 1", "pair 2"]),
        ("nine-patch", ["row of three 1", "row of three 2", "row of three 3"]),
    ],
)
def test_squares_lie_in_groups_as_they_are_put_together_last(
    method: str, titles: list[str]
) -> None:
    quilt = with_fabrics(method)
    shape = set_shape(quilt)
    assert shape is not None
    found = groups(quilt, shape)
    assert [group.title for group in found] == titles
    assert [place for group in found for place in group.places] == list(range(len(shape.places)))


@pytest.mark.parametrize(
    ("typed", "letters"),
    [
        ("A, rust dots, 2 x navy", "AEHH"),
        ("A B navy", "ABH"),
        ("pine", "G"),
        ("a;b\nC shell", "ABC"),
        ("3×oat,plum", "BBBI"),
        ("", None),
        ("A, nothing", None),
        ("A, 0 x B", None),
    ],
)
def test_squares_are_typed_by_letters_and_names(typed: str, letters: str | None) -> None:
    if letters is None:
        with pytest.raises(Refused, match=r"\.$"):
            squares_typed(QUILT, typed)
    else:
        assert "".join(squares_typed(QUILT, typed)) == letters


def test_what_is_held_is_not_dealt_again_and_fewer_sets_are_wanted() -> None:
    state = opening(replace(QUILT, target=Target(6, 8)))
    asked = what_to_propose(state, Rule.BY_VALUE)
    held = tuple("ABCDEFGH")
    beside = holding(asked, [held, held])
    assert beside.sets == asked.sets - 2
    assert {one.letter: one.squares for one in beside.swatches} == {
        one.letter: one.squares - 2 * (one.letter in held) for one in asked.swatches
    }
    assert beside.locked == (held, held)


def test_what_is_enough_is_said_to_be() -> None:
    """Four units wanted take one set; with that held no other is wanted, though squares are over."""
    asked = what_to_propose(opening(QUILT), Rule.BY_VALUE)
    assert asked.sets == 1
    with pytest.raises(Refused, match="No more sets are wanted"):
        holding(asked, [tuple("ABCDEFGH")])


@pytest.mark.parametrize(("squares", "is_enough"), [(2, True), (1, False)])
def test_too_few_squares_are_left_to_whoever_proposes(squares: int, *, is_enough: bool) -> None:
    """Beside a set held, of which each fabric had one square, so many of each are left: eight or
    more make a set, and then it is the target that wants no more."""
    asked = what_to_propose(opening(QUILT), Rule.BY_VALUE)
    few = tuple(replace(one, squares=squares) for one in asked.swatches[:8])
    held = [tuple("ABCDEFGH")]
    if is_enough:
        with pytest.raises(Refused, match="No more sets are wanted"):
            holding(replace(asked, swatches=few), held)
    else:
        assert holding(replace(asked, swatches=few), held).swatches == ()


def test_the_last_square_of_a_fabric_is_dealt_too() -> None:
    asked = what_to_propose(opening(replace(QUILT, target=Target(6, 8))), Rule.BY_VALUE)
    beside = holding(asked, [("A",) * 7 + ("B",), ("C",) * 8])
    assert [(one.letter, one.squares) for one in beside.swatches[:3]] == [
        ("A", 1), ("B", 7), ("D", 8),
    ]  # fmt: skip


def test_where_no_piece_holds_all_squares_they_are_one_group() -> None:
    shape = set_shape(QUILT)
    assert shape is not None
    (only,) = groups(QUILT, replace(shape, runs={}))
    assert (only.title, only.places) == ("squares", tuple(range(8)))


def test_pieces_that_nobody_knows_of_are_said_to_be_so() -> None:
    state, _ = play(QUILT, c.AcceptSets(sets_of(8, 1)))
    gone = WhereASetIs(state.sets.sets[1], (), sure=True)
    assert where_words(state, gone) == "Set 1: nobody knows where its pieces are now."


def test_how_a_set_stands_and_where_it_lies() -> None:
    state, record = play(QUILT, c.ChangeTarget(6, 8), c.AcceptSets(sets_of(8, 6)),
                         c.MarkSet(3, "held back"), c.MarkSet(4, "locked"))  # fmt: skip
    sets = state.sets.sets
    assert [standing_words(state, sets[n]) for n in (1, 2, 3, 4)] == [
        "next", "", "held back", "locked",
    ]  # fmt: skip
    said = [where_words(state, where_is(state, sets[n])) for n in (2, 3)]
    assert said == [
        "Set 2 is not begun: its 8 squares lie with the others.",
        "Set 3 is held back: its squares lie by themselves.",
    ]
    state = go_on(state, record, c.Count("pair", 2), c.PutPileAway("pair", "blue tray"))
    assert standing_words(state, state.sets.sets[1]) == "begun"
    where = where_words(state, where_is(state, state.sets.sets[1]))
    assert where == "Set 1: 2 pairs (blue tray), 4 squares."


def test_a_lost_set_is_found_by_two_fabrics() -> None:
    """Of a fresh deal the first set begins with A and B, which are its first pair."""
    state, _ = play(QUILT, c.ChangeTarget(6, 8), c.AcceptSets(sets_of(8, 6)), c.Count("pair", 1))
    first, *others = found_words(state, ("A", "B"))
    assert first.startswith("Set 1: ")
    assert first.endswith("They are in one piece there.")
    assert all("in one piece" not in other for other in others)
    assert found_words(state, ("A",) * 3) == (
        "No set has A chalk and A chalk and A chalk together. Look at one of them alone, or at "
        "what is over.",
    )

"""Fabrics by letter, by name, by a part of that; and colours beside them."""

from __future__ import annotations

import pytest

from sewalong.fabrics.contrast_words import two_by_two
from sewalong.fabrics.meant import fabric_meant, side_by_side
from sewalong.quilt.choices import Fabric
from sewalong.quilt.refusal import NumbersFault

DRAWER = (
    Fabric("A", "rust dots", "#a5532f", 4),
    Fabric("B", "rust check", "#a0522d", 4),
    Fabric("C", "brown 2·5", "#6a4f3c", 4),
    Fabric("D", "b", "#22305c", 4),
    Fabric("AA", "a gift", None, 1),
)


@pytest.mark.parametrize(
    ("text", "letter"),
    [
        ("A", "A"),
        (" a ", "A"),
        ("A rust dots", "A"),
        ("Rust  Dots", "A"),
        ("check", "B"),
        # Nobody has the middle point on a key.
        ("brown 2.5", "C"),
        ("2·5", "C"),
        # A letter comes before a name.
        ("b", "B"),
        ("D b", "D"),
        ("aa", "AA"),
        ("gift", "AA"),
    ],
)
def test_the_fabric_that_is_meant(text: str, letter: str) -> None:
    assert fabric_meant(text, DRAWER).letter == letter


@pytest.mark.parametrize(
    ("text", "says"),
    [("rust", "A rust dots or B rust check"), ("moss", "There are A rust dots"), ("", "none of")],
)
def test_what_none_or_several_are_called_is_refused(text: str, says: str) -> None:
    with pytest.raises(NumbersFault, match=says):
        fabric_meant(text, DRAWER)
    with pytest.raises(NumbersFault, match="no counted fabrics"):
        fabric_meant(text, ())


def test_of_many_fabrics_some_are_named_and_the_rest_counted() -> None:
    many = [Fabric(chr(ord("A") + n), f"print {n}", None, 1) for n in range(20)]
    with pytest.raises(NumbersFault, match="H print 7 and 12 more"):
        fabric_meant("moss", many)
    with pytest.raises(NumbersFault, match=r"H print 7\.$"):
        fabric_meant("moss", many[:8])
    # All of a name comes before a part of another.
    assert fabric_meant("print 1", many).letter == "B"


def test_colours_stand_beside_fabrics() -> None:
    found = side_by_side(["A", "#FFFFFF", "light sea green", "A"], DRAWER)
    assert [one.called for one in found] == [
        "A rust dots",
        "#ffffff",
        "#20b2aa light sea green",
        "A rust dots",
    ]
    with pytest.raises(NumbersFault, match="must be a colour"):
        side_by_side(["#12"], DRAWER)
    with pytest.raises(NumbersFault, match="none of the fabrics"):
        side_by_side(["A", "moss"], DRAWER)


def test_every_two_the_weakest_first_and_the_unknown_last() -> None:
    pairs = two_by_two(side_by_side(["AA", "#ffffff", "A", "B"], DRAWER))
    assert len(pairs) == 6
    apart = [two.met.apart for two in pairs]
    assert apart[3:] == [None] * 3
    assert [one or 0 for one in apart[:3]] == sorted(one or 0 for one in apart[:3])
    assert len(pairs[0].facts) == 3
    assert len(pairs[-1].facts) == 1
    # Source: WCAG 2.2, "contrast ratio", at its ends.
    (white,) = two_by_two(side_by_side(["#ffffff", "#000000"], ()))
    assert white.ratio == pytest.approx(21)
    assert white.difference == pytest.approx(100)

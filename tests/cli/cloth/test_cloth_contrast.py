"""What meets what by plain commands: fabrics, the method, a set."""

from __future__ import annotations

import pytest

from tests.cli.conftest import Desk

RUST_MOSS = "D rust dots and E moss sprig"


def test_fabrics_are_held_against_each_other_the_weakest_first(drawer: Desk) -> None:
    said = drawer.ok("contrast", "rust dots", "E", "A")
    assert said.lines[0] == (
        f"{RUST_MOSS}: both dark-medium, 0 apart: two prints of one scale and near value read "
        "as one."
    )
    assert said.lines[1].startswith(f"{RUST_MOSS}: colour difference ")
    assert said.lines[2].startswith(f"{RUST_MOSS}: ratio of light 1.")
    assert len(said.lines) == 9
    apart = [one["apart"] for one in drawer.ok("contrast", "D,E,A", "--json").data["pairs"]]
    assert apart == sorted(apart)


def test_colours_alone_need_no_quilt(desk: Desk) -> None:
    # Source: WCAG 2.2, black on white is 21 to 1.
    (pair,) = desk.ok("contrast", "#ffffff", "black", "--json").data["pairs"]
    assert (pair["apart"], pair["ratio"], pair["difference"]) == (100.0, 21.0, 100.0)
    assert desk.ok("contrast", "#a0522d", "light sea green").lines[0].startswith("#a0522d and ")
    assert desk.record() is None


def test_a_colour_is_looked_at_among_her_fabrics(drawer: Desk) -> None:
    (pair,) = drawer.ok("contrast", "A", "#f4f0e5", "--json").data["pairs"]
    assert pair["reads"] == "they pass for one fabric"
    assert pair["names"] == ["chalk", ""]
    # Her own navy comes before the colour of that name.
    (pair,) = drawer.ok("contrast", "navy", "chalk", "--json").data["pairs"]
    assert pair["fabrics"] == ["F", "A"]


def test_a_value_in_a_word_is_only_about_so_far_apart(begun: Desk) -> None:
    begun.ok("fabrics", "--say", "lights 30, darks 30, gift 1")
    said = begun.ok("contrast", "lights", "darks", "gift").lines
    assert said == [
        "A lights and B darks: light and dark, about 70 apart: the seam shows.",
        "A lights and C gift: not known: no colour and no value was given.",
        "B darks and C gift: not known: no colour and no value was given.",
    ]


def test_alone_it_tells_what_meets_what(begun: Desk) -> None:
    said = begun.ok("contrast")
    assert said.lines[:2] == [
        "A set: 8 squares, its places numbered as squares are taken.",
        "Units of a set: 4.",
    ]
    assert "Place 1 meets place 6 along 3 5/8 in: units 3 and 4." in said.lines
    assert "Edge of unit 1 towards row 1: place 2." in said.lines
    data = begun.ok("contrast", "--json").data
    assert list(data) == ["quilt", "places", "units", "meet", "edges", "one_way"]
    # A worked case: the twelve contacts of a stack are the edges of a cube.
    met = {tuple(one["places"]) for one in data["meet"]}
    assert met == {
        (1, 2), (2, 3), (3, 4), (1, 4), (5, 6), (6, 7), (7, 8), (5, 8),
        (1, 6), (2, 5), (3, 8), (4, 7),
    }  # fmt: skip
    assert len(data["edges"]) == 16
    assert [len(one["places"]) for one in data["edges"]] == [1] * 16


def test_squares_that_lie_half_turned_point_the_other_way(begun: Desk) -> None:
    def pointing(*words: str) -> dict[tuple[int, int], int]:
        return {
            (one["place"], one["unit"]): one["degrees"][0]
            for one in begun.ok("contrast", *words, "--json").data["one_way"]
        }

    straight, over = pointing(), pointing("--turned", "5,6,7,8")
    for (place, unit), degrees in straight.items():
        assert over[place, unit] == (degrees + (180 if place > 4 else 0)) % 360


def test_a_method_without_sets_is_told_by_its_letters(desk: Desk) -> None:
    desk.ok("start", desk.file("geese.toml", GEESE))
    said = desk.ok("contrast").lines
    assert said[0].startswith("This method has no sets")
    assert any(line.startswith("Fabric A meets fabric B along ") for line in said)
    assert "no sets" in desk.refused("contrast", "--turned", "1").err


GEESE = """\
name = "Geese"
method = "flying-geese-four"
[squares]
size = "5 1/4"
count = 8
[[more]]
pile = "small-square"
size = "2 7/8"
count = 32
[layout]
rows = 4
columns = 4
"""


def test_every_seam_of_a_set_the_weakest_first(chosen: Desk) -> None:
    letters = ["B", "E", "C", "F", "H", "A", "D", "G"]
    chosen.ok("sets", "--own", f"1: {' '.join(letters)}")
    said = chosen.ok("contrast", "--set", "1")
    assert said.lines[0].startswith("Set 1: B oat, E moss sprig, C butter")
    data = chosen.ok("contrast", "--set", "1", "--json").data
    apart = [one["apart"] for one in data["seams"]]
    assert len(apart) == 12
    assert apart == sorted(apart)
    assert said.lines[1:13] == [one["words"] for one in data["seams"]]
    # Birds lie at place 5, which shows in units 1 and 4.
    assert said.lines[13] == (
        "H birds is a one-way print: it shows in units 1 and 4, not the same way up in each."
    )


def test_doubles_and_several_one_way_prints_are_said(chosen: Desk) -> None:
    chosen.ok("fabrics", "--say", "A 12, B 12, C 12, D 12, E 12, H 12")
    said = chosen.ok("sets", "--own", "1: H, A, B, C, H, A, D, E")
    assert any(line.startswith("Weakest in set 1: ") for line in said.lines)
    told = chosen.ok("contrast", "--set", "1").lines
    assert "A chalk lies in it more than once." in told
    # Places 1 and 5 meet nowhere, but both show in unit 4, pointing away from each other.
    assert told[-1] == ("H birds: one way up in 3 of 4 units, however they are turned.")
    # So the square at place 5 laid half turned points as the other does.
    told = chosen.ok("contrast", "--set", "1", "--turned", "5").lines
    assert told[-1] == "H birds: one way up in every unit, once it is turned so."


@pytest.mark.parametrize(
    ("words", "says"),
    [
        (("A",), "two fabrics or more"),
        ((",", " "), "two fabrics or more"),
        (("A", "nothing"), "none of the fabrics"),
        (("A", "#12"), "This must be a colour"),
        (("A", "o"), "may be"),
        (("A", "B", "--set", "1"), "one at a time"),
        (("--set", "1"), "There is no set 1"),
        (("--turned", "x"), "whole numbers"),
        (("--turned", "9"), "from 1 to 8"),
        (tuple(["A", "B"] * 21), "40 fabrics at most"),
    ],
)
def test_what_cannot_be_is_refused(drawer: Desk, words: tuple[str, ...], says: str) -> None:
    assert says in drawer.refused("contrast", *words).err

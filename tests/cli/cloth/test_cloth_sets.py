"""Sets by plain commands: proposed, accepted, laid otherwise, put off, found again."""

from __future__ import annotations

import re
import sys
from collections import Counter

import pytest

from tests.cli.cloth.conftest import DRAWER
from tests.cli.conftest import Desk


def test_until_some_are_accepted_it_proposes(drawer: Desk) -> None:
    before = drawer.record()
    said = drawer.ok("sets")
    assert said.lines[0].startswith("Weakest: ")
    assert "No choice of sets passes" in said.out
    assert said.lines[-1].endswith("the same with --accept")
    assert drawer.record() == before
    data = drawer.ok("sets", "--json").data
    # 5 × 6 units want eight stacks, and 64 squares are just enough.
    assert [one["number"] for one in data["sets"]] == list(range(1, 9))
    assert Counter(letter for one in data["sets"] for letter in one["squares"]) == dict.fromkeys(
        "ABCDEFGH", 8
    )
    assert data["accepted"] is False
    assert data["weakest"] <= data["bound"]
    assert f"No choice of sets passes {data['bound']:.0f}" in " ".join(data["words"])
    assert drawer.ok("sets").out == said.out


def test_other_rules_other_seeds_and_less_fabrics(drawer: Desk) -> None:
    one = drawer.ok("sets", "--rule", "scrappy", "--json").data
    other = drawer.ok("sets", "--rule", "Scrappy", "--seed", "2", "--json").data
    assert one["rule"] == other["rule"] == "scrappy"
    assert one["sets"] != other["sets"]
    less = drawer.ok("sets", "--without", "H, plum check", "--seconds", "1", "--json").data
    assert len(less["sets"]) == 6
    assert not {"G", "H"} & {letter for one in less["sets"] for letter in one["squares"]}


def test_what_is_accepted_is_what_was_shown(drawer: Desk) -> None:
    shown = drawer.ok("sets", "--rule", "light-on-dark", "--json").data["sets"]
    said = drawer.ok("sets", "--rule", "light-on-dark", "--accept")
    assert said.lines[0] == "Accepted 8 sets, light on dark."
    now = drawer.ok("sets", "--json").data
    assert now["accepted"] is True
    assert [(one["number"], one["squares"]) for one in now["sets"]] == [
        (one["number"], one["squares"]) for one in shown
    ]
    assert now["next"] == list(range(1, 9))
    drawer.ok("undo")
    assert drawer.ok("sets", "--json").data["accepted"] is False
    again = drawer.ok("sets", "--rule", "light on dark", "--accept", "--json").data
    assert (again["accepted"], again["sets"]) == (True, shown)


def test_accepted_sets_are_listed_with_how_they_stand(chosen: Desk) -> None:
    chosen.ok("sets", "--lock", "3")
    chosen.ok("sets", "--hold-back", "4")
    chosen.ok("count", "pair", "1")
    lines = chosen.ok("sets").lines
    assert lines[0] == "8 sets accepted."
    assert [re.sub(r": .*", "", line) for line in lines[1:5]] == [
        "Set 1, begun",
        "Set 2, next",
        "Set 3, locked",
        "Set 4, held back",
    ]
    assert [one["state"] for one in chosen.ok("sets", "--json").data["sets"]][:4] == [
        "begun", "next", "not begun", "held back",
    ]  # fmt: skip
    assert lines[5].startswith("Set 5, not begun: ")
    assert all(re.fullmatch(r"Set \d[^:]*: (?:[A-H] [a-z ]+, ){7}[A-H] [a-z ]+\.", one) for one in lines[1:])  # fmt: skip
    first = chosen.ok("sets", "--json").data["sets"][0]
    assert list(first) == ["number", "squares", "state", "locked", "piles", "sure"]
    assert (first["state"], first["piles"]) == ("begun", {"square": 6, "pair": 1})


def test_the_set_in_hand_is_told_by_letter_and_name(chosen: Desk) -> None:
    chosen.ok("sets", "--own", "1: rust dots, 1 x A, E B F C, G H")
    said = chosen.ok("sets", "--next")
    assert said.lines[0] == "Set 1 of 8, 1 of 4: A chalk on D rust dots."
    assert said.lines[1:3] == ["Place 1: D rust dots", "Place 2: A chalk"]
    # A worked case: the first unit of a stack shows places 2, 3, 5 and 8.
    assert said.lines[9] == "Unit 1 shows A chalk, E moss sprig, F navy, H birds."
    assert [line[:12] for line in said.lines[9:13]] == [f"Unit {n} shows" for n in range(1, 5)]
    assert said.lines[13].startswith("Weakest: ")
    data = chosen.ok("sets", "--next", "--json").data
    assert (data["stage"], data["set"], data["count"], data["counts"]) == ("pair", 1, 1, 4)
    assert data["pieces"] == [["D"], ["A"]]
    chosen.ok("count", "pair", "4")
    assert chosen.ok("sets", "--next", "--json").data["set"] == 2
    at_sew = chosen.ok("sets", "--next", "--at", "sew", "--json").data
    assert (at_sew["set"], at_sew["pieces"]) == (1, [["D", "A"], ["E", "B"]])
    assert "No set is known" in chosen.ok("sets", "--next", "--at", "press").out


def test_before_any_is_accepted_none_is_in_hand(drawer: Desk) -> None:
    assert drawer.ok("sets", "--next").lines == ["No sets are accepted yet."]


def test_squares_are_swapped_and_back(chosen: Desk) -> None:
    def squares() -> dict[int, list[str]]:
        listed = chosen.ok("sets", "--json").data["sets"]
        return {one["number"]: one["squares"] for one in listed}

    before = squares()
    first, other = before[1][0], next(a for a in before[2] if a != before[1][0])
    place = before[2].index(other) + 1
    said = chosen.ok("sets", "--swap", f"1:1 2:{place}")
    assert "Swapped squares in sets 1 and 2." in said.lines
    seams = [
        chosen.ok("contrast", "--set", number, "--json").data["seams"] for number in ("1", "2")
    ]
    assert [line for line in said.lines if line.startswith("Weakest")] == [
        f"Weakest in set {number}: {met[0]['words']}" for number, met in enumerate(seams, start=1)
    ]
    after = squares()
    assert (after[1][0], after[2][place - 1]) == (other, first)
    chosen.ok("undo")
    assert squares() == before


def test_a_set_is_put_off_held_back_let_in_locked_and_unlocked(chosen: Desk) -> None:
    assert "Set 1 comes last now." in chosen.ok("sets", "--skip", "1").lines
    assert chosen.ok("sets", "--json").data["next"] == [2, 3, 4, 5, 6, 7, 8, 1]
    chosen.ok("sets", "--hold-back", "2")
    assert chosen.ok("sets", "--json").data["next"][0] == 3
    chosen.ok("sets", "--let-in", "2")
    assert chosen.ok("sets", "--json").data["next"][-1] == 2
    chosen.ok("sets", "--lock", "5")
    assert chosen.ok("sets", "--json").data["sets"][4]["locked"] is True
    chosen.ok("sets", "--unlock", "5")
    assert chosen.ok("sets", "--json").data["sets"][4]["locked"] is False


def test_a_lost_order_is_found_again_and_taken_up(chosen: Desk) -> None:
    chosen.ok("sets", "--own", "1: D A E B F C G H")
    chosen.ok("count", "pair", "6")
    chosen.ok("put-away", "pair", "blue", "tray")
    said = chosen.ok("sets", "--with", "rust dots, A")
    assert said.lines[:3] == [
        "Set 1 has D rust dots and A chalk.",
        "Set 1: 4 pairs (blue tray).",
        "They are in one piece there.",
    ]
    found = chosen.ok("sets", "--with", "A,D", "--json").data["sets"]
    assert (found[0]["number"], found[0]["together"]) == (1, True)
    chosen.ok("sets", "--take-up", "2", "--at", "sew")
    # Two of its four pairs are laid, which is one four-patch.
    assert chosen.ok("sets", "--next", "--at", "sew", "--json").data["set"] == 2
    assert chosen.ok("sets", "--with", "A,A,A,A,A,A,A,A").lines[0].startswith("No set has ")


def test_the_rest_is_chosen_anew_and_what_stands_stays(chosen: Desk) -> None:
    chosen.ok("count", "pair", "1")
    chosen.ok("sets", "--lock", "4")
    before = {one["number"]: one["squares"] for one in chosen.ok("sets", "--json").data["sets"]}
    shown = chosen.ok("sets", "--anew", "--rule", "scrappy", "--seed", "5", "--json").data
    assert [one["number"] for one in shown["sets"]] == [2, 3, 5, 6, 7, 8]
    chosen.ok("sets", "--anew", "--rule", "scrappy", "--seed", "5", "--accept")
    after = {one["number"]: one["squares"] for one in chosen.ok("sets", "--json").data["sets"]}
    assert (after[1], after[4]) == (before[1], before[4])
    assert [after[one["number"]] for one in shown["sets"]] == [
        one["squares"] for one in shown["sets"]
    ]


def test_what_is_spoiled_is_said_to_be_unknown_and_the_rest_stays_true(chosen: Desk) -> None:
    chosen.ok("sets", "--own", "1: D A E B F C G H")
    chosen.ok("count", "pair", "4")
    chosen.ok("spoil", "pair", "1", "--reason", "torn", "--set", "1", "--fabric", "rust dots")
    (first, *_) = chosen.ok("sets", "--json").data["sets"]
    assert first["squares"] == [None, None, *"EBFCGH"]
    assert (
        chosen.ok("sets")
        .lines[1]
        .startswith("Set 1, begun, locked: one not known, one not known, E moss")
    )
    assert "one not known" in chosen.ok("contrast", "--set", "1").lines[0]
    # Each square of a stack meets three others, and these two each other: five of twelve are gone.
    assert len(chosen.ok("contrast", "--set", "1", "--json").data["seams"]) == 7
    picture = chosen.folder / "set.svg"
    chosen.ok("sets", "--picture", str(picture), "--of", "1")
    assert "not known" in picture.read_text("utf-8")
    said = chosen.refused("spoil", "square", "1", "--reason", "x", "--fabric", "moon")
    assert "none of the fabrics" in said.err


def test_the_top_and_the_units_of_a_set_are_written_as_pictures(drawer: Desk) -> None:
    proposed, top, units = (drawer.folder / name for name in ("p.svg", "top.svg", "set.PNG"))
    one = drawer.folder / "one.svg"
    drawer.ok("sets", "--picture", str(one), "--of", "1")
    first = drawer.ok("sets", "--json").data["sets"][0]["squares"]
    for fabric in drawer.ok("fabrics", "--json").data["fabrics"]:
        called = f"{fabric['letter']} {fabric['name']}"
        assert (called in one.read_text("utf-8")) == (fabric["letter"] in first)
    drawer.ok("sets", "--picture", str(proposed))
    drawer.ok("sets", "--accept")
    assert drawer.ok("sets", "--picture", str(top), "--json").data["picture"] == str(top)
    # What was proposed is what was accepted, so the two are one picture.
    assert proposed.read_text("utf-8") == top.read_text("utf-8")
    assert "D rust dots" in top.read_text("utf-8")
    drawer.ok("sets", "--picture", str(units), "--of", "1")
    assert units.read_bytes().startswith(b"\x89PNG")
    before = top.read_bytes()
    drawer.ok("count", "pair", "1")
    drawer.ok("sets", "--anew", "--rule", "scrappy", "--picture", str(top), "--replace")
    assert top.read_bytes() != before


@pytest.mark.parametrize(
    ("words", "says"),
    [
        (("--picture", "top.gif"), ".svg, or .png"),
        (("--picture", "there.svg"), "is there already"),
        (("--picture", "new.svg", "--of", "99"), "There is no set 99"),
        (("--picture", "new.svg", "--next"), "One thing at a time"),
        (("--picture", "new.svg", "--accept"), "One thing at a time"),
        (("--of", "1"), "go with --picture"),
        (("--replace",), "go with --picture"),
        (("--picture", "no/folder/new.svg"), "cannot be written"),
        (("--picture", "home/new.svg"), "in the folder of your record"),
    ],
)
def test_pictures_that_cannot_be_written(chosen: Desk, words: tuple[str, ...], says: str) -> None:
    chosen.monkeypatch.chdir(chosen.folder)
    (chosen.folder / "there.svg").write_text("hers", "utf-8")
    assert says in chosen.refused("sets", *words).err
    assert (chosen.folder / "there.svg").read_text("utf-8") == "hers"
    assert not (chosen.folder / "new.svg").exists()


def test_without_the_extra_a_picture_is_still_written_as_svg(
    chosen: Desk, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setitem(sys.modules, "PIL", None)
    path = chosen.folder / "top.png"
    assert "sewalong[photo]" in chosen.refused("sets", "--picture", str(path)).err
    chosen.ok("sets", "--picture", str(path.with_suffix(".svg")))


def test_colour_piles_are_enough_for_sets(begun: Desk) -> None:
    begun.ok("fabrics", "--say", "lights 32, darks 32")
    said = begun.ok("sets", "--json").data
    # Four lights and four darks in each: every seam has a light and a dark.
    assert [Counter(one["squares"]) for one in said["sets"]] == [Counter("AAAABBBB")] * 8
    assert said["weakest"] == said["bound"]


@pytest.mark.parametrize(
    ("words", "says"),
    [
        (("--rule", "by moon"), "--rule takes one of: by value"),
        (("--rule", "one background"), "--background"),
        (("--background", "A"), "go together"),
        (("--rule", "one background", "--background", "moon"), "not a background"),
        (("--seconds", "0"), "--seconds takes"),
        (("--seconds", "601"), "--seconds takes"),
        (("--without", "Q"), "none of the fabrics"),
        (("--without", "A,B,C,D,E,F,G,H"), "squares"),
        (("--next", "--accept"), "One thing at a time"),
        (("--skip", "1", "--lock", "2"), "One thing at a time"),
        (("--next", "--anew"), "One thing at a time"),
        (("--at", "pair"), "--at goes with"),
        (("--skip", "1", "--at", "pair"), "--at goes with"),
        (("--skip", "1"), "No sets are accepted yet"),
        (("--swap", "1:1"), "--swap takes two squares"),
        (("--swap", "1:1 2:1"), "There is no set 1"),
        (("--own", "A B C"), "--own takes the set"),
        (("--own", "1: A B"), "There is no set 1"),
        (("--with", ""), "Write the fabrics"),
        (("--own", "1:"), "Write the fabrics"),
        (("--next", "--at", "moon"), "no stage"),
    ],
)
def test_what_cannot_be_is_refused(drawer: Desk, words: tuple[str, ...], says: str) -> None:
    assert says in drawer.refused("sets", *words).err


@pytest.mark.parametrize(
    ("words", "says"),
    [
        (("--rule", "scrappy"), "--anew"),
        (("--accept",), "--anew"),
        (("--own", "1: A B"), "8 squares"),
        (("--own", "1: A B C D E F G Z"), "none of the fabrics"),
        (("--own", "1: A A A A A A A A"), "wanted than there"),
        (("--swap", "1:9 2:1"), "Places in a set go from 1 to 8"),
        (("--take-up", "99"), "There is no set 99"),
        (("--take-up", "1", "--at", "press"), "waits at press"),
        (("--let-in", "1"), "not held back"),
        (("--unlock", "1"), "unlocked already"),
    ],
)
def test_what_accepted_sets_cannot_do(chosen: Desk, words: tuple[str, ...], says: str) -> None:
    assert says in chosen.refused("sets", *words).err


def test_without_fabrics_or_without_sets_it_says_what_to_do(desk: Desk) -> None:
    desk.ok("start", desk.file("gate-post.toml"))
    assert "sewalong fabrics --say" in desk.refused("sets").err
    text = 'name = "Rails"\nmethod = "plain-squares"\n[squares]\nsize = "5"\ncount = 40\n' \
        "[layout]\nrows = 4\ncolumns = 4\n"  # fmt: skip
    desk.ok("start", desk.file("rails.toml", text))
    desk.ok("fabrics", "--say", DRAWER)
    assert "no sets" in desk.refused("sets").err

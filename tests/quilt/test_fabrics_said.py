"""Fabrics said in a few words, in whatever order they come to mind."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import asdict, replace

from sewalong.quilt.choices import FABRIC_KINDS, VALUES, Fabric
from sewalong.quilt.fabrics_said import fabrics_said, next_letter
from sewalong.quilt.file.reader import read_quilt
from sewalong.quilt.json_codec import quilt_from_dict, quilt_to_dict
from sewalong.quilt.refusal import NumbersFault
from tests.cli.conftest import QUILT_FILE


def said(text: str, there: tuple[Fabric, ...] = ()) -> list[dict[str, object]]:
    """What each fabric has, without what was not said."""
    return [
        {key: part for key, part in asdict(one).items() if part is not None}
        for one in fabrics_said(text, there)
    ]


def test_three_colour_piles() -> None:
    assert said("lights 60, mediums 70, darks 38") == [
        {"letter": "A", "name": "lights", "squares": 60, "kind": "assorted", "value": "light"},
        {"letter": "B", "name": "mediums", "squares": 70, "kind": "assorted", "value": "medium"},
        {"letter": "C", "name": "darks", "squares": 38, "kind": "assorted", "value": "dark"},
    ]


RUST = {
    "letter": "A",
    "name": "rust dots",
    "squares": 4,
    "colour": "#a0522d",
    "kind": "small print",
}


@pytest.mark.parametrize(
    "text",
    [
        "rust dots 4 #a0522d small print",
        "rust dots 4 small print #A0522D",
        "rust dots small print #a0522d 4",
        "4 rust dots #a0522d small print",
        "rust dots: 4 squares #a0522d, ",
        "A rust dots 4 sienna small-print",
        "rust dots = 4x sienna small print",
    ],
)
def test_one_fabric_in_any_order(text: str) -> None:
    wanted = RUST if "print" in text else {k: v for k, v in RUST.items() if k != "kind"}
    assert said(text) == [wanted]


@pytest.mark.parametrize(
    ("name", "value"),
    [
        ("lights", "light"),
        ("light", "light"),
        ("scrap bag darks", "dark"),
        ("light mediums", "light-medium"),
        ("medium lights", "light-medium"),
        ("Light-Mediums", "light-medium"),
        ("dark mediums", "dark-medium"),
        ("medium darks", "dark-medium"),
        ("medium", "medium"),
    ],
)
def test_a_name_that_says_a_value_is_a_pile_of_it(name: str, value: str) -> None:
    (pile,) = said(f"{name} 20")
    assert (pile["name"], pile["kind"], pile["value"]) == (name, "assorted", value)


@pytest.mark.parametrize("name", ["dark check", "highlights", "lighthouse", "medium dot"])
def test_a_name_that_only_has_such_a_word_in_it_is_one_fabric(name: str) -> None:
    assert said(f"{name} 4") == [{"letter": "A", "name": name, "squares": 4}]


def test_a_colour_in_css_words_may_be_several_words() -> None:
    # Source of the colours: CSS Color Module Level 4, named colors.
    assert said("waves 4 light sea green")[0]["colour"] == "#20b2aa"
    assert said("sky 4 light blue one way") == [
        {"letter": "A", "name": "sky", "squares": 4, "colour": "#add8e6", "kind": "one-way"}
    ]
    assert said("navy 12")[0]["colour"] == "#000080"
    assert said("12 navy")[0]["name"] == "navy"


def test_a_name_that_is_a_colour_gives_way_to_one_that_is_said() -> None:
    navy = fabrics_said("navy 4 #22305c")
    assert navy[0].colour == "#22305c"
    assert fabrics_said("navy 6", navy) == (Fabric("A", "navy", "#22305c", 6),)
    assert said("navy 4 dark") == [{"letter": "A", "name": "navy", "squares": 4, "value": "dark"}]
    assert said("navy 4 30% white")[0]["colour"] == "#000080"
    assert fabrics_said("navy 4 30% white", navy)[0] == Fabric(
        "A", "navy", "#22305c", 4, second="#ffffff", share=30
    )


def test_a_second_colour_has_its_share() -> None:
    wanted = {"colour": "#1f2a55", "second": "#ffffff", "share": 30}
    for text in ("stars 4 #1f2a55 with 30 % white", "stars 4 30% white #1f2a55"):
        assert wanted.items() <= said(text)[0].items()


@pytest.mark.parametrize("kind", FABRIC_KINDS)
@pytest.mark.parametrize("value", VALUES)
def test_every_kind_and_value_can_be_said(kind: str, value: str) -> None:
    (found,) = said(f"plum 7 {value} {kind}".replace("plum", "moss"))
    assert (found["kind"], found["value"]) == (kind, value)


THERE = (
    Fabric("A", "indigo print"),
    Fabric("B", "rust dots", "#a0522d", 4, "small print"),
    Fabric("C", "lights", None, 60, "assorted", value="light"),
)


def test_one_of_the_same_name_is_changed_and_the_others_stay() -> None:
    now = fabrics_said("Rust dots 6, moss 3", THERE)
    assert now[0] == THERE[0]
    assert now[1] == Fabric("B", "Rust dots", "#a0522d", 6, "small print")
    assert now[3] == Fabric("D", "moss", None, 3)


def test_a_letter_says_which_and_no_squares_take_it_out() -> None:
    assert fabrics_said("C 40", THERE)[2] == Fabric(
        "C", "lights", None, 40, "assorted", value="light"
    )
    assert fabrics_said("C 0", THERE) == THERE[:2]
    assert fabrics_said("B sienna dots 4", THERE)[1].name == "sienna dots"
    assert fabrics_said("C lights 60 #f0e8d8", THERE)[2].value is None
    assert fabrics_said("Q moss 3", THERE)[3].letter == "Q"


def test_noughts_in_front_of_a_number_say_nothing() -> None:
    assert said("moss 0000000000004")[0]["squares"] == 4


def test_two_capitals_in_front_may_be_a_name() -> None:
    assert said("UK print 4") == [{"letter": "A", "name": "UK print", "squares": 4}]


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("", "Say a fabric by its name"),
        (" ,; ", "Say a fabric by its name"),
        ("lights", "no number"),
        ("lights 60 darks 38", "more than one number"),
        ("lights and darks 60", "dark and light"),
        ("lights 60 dark", "two values"),
        ("dots 4 blue red", "colour twice"),
        ("dots 4 solid solid", "kind twice"),
        ("dots 4 blue dark", "a colour and a value"),
        ("dots 4 30% white", "second colour and not the first"),
        ("dots 4 140% white tan", "more than 99"),
        ("dots 4 furry", "furry"),
        ("dots 4 #a05", "no colour"),
        ("dots 10000", "9,999"),
        ("dots " + "9" * 5000, "9,999"),
        ("dots 0", "no squares"),
        ("4", "no name"),
        ("Q 4", "no name"),
        ("\x1b[2J 4", "control character"),
        ("x" * 81 + " 4", "81 characters"),
        ("dots 4, dots 6", "twice"),
        ("A 4", "indigo print"),
        ("B dots 4 dark", "has a colour"),
        ("x" * 20_001, "20,000"),
    ],
)
def test_what_is_not_clear_is_refused_in_a_sentence(text: str, says: str) -> None:
    with pytest.raises(NumbersFault, match=r"[.]$") as refused:
        fabrics_said(text, THERE)
    assert says in str(refused.value)


def test_a_name_that_several_have_wants_the_letter() -> None:
    twins = (*THERE, Fabric("D", "rust dots", None, 3))
    with pytest.raises(NumbersFault, match="B or D"):
        fabrics_said("rust dots 4", twins)
    assert fabrics_said("D rust dots 4", twins)[3].squares == 4


def test_letters_go_on_behind_z_and_end() -> None:
    assert next_letter(["A", "Z"]) == "AA"
    assert next_letter([]) == "A"
    assert next_letter(["ZY"]) == "ZZ"
    with pytest.raises(NumbersFault, match="ZZ"):
        next_letter(["ZZ"])


WORDS = st.one_of(
    st.sampled_from(
        ["lights", "darks", "rust dots", "4", "60", "0", "#a0522d", "navy", "light", "medium", "sea",
         "small print", "one-way", "30%", "30", "%", "with", "of", "x", ",", ";", "\n", "A", "BB", ":"]
    ),
    st.text(max_size=8),
)  # fmt: skip


@given(st.lists(WORDS, max_size=10).map(" ".join))
def test_whatever_is_said_is_a_plan_that_can_be_kept_or_a_sentence(text: str) -> None:
    try:
        fabrics = fabrics_said(text)
    except NumbersFault as fault:
        refused = fault.sentence
    else:
        refused = "."
        kept = replace(read_quilt(QUILT_FILE), fabrics=fabrics)
        assert quilt_from_dict(quilt_to_dict(kept)) == kept
        again = ", ".join(f"{one.letter} {one.squares}" for one in fabrics)
        assert fabrics_said(again, fabrics) == fabrics
    assert refused.endswith(".")

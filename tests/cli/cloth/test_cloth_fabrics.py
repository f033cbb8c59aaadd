"""Her fabrics by plain commands: said, told, changed, taken out, taken back."""

from __future__ import annotations

import pytest

from tests.cli.conftest import Desk


def test_without_fabrics_it_says_how_and_that_none_need_be(begun: Desk) -> None:
    said = begun.ok("fabrics")
    assert said.lines[0].startswith("No fabrics are said yet, and none need be")
    assert "sewalong fabrics --say" in said.out
    assert begun.ok("fabrics", "--json").data["fabrics"] == []


def test_three_colour_piles_are_told_and_nothing_more_is_pretended(begun: Desk) -> None:
    said = begun.ok("fabrics", "--say", "lights 30, mediums 20, darks 14")
    assert said.lines[:3] == [
        "Plan changed: fabric A added: lights, 30 squares.",
        "Plan changed: fabric B added: mediums, 20 squares.",
        "Plan changed: fabric C added: darks, 14 squares.",
    ]
    data = begun.ok("fabrics", "--json").data
    assert data["piles"] == ["A", "B", "C"]
    assert data["squares"] == 64
    assert data["fabrics"][0] == {
        "letter": "A", "name": "lights", "squares": 30, "value": "light", "lightness": None,
        "colour": None, "from_afar": None, "second": None, "share": None, "family": None,
        "kind": "assorted",
    }  # fmt: skip


def test_every_fabric_has_a_line_of_all_that_is_known(begun: Desk) -> None:
    begun.ok("fabrics", "--say", "stars 4 #22305c with 30% white small print", "--say", "gift 1")
    said = begun.ok("fabrics")
    # 30 parts of white in a hundred on this navy, mixed as light mixes, are #9799a5 and
    # L* 63.6: a worked case.
    (stars,) = [line for line in said.lines if line.startswith("A stars: ")]
    for part in ("4 squares", "small print", "#9799a5", "value 63 of 100"):
        assert part in stars
    (gift,) = [line for line in said.lines if line.startswith("B gift: ")]
    assert "1 square" in gift
    assert "value not known" in gift
    first, second = begun.ok("fabrics", "--json").data["fabrics"]
    assert (first["colour"], first["second"], first["share"]) == ("#22305c", "#ffffff", 30)
    assert first["from_afar"] == "#9799a5"
    assert first["lightness"] == pytest.approx(63.6, abs=0.3)
    assert (second["value"], second["lightness"]) == (None, None)


def test_a_fabric_is_changed_taken_out_and_had_back_by_undo(drawer: Desk) -> None:
    drawer.ok("fabrics", "--say", "A 6")
    drawer.ok("fabrics", "--say", "navy 4, plum check 0")
    by_letter = {one["letter"]: one for one in drawer.ok("fabrics", "--json").data["fabrics"]}
    assert by_letter["A"]["squares"] == 6
    assert by_letter["F"]["squares"] == 4
    assert by_letter["F"]["colour"] == "#22305c"
    assert "G" not in by_letter
    drawer.ok("undo")
    by_letter = {one["letter"]: one for one in drawer.ok("fabrics", "--json").data["fabrics"]}
    assert by_letter["F"]["squares"] == 8
    assert by_letter["G"]["name"] == "plum check"


def test_what_it_says_in_lines_it_says_as_data(drawer: Desk) -> None:
    said, data = drawer.ok("fabrics"), drawer.ok("fabrics", "--json").data
    assert list(data) == ["quilt", "fabrics", "piles", "squares", "facts"]
    assert data["piles"] == [], "prints are no piles"
    assert said.lines[: len(data["facts"])] == data["facts"]
    assert len(said.lines) == len(data["facts"]) + len(data["fabrics"])


def test_fabrics_stand_in_the_quilt_file(begun: Desk) -> None:
    begun.ok("fabrics", "--say", "rust dots 4 #a0522d small print")
    file = begun.ok("quilt-file").out
    for line in ('name = "rust dots"', "squares = 4", 'colour = "#a0522d"', 'kind = "small print"'):
        assert line in file


@pytest.mark.parametrize(
    ("words", "says"),
    [
        (("--say", "lights"), "no number of squares"),
        (("--say", "lights 60 darks 4"), "more than one number"),
        (("--say", ""), "Say a fabric by its name"),
        (("--say", "lights 4", "--photo", "x.png"), "one at a time"),
        (("--grid", "6x7"), "--grid goes with --photo"),
        (("--keep",), "--keep goes with --photo"),
        (("--merge", "A,F"), "--merge goes with --photo"),
        (("--say", "A 8"), "The plan is so already"),
        (("--say", "Q 0"), "no squares"),
    ],
)
def test_what_cannot_be_is_refused(drawer: Desk, words: tuple[str, ...], says: str) -> None:
    assert says in drawer.refused("fabrics", *words).err


def test_a_quilt_laid_aside_keeps_its_fabrics_as_they_are(drawer: Desk) -> None:
    drawer.ok("lay-aside")
    assert "aside" in drawer.refused("fabrics", "--say", "moss 4").err
    assert "A chalk" in drawer.ok("fabrics").out

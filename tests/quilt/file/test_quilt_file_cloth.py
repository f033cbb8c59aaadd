"""Fabrics with names and colours, and what the owner chooses about cloth: the tables that may
be left out."""

from __future__ import annotations

from fractions import Fraction as F

import pytest
from msgspec.structs import replace

from sewalong.quilt.choices import Choices, Fabric
from sewalong.quilt.file.faults import QuiltFileFaults
from sewalong.quilt.file.reader import read_quilt
from sewalong.quilt.file.writer import quilt_file
from sewalong.quilt.json_codec import quilt_from_dict, quilt_to_dict
from sewalong.quilt.plan_words import differences
from sewalong.quilt.quilt import Border
from sewalong.quilt.worksheet.worksheet import worksheet

LEAST = """\
name = "Low tide"
method = "half-square-two"
squares = {size = 5, count = 20}
layout = {rows = 4, columns = 5}
"""

WHOLE = (
    LEAST
    + """
[[border]]
cut = 3
cloth = "sand"
colour = "#F3EAD8"

[[fabric]]
letter = "B"
name = "[/] gravel"

[[fabric]]
letter = "A"
name = "indigo print"
colour = "#243b6b"

[cloth]
usable = "106 cm"
margin = "0"
binding = "2 1/4"
binding_ends = 0
joins = "straight"
corners = "ends first"
spool_metres = 500
bobbin_metres = 50
own_seam = "17/64"
"""
)


def test_nothing_written_is_the_usual() -> None:
    quilt = read_quilt(LEAST)
    assert quilt.fabrics == ()
    assert quilt.choices == Choices()
    assert (quilt.choices.usable, quilt.choices.margin) == (F(40), F(4))
    assert (quilt.choices.spool_metres, quilt.choices.own_seam) == (None, None)


def test_everything_written_is_in_the_quilt() -> None:
    quilt = read_quilt(WHOLE)
    assert quilt.borders == (Border(F(3), "sand", "#f3ead8"),)
    assert quilt.fabrics == (
        Fabric("A", "indigo print", "#243b6b"),
        Fabric("B", "[/] gravel"),
    )
    assert quilt.choices == Choices(
        usable=F(10600, 254),
        margin=F(0),
        binding=F(9, 4),
        binding_ends=F(0),
        joins="straight",
        corners="ends first",
        spool_metres=500,
        bobbin_metres=50,
        own_seam=F(17, 64),
    )
    assert quilt_from_dict(quilt_to_dict(quilt)) == quilt


@pytest.mark.parametrize("nothing", ["0", '"0"', "0.0", '" 0 in "', '"0 cm"'])
def test_a_margin_may_be_nothing(nothing: str) -> None:
    assert read_quilt(f"{LEAST}[cloth]\nmargin = {nothing}\n").choices.margin == 0


@pytest.mark.parametrize(
    ("old", "new", "key", "part"),
    [
        ('colour = "#F3EAD8"', 'colour = "rust"', "border[1].colour", 'such as "#243b6b"'),
        ('colour = "#243b6b"', 'colour = "#243b6"', "fabric[2].colour", 'such as "#243b6b"'),
        ('letter = "B"', 'letter = "b"', "fabric[1].letter", "one capital letter"),
        ('letter = "B"', 'letter = "A"', "fabric[2].letter", "stands here more than once"),
        ('letter = "B"\n', "", "fabric[1].letter", "The letter of this fabric is missing"),
        ('name = "indigo print"\n', "", "fabric[2].name", "The name of this fabric is missing"),
        ('joins = "straight"', 'joins = "curved"', "cloth.joins", '"diagonal", "straight"'),
        ('corners = "ends first"', "corners = 1", "cloth.corners", '"sides first", "ends first"'),
        ('usable = "106 cm"', "usable = 0", "cloth.usable", "zero"),
        ('margin = "0"', 'margin = "-1"', "cloth.margin", "less than zero"),
        ('margin = "0"', "margin = true", "cloth.margin", "must be a length"),
        ("spool_metres = 500", 'spool_metres = "500"', "cloth.spool_metres", "whole number"),
        ("bobbin_metres = 50", "bobbin_metres = 99999", "cloth.bobbin_metres", "20,000"),
        (
            "bobbin_metres = 50",
            "bobbins = 50",
            "cloth.bobbins",
            'nearest known key is "bobbin_metres"',
        ),
        ("[cloth]", "[[cloth]]", "cloth", "the heading [cloth]"),
        ("[[fabric]]\nletter", "[fabric]\nletter", "fabric", "double brackets"),
    ],
)
def test_what_is_wrong_is_said_with_its_key(old: str, new: str, key: str, part: str) -> None:
    text = WHOLE.replace(old, new, 1)
    if new.startswith("[fabric]"):
        text = text[: text.index("[[fabric]]")] + text[text.index("[cloth]") :]
    assert text != WHOLE
    with pytest.raises(QuiltFileFaults) as caught:
        read_quilt(text)
    assert [fault.key for fault in caught.value.faults] == [key]
    assert part in caught.value.faults[0].sentence


def test_faults_of_the_new_tables_come_with_all_the_others() -> None:
    text = WHOLE.replace('"#243b6b"', '"bluish"').replace("cut = 3\n", "").replace('"ends', '"side')
    with pytest.raises(QuiltFileFaults) as caught:
        read_quilt(text)
    keys = [fault.key for fault in caught.value.faults]
    assert keys == ["border[1].cut", "fabric[2].colour", "cloth.corners"]


HERS = """
[[fabric]]
letter = "AB"
name = "rust dots"
squares = 16
kind = "small print"
colour = "Sienna"
second = "#F3EAD8"
share = 30

[[fabric]]
letter = "M"
name = "some medium"
squares = 3
value = "medium"
"""


def test_fabrics_she_has_squares_of_have_letters_of_their_own() -> None:
    quilt = read_quilt(WHOLE + HERS)
    assert [fabric.letter for fabric in quilt.fabrics] == ["A", "B", "M", "AB"]
    assert [fabric.letter for fabric in quilt.named_fabrics] == ["A", "B"]
    medium, dots = quilt.counted_fabrics
    assert medium == Fabric("M", "some medium", squares=3, value="medium")
    # Sienna as CSS Color Module Level 4 has it.
    assert dots == Fabric("AB", "rust dots", "#a0522d", 16, "small print", "#f3ead8", 30)
    assert quilt_from_dict(quilt_to_dict(quilt)) == quilt
    assert read_quilt(quilt_file(quilt), kept=quilt.method_key) == quilt
    gone = replace(quilt, fabrics=quilt.named_fabrics)
    assert differences(quilt, gone) == (
        "fabric M taken out: some medium, 3 squares",
        "fabric AB taken out: rust dots, 16 squares",
    )
    assert differences(gone, quilt) == (
        "fabric M added: some medium, 3 squares",
        "fabric AB added: rust dots, 16 squares",
    )
    changed = replace(dots, squares=15, second=None, share=None)
    assert differences(quilt, replace(quilt, fabrics=(*quilt.fabrics[:-1], changed))) == (
        "squares of fabric AB: 16 → 15",
        "second colour of fabric AB: #f3ead8 → none",
        "share of the second colour of fabric AB: 30 → none",
    )


def test_what_she_has_squares_of_names_no_letter_of_the_method() -> None:
    before, now = (worksheet(read_quilt(text)) for text in (LEAST, LEAST + HERS))
    assert before == now


@pytest.mark.parametrize(
    ("old", "new", "key", "part"),
    [
        ("share = 30\n", "", "share", "How much of this fabric is of the second colour"),
        ('second = "#F3EAD8"\n', "", "second", "The second colour is missing"),
        ('colour = "Sienna"\n', "", "colour", "The colour of the ground is missing"),
        ("share = 30", "share = 100", "share", "from 1 to 99"),
        ("squares = 16", "squares = 0", "squares", "at least 1"),
        ('kind = "small print"', 'kind = "stripe"', "kind", '"one-way"'),
        ('colour = "Sienna"', 'colour = "transparent"', "colour", "a name that CSS has"),
        ('letter = "AB"', 'letter = "ABC"', "letter", "or two behind"),
    ],
)
def test_what_is_wrong_with_such_a_fabric_is_said(old: str, new: str, key: str, part: str) -> None:
    with pytest.raises(QuiltFileFaults) as caught:
        read_quilt(WHOLE + HERS.replace(old, new, 1))
    assert [fault.key for fault in caught.value.faults] == [f"fabric[3].{key}"]
    assert part in caught.value.faults[0].sentence


def test_a_value_beside_a_colour_is_refused() -> None:
    with pytest.raises(QuiltFileFaults, match="Its colour says how light this fabric is"):
        read_quilt(WHOLE + HERS.replace('value = "medium"', 'value = "dark"\ncolour = "navy"'))


def test_a_quilt_kept_before_these_were_known_reads_on() -> None:
    before = {
        "name": "Low tide",
        "method": "plain-squares",
        "unit": "inch",
        "seam": "1/4",
        "starts": [{"pile": "square", "size": "5", "count": 9, "packs": None, "length": None}],
        "target": {"rows": 3, "columns": 3},
        "borders": [{"cut": "3", "cloth": "sand"}],
        "finishing": [],
        "notes": "",
    }
    quilt = quilt_from_dict(before)
    assert (quilt.choices, quilt.fabrics, quilt.borders[0].colour) == (Choices(), (), None)
    assert quilt_to_dict(quilt) == before


@pytest.mark.parametrize(
    ("change", "sentence"),
    [
        ({"choices": {"usable": "0"}}, "choices.usable: This must be a fraction"),
        ({"choices": {"width": "40"}}, "choices: the key 'width' is not known."),
        ({"choices": []}, "choices: this must be a table"),
        ({"fabrics": {}}, "fabrics: This must be a list."),
        ({"fabrics": [{"letter": "A"}]}, r"fabrics\[1\].name: this is missing."),
        (
            {"fabrics": [{"letter": "B", "name": "x"}, {"letter": "A", "name": "y"}]},
            "fabrics: the letters must each be there once, in order.",
        ),
        (
            {"fabrics": [{"letter": "A", "name": "x", "colour": "#ABCDEF"}]},
            r"fabrics\[1\].colour: This must be in small letters",
        ),
    ],
)
def test_what_no_program_of_this_kind_wrote_is_refused(
    change: dict[str, object], sentence: str
) -> None:
    plain = quilt_to_dict(replace(read_quilt(LEAST), notes=""))
    with pytest.raises(ValueError, match=sentence):
        quilt_from_dict({**plain, **change})

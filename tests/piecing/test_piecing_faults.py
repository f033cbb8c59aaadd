"""A method is one file: a new one works without code, a bad one is named in a sentence."""

from __future__ import annotations

from fractions import Fraction as F
from importlib import resources

import pytest

from sewalong.piecing.definition import read_definition
from sewalong.piecing.derive import derive
from sewalong.piecing.faults import MethodFault
from sewalong.piecing.method import MethodKey
from sewalong.piecing.method_counts import count_out
from sewalong.piecing.operation_words import WORDS

# Invented for this test: two squares joined, two such joined in a row of four.
ROW_OF_FOUR = """
id = "row-of-four"
name = "Row of four"
about = "Four squares in a row: one unit."

[[piles]]
id = "square"
noun = ["square", "squares"]
start = true

[[piles]]
id = "two"
noun = ["two-patch", "two-patches"]

[[piles]]
id = "unit"
noun = ["unit", "units"]

[[stages]]
id = "sew-twos"
label = "sew twos"
station = "machine"
hazards = ["needle"]
makes = "two"
minutes = 0.5
do = "Join two squares, right sides together."
check = "edges level"
operations = ["take square", "take square", "join in a row"]

[[stages]]
id = "sew-fours"
label = "sew fours"
station = "machine"
hazards = ["needle"]
makes = "unit"
minutes = 0.5
do = "Join two two-patches, right sides together."
check = "edges level"
operations = ["take two", "take two", "join in a row"]
"""


def test_a_new_method_needs_one_file_and_no_code() -> None:
    written = read_definition("row-of-four.toml", ROW_OF_FOUR)
    derived = derive(written, F(5, 2))
    assert (derived.unit.width, derived.unit.height) == pytest.approx((8.5, 2.5))
    assert derived.per_unit == {"square": 4}
    assert count_out(written, MethodKey(written.id)).stage("sew-fours").takes[0].count == 2


def test_a_letter_that_a_method_gives_to_one_pile_is_given_to_no_piece_of_another() -> None:
    plain = """[[piles]]
id = "plain"
noun = ["plain square", "plain squares"]
start = true
letter = "A"

"""
    two = '[[piles]]\nid = "two"'
    text = ROW_OF_FOUR.replace(two, plain + two).replace(
        '"take square", "take square"', '"take square", "take plain"'
    )
    written = read_definition("row-of-four.toml", text)
    assert derive(written, F(5, 2)).letters == {"A": "plain", "B": "square", "C": "square"}


@pytest.mark.parametrize(
    ("old", "new", "words"),
    [
        (
            'makes = "two"',
            'makes = "twos"',
            "row-of-four.toml, stage 'sew-twos': no pile is called",
        ),
        ('["take two", "take two",', '["take tow",', "stage 'sew-fours': takes 'tow'"),
        ('"join in a row"]', '"join in a heap"]', "the operation 'join in a heap' is not known"),
        ('station = "machine"', 'station = "sofa"', "'sofa' is no station"),
        ('hazards = ["needle"]', 'hazards = ["bees"]', "'bees' is no hazard"),
        ("minutes = 0.5", "minutes = 0", "'minutes' must be a number over zero"),
        ("start = true", "start = 1", "'start' must be true or false"),
        ("start = true", "", "no pile has start = true"),
        ('id = "unit"', 'id = "unite"', "no pile is called 'unit'"),
        ('id = "two"', 'id = "square"\nnoun = ["x", "xs"]\n[[piles]]\nid = "two"', "two piles are"),
        ('id = "sew-fours"', 'id = "sew-twos"', "two stages are called 'sew-twos'"),
        ('check = "edges level"', 'chekc = "edges level"', "the key 'chekc' is not known"),
        ('name = "Row of four"', "name = 4", "'name' must be written as text"),
        ('noun = ["unit", "units"]', 'noun = ["unit"]', "'noun' must be two texts"),
        ("start = true", 'start = true\nletter = "aa"', "'letter' must be one capital"),
        ("start = true", 'start = true\nshare = "2"', "'share' must be a part of the unit's width"),
        ("start = true", 'start = true\nshare = "x"', "'share' must be a part"),
        ('"take two", "take two", ', '"take square", ', "nothing takes from the pile 'two'"),
        ('"take two", "take two", ', "", "the stage takes nothing"),
        (
            '["take square", "take square", "join in a row"]',
            '["take square", "open"]',
            "stage 'sew-twos': only pieces laid face to face can be used here",
        ),
        (
            '["take square", "take square", "join in a row"]',
            '["take square", "take square", "lay", "open"]',
            "stage 'sew-twos': a piece is laid on but not sewn",
        ),
        (
            '["take square", "take square", "join in a row"]',
            '["take square", "take square", "lay", "sew all round", "open"]',
            "stage 'sew-twos': a piece is sewn on more than one side",
        ),
        (
            '["take two", "take two", "join in a row"]',
            '["take two", "take two", "lay"]',
            "the unit is not opened out at the end",
        ),
        ('id = "sew-fours"', 'id = "sew-rows"', "'sew-rows' is used in every quilt"),
        ("id =", "id", "this is not a TOML file"),
        ('name = "Row of four"', "", "row-of-four.toml: 'name' is missing. It must be written"),
        ('name = "Row of four"', 'name = " "', "row-of-four.toml: 'name' must be written as text"),
        ('name = "Row of four"', 'nam = "Row"', "row-of-four.toml: the key 'nam' is not known"),
        ("start = true", 'colour = "red"', "pile 'square': the key 'colour' is not known"),
        ('id = "two"', "", "row-of-four.toml, a pile: 'id' is missing. It must be 1 to 40"),
        ('noun = ["two-patch", "two-patches"]', "", "pile 'two': 'noun' is missing"),
        (
            'noun = ["two-patch", "two-patches"]',
            'noun = ["a", 2]',
            "pile 'two': 'noun' must be two",
        ),
        ('makes = "two"', 'makes = "two"\ncounts = "to"', "no pile is called 'to'"),
        ('station = "machine"', "", "stage 'sew-twos': 'station' is missing. It must be one of"),
        (
            'station = "machine"',
            "station = 3",
            "stage 'sew-twos': 'station' must be one of table, machine",
        ),
        (
            'station = "machine"',
            'station = "sofa"',
            "must be one of table, machine, iron, cutting mat",
        ),
        (
            'hazards = ["needle"]',
            "hazards = [3]",
            "'hazards' must be a list of any of iron, cutter, cross cut",
        ),
        (
            "minutes = 0.5",
            "",
            "stage 'sew-twos': 'minutes' is missing. It must be a number over zero",
        ),
        ("minutes = 0.5", "minutes = true", "'minutes' must be a number over zero"),
        ('"join in a row"]', "5]", "'operations' must be a list of 1 to 40 texts"),
        (
            '["take square", "take square", "join in a row"]',
            "[]",
            "'operations' must be a list of 1 to 40 texts that say what is done",
        ),
        (
            "start = true",
            'start = true\nshare = "1/0"',
            "'share' must be a part of the unit's width",
        ),
        ("start = true", "start = true\nshape = 0.5", "'shape' must be a part of the unit's width"),
        ("start = true", 'start = true\nshape = "0"', "'shape' must be a part of the unit's width"),
        (
            "start = true",
            'start = true\nshare = "1/2"\nshape = "1/2"',
            "pile 'square': this is the first pile cut from cloth",
        ),
    ],
)
def test_a_fault_names_file_place_and_what_is_wrong(old: str, new: str, words: str) -> None:
    assert old in ROW_OF_FOUR
    text = ROW_OF_FOUR.replace(old, new, 1)
    with pytest.raises(MethodFault) as fault:
        derive(read_definition("row-of-four.toml", text), F(5))
    assert words in str(fault.value)
    assert "row-of-four.toml" in str(fault.value)


def test_more_fabrics_than_letters_are_refused() -> None:
    def row_of(squares: int) -> str:
        takes = ", ".join(['"take square"'] * squares)
        return ROW_OF_FOUR.replace('"take square", "take square"', takes)

    # Two rows of thirteen are 26 letters.
    derived = derive(read_definition("row-of-four.toml", row_of(13)), F(5))
    assert len(derived.letters) == 26
    with pytest.raises(MethodFault, match="more than 26 fabrics meet in one batch"):
        derive(read_definition("row-of-four.toml", row_of(14)), F(5))


def test_the_first_pile_that_nothing_takes_from_is_named() -> None:
    idle = "".join(
        f'[[piles]]\nid = "{id}"\nnoun = ["{id}", "{id}s"]\nstart = true\n\n'
        for id in ("plain", "spare")
    )
    text = ROW_OF_FOUR.replace('[[piles]]\nid = "two"', f'{idle}[[piles]]\nid = "two"')
    with pytest.raises(MethodFault, match="nothing takes from the pile 'plain'"):
        read_definition("row-of-four.toml", text)


def test_the_last_stage_makes_the_unit() -> None:
    text = ROW_OF_FOUR[: ROW_OF_FOUR.rindex("[[stages]]")]
    with pytest.raises(MethodFault, match="the last stage must make the pile 'unit'"):
        read_definition("row-of-four.toml", text)


@pytest.mark.parametrize("kind", ["piles", "stages"])
@pytest.mark.parametrize("written", ["3", "[]", '"x"'])
def test_piles_and_stages_are_tables_and_there_are_some(kind: str, written: str) -> None:
    head = ROW_OF_FOUR[: ROW_OF_FOUR.index("[[piles]]")]
    rest = ROW_OF_FOUR[len(head) :].split("[[stages]]")
    kept = rest[0] if kind == "stages" else "[[stages]]" + "[[stages]]".join(rest[1:])
    with pytest.raises(MethodFault, match=rf"at least one \[\[{kind}\]\] is needed"):
        read_definition("row-of-four.toml", f"{head}{kind} = {written}\n{kept}")
    with pytest.raises(MethodFault, match=r", a (pile|stage): a table is expected here"):
        read_definition("row-of-four.toml", f"{head}{kind} = [{written}]\n{kept}")


def test_a_pile_made_twice_is_a_fault() -> None:
    text = ROW_OF_FOUR.replace('makes = "two"', 'makes = "square"')
    with pytest.raises(MethodFault, match="is cut or made already"):
        read_definition("row-of-four.toml", text)


def test_every_operation_is_told_in_the_notes_for_method_files() -> None:
    notes = (resources.files("sewalong.piecing") / "methods" / "README.md").read_text("utf-8")
    for word in WORDS:
        assert f"`{word}`" in notes

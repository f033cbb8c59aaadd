"""Every fault of a method file: its line, its key, and what would be right; all of them at once."""

from __future__ import annotations

import re
import tomllib
from fractions import Fraction as F
from importlib import resources

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from sewalong.piecing.catalogue import method_ids
from sewalong.piecing.cloth import Flat, turned
from sewalong.piecing.derive import derive
from sewalong.piecing.faults import MethodFault, SizeRefused
from sewalong.piecing.geometry import turn
from sewalong.piecing.method import Hazard, Station
from sewalong.piecing.method_files import LONGEST_METHOD, text_of
from sewalong.piecing.method_rules import LATER_PILES, LATER_STAGES, MEASURED
from sewalong.piecing.method_tables import (
    LONGEST_CHECK,
    LONGEST_DO,
    LONGEST_ID,
    LONGEST_LINE,
    LONGEST_NAME,
    LONGEST_WORD,
    MOST_OPERATIONS,
    MOST_PILES,
    MOST_STAGES,
    MethodTable,
    PileTable,
    StageDefinition,
)
from sewalong.piecing.operation_words import MOST_PATCHES
from sewalong.quilt.file.faults import MethodFileFaults
from sewalong.quilt.file.method_file import method_text, read_method
from tests.quilt.file.own_method import OWN, changed, line_of, method_faults


def test_the_sample_is_right_and_its_unit_is_four_squares() -> None:
    assert method_faults(OWN) == ()
    made = derive(read_method("own.toml", OWN), F(5, 2))
    assert (made.unit.width, made.unit.height) == pytest.approx((4.5, 4.5))
    assert made.per_unit == {"square": 4}


@pytest.mark.parametrize("id", method_ids())
def test_every_method_of_the_program_is_right(id: str) -> None:
    assert method_faults(text_of(id) or "") == ()


# The family of every key: each line of the program's own methods and of the sample is made wrong in
# turn, and the fault must come out with that line.

SAMPLES = {id: text_of(id) or "" for id in ("flying-geese-four", "rail-fence")} | {"own": OWN}
KEY_LINES = [
    (name, number, match[1])
    for name, text in SAMPLES.items()
    for number, line in enumerate(text.splitlines(), start=1)
    if (match := re.match(r"(\w+) = .*[^\[]$", line))
]
REQUIRED = {
    key
    for table in (MethodTable, PileTable, StageDefinition)
    for key in table.__struct_fields__[: -len(table.__struct_defaults__) or None]
}


def with_line(text: str, number: int, new: str | None) -> str:
    lines = text.splitlines()
    lines[number - 1 : number] = [] if new is None else [new]
    return "\n".join(lines) + "\n"


def heading_above(text: str, number: int) -> int | None:
    """The line of the heading that line `number` stands under."""
    above = [n for n, line in enumerate(text.splitlines()[:number], 1) if line.startswith("[[")]
    return above[-1] if above else None


@pytest.mark.parametrize(("name", "number", "key"), KEY_LINES)
def test_a_misspelt_key_is_named_on_its_line(name: str, number: int, key: str) -> None:
    line = SAMPLES[name].splitlines()[number - 1]
    faults = method_faults(with_line(SAMPLES[name], number, line.replace(key, f"{key}x", 1)))
    here = [fault for fault in faults if fault.line == number]
    assert len(here) == 1
    assert here[0].key.endswith(f"{key}x")
    assert f"The key '{key}x' is not known; take it out" in here[0].sentence
    assert f"The nearest is '{key}'" in here[0].sentence


@pytest.mark.parametrize(
    "wrong", ["[[1]]", "{a = 1}", "1979-05-27", '"\\u001b[2J"', "-1e400", '""']
)
@pytest.mark.parametrize(("name", "number", "key"), KEY_LINES)
def test_a_value_of_no_use_is_named_on_its_line(
    name: str, number: int, key: str, wrong: str
) -> None:
    faults = method_faults(with_line(SAMPLES[name], number, f"{key} = {wrong}"))
    here = [fault for fault in faults if fault.line == number]
    assert here
    assert all(fault.key.endswith(key) for fault in here)
    assert all(str(fault).isprintable() for fault in faults)


@pytest.mark.parametrize(
    ("name", "number", "key"), [one for one in KEY_LINES if one[2] in REQUIRED]
)
def test_a_missing_key_is_named_at_the_heading_it_belongs_under(
    name: str, number: int, key: str
) -> None:
    faults = method_faults(with_line(SAMPLES[name], number, None))
    missing = [fault for fault in faults if f"'{key}' is missing. It " in fault.sentence]
    assert [fault.line for fault in missing] == [heading_above(SAMPLES[name], number)]


def test_required_keys_are_those_that_the_readme_of_methods_does_not_call_optional() -> None:
    assert {"id", "name", "about", "noun", "makes", "operations", "do", "check"} <= REQUIRED
    assert REQUIRED.isdisjoint({"hazards", "counts", "start", "letter", "strip", "share", "shape"})


# The family of every rule: what is changed, where the fault is, and what it says.

PRESS = 'operations = ["take four"]'
TWOS = '["take square", "take square", "join in a row"]'
FOURS = '["take two", "take two", "turn last half way", "join in a column"]'
UNIT = '[[piles]]\nid = "unit"'
RULES = [
    # names
    ('id = "two"', 'id = "Two"', 'id = "Two"', "such as \"pressed-pair\""),
    ('id = "two"', 'id = "square"', 'id = "square"\nnoun = ["two', "two piles are called 'square'"),
    ('id = "press"', 'id = "sew-twos"', 'id = "sew-twos"\nlabel = "press"', "two stages are called"),
    ('label = "press"', 'label = "Sew twos"', 'label = "Sew twos"', "give each its own label"),
    ('id = "press"', 'id = "bind"', 'id = "bind"', "'bind' is used in every quilt"),
    ('label = "press"', 'label = "sew rows"', 'label = "sew rows"', "used in every quilt"),
    ('id = "two"', 'id = "row"', 'id = "row"', "'row' is used in every quilt"),
    ('id = "two"', 'id = "top"', 'id = "top"', "'top' is used in every quilt"),
    ('["unit", "units"]', '["row", "units"]', '["row"', "another pile is called 'row' too"),
    ('["unit", "units"]', '["unit", "Squares"]', '["unit", "Sq', "called 'squares' too"),
    ('label = "press"', 'label = "Sew-twos"', 'label = "Sew-twos"', "'Sew-twos' is the id of another"),
    ('["unit", "units"]', '["unit", "Two"]', '["unit", "Two"]', "'Two' is the id of another"),
    ('hazards = ["iron"]', 'hazards = ["iron", "iron"]', '"iron", "iron"', "write each once"),
    # what is cut
    ("start = true\n", "", '[[piles]]\nid = "square"', "no pile has start = true"),
    ("start = true", "start = false", '[[piles]]\nid = "square"', "nothing to cut"),
    ("start = true", 'start = true\nshare = "1/2"', "share =", "whose size the owner chooses"),
    (UNIT, UNIT + '\nletter = "A"', "letter =", "only for a pile that is cut from cloth"),
    ("start = true", 'start = true\nshare = "3/2"', "share =", "over 0 and at most 1"),
    ("start = true", 'start = true\nshape = "1e9"', "shape =", "such as \"1/2\""),
    # piles and stages
    ('makes = "two"', 'makes = "tow"', 'makes = "tow"', "no pile is called 'tow'. The nearest is 'two'"),
    ('counts = "unit"', 'counts = "units"', "counts =", "no pile is called 'units'"),
    ('makes = "four"', 'makes = "two"', 'makes = "two"\ncounts', "cut or made already"),
    ('makes = "two"', 'makes = "square"', 'makes = "square"', "cut or made already"),
    (PRESS, 'operations = ["take fuor"]', '["take fuor"]', "The nearest is 'four'"),
    (PRESS, 'operations = ["take two"]', '[[piles]]\nid = "four"', "nothing takes from the pile 'four'"),
    (PRESS, 'operations = ["take unit"]', '["take unit"]', "only this or a later stage makes"),
    ('makes = "unit"', 'makes = "four"', 'makes = "four"\nminutes = 0.5', "must make the pile 'unit'"),
    ('id = "unit"', 'id = "whole"', 'counts = "unit"', "no pile is called 'unit'"),
    # operations
    (TWOS, '["join in a row"]', '["join in a row"]', "takes nothing; begin with 'take PILE'"),
    (TWOS, "[]", "operations = []", "a list of 1 to 40 texts"),
    ("join in a column", "join in a colum", "colum\"", "The nearest is 'join in a column'"),
    (PRESS, 'operations = ["take four", "open", "trim"]', '"trim"', "in a stage of its own"),
    # stations and hazards
    ('station = "iron"', 'station = "sofa"', "sofa", "must be one of table, machine, iron"),
    ('hazards = ["iron"]', 'hazards = ["bees"]', "bees", "'bees' is no hazard. 'hazards' must be"),
    ('hazards = ["iron"]', 'hazards = ["pins"]', 'hazards = ["pins"]', "add \"iron\" to hazards"),
    ('hazards = ["iron"]\n', "", '[[stages]]\nid = "press"', "add \"iron\" to hazards"),
    ('hazards = ["needle"]', 'hazards = ["needle", "cross cut"]', "cross cut", "add \"cutter\""),
    # what can't be done
    (TWOS, '["take square", "take square", "open"]', '"open"]', "lay them first"),
    (TWOS, '["take square", "lay"]', '"lay"]', "needs two pieces"),
    (TWOS, '["take square", "take square", "lay", "open"]', '"open"]', "not sewn"),
    (FOURS, '["take two", "take two", "lay", "sew all round", "open"]', '"open"]', "cannot be opened flat"),
    (FOURS, '["take two", "take two", "lay"]', '["take four"]', "not opened out at the end"),
    (FOURS, '["take two", "take two", "turn last a quarter", "join in a row"]', "a quarter", "at any size"),
    (FOURS, '["take two", "take two", "join in a row", "cut diagonal"]', '["take four"]', "does not fill its rectangle"),
]  # fmt: skip


@pytest.mark.parametrize(("old", "new", "place", "words"), RULES)
def test_a_broken_rule_is_named_with_its_line(old: str, new: str, place: str, words: str) -> None:
    text = changed(OWN, old, new)
    found = {(fault.line, words.lower() in fault.sentence.lower()) for fault in method_faults(text)}
    line = line_of(text, place)
    assert (line, True) in found, [str(fault) for fault in method_faults(text)]


def test_strips_come_first_and_a_share_and_a_shape_exclude_each_other() -> None:
    other = '[[piles]]\nid = "strip"\nnoun = ["strip", "strips"]\nstart = true\n'
    text = changed(OWN, '[[piles]]\nid = "two"', f'{other}strip = true\n\n[[piles]]\nid = "two"')
    text = changed(text, '"take four"', '"take four", "take strip"')
    [fault] = method_faults(text)
    assert (fault.line, fault.key) == (line_of(text, "strip = true"), "piles[2].strip")
    assert "the first pile cut from cloth must be strips" in fault.sentence
    text = text.replace("strip = true", 'share = "1/2"\nshape = "1/2"')
    [fault] = method_faults(text)
    assert (fault.line, fault.key) == (line_of(text, "shape ="), "piles[2].shape")


def test_a_size_fitted_to_what_it_does_not_change_is_named_with_its_line() -> None:
    """The small squares lie under the seams of one unit only by being told their share."""
    other = '[[piles]]\nid = "extra"\nnoun = ["extra", "extras"]\nstart = true\nshape = "1/2"\n\n'
    text = changed(OWN, '[[piles]]\nid = "two"', f'{other}[[piles]]\nid = "two"')
    text = changed(text, PRESS, 'operations = ["take four", "take extra"]')
    [fault] = method_faults(text)
    assert (fault.line, fault.key) == (line_of(text, "shape ="), "piles[2].shape")
    assert "changes nothing that it is fitted to" in fault.sentence


def test_all_faults_come_out_at_once_in_the_order_of_their_lines() -> None:
    text = OWN
    for old, new in (
        ('name = "Turned twos"', "name = 3"),
        ('["unit", "units"]', '"unit"'),
        ('id = "sew-twos"', 'id = "sew twos"'),
        ("minutes = 0.75", "minutes = nan"),
        ('counts = "unit"', 'counts = "pair"'),
        ('station = "iron"', "station = true"),
        ("turn last half way", "turn last halfway"),
        ('["take four"]', '["take for"]'),
        ('check = "flat, no tuck"', 'chekc = "flat, no tuck"'),
    ):
        text = changed(text, old, new)
    assert [(fault.line, fault.key) for fault in method_faults(text)] == [
        (line_of(text, "name = 3"), "name"),
        (line_of(text, 'noun = "unit"'), "piles[4].noun"),
        (line_of(text, '"sew twos"\nlabel'), "stages[1].id"),
        (line_of(text, "counts ="), "stages[2].counts"),
        (line_of(text, "minutes = nan"), "stages[2].minutes"),
        (line_of(text, "halfway"), "stages[2].operations"),
        (line_of(text, '[[stages]]\nid = "press"'), "stages[3].check"),
        (line_of(text, "station = true"), "stages[3].station"),
        (line_of(text, "chekc"), "stages[3].chekc"),
        (line_of(text, "take for"), "stages[3].operations"),
    ]


def test_faulty_stages_that_do_not_hang_on_each_other_are_all_named() -> None:
    text = changed(OWN, TWOS, '["take square", "take square", "open"]')
    assert [fault.key for fault in method_faults(text)] == ["stages[1].operations"]
    # Two ways of making from squares, both wrong; what is made of them can't be judged.
    text = changed(text, FOURS, '["take square", "open"]')
    text = changed(text, PRESS, 'operations = ["take four", "take two", "join in a row"]')
    assert [fault.key for fault in method_faults(text)] == [
        "stages[1].operations",
        "stages[2].operations",
    ]


# What nobody would write

BIG = "9" * 5000


@pytest.mark.parametrize(
    "text",
    [
        "",
        "\x00",
        "id = ",
        "[[piles]",
        f"id = {BIG}",
        f"a = {'[' * 5000}{']' * 5000}",
        f"{'a.' * 3000}b = 1",
        "piles = 3\nstages = 4",
        "piles = []\nstages = []",
        "piles = [1, {}]\nstages = [[], 2]",
        "[piles]\na = 1\n[stages]\n",
        OWN.replace("minutes = 0.5", f"minutes = {'9' * 400}"),
        OWN.replace("minutes = 0.5", "minutes = inf"),
        changed(OWN, "start = true", 'start = true\nshare = "1e999999999"'),
        changed(OWN, "start = true", f'start = true\nshare = "1/{"9" * 4000}"'),
        changed(OWN, 'label = "press"', 'label = "a\\u202eb"'),
        changed(OWN, 'label = "press"', 'label = "a\\nb"'),
        changed(OWN, 'name = "Turned twos"', f'name = "{"x" * 81}"'),
        changed(OWN, "join in a column", "x" * 160),
        changed(OWN, '"take four"', ", ".join(['"take four"'] * 41)),
        changed(OWN, '"take four"', '"take \\u001b[2J"'),
        OWN + '[[piles]]\nid = "x"\n' * 50,
        OWN + '[[stages]]\nid = "x"\n' * 50,
        OWN + "".join(f"x{n} = 1\n" for n in range(4000)),
        OWN + "#" * LONGEST_METHOD,
    ],
)
def test_what_is_no_method_is_refused_in_plain_sentences(text: str) -> None:
    faults = method_faults(text)
    assert 0 < len(faults) <= 101
    for fault in faults:
        assert str(fault).isprintable()
        assert len(str(fault)) < 600
        assert fault.sentence.endswith((".", "?"))


def test_a_name_that_looks_like_markup_is_a_name() -> None:
    text = changed(OWN, 'name = "Turned twos"', 'name = "[red] twos [/]"')
    assert read_method("own.toml", text).name == "[red] twos [/]"


def doubling(stages: int, *, start: str, last: str = "") -> str:
    """Every stage joins two of what the one before makes; the last one then does `last` besides."""
    text = 'id = "doubled"\nname = "Doubled"\nabout = "Twice as many each time."\n'
    text += f'[[piles]]\nid = "p0"\nnoun = ["p0", "p0s"]\nstart = true\n{start}\n'
    for n in range(1, stages + 1):
        pile = "unit" if n == stages else f"p{n}"
        more = last if n == stages else ""
        text += f'[[piles]]\nid = "{pile}"\nnoun = ["{pile}", "{pile}s"]\n'
        text += (
            f'[[stages]]\nid = "s{n}"\nlabel = "s{n}"\nstation = "table"\nmakes = "{pile}"\n'
            'minutes = 1\ndo = "Join."\ncheck = "level"\n'
            f'operations = ["take p{n - 1}", "take p{n - 1}", "join in a row"{more}]\n'
        )
    return text


@pytest.mark.parametrize(
    ("stages", "start", "last", "words"),
    [
        (5, "", "", "more than 26 fabrics meet in one batch; give a pile a letter"),
        (30, 'letter = "A"', "", "more than 200 patches lie on the table at once"),
        (7, 'letter = "A"', ', "turn last half way"' * 37, "more to sew and cut in one batch than"),
    ],
)
def test_a_method_that_grows_beyond_reason_is_refused(
    stages: int, start: str, last: str, words: str
) -> None:
    assert method_faults(doubling(4, start=start)) == ()
    [fault, *_] = method_faults(doubling(stages, start=start, last=last))
    assert words in fault.sentence.lower()


def test_strips_that_give_more_pieces_than_can_be_followed_are_refused() -> None:
    text = doubling(7, start='letter = "A"\nstrip = true').replace(
        '"take p0", "take p0", "join in a row"', '"take p0", "cut segments"'
    )
    written = read_method("own.toml", text)
    assert derive(written, F(5, 2), strip_length=F(40)).unit_count == 1
    with pytest.raises(MethodFault, match="more than 20,000 pieces go into one batch"):
        derive(written, F(51, 100), strip_length=F(1000))
    with pytest.raises(SizeRefused, match="More than 4,000 segments would come of one strip"):
        derive(written, F(51, 100), F(1, 1000), strip_length=F(3000))


OPERATIONS = st.lists(
    st.sampled_from(
        ["lay", "lay on corner 2", "sew edge", "sew all round", "sew both sides of diagonal",
         "sew across corners", "cut diagonal", "cut both diagonals", "cut in quarters",
         "cut in eighths", "cut segments", "cut square segments", "trim corners", "open",
         "join in a row", "join in a column", "turn last a quarter", "stand on longest edge"]
    ),
    max_size=5,
)  # fmt: skip


@given(OPERATIONS, OPERATIONS, st.integers(1, 3), st.booleans())
@settings(max_examples=300, deadline=None)
def test_whatever_the_operations_are_there_is_a_method_or_a_sentence(
    first: list[str], second: list[str], squares: int, strip: bool
) -> None:
    twos = ["take square"] * squares + first
    fours = ["take two", "take two", *second]
    text = changed(OWN, TWOS, str(twos).replace("'", '"'))
    text = changed(text, FOURS, str(fours).replace("'", '"'))
    if strip:
        text = changed(text, "start = true", "start = true\nstrip = true")
    for fault in method_faults(text):
        assert fault.line is not None
        assert fault.sentence.endswith(".")
    if not method_faults(text):
        made = derive(read_method("own.toml", text), F(100), strip_length=F(2400))
        assert all(unit.is_rectangle for unit in made.units)


@given(st.text(max_size=60), st.integers(0, len(OWN)))
@settings(max_examples=200, deadline=None)
def test_whatever_is_written_into_a_method_there_is_a_method_or_a_sentence(
    written: str, at: int
) -> None:
    text = OWN[:at] + written + OWN[at:]
    for fault in method_faults(text):
        assert str(fault).isprintable()


def test_bytes_that_are_no_text_are_refused_with_their_line() -> None:
    with pytest.raises(MethodFileFaults) as error:
        method_text(b"id = 1\n\xff")
    assert error.value.faults[0].line == 2
    assert method_text(b"\xef\xbb\xbfid = 1\r\n") == "id = 1\n"


def test_the_lines_are_those_of_a_file_with_windows_line_ends_too() -> None:
    text = changed(OWN, 'station = "iron"', 'station = "sofa"')
    theirs = method_faults(method_text(text.replace("\n", "\r\n").encode()))
    assert theirs == method_faults(text)
    assert tomllib.loads(text)["stages"][2]["station"] == "sofa"


def test_the_example_for_those_who_write_a_method_is_one() -> None:
    notes = (resources.files("sewalong.piecing") / "methods" / "README.md").read_text("utf-8")
    example = notes.partition("## An example")[2].partition("```toml\n")[2].partition("```")[0]
    made = derive(read_method("example.toml", example), F(3))
    assert made.per_unit == {"dark-square": 2, "light-square": 2}
    # A half-square sewn beside its diagonal loses the allowance times the root of 2 (geometry).
    half = 3 - 0.25 * 2**0.5
    assert made.unit.width == pytest.approx(2 * half - 0.5)
    (unit,) = made.units
    shown = Flat(unit.finished(0.25))
    assert len(shown.patches) == 8
    # It spins: turned by a quarter it is the same again.
    quarter = turned(shown, turn(2))
    assert _shapes(quarter) == _shapes(shown)
    assert not made.has_bias_edges


def _shapes(piece: Flat) -> set[tuple[str, frozenset[tuple[float, float]]]]:
    return {
        (one.letter, frozenset((round(x, 4), round(y, 4)) for x, y in one.points))
        for one in piece.patches
    }


def test_what_the_notes_say_of_limits_is_so() -> None:
    notes = (resources.files("sewalong.piecing") / "methods" / "README.md").read_text("utf-8")
    said = " ".join(notes.split())
    assert f"at most {MOST_PILES} piles and {MOST_STAGES} stages" in said
    assert f"at most {MOST_OPERATIONS} operations; ids {LONGEST_ID} characters" in said
    assert f"nouns {LONGEST_WORD}, the name {LONGEST_NAME}, `do` {LONGEST_DO}," in said
    assert f"`check` {LONGEST_CHECK}, other texts {LONGEST_LINE}, on one line" in said
    assert f"{MOST_PATCHES} patches on the table" in said
    for name in (*LATER_PILES, *LATER_STAGES, *MEASURED, *Hazard, *Station):
        assert f"`{name}`" in said

"""Every fault of a quilt file: its key, its line, and the sentence a person reads."""

import pytest

from sewalong.piecing.catalogue import method_ids
from sewalong.quilt.file.reader import Fault, QuiltFileFaults, read_quilt

SQUARES = """\
name = "Low tide"
method = "stacked-four-patch"
unit = "inch"
seam = "1/4"
notes = "none"
[squares]
size = "5"
count = 111
[layout]
rows = 6
columns = 8
[[border]]
cut = "2 1/2"
cloth = "sand"
[finishing]
stages = ["layer"]
"""

GEESE = """\
name = "Fly home"
method = "flying-geese-four"
layout = {rows = 4, columns = 3}
[squares]
size = "5 1/4"
count = 12
[[more]]
pile = "small-square"
size = "2 7/8"
count = 48
"""

FENCE = """\
name = "Long fence"
method = "rail-fence"
layout = {rows = 4, columns = 3}
[strips]
width = 2
length = 40
count = 4
[[more]]
pile = "medium-strip"
width = 2
count = 4
[[more]]
pile = "light-strip"
width = 2
count = 4
"""


def faults_of(text: str) -> tuple[Fault, ...]:
    with pytest.raises(QuiltFileFaults) as caught:
        read_quilt(text)
    return caught.value.faults


def changed(text: str, old: str, new: str) -> str:
    assert text.count(old) == 1, f"{old!r} stands {text.count(old)} times in the sample"
    return text.replace(old, new)


def test_the_samples_themselves_have_no_fault() -> None:
    for text in (SQUARES, GEESE, FENCE):
        read_quilt(text)


A_TEXT = 'This must be text between quotes, such as "cream linen".'
A_LENGTH = 'This must be a length, such as "2 1/2", "6.35 cm" or 2.5.'
UP_TO_200 = "This must be a whole number from 1 to 200, without quotes."
WRITE_SQUARES = "Write the heading [squares], and below it size and count (or packs and in_a_pack)."
WRITE_STRIPS = "Write the heading [strips], and below it width, length and count."

# The text a sample is changed at, what it is changed to, and the one fault that makes.
ONE_FAULT = [
    # Names and notes
    ('"Low tide"', "5", "name", 1, A_TEXT),
    ('"Low tide"', "1979-05-27", "name", 1, A_TEXT),
    ('"Low tide"', "2.5", "name", 1, A_TEXT),
    ('"Low tide"', '" "', "name", 1, "This is empty. Write a name of 1 to 80 characters."),
    (
        '"Low tide"',
        f'"{"n" * 81}"',
        "name",
        1,
        "This has 81 characters. Write it in 80 or fewer.",
    ),
    (
        '"Low tide"',
        r'"Low\u001b[2Jtide"',
        "name",
        1,
        "This has a control character such as a tab or a new line in it. Take it out.",
    ),
    (
        '"Low tide"',
        r'"Low\ntide"',
        "name",
        1,
        "This has a control character such as a tab or a new line in it. Take it out.",
    ),
    (
        '"Low tide"',
        r'"Low \u202e edit"',
        "name",
        1,
        "This has a control character such as a tab or a new line in it. Take it out.",
    ),
    (
        'name = "Low tide"\n',
        "",
        "name",
        None,
        'The name is missing. Add it, such as name = "Harbour lights".',
    ),
    (
        '"none"',
        r'"a\tb\nc \u0007"',
        "notes",
        5,
        "This has a control character other than a tab or a new line in it. Take it out.",
    ),
    (
        '"none"',
        f'"{"n" * 2001}"',
        "notes",
        5,
        "This has 2001 characters. Write it in 2000 or fewer.",
    ),
    ('"none"', "[]", "notes", 5, A_TEXT),
    # Method and unit
    (
        '"stacked-four-patch"',
        '"staked four patch"',
        "method",
        2,
        "No method is called 'staked four patch'. The nearest is 'stacked-four-patch'.",
    ),
    ('"stacked-four-patch"', "4", "method", 2, A_TEXT),
    (
        'method = "stacked-four-patch"\n',
        "",
        "method",
        None,
        "The method is missing. Add method = and one of "
        + ", ".join(f'"{id}"' for id in method_ids())
        + ".",
    ),
    (
        '"inch"',
        '"inches"',
        "unit",
        3,
        '\'inches\' is not a unit to work in. Write "inch" or "cm".',
    ),
    ('"inch"', "1", "unit", 3, 'This is not a unit to work in. Write "inch" or "cm".'),
    # Lengths
    ('"5"', "true", "squares.size", 7, A_LENGTH),
    ('"5"', "[5]", "squares.size", 7, A_LENGTH),
    ('"5"', "{inch = 5}", "squares.size", 7, A_LENGTH),
    (
        '"5"',
        '"five"',
        "squares.size",
        7,
        "No number was found in 'five'. Write one such as 2 1/2 in.",
    ),
    (
        '"5"',
        "-5",
        "squares.size",
        7,
        "'-5' was read as less than zero. A length is above zero, such as 2 1/2 in.",
    ),
    (
        '"5"',
        "nan",
        "squares.size",
        7,
        "No number was found in 'nan'. Write one such as 2 1/2 in.",
    ),
    (
        '"1/4"',
        '"0"',
        "seam",
        4,
        "'0' was read as zero. A length is above zero, such as 2 1/2 in.",
    ),
    (
        '"1/4"',
        '"1/4 1/8"',
        "seam",
        4,
        "'1/4 1/8' has more than one fraction. Write one number, such as 2 1/2.",
    ),
    # Seams against what they are sewn on
    (
        '"5"',
        '"1/2"',
        "seam",
        4,
        "A seam allowance of 1/4 in on both sides leaves nothing of squares of 1/2 in. It must be "
        "less than half of that; 1/4 in is usual.",
    ),
    (
        'seam = "1/4"\nnotes = "none"\n[squares]\nsize = "5"',
        '[squares]\nsize = "0.3"',
        "squares.size",
        5,
        "A seam allowance of 1/4 in on both sides leaves nothing of squares of 19/64 in (rounded "
        "down). It must be less than half of that; 1/4 in is usual.",
    ),
    (
        '"2 1/2"',
        '"1/2"',
        "border[1].cut",
        13,
        "A border cut at 1/2 in is used up by its seam allowances. Cut it at more than 1/2 in, "
        "or sew narrower seams.",
    ),
    (
        'unit = "inch"\nseam = "1/4"',
        'unit = "cm"\nseam = "1.25"',
        "border[1].cut",
        13,
        "A border cut at 2.5 cm is used up by its seam allowances. Cut it at more than 2.5 cm, "
        "or sew narrower seams.",
    ),
    # Whole numbers
    ("rows = 6", 'rows = "6"', "layout.rows", 10, UP_TO_200),
    ("rows = 6", "rows = 6.0", "layout.rows", 10, UP_TO_200),
    ("rows = 6", "rows = true", "layout.rows", 10, UP_TO_200),
    ("rows = 6", "rows = 0", "layout.rows", 10, "This must be at least 1, and at most 200."),
    (
        "columns = 8",
        "columns = 201",
        "layout.columns",
        11,
        "This is more than 200. Write a whole number from 1 to 200.",
    ),
    (
        "count = 111",
        "count = 10_000",
        "squares.count",
        8,
        "This is more than 9,999. Write a whole number from 1 to 9,999.",
    ),
    (
        "rows = 6\n",
        "",
        "layout.rows",
        9,
        "The number of rows is missing. Add it, such as rows = 9.",
    ),
    (
        "columns = 8\n",
        "",
        "layout.columns",
        9,
        "The number of columns is missing. Add it, such as columns = 9.",
    ),
    (
        "[layout]\nrows = 6\ncolumns = 8\n",
        "",
        "layout",
        None,
        "The layout is missing. Add the heading [layout], and below it rows and columns.",
    ),
    # How many
    (
        "count = 111\n",
        "",
        "squares.count",
        6,
        "It does not say how many pieces there are. Add count, or packs and in_a_pack.",
    ),
    (
        "count = 111",
        "packs = 3",
        "squares.in_a_pack",
        6,
        "It does not say how many are in a pack, and packs differ. Count one and add in_a_pack, "
        "such as in_a_pack = 42.",
    ),
    (
        "count = 111",
        "in_a_pack = 37",
        "squares.packs",
        6,
        "The number of packs is missing. Add it, such as packs = 4.",
    ),
    (
        "count = 111",
        "count = 111\npacks = 3\nin_a_pack = 37",
        "squares.packs",
        9,
        "The pieces are given twice. Keep either count, or packs and in_a_pack.",
    ),
    (
        "count = 111",
        "count = 111\nin_a_pack = 37",
        "squares.in_a_pack",
        9,
        "The pieces are given twice. Keep either count, or packs and in_a_pack.",
    ),
    (
        "count = 111",
        "packs = 250\nin_a_pack = 40",
        "squares.packs",
        8,
        "250 packs of 40 are 10,000 pieces, and there can be at most 9,999. Check both numbers.",
    ),
    # Tables
    (
        'size = "5"\n',
        "",
        "squares.size",
        6,
        'The size of the squares is missing. Add it, such as size = "5 in".',
    ),
    (
        '[squares]\nsize = "5"\ncount = 111\n',
        "",
        "squares",
        None,
        f"The squares to begin with are missing. {WRITE_SQUARES}",
    ),
    (
        '[squares]\nsize = "5"\ncount = 111\n',
        "squares = 5\n",
        "squares",
        6,
        "This must be a table: the heading [squares], with brackets, and below it its keys (count, "
        "packs, in_a_pack, size).",
    ),
    (
        '[squares]\nsize = "5"\n',
        '[strips]\nwidth = "5"\nlength = "40"\n',
        "strips",
        6,
        "The method stacked-four-patch begins with squares, which go under [squares], not "
        f"[strips]. {WRITE_SQUARES}",
    ),
    (
        "[layout]",
        "[strips]\nwidth = 2\nlength = 40\ncount = 8\n[layout]",
        "strips",
        9,
        "The method stacked-four-patch begins with squares, which go under [squares], not "
        f"[strips]. {WRITE_SQUARES}",
    ),
    (
        "[layout]",
        '[[more]]\npile = "pair"\nsize = 3\ncount = 8\n[layout]',
        "more[1]",
        9,
        "The method stacked-four-patch begins with squares only. Take this [[more]] out.",
    ),
    # Borders
    (
        "[[border]]",
        "[border]",
        "border",
        12,
        "This must be a table: the heading [[border]], with double brackets for each, and below it "
        "its keys (cut, cloth, colour).",
    ),
    (
        'cut = "2 1/2"\n',
        "",
        "border[1].cut",
        12,
        'The width this border is cut at is missing. Add it, such as cut = "2 1/2 in".',
    ),
    (
        'cloth = "sand"\n',
        "",
        "border[1].cloth",
        12,
        'The cloth of this border is missing. Name it, such as cloth = "cream linen".',
    ),
    (
        "[finishing]",
        '[[border]]\ncut = 3\ncloth = ""\n[finishing]',
        "border[2].cloth",
        17,
        "This is empty. Write a name of 1 to 80 characters.",
    ),
    (
        "[finishing]",
        '[[border]]\ncut = 3\ncloth = "blue"\n' * 12 + "[finishing]",
        "border",
        12,
        "There are 13 borders, and a quilt has at most 12. Leave some out.",
    ),
    # Finishing
    (
        '["layer"]',
        '"layer"',
        "finishing.stages",
        16,
        'This must be a list between [ and ] of any of "layer", "quilt", "bind".',
    ),
    (
        '["layer"]',
        '["layer", 3]',
        "finishing.stages",
        16,
        'This must be a list between [ and ] of any of "layer", "quilt", "bind".',
    ),
    (
        '["layer"]',
        '["layer", "wash"]',
        "finishing.stages",
        16,
        '\'wash\' is not a finishing stage. The finishing stages are "layer", "quilt", "bind".',
    ),
    (
        '["layer"]',
        '["one", "two", "three", "four", "five", "six"]',
        "finishing.stages",
        16,
        "'one', 'two', 'three', 'four', 'five' are not finishing stages. The finishing stages are "
        '"layer", "quilt", "bind".',
    ),
    (
        '["layer"]',
        '["hang", "bind", "wash", "bind"]',
        "finishing.stages",
        16,
        "'hang', 'wash' are not finishing stages. The finishing stages are \"layer\", \"quilt\", "
        '"bind". "bind" stands here more than once. Write each stage once.',
    ),
    # Keys nobody knows
    (
        'unit = "inch"',
        'units = "inch"',
        "units",
        3,
        "'units' is not known at the top of the file. The nearest known key is \"unit\"; known are "
        "name, method, method_file, unit, seam, trim, notes, squares, strips, more, layout, "
        "setting, border, finishing, fabric, cloth.",
    ),
    (
        "count = 111",
        "count = 111\ncounted = 3",
        "squares.counted",
        9,
        "'counted' is not known under [squares]. The nearest known key is \"count\"; known are "
        "count, packs, in_a_pack, size.",
    ),
    (
        'cloth = "sand"',
        'cloth = "sand"\ncolor = "red"',
        "border[1].color",
        15,
        "'color' is not known under [[border]]. The nearest known key is \"colour\"; known are "
        "cut, cloth, colour.",
    ),
    (
        'stages = ["layer"]',
        'notes = "x"',
        "finishing.notes",
        16,
        "'notes' is not known under [finishing]. It belongs at the top of the file, above the "
        "first heading.",
    ),
    (
        'notes = "none"',
        "rows = 6",
        "rows",
        5,
        "'rows' is not known at the top of the file. It belongs under [layout].",
    ),
    (
        'notes = "none"',
        "count = 6",
        "count",
        5,
        "'count' is not known at the top of the file. It belongs under [squares] or [strips] or "
        "[[more]].",
    ),
    (
        "count = 111",
        "count = 111\nborder.cut = 3",
        "squares.border",
        9,
        "'border' is not known under [squares]. Write it as a heading of its own, [[border]].",
    ),
    (
        'notes = "none"',
        r'"no\u001b[2Jtes" = 1',
        r'"no\U0000001b[2Jtes"',
        5,
        "'no?[2Jtes' is not known at the top of the file. The nearest known key is \"notes\"; "
        "known are name, method, method_file, unit, seam, trim, notes, squares, strips, more, layout, "
        "setting, border, finishing, fabric, cloth.",
    ),
]


@pytest.mark.parametrize(("old", "new", "key", "line", "sentence"), ONE_FAULT)
def test_one_fault(old: str, new: str, key: str, line: int | None, sentence: str) -> None:
    assert faults_of(changed(SQUARES, old, new)) == (Fault(key, line, sentence),)


OF_SEVERAL_PILES = [
    (
        GEESE,
        '[[more]]\npile = "small-square"\nsize = "2 7/8"\ncount = 48\n',
        "",
        "more",
        None,
        "The method flying-geese-four also begins with small squares, which are missing. Add the "
        'heading [[more]], and below it pile = "small-square", size and count.',
    ),
    (
        GEESE,
        '"small-square"',
        '"smal square"',
        "more[1].pile",
        8,
        "The method flying-geese-four begins with no pile called 'smal square'. "
        'The nearest is "small-square".',
    ),
    (
        GEESE,
        'pile = "small-square"\n',
        'pile = "small-square"\nsize = "2 7/8"\ncount = 4\n[[more]]\npile = "small-square"\n',
        "more[2].size",
        13,
        '"small-square" of 2 7/8 in has stood here before. Give each size once, with its whole '
        "count.",
    ),
    (
        GEESE,
        "count = 48",
        "count = 48\nwidth = 3",
        "more[1].width",
        11,
        "These are squares. Give their size instead of a width.",
    ),
    (
        GEESE,
        "count = 48",
        "count = 48\nlength = 3",
        "more[1].length",
        11,
        "These are squares. Give their size instead of a length.",
    ),
    (
        GEESE,
        'size = "2 7/8"\n',
        "",
        "more[1].size",
        7,
        'The size of the squares is missing. Add it, such as size = "5 in".',
    ),
    (
        GEESE,
        "count = 48\n",
        "packs = 2\n",
        "more[1].in_a_pack",
        7,
        "It does not say how many are in a pack, and packs differ. Count one and add in_a_pack, "
        "such as in_a_pack = 42.",
    ),
    (
        GEESE,
        'size = "2 7/8"',
        'size = "2 1/2"',
        "more[1].size",
        9,
        "These do not go together with large squares of 5 1/4 in. Cut the small squares at "
        "2 7/8 in, which is what the geometry asks for.",
    ),
    (
        GEESE,
        '[squares]\nsize = "5 1/4"\ncount = 12',
        "[strips]\nwidth = 2\nlength = 40\ncount = 12",
        "strips",
        4,
        "The method flying-geese-four begins with large squares, which go under [squares], not "
        f"[strips]. {WRITE_SQUARES}",
    ),
    (
        FENCE,
        "[strips]\nwidth = 2\nlength = 40\ncount = 4\n",
        "",
        "strips",
        None,
        f"The dark strips to begin with are missing. {WRITE_STRIPS}",
    ),
    (
        FENCE,
        "length = 40\n",
        "",
        "strips.length",
        4,
        "The length of a strip that can be used is missing. Measure one between its selvedges and "
        'add it, such as length = "40 in".',
    ),
    (
        FENCE,
        "[strips]\nwidth = 2\n",
        "[strips]\n",
        "strips.width",
        4,
        'The width of the strips is missing. Add it, such as width = "5 in".',
    ),
    (
        FENCE,
        '"light-strip"\n',
        '"light-strip"\nlength = 38\n',
        "more[2].length",
        14,
        "All strips of a quilt are worked out at one length. Give the shortest under [strips], and "
        "leave it out here.",
    ),
    (
        FENCE,
        '"light-strip"\n',
        '"light-strip"\nsize = 2\n',
        "more[2].size",
        14,
        "These are strips. Give their width instead of a size.",
    ),
    (
        FENCE,
        '"light-strip"\nwidth = 2',
        '"light-strip"\nwidth = 3',
        "more[2].width",
        14,
        "These do not go together with dark strips of 2 in. Cut the light strips at 2 in, which is "
        "what the geometry asks for.",
    ),
]


@pytest.mark.parametrize(("sample", "old", "new", "key", "line", "sentence"), OF_SEVERAL_PILES)
def test_one_fault_of_a_method_with_several_piles(
    sample: str, old: str, new: str, key: str, line: int | None, sentence: str
) -> None:
    assert faults_of(changed(sample, old, new)) == (Fault(key, line, sentence),)


def test_a_pile_whose_name_is_missing_and_one_that_belongs_elsewhere() -> None:
    nameless = faults_of(changed(GEESE, 'pile = "small-square"\n', ""))
    assert nameless[0] == Fault(
        "more[1].pile", 7, 'It does not say which pile this is. Add pile = "small-square".'
    )
    main = faults_of(changed(GEESE, '"small-square"', '"large-square"'))
    assert [(fault.key, fault.line) for fault in main] == [("more", 7)]
    assert main[0].sentence.startswith(
        "The method flying-geese-four also begins with small squares"
    )


def test_every_missing_pile_is_named() -> None:
    without = FENCE[: FENCE.index("[[more]]")]
    sentences = [fault.sentence for fault in faults_of(without)]
    assert ["medium strips" in sentence for sentence in sentences] == [True, False]
    assert ["light strips" in sentence for sentence in sentences] == [False, True]


def test_what_does_not_hang_on_the_method_is_checked_without_one() -> None:
    text = changed(GEESE, '"flying-geese-four"', '"geese"')
    text = changed(text, '[squares]\nsize = "5 1/4"\ncount = 12\n', "strips = {width = 2}\n")
    text = changed(text, 'pile = "small-square"\n', "")
    assert [(fault.key, fault.line) for fault in faults_of(text)] == [
        ("method", 2),
        ("strips.length", 4),
        ("strips.count", 4),
        ("more[1].pile", 5),
    ]
    nothing = text.replace("strips = {width = 2}\n", "")
    assert faults_of(nothing)[-1] == Fault(
        "squares",
        None,
        f"What there is to begin with is missing. {WRITE_SQUARES} Or, for a method that begins "
        f"with strips: {WRITE_STRIPS}",
    )


def test_all_faults_come_at_once_in_the_order_of_their_lines() -> None:
    text = """\
nam = "Low tide"
method = "stacked-four-patch"
seam = "3"
[squares]
size = "5"
packs = 3
[layout]
rows = "6"
[[border]]
cut = "two"
[[border]]
cut = 7
cloth = "sand"
width = 3
[finishing]
stages = ["wash"]
"""
    assert [(fault.line, fault.key) for fault in faults_of(text)] == [
        (1, "nam"),
        (3, "seam"),
        (4, "squares.in_a_pack"),
        (7, "layout.columns"),
        (8, "layout.rows"),
        (9, "border[1].cloth"),
        (10, "border[1].cut"),
        (14, "border[2].width"),
        (16, "finishing.stages"),
        (None, "name"),
    ]


def test_an_empty_file_is_told_everything_it_needs() -> None:
    assert [fault.key for fault in faults_of("")] == ["name", "method", "squares", "layout"]


def test_a_size_that_each_rule_allows_may_still_leave_no_unit() -> None:
    (fault,) = faults_of(changed(SQUARES, '"5"', '"3/4"'))
    assert (fault.key, fault.line) == ("squares.size", 7)
    assert "used up" in fault.sentence
    (fault,) = faults_of(FENCE.replace("width = 2", 'width = "5/8"').replace("40", '"1/2"'))
    assert (fault.key, fault.line) == ("strips.width", 5)


def test_a_list_of_borders_is_read_whole() -> None:
    text = "border = [\n1,\n{cutt = 2}]\n" + SQUARES[: SQUARES.index("[[border]]")]
    assert [(fault.key, fault.line) for fault in faults_of(text)] == [
        ("border[1]", 1),
        ("border[2].cutt", 1),
    ]


def test_a_file_of_something_else_is_not_listed_to_its_end() -> None:
    faults = faults_of("".join(f"key{number} = {number}\n" for number in range(250)))
    assert len(faults) == 101
    assert faults[-1] == Fault(
        "", None, "There are 154 more faults than these. Is this a quilt file?"
    )


def test_a_fault_reads_as_one_line() -> None:
    assert str(Fault("squares.size", 7, "Wrong.")) == "line 7, squares.size: Wrong."
    assert str(Fault("name", None, "Missing.")) == "name: Missing."
    assert str(Fault("", None, "Too long.")) == "Too long."
    faults = (Fault("a", 1, "One."), Fault("b", 2, "Two."))
    assert str(QuiltFileFaults(faults)) == "line 1, a: One.\nline 2, b: Two."


@pytest.mark.parametrize("case", [*ONE_FAULT, *(row[1:] for row in OF_SEVERAL_PILES)])
def test_a_sentence_is_a_plain_line(case: tuple[str, str, str, int | None, str]) -> None:
    sentence = case[-1]
    assert sentence.isprintable()
    assert sentence.endswith((".", "?"))
    assert not sentence[0].islower()

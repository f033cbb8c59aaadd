"""A quilt file without a fault becomes the quilt it describes. All quilts here are invented."""

from fractions import Fraction

import pytest

from sewalong.lengths import CENTIMETRE, Unit, parse, show
from sewalong.piecing.catalogue import method_ids, written_method
from sewalong.piecing.derive import derive
from sewalong.piecing.method_files import text_of
from sewalong.quilt.file.reader import (
    FINISHING_STAGES,
    QuiltFileFaults,
    read_quilt,
    read_quilt_bytes,
)
from sewalong.quilt.file.toml_errors import LONGEST_FILE
from sewalong.quilt.quilt import Border, Quilt, StartPile, Target

WHOLE = """\
name = "Low tide"
method = "stacked-four-patch"
unit = "inch"
seam = "1/4"
notes = \"\"\"
Binding waits in the tin.
Ask about the green.\"\"\"

[squares]
size = "5"
packs = 3
in_a_pack = 37

[layout]
rows = 6
columns = 8

[[border]]
cut = "2 1/2"
cloth = "sand"

[[border]]
cut = "12.7 cm"
cloth = "[deep] sea"

[finishing]
stages = ["bind", "layer"]
"""

LEAST = """\
name = "Low tide"
method = "plain-squares"
squares = {size = 5, count = 20}
layout = {rows = 4, columns = 5}
"""


def test_everything_a_file_can_say_is_in_the_quilt() -> None:
    assert read_quilt(WHOLE) == Quilt(
        name="Low tide",
        method_id="stacked-four-patch",
        unit=Unit.INCH,
        seam=Fraction(1, 4),
        starts=(StartPile("square", Fraction(5), 111, packs=3),),
        target=Target(6, 8),
        borders=(Border(Fraction(5, 2), "sand"), Border(Fraction(5), "[deep] sea")),
        finishing=("layer", "bind"),
        notes="Binding waits in the tin.\nAsk about the green.",
        method_text=text_of("stacked-four-patch"),
    )


def test_what_is_left_out_has_its_usual_value() -> None:
    assert read_quilt(LEAST) == Quilt(
        name="Low tide",
        method_id="plain-squares",
        unit=Unit.INCH,
        seam=Fraction(1, 4),
        starts=(StartPile("square", Fraction(5), 20),),
        target=Target(4, 5),
        method_text=text_of("plain-squares"),
    )


def test_lengths_with_no_unit_are_in_the_unit_of_the_quilt() -> None:
    quilt = read_quilt('unit = "cm"\nseam = 0.75\n' + LEAST.replace("size = 5", 'size = "13"'))
    assert quilt.unit is Unit.CM
    assert quilt.seam == Fraction(3, 4) * CENTIMETRE
    assert quilt.starts[0].size == 13 * CENTIMETRE


def test_the_seam_is_a_quarter_inch_in_a_quilt_in_centimetres_too() -> None:
    assert read_quilt('unit = "cm"\n' + LEAST).seam == Fraction(1, 4)


@pytest.mark.parametrize(
    ("written", "inches"),
    [
        ("5", "5"),
        ("2.7", "27/10"),
        ("+2.5", "5/2"),
        ("1_0.5", "21/2"),
        ("0x5", "5"),
        ("'5 1/2'", "11/2"),
        ("'5½\"'", "11/2"),
        ("'127 mm'", "5"),
    ],
)
def test_a_length_is_exact_however_it_is_written(written: str, inches: str) -> None:
    quilt = read_quilt(LEAST.replace("size = 5", f"size = {written}"))
    assert quilt.starts[0].size == Fraction(inches)


def test_blanks_around_a_name_are_left_off() -> None:
    assert read_quilt(LEAST.replace('"Low tide"', '"  Low tide "')).name == "Low tide"


def test_finishing_stages_come_in_working_order() -> None:
    shuffled = LEAST + '[finishing]\nstages = ["quilt", "bind", "layer"]\n'
    assert read_quilt(shuffled).finishing == FINISHING_STAGES == ("layer", "quilt", "bind")


@pytest.mark.parametrize("id", method_ids())
def test_there_is_a_file_for_every_method(id: str) -> None:
    written = written_method(id)
    sizes = derive(id, Fraction(5)).starts
    lines = [f'name = "One of {id}"', f'method = "{id}"', "layout = {rows = 2, columns = 3}"]
    for index, start in enumerate(written.starts):
        if index:
            lines += ["[[more]]", f'pile = "{start.pile}"']
        else:
            lines += ["[strips]", 'length = "38 in"'] if start.strip else ["[squares]"]
        size = show(sizes[start.pile].cutting, symbol=False)
        lines += [f'{"width" if start.strip else "size"} = "{size}"', f"count = {90 + index}"]
    quilt = read_quilt("\n".join(lines))
    assert quilt.method.id == id
    assert quilt.starts == tuple(
        StartPile(
            pile,
            sizes[pile].cutting,
            90 + index,
            length=Fraction(38) if written.starts[index].strip else None,
        )
        for index, pile in enumerate(quilt.method.starts)
    )


def test_piles_come_in_the_order_of_the_method_not_of_the_file() -> None:
    quilt = read_quilt(
        """
        name = "Long fence"
        method = "rail-fence"
        layout = {rows = 2, columns = 2}
        strips = {width = 2, length = 40, count = 4}
        more = [
            {pile = "light-strip", width = 2, packs = 2, in_a_pack = 3},
            {pile = "medium-strip", width = 2, length = 40, count = 5},
        ]
        """
    )
    two, forty = Fraction(2), Fraction(40)
    assert quilt.starts == (
        StartPile("dark-strip", two, 4, length=forty),
        StartPile("medium-strip", two, 5, length=forty),
        StartPile("light-strip", two, 6, packs=2, length=forty),
    )


def test_bytes_are_read_with_and_without_a_byte_order_mark() -> None:
    text = LEAST.replace("Low tide", "Ebbe über Sand").replace("\n", "\r\n")
    plain = read_quilt_bytes(text.encode())
    assert plain.name == "Ebbe über Sand"
    assert read_quilt_bytes(b"\xef\xbb\xbf" + text.encode()) == plain
    assert read_quilt("\ufeff" + text) == plain


@pytest.mark.parametrize(
    ("key", "most"), [("rows", 200), ("columns", 200), ("count", 9999), ("count", 1)]
)
def test_the_bounds_themselves_are_allowed(key: str, most: int) -> None:
    number = {"rows": "4", "columns": "5", "count": "20"}[key]
    quilt = read_quilt(LEAST.replace(f"{key} = {number}", f"{key} = {most}"))
    assert most in (quilt.target.rows, quilt.target.columns, quilt.starts[0].count)


def test_the_longest_name_notes_and_most_borders_are_allowed() -> None:
    border = '[[border]]\ncut = 3\ncloth = "{}"\n'
    text = f'notes = "{"n" * 2000}"\n' + LEAST.replace("Low tide", "é" * 80)
    quilt = read_quilt(text + border.format("c" * 80) * 12)
    assert (len(quilt.name), len(quilt.notes), len(quilt.borders)) == (80, 2000, 12)


def test_a_length_reads_the_same_here_and_on_its_own() -> None:
    for written in ("2 7/8", "2-7/8", "2⅞ in", "7.3 cm"):
        quilt = read_quilt(LEAST.replace("size = 5", f'size = "{written}"'))
        assert quilt.starts[0].size == parse(written)


def test_a_file_of_the_longest_is_read_and_one_more_byte_is_not() -> None:
    filler = "#" * (LONGEST_FILE - len(LEAST))
    assert read_quilt(LEAST + filler).name == "Low tide"
    with pytest.raises(QuiltFileFaults):
        read_quilt(LEAST + filler + "#")

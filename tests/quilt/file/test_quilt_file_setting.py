"""`[setting]` in a quilt file: how units are set, and every fault with what would be right."""

from __future__ import annotations

from fractions import Fraction as F

import pytest

from sewalong.quilt.file.faults import Fault, QuiltFileFaults
from sewalong.quilt.file.reader import read_quilt
from sewalong.quilt.setting import Cornerstones, Sashing, SetOnPoint
from tests.quilt.file.test_quilt_file_faults import GEESE

FIRST_LINE = 11


def squares(setting: str, *, columns: int = 4, seam: str = "") -> str:
    """Plain squares of 5 in; the keys of `setting` begin on line 11."""
    return (
        f'name = "Test"\nmethod = "plain-squares"\n{seam}\n[squares]\nsize = 5\ncount = 20\n'
        f"[layout]\nrows = 5\ncolumns = {columns}\n[setting]\n{setting}\n"
    )


def faults_of(text: str) -> list[Fault]:
    with pytest.raises(QuiltFileFaults) as caught:
        read_quilt(text)
    return list(caught.value.faults)


def test_units_are_set_straight_unless_something_else_is_said() -> None:
    assert read_quilt(squares('kind = "straight"')).setting is None
    assert read_quilt(squares("").replace("[setting]\n", "")).setting is None


def test_sashes_alone() -> None:
    read = read_quilt(squares('kind = "sashed"\nsash = "1 1/2"\ncloth = " oat linen "'))
    assert read.setting == Sashing(F(3, 2), "oat linen")


def test_sashes_with_a_frame_and_cornerstones() -> None:
    read = read_quilt(
        squares(
            'kind = "sashed"\nsash = "5 cm"\ncloth = "oat"\ncolour = "#E3D9C3"\nframe = true\n'
            'cornerstones = true\ncornerstone_cloth = "coral"\ncornerstone_colour = "#e2725b"'
        )
    )
    stones = Cornerstones("coral", "#e2725b")
    assert read.setting == Sashing(F(250, 127), "oat", "#e3d9c3", True, stones)


def test_units_on_point() -> None:
    read = read_quilt(squares('kind = "on point"\ncloth = "oat"\ncolour = "#E3D9C3"'))
    assert read.setting == SetOnPoint("oat", "#e3d9c3")
    assert read.units_for(read.target) == 5 * 4 + 4 * 3
    larger = read_quilt(squares('kind = "on point"\ncloth = "oat"\nlarger = "1/2"'))
    assert larger.setting == SetOnPoint("oat", None, F(1, 2))


def test_only_square_units_are_set_on_point() -> None:
    on_point = '[setting]\nkind = "on point"\ncloth = "oat"\n'
    (fault,) = faults_of(f"{GEESE}\n{on_point}")
    assert fault.key == "setting.kind"
    assert fault.sentence.startswith("Only square units are set on point here, and these are ")
    assert fault.sentence.endswith("Set them straight or with sashes.")


MISSING_SASH = 'The width sashes are cut at is missing. Add it, such as sash = "2 in".'
MISSING_CLOTH = 'The cloth of the sashes is missing. Name it, such as cloth = "cream linen".'
NO_STONES = "There are no cornerstones. Take this out, or write cornerstones = true."
STRAIGHT = "Units set straight have nothing between them. Take this out, or write another kind."
ROUND = "Units on point have triangles around them and no sashes. Take this out."

WRONG = [
    (
        "frame = true",
        [
            (
                "kind",
                10,
                'The kind of setting is missing. Write kind = "sashed" or kind = "on point", or '
                "leave [setting] out for units set straight.",
            )
        ],
    ),
    ('kind = "sashed"', [("sash", 10, MISSING_SASH), ("cloth", 10, MISSING_CLOTH)]),
    (
        'kind = "sashed"\nsash = "1/2"\ncloth = "oat"',
        [
            (
                "sash",
                12,
                "A sash cut at 1/2 in is used up by its seam allowances. Cut it at more than "
                "1/2 in.",
            )
        ],
    ),
    (
        'kind = "sashed"\nsash = 2\ncloth = "oat"\ncornerstone_cloth = "x"\n'
        'cornerstone_colour = "#000000"',
        [("cornerstone_cloth", 14, NO_STONES), ("cornerstone_colour", 15, NO_STONES)],
    ),
    (
        'kind = "sashed"\nsash = 2\ncloth = "oat"\ncornerstones = true',
        [
            (
                "cornerstone_cloth",
                10,
                "The cloth of the cornerstones is missing. Name it, such as "
                'cornerstone_cloth = "coral dots"; it may be that of the sashes.',
            )
        ],
    ),
    (
        'kind = "straight"\nsash = 2\nframe = false',
        [("sash", 12, STRAIGHT), ("frame", 13, STRAIGHT)],
    ),
    (
        'kind = "on point"\nsash = 2\nframe = true',
        [
            (
                "cloth",
                10,
                'The cloth of the triangles is missing. Name it, such as cloth = "cream linen".',
            ),
            ("sash", 12, ROUND),
            ("frame", 13, ROUND),
        ],
    ),
    (
        'kind = "sashed"\nsash = 2\ncloth = "oat"\nlarger = 1',
        [("larger", 14, "Sashes have no triangles. Take this out.")],
    ),
    (
        'kind = "sashed"\nsash = 2\ncloth = "oat"\nframe = "yes"',
        [("frame", 14, "This must be true or false, without quotes.")],
    ),
]


@pytest.mark.parametrize(("written", "said"), WRONG)
def test_every_fault_is_told_with_its_key_and_line(
    written: str, said: list[tuple[str, int, str]]
) -> None:
    wanted = [Fault(f"setting.{key}", line, sentence) for key, line, sentence in said]
    assert faults_of(squares(written)) == wanted


def test_faults_of_the_setting_and_of_the_rest_come_together() -> None:
    text = squares('kind = "herringbone"', seam='seam = "3 in"')
    assert [(fault.key, fault.line) for fault in faults_of(text)] == [
        ("seam", 3),
        ("setting.kind", FIRST_LINE),
    ]


def test_cornerstones_in_one_column_want_a_frame() -> None:
    written = (
        'kind = "sashed"\nsash = 2\ncloth = "oat"\ncornerstones = true\ncornerstone_cloth = "coral"'
    )
    (fault,) = faults_of(squares(written, columns=1))
    assert (fault.key, fault.line) == ("setting.cornerstones", 14)
    assert fault.sentence.startswith("With one column and no frame no sashes meet")
    assert read_quilt(squares(f"{written}\nframe = true", columns=1)).setting is not None

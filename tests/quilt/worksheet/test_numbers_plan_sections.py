"""What each section says, for other quilts and other choices."""

from __future__ import annotations

from fractions import Fraction as F

import pytest
from msgspec.structs import replace

from sewalong.piecing.catalogue import method_ids, written_method
from sewalong.quilt.choices import Choices
from sewalong.quilt.quilt import Quilt, StartPile, Target
from sewalong.quilt.worksheet.cut_list import RULE
from sewalong.quilt.worksheet.worksheet import numbers
from tests.quilt.worksheet.quilts import common, plain

SQUARES = '[squares]\nsize = "5"\ncount = 64'


def labels(quilt: Quilt, section: str) -> list[str]:
    by_id = {one.id: one for one in numbers(quilt).sections}
    return [line.label for line in by_id[section].lines]


def texts(quilt: Quilt, section: str) -> str:
    by_id = {one.id: one for one in numbers(quilt).sections}
    return "\n".join(map(str, by_id[section].lines))


def of_every_method(id: str) -> Quilt:
    """Each starting pile at the size the engine asks for."""
    from sewalong.lengths import Unit
    from sewalong.piecing.derive import start_sizes

    written = written_method(id)
    main = F(5, 2) if written.starts[0].strip else F(6)
    starts = tuple(
        StartPile(pile, size.cutting, 96, None, F(40) if written.starts[0].strip else None)
        for pile, size in start_sizes(written, main).items()
    )
    return Quilt("Test", id, Unit.INCH, F(1, 4), starts, Target(3, 4))


@pytest.mark.parametrize("id", method_ids())
def test_every_method_has_all_numbers(id: str) -> None:
    found = numbers(of_every_method(id))
    assert found.refusal == ""
    assert all(section.lines for section in found.sections)
    said = [line for section in found.sections for line in section.lines]
    assert all(line.label and line.text for line in said)
    assert all(line.text.strip() == line.text for line in said)


# Cutting order


def test_the_cut_list_goes_by_its_rule() -> None:
    cuts = labels(common('[cloth]\nbinding = "2 1/4"\n'), "cut-list")
    assert cuts == [
        "order",
        "border 2, indigo print",
        "border 1, cream linen",
        "binding",
        "squares",
        "border 1, cream linen, to length",
        "border 2, indigo print, to length",
        "back",
        "batting",
    ]
    assert "longest pieces first" in RULE


def test_the_back_is_never_cut_before_the_borders_are_on() -> None:
    last = numbers(common()).cut_list.lines[-2]
    assert last.label == "back"
    assert last.reason.startswith("when all borders are on")


def test_squares_from_packs_are_cut_already_and_others_come_from_cloth() -> None:
    assert "squares: cut already (168 squares in 4 packs)" in texts(common(), "cut-list")
    counted = texts(plain("stacked-four-patch", SQUARES), "cut-list")
    assert "64 squares of 5 in from 8 strips of 5 in" in counted


def test_named_fabrics_get_their_share_of_the_pieces() -> None:
    named = '[[fabric]]\nletter = "A"\nname = "sand"\n[[fabric]]\nletter = "B"\nname = "Sea"\n'
    quilt = plain("half-square-two", SQUARES, more=named)
    assert "squares, sand: 32 squares of 5 in from 4 strips of 5 in" in texts(quilt, "cut-list")
    shop = labels(quilt, "shopping")
    assert "sand" in shop
    assert "Sea" in shop


# Shopping


def test_cloth_of_one_name_is_added_before_it_is_rounded_up() -> None:
    quilt = common()
    one_cloth = tuple(replace(border, cloth=name) for border, name in
                      zip(quilt.borders, ("Sea", "sea"), strict=True))  # fmt: skip
    shop = numbers(replace(quilt, borders=one_cloth)).shopping
    sea = [line for line in shop.lines if line.label == "Sea"]
    assert len(sea) == 1
    # 6 strips of 2 1/2 in and 7 of 5 in: 15 + 35 = 50 in, 1 1/2 yd.
    assert sea[0].text == "buy 1 1/2 yd"
    assert sea[0].reason.startswith("border 1 15 in, border 2 35 in; 50 in of cloth")


def test_the_cloth_section_and_the_shopping_list_agree() -> None:
    found = numbers(common())
    cloth = {line.label: line.inches for line in found.cloth.lines}
    shop = {line.label: line.inches for line in found.shopping.lines}
    assert shop["cream linen"] == cloth["border 1, cream linen"]
    assert shop["binding"] == cloth["binding"]
    marked = [line for line in found.cloth.lines if "this way" in line.text]
    assert len(marked) == 1
    assert shop["backing"] == marked[0].inches


def test_thread_comes_in_spools_when_it_is_known_how_much_is_on_one() -> None:
    without = texts(common(), "thread")
    assert "spool" not in without
    given = "[cloth]\nspool_metres = 150\nbobbin_metres = 30\n"
    found = numbers(common(given))
    lines = {line.label: line for line in found.thread.lines}
    total, bobbin = lines["all thread"].inches, lines["in the bobbin"].inches
    assert total is not None
    assert bobbin is not None
    assert lines["spools"].text == f"{-(-total * 0.0254 // 150):.0f} spools of 150 m"
    assert lines["bobbins"].text == f"{-(-bobbin * 0.0254 // 30):.0f} bobbins of 30 m"


def test_thread_is_two_and_a_half_times_all_seams_and_the_waste() -> None:
    lines = numbers(common()).thread.lines
    seams = sum(line.inches or 0 for line in lines if line.text.endswith("of seam"))
    total = next(line for line in lines if line.label == "all thread")
    # Coats, Standard Stitch Type Classification: 2.5 for stitch type 301; waste 10 to 20 in 100.
    assert total.inches == pytest.approx(seams * 2.5 * 1.15)


def test_seams_of_the_units_are_counted_by_the_stage() -> None:
    around = next(line for line in numbers(common()).thread.lines if line.label == "sew around")
    # 81 units take 21 stacks; each is sewn 4 * 9 in around, seams lying 1/4 in inside.
    assert around.inches == pytest.approx(21 * 4 * 9)


# Her own seam


def test_her_own_seam_changes_unit_and_top() -> None:
    found = numbers(common('[cloth]\nown_seam = "5/16"\n'))
    lines = {line.label: line for line in found.sizes.lines}
    # A four-patch 2 * 5 - 2 * 5/16, sewn around at 5/16, cut twice: (9.375 - 0.625) / root 2.
    unit = lines["unit with your own seam of 5/16 in"]
    assert unit.inches == pytest.approx(8.75 / 2**0.5, abs=1e-5)
    top = lines["top with your own seam finishes at"]
    finishes = 9 * (8.75 / 2**0.5 - 0.625) + 2 * (2.5 - 0.625) + 2 * (5 - 0.625)
    assert top.inches == pytest.approx(finishes, abs=1e-4)
    assert "less across" in top.reason


def test_without_a_measured_seam_nothing_is_said_of_it() -> None:
    assert not any("own seam" in label for label in labels(common(), "sizes"))


# What cannot be had


def test_a_quilt_of_a_method_that_is_gone_says_so_and_raises_nothing() -> None:
    found = numbers(replace(common(), method_id="not-there"))
    assert "No method is called 'not-there'" in found.refusal
    assert all(found.refusal in str(section.lines[0]) for section in found.sections[:-1])
    assert found.layouts == ()


def test_one_number_that_cannot_be_had_takes_no_other_with_it() -> None:
    quilt = common()
    found = numbers(quilt, choices=Choices(usable=F(4)))
    border = next(line for line in found.cloth.lines if line.label == "borders")
    assert "A join takes 5 in" in border.text
    assert any(line.label == "batting" for line in found.cloth.lines)
    assert found.refusal == ""
    assert any("A join takes 5 in" in line.text for line in found.shopping.lines)


def test_seams_that_eat_the_borders_of_her_own_are_said() -> None:
    found = numbers(common('[cloth]\nown_seam = "1 1/2"\n'))
    said = [line for line in found.sizes.lines if line.label == "own seam"]
    assert len(said) == 1
    assert said[0].text.endswith(".")


# Metric


def test_centimetres_are_printed_throughout() -> None:
    quilt = plain(
        "half-square-two",
        'unit = "cm"\nseam = "0.75"\n[squares]\nsize = 12.5\ncount = 110',
        12,
        9,
        '[[border]]\ncut = 9\ncloth = "plain"\n',
    )
    found = numbers(quilt)
    for section in found.sections:
        for line in section.lines:
            assert " in " not in f"{line.text} ".replace("in all", "").replace("in the", ""), line
    sizes = {line.label: line for line in found.sizes.lines}
    assert sizes["trim units to"].text == "11 cm across × 11 cm down"
    assert "12.5 cm" in sizes["squares"].text


def test_a_layout_that_is_far_too_large_is_still_shown_as_wanted() -> None:
    found = numbers(common(), Target(200, 200))
    assert found.layouts[0].short == 40_000 - 84
    assert len(found.rows.lines) == 200

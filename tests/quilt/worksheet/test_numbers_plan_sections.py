"""What each section says, for other quilts and other choices."""

from __future__ import annotations

from fractions import Fraction as F

import pytest
from msgspec.structs import replace

from sewalong.piecing.catalogue import method_ids, written_method
from sewalong.piecing.derive import derive
from sewalong.quilt.choices import Choices
from sewalong.quilt.quilt import Quilt, StartPile, Target
from sewalong.quilt.worksheet.cut_list import RULE
from sewalong.quilt.worksheet.worksheet import worksheet
from tests.quilt.worksheet.quilts import common, plain

SQUARES = '[squares]\nsize = "5"\ncount = 64'


def labels(quilt: Quilt, section: str) -> list[str]:
    by_id = {one.id: one for one in worksheet(quilt).sections}
    return [line.label for line in by_id[section].lines]


def texts(quilt: Quilt, section: str) -> str:
    by_id = {one.id: one for one in worksheet(quilt).sections}
    return "\n".join(map(str, by_id[section].lines))


def of_every_method(id: str) -> Quilt:
    """Each starting pile at the size the engine asks for."""
    from sewalong.lengths import Unit
    from sewalong.piecing.derive import derive

    written = written_method(id)
    main = F(5, 2) if written.starts[0].strip else F(6)
    starts = tuple(
        StartPile(pile, size.cutting, 96, None, F(40) if written.starts[0].strip else None)
        for pile, size in derive(written, main).starts.items()
    )
    return Quilt("Test", id, Unit.INCH, F(1, 4), starts, Target(3, 4))


@pytest.mark.parametrize("id", method_ids())
def test_every_method_has_all_numbers(id: str) -> None:
    found = worksheet(of_every_method(id))
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
    last = worksheet(common()).cut_list.lines[-2]
    assert last.label == "back"
    assert last.reason.startswith("when all borders are on")


def test_squares_from_packs_are_cut_already_and_others_come_from_cloth() -> None:
    assert (
        "squares: cut already (168 squares in 4 packs; 168 for the target: 168 there, none short)"
        in texts(common(), "cut-list")
    )
    counted = texts(plain("stacked-four-patch", SQUARES), "cut-list")
    # 16 units are 4 stacks of two four-patches: 32 squares of the 64.
    assert "squares: 32 squares of 5 in from 4 strips of 5 in" in counted
    assert "32 for the target: 64 there, none short; if not cut yet" in counted


def test_the_larger_pieces_are_cut_first_whatever_order_they_are_named_in() -> None:
    geese = """[squares]
size = "5"
count = 12
[[more]]
pile = "small-square"
size = "2 7/8"
count = 48
"""
    assert labels(plain("flying-geese-four", geese), "cut-list")[2:4] == [
        "large squares",
        "small squares",
    ]


STRIPS = """[strips]
width = "2 1/2"
count = 6
length = "42"
[[more]]
pile = "light-strip"
width = "2 1/2"
count = 5
"""


def test_strips_are_cut_as_long_as_they_are_said_to_be() -> None:
    quilt = plain("four-patch-strips", STRIPS)
    cut = texts(quilt, "cut-list")
    # Strips of 42 in show that the cloth is wider than the 40 in that are usual.
    assert "dark strips: 2 dark strips of 2 1/2 in, 42 in long (2 for the target: 6 there" in cut
    assert "1 a strip at 42 in usable, 0 over" in cut
    sizes = texts(quilt, "sizes")
    assert "dark strips: 2 1/2 in wide, 42 in long (6 at their label)" in sizes
    shop = texts(quilt, "shopping")
    assert "cloth for dark strips, if not cut yet: buy 1/4 yd" in shop
    # Shorter strips come off cloth of the usual width.
    assert "1 a strip at 40 in usable" in texts(
        plain("four-patch-strips", STRIPS.replace("42", "30")), "cut-list"
    )


def test_one_pack_is_one_pack() -> None:
    quilt = plain("stacked-four-patch", '[squares]\nsize = "5"\npacks = 1\nin_a_pack = 42')
    assert "squares: 5 in (42 in 1 pack, at their label)" in texts(quilt, "sizes")
    assert "squares: cut already (42 squares in 1 pack; " in texts(quilt, "cut-list")
    assert "squares of 5 in: 1 pack (42 squares in all" in texts(quilt, "shopping")


def test_named_fabrics_get_their_share_of_the_pieces() -> None:
    named = '[[fabric]]\nletter = "A"\nname = "sand"\n[[fabric]]\nletter = "B"\nname = "Sea"\n'
    quilt = plain("half-square-two", SQUARES, more=named)
    assert "squares, sand: 8 squares of 5 in from 1 strip of 5 in" in texts(quilt, "cut-list")
    shop = labels(quilt, "shopping")
    assert "sand" in shop
    assert "Sea" in shop


def test_a_piece_left_over_by_the_shares_is_cut_too() -> None:
    named = '[[fabric]]\nletter = "A"\nname = "sand"\n'
    # 5 units take 3 pairs of squares, one of each.
    cut = texts(plain("half-square-two", SQUARES, 1, 5, more=named), "cut-list")
    assert "squares in all: 6 squares" in cut
    assert "squares, sand: 3 squares of 5 in" in cut
    assert "squares: 3 squares of 5 in" in cut


def test_without_borders_the_back_is_cut_when_the_top_is_done() -> None:
    cut = texts(plain("plain-squares", SQUARES), "cut-list")
    assert "seams along the length (when the top is done; " in cut


# Cloth


def test_mitred_borders_say_what_they_need_at_the_least() -> None:
    # 4 by 4 squares of 5 in finish at 18 in. A border 2 in wide makes 22; the least is 22 1/2 and
    # the length advised 24.
    edged = '[[border]]\ncut = "2 1/2"\ncloth = "sea"\n[cloth]\ncorners = "mitred"\n'
    cloth = texts(plain("plain-squares", SQUARES, more=edged), "cloth")
    assert "border 1, sea, lengths: 2 sides of 24 in, top and bottom of 24 in (mitred; " in cloth
    assert "; mitred strips need 22 1/2 in and 22 1/2 in at the least, the rest" in cloth
    assert "mitred" not in texts(common(), "cloth")


def test_the_back_says_what_the_better_way_saves() -> None:
    # 6 rows of 4 are 27 1/2 by 18 1/2 in and 8 in more each way: 35 1/2 by 26 1/2, one panel.
    way = texts(plain("plain-squares", SQUARES, 6), "cloth")
    assert (
        "seams across the width: 1 panel of 26 1/2 in, buy 3/4 yd; this way takes 9 in less" in way
    )
    assert "seams along the length: 1 panel of 35 1/2 in, buy 1 yd (1 panel" in way
    assert "buy 3/4 yd; this way takes no more cloth" in texts(
        plain("plain-squares", SQUARES), "cloth"
    )


def test_a_top_larger_than_any_batting_takes_it_from_the_roll() -> None:
    huge = plain("plain-squares", SQUARES, 30, 30)
    # 30 * 4 1/2 and 1/2 in, and 8 in more.
    assert "batting: 143 1/2 in across × 143 1/2 in down (no listed" in texts(huge, "cloth")
    assert "batting: from the roll, 143 1/2 × 143 1/2 in (no listed" in texts(huge, "shopping")
    assert "batting: crib, 45 × 60 in" in texts(plain("plain-squares", SQUARES, 7, 7), "shopping")


# Shopping


def test_cloth_of_one_name_is_added_before_it_is_rounded_up() -> None:
    quilt = common()
    one_cloth = tuple(replace(border, cloth=name) for border, name in
                      zip(quilt.borders, ("Sea", "sea"), strict=True))  # fmt: skip
    shop = worksheet(replace(quilt, borders=one_cloth)).shopping
    sea = [line for line in shop.lines if line.label == "Sea"]
    assert len(sea) == 1
    # 6 strips of 2 1/2 in and 7 of 5 in: 15 + 35 = 50 in, 1 1/2 yd.
    assert sea[0].text == "buy 1 1/2 yd"
    assert sea[0].reason.startswith("border 1 15 in, border 2 35 in; 50 in of cloth")


def test_the_cloth_section_and_the_shopping_list_agree() -> None:
    found = worksheet(common())
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
    found = worksheet(common(given))
    lines = {line.label: line for line in found.thread.lines}
    total, bobbin = lines["all thread"].inches, lines["in the bobbin"].inches
    assert total is not None
    assert bobbin is not None
    assert lines["spools"].text == f"{-(-total * 0.0254 // 150):.0f} spools of 150 m"
    assert lines["bobbins"].text == f"{-(-bobbin * 0.0254 // 30):.0f} bobbins of 30 m"
    shop = {line.label: line.text for line in found.shopping.lines}
    assert shop["thread"] == f"{lines['spools'].text}, {total * 0.0254:.0f} m"
    assert (
        "spool"
        not in {line.label: line for line in worksheet(common()).shopping.lines}["thread"].text
    )


def test_thread_is_given_in_yards_and_metres_and_to_a_metric_owner_in_metres() -> None:
    # 64 squares of 5 in as 4 by 4: 12 seams of 5 in, 3 of 18 1/2 in and 74 in of binding, 189 1/2.
    lines = {line.label: line for line in worksheet(plain("plain-squares", SQUARES)).thread.lines}
    assert lines["units into rows"].reason == "12 × 5 in"
    assert lines["all thread"].reason.startswith(
        "5.3 yd, 4.8 m of seam at 2.5 times for lockstitch, stitch type 301 of ISO 4915, "
        "and 15 % waste"
    )
    metric = plain("plain-squares", 'unit = "cm"\nseam = 0.75\n[squares]\nsize = 12\ncount = 16')
    # 12 seams of 12 cm, 3 of 43 1/2 cm and 174 cm of binding: 448 1/2 cm.
    assert "all thread: 12.9 m (4.5 m of seam" in texts(metric, "thread")


def test_every_seam_is_in_the_list_and_nothing_else() -> None:
    assert labels(common(), "thread") == [
        "sew",
        "sew around",
        "units into rows",
        "rows into a top",
        "border 1",
        "border 2",
        "binding",
        "all thread",
        "in the needle",
        "in the bobbin",
    ]
    single = plain("plain-squares", SQUARES, 1, 1)
    assert labels(single, "thread")[:2] == ["binding", "all thread"]


def test_a_seam_shorter_than_an_inch_is_counted() -> None:
    small = '[squares]\nsize = "7/8"\ncount = 64'
    assert "sew pairs: 0.8 yd, 0.7 m of seam (32 × 7/8 in)" in texts(
        plain("four-patch", small), "thread"
    )


def test_thread_is_two_and_a_half_times_all_seams_and_the_waste() -> None:
    lines = worksheet(common()).thread.lines
    seams = sum(line.inches or 0 for line in lines if line.text.endswith("of seam"))
    total = next(line for line in lines if line.label == "all thread")
    # Coats, Standard Stitch Type Classification: 2.5 for stitch type 301; waste 10 to 20 in 100.
    assert total.inches == pytest.approx(seams * 2.5 * 1.15)


def test_seams_of_the_units_are_counted_by_the_stage() -> None:
    around = next(line for line in worksheet(common()).thread.lines if line.label == "sew around")
    # 81 units take 21 stacks; each is sewn 4 * 9 in around, seams lying 1/4 in inside.
    assert around.inches == pytest.approx(21 * 4 * 9)


# Her own seam


def test_her_own_seam_changes_unit_and_top() -> None:
    found = worksheet(common('[cloth]\nown_seam = "5/16"\n'))
    lines = {line.label: line for line in found.sizes.lines}
    # A four-patch 2 * 5 - 2 * 5/16, sewn around at 5/16, cut twice: (9.375 - 0.625) / root 2.
    unit = lines["unit with your own seam of 5/16 in"]
    assert unit.inches == pytest.approx(8.75 / 2**0.5, abs=1e-5)
    top = lines["top with your own seam finishes at"]
    finishes = 9 * (8.75 / 2**0.5 - 0.625) + 2 * (2.5 - 0.625) + 2 * (5 - 0.625)
    assert top.inches == pytest.approx(finishes, abs=1e-4)
    assert "less across" in top.reason


def test_a_narrower_seam_of_her_own_makes_the_top_larger() -> None:
    # 4 squares of 5 in finish at 20 in less 8 allowances: 18 in at 1/4 in, 18 1/2 in at 3/16 in.
    own = '[cloth]\nown_seam = "3/16"\n'
    sizes = texts(plain("plain-squares", SQUARES, more=own), "sizes")
    assert "unit with your own seam of 3/16 in: 5 in across × 5 in down (unfinished)" in sizes
    assert "18 1/2 in across × 18 1/2 in down (0.500 in more across, 0.500 in more down)" in sizes
    same = texts(plain("plain-squares", SQUARES, more='[cloth]\nown_seam = "1/4"\n'), "sizes")
    assert "18 in across × 18 in down (the same across, the same down)" in same


def test_her_own_seam_changes_each_side_of_a_unit_by_its_own_seams() -> None:
    # The worksheet goes by what each side loses for an inch of seam. The same pieces really sewn
    # at her seam must come to as much.
    own = '[cloth]\nown_seam = "5/16"\n'
    geese = """[squares]
size = "6 1/2"
count = 4
[[more]]
pile = "small-square"
size = "3 3/8"
count = 16
"""
    found = {
        line.label: line
        for line in worksheet(plain("flying-geese-four", geese, more=own)).sizes.lines
    }
    unit = found["unit with your own seam of 5/16 in"]
    at_own = derive(
        "flying-geese-four", {"large-square": F("6.5"), "small-square": F("3.375")}, F(5, 16)
    ).unit
    assert unit.inches == pytest.approx(at_own.width, abs=1e-5)
    assert unit.inches_down == pytest.approx(at_own.height, abs=1e-5)
    assert unit.inches != unit.inches_down


def test_without_a_measured_seam_nothing_is_said_of_it() -> None:
    assert not any("own seam" in label for label in labels(common(), "sizes"))


# Sizes


def test_the_row_by_row_list_counts_from_one() -> None:
    assert labels(plain("plain-squares", SQUARES, 3), "rows") == [
        "after row 1",
        "after row 2",
        "after row 3",
    ]


def test_each_border_is_numbered_and_says_what_it_adds() -> None:
    sizes = texts(common(), "sizes")
    assert [label for label in labels(common(), "sizes") if "border" in label] == [
        "with border 1",
        "with border 2",
    ]
    assert "(cream linen adds 2 in each side, raw edge to raw edge)" in sizes
    assert "(indigo print adds 4 1/2 in each side, raw edge to raw edge)" in sizes


def test_the_top_of_trimmed_units_is_smaller_and_not_told_where_nothing_is_trimmed() -> None:
    trimmed = {line.label: line for line in worksheet(common()).sizes.lines}[
        "top of trimmed units finishes at"
    ]
    # Nine units of 6 1/4 in finish at 5 3/4 each; borders of 2 and 4 1/2 in on two sides.
    assert trimmed.inches == trimmed.inches_down == 9 * 5.75 + 13
    assert not any("trimmed" in label for label in labels(plain("plain-squares", SQUARES), "sizes"))


def test_each_pile_between_the_first_and_the_unit_has_its_size() -> None:
    assert labels(common(), "sizes")[:8] == [
        "squares",
        "pair",
        "four-patch",
        "pressed four-patch",
        "stack",
        "sewn stack",
        "cut unit",
        "unit unfinished",
    ]


# Layouts


def test_layouts_leave_no_more_than_a_quarter_over_and_are_no_longer_than_twice_their_width() -> (
    None
):
    shown = {(one.target.rows, one.target.columns) for one in worksheet(common()).layouts}
    # Of 84: 7 by 9 leaves 21, a quarter; 7 by 8 leaves 28. 6 by 12 is 48 by 83 in with the
    # borders; 5 by 14 would be 42 by 95.
    assert (7, 9) in shown
    assert (7, 8) not in shown
    assert (6, 12) in shown
    assert (5, 14) not in shown


def test_a_layout_says_what_it_leaves_and_which_is_wanted() -> None:
    found = {line.label: line for line in worksheet(common()).sections[-1].lines}
    assert found["9 rows of 9"].text.endswith("65.776 in), 3 spare; the one now wanted")
    assert found["9 rows of 9"].reason == "square"
    assert found["12 rows of 7"].text.endswith(", takes every unit")
    assert found["12 rows of 7"].reason == "longer than wide"
    # 12 units of 5.864 in and 13 in of borders.
    assert found["12 rows of 7"].inches_down == pytest.approx(83.368, abs=1e-3)


# What cannot be had


def test_a_quilt_of_a_method_that_is_gone_says_so_and_raises_nothing() -> None:
    found = worksheet(replace(common(), method_id="not-there", method_text=None))
    assert "No method is called 'not-there'" in found.refusal
    assert all(found.refusal in str(section.lines[0]) for section in found.sections[:-1])
    assert found.layouts == ()
    assert found.units == 0
    assert all(len(section.lines) == 1 for section in found.sections[:-1])


def test_one_number_that_cannot_be_had_takes_no_other_with_it() -> None:
    quilt = common()
    found = worksheet(replace(quilt, choices=Choices(usable=F(4))))
    border = next(line for line in found.cloth.lines if line.label == "borders")
    assert "A join takes 5 in" in border.text
    assert any(line.label == "batting" for line in found.cloth.lines)
    assert found.refusal == ""
    assert any("A join takes 5 in" in line.text for line in found.shopping.lines)


def test_seams_that_eat_the_borders_of_her_own_are_said() -> None:
    found = worksheet(common('[cloth]\nown_seam = "1 1/2"\n'))
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
    found = worksheet(quilt)
    for section in found.sections:
        for line in section.lines:
            assert " in " not in f"{line.text} ".replace("in all", "").replace("in the", ""), line
    sizes = {line.label: line for line in found.sizes.lines}
    assert sizes["trim units to"].text == "11 cm across × 11 cm down"
    assert sizes["trim units to"].reason == "the largest whole half centimetre"
    # A unit of two triangles is a seam times root 2 smaller than its squares: 13 less 1.06 cm.
    larger = plain("half-square-two", 'unit = "cm"\nseam = "0.75"\n[squares]\nsize = 13\ncount = 8')
    assert "trim units to: 11.5 cm across × 11.5 cm down" in texts(larger, "sizes")
    assert "12.5 cm" in sizes["squares"].text


def test_a_layout_that_is_far_too_large_is_still_shown_as_wanted() -> None:
    found = worksheet(common(), Target(200, 200))
    assert found.layouts[0].short == 40_000 - 84
    assert len(found.rows.lines) == 200

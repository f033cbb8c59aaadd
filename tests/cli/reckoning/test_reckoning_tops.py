"""Layouts, settings and borders: problems of people who piece, each answered by one command.

Each source tells of the problem; the right answers were worked out anew, from plane geometry or
by counting. Where no page is named the problem is common practice.
"""

from __future__ import annotations

import pytest

from tests.cli.reckoning.conftest import Ask, Case, each_of, gives

CASES: list[Case] = [
    (
        "https://madaboutpatchwork.wordpress.com/2013/03/27/fabric-stretch-friend-or-enemy/",
        "sides that differ by half an inch",
        "reckon border-length 60, 60 1/2",
        ["cut two at: 60 1/4 in", "60 1/2 in: 1/4 in to ease in"],
    ),
    (
        "https://madaboutpatchwork.wordpress.com/2013/03/27/fabric-stretch-friend-or-enemy/",
        "top and bottom that differ by a quarter",
        "reckon border-length 50, 50 1/4",
        ["cut two at: 50 1/8 in", "50 1/4 in: 1/8 in to ease in"],
    ),
    (
        "https://handmadehappy.wordpress.com/2011/01/07/quilting-is-not-for-the-faint-hearted/",
        "a pattern taken to a larger bed",
        "layouts --units 30 --finishes 7 1/2 --border 2 3/4 --near 77 x 92 --pattern 6x5",
        ["smallest that covers it: 12 rows of 10", "120 units", "4.00 times as many"],
    ),
    (
        "https://handmadehappy.wordpress.com/2011/01/07/quilting-is-not-for-the-faint-hearted/",
        "sixty squares",
        "reckon straight --rows 10 --columns 6 --finishes 7 1/2",
        ["45 in across × 75 in down"],
    ),
    (
        "http://grammilousgarden.blogspot.com/2016/03/decisions-decisions.html",
        "a top that looks too long",
        "layouts --units 35 --finishes 7 1/2 --rows 7 --columns 5",
        [
            "37 1/2 in across × 52 1/2 in down",
            "6 rows of 6: 45 in across × 45 in down",
            "6 rows of 6: 1 short",
            "7 rows of 6: 45 in across × 52 1/2 in down",
            "7 rows of 6: 7 short",
        ],
    ),
    (
        "https://www.the-littlest-thistle.com/2018/01/how-many-squares-quilt-making-basics.html",
        "a chart that rounds down",
        "layouts --units 192 --finishes 6 --near 70 x 91",
        [
            "smallest that covers it: 16 rows of 12\nsmallest that covers it: 72 in across × 96 in down",
            "15 rows of 11\nlargest that lies within it: 66 in across × 90 in down",
            "4 in short across",
        ],
    ),
    (
        "http://www.delawarequilts.com/MyQuilts/Sizes.html",
        "sashes between",
        "reckon sashing --rows 6 --columns 5 --finishes 12 --sash 3 --inner-only",
        ["72 in across × 87 in down"],
    ),
    (
        "http://www.delawarequilts.com/MyQuilts/Sizes.html",
        "and around",
        "reckon sashing --rows 6 --columns 5 --finishes 12 --sash 3",
        ["78 in across × 93 in down"],
    ),
    (
        "http://susanintexas.blogspot.com/2009/02/quilt-math-algorithms-for-cornerstones.html",
        "sashes and cornerstones",
        "reckon sashing --rows 4 --columns 5 --finishes 12 --sash 2",
        ["sashes: 49", "cornerstones: 30"],
    ),
    (
        "https://www.sewingwithstitcher.com/sashings-and-cornerstones/",
        "strips for sashes",
        "reckon sashing --rows 4 --columns 3 --finishes 7 3/4 --sash 2",
        [
            "sashes: 31",
            "8 strips of 2 1/2 in: 31 pieces, 4 a strip at 40 in usable, 1 over",
            "4 a strip at 40 in usable",
        ],
    ),
    (
        "https://www.kristamoser.com/post/quilt-math-made-easy",
        "setting triangles",
        "reckon on-point --rows 4 --columns 4 --finishes 6",
        [
            "12 from 3 squares cut at 9 3/4 in",
            "cut twice",
            "4 from 2 squares cut at 5 1/8 in",
            "cut once",
            "straight grain lies outside",
        ],
    ),
    (
        "http://grayedgerider.blogspot.com/2017/06/no-notes-to-self.html",
        "from nine to sixteen",
        "layouts --units 9 --finishes 12 --rows 4 --columns 4 --pattern 3x3",
        ["7 short", "7 more than 9: 1.78 times as many"],
    ),
    (
        "https://brackman9.rssing.com/chan-10073132/article352.html",
        "two borders of 2 in each",
        "reckon border --centre-finishes 54 3/4 --finishes 2 --finishes 2 --finishes 9",
        ["with border 3 it finishes at: 80 3/4 in"],
    ),
    (
        "https://brackman9.rssing.com/chan-10073132/article352.html",
        "2 in together",
        "reckon border --centre-finishes 54 3/4 --finishes 1 --finishes 1 --finishes 9",
        ["with border 3 it finishes at: 76 3/4 in"],
    ),
    (
        "http://www.lovebugstudios.com/blog/2011/12/03/long-arm-quilting-ellen-23-fixing-wavy-borders/",
        "wavy edges",
        "reckon border-length 108, 100, 108 --rule middle",
        ["cut two at: 100 in", "they differ by: 8 in", "8.0 %"],
    ),
    (
        "http://www.lovebugstudios.com/blog/2011/12/03/long-arm-quilting-ellen-23-fixing-wavy-borders/",
        "the other way",
        "reckon border-length 100, 94, 100 --rule middle",
        ["cut two at: 94 in", "they differ by: 6 in"],
    ),
    (
        "https://www.allpeoplequilt.com/how-to-quilt/finishing/mitering-borders",
        "a mitred border of 4 in",
        "reckon border --top 36 1/2 --cut 4 1/2 --corners mitred",
        ["at the least: 44 1/2 in", "advised: 46 in"],
    ),
    (
        "https://www.allpeoplequilt.com/how-to-quilt/finishing/mitering-borders",
        "a mitred border of 5 in",
        "reckon border --top 40 1/2 --cut 5 1/2 --corners mitred",
        ["at the least: 50 1/2 in"],
    ),
    (
        "http://www.patchworktimes.com/borders/making-a-pieced-border-fit/",
        "a pieced border that does not fit",
        "reckon pieced-border --edge 46 --piece 5",
        [
            "pieces along the edge: 10",
            "they come to: 50 in",
            "spacer each side, finished: 2 in",
            "cut the spacers at: 2 1/2 in",
        ],
    ),
    (
        "https://patchworktimes.com/2016/07/11/border-for-on-point-quilts",
        "rounding a top on point, across",
        "reckon ease --edge 50.912 --to 51",
        ["exactly -0.088 in", "ease it in"],
    ),
    (
        "https://patchworktimes.com/2016/07/11/border-for-on-point-quilts",
        "and down",
        "reckon ease --edge 67.882 --to 68",
        ["exactly -0.118 in", "ease it in"],
    ),
]


@each_of(CASES)
def test_a_command_answers_it(ask: Ask, case: Case) -> None:
    gives(ask, case)


def test_from_a_bed_to_the_blocks_in_every_setting(ask: Ask) -> None:
    command = "reckon blocks --bed queen --drop 13 --finishes 6 --sash 1 1/2"
    out = ask(f"{command} --method stacked-four-patch").out
    assert "wanted: 86 in across × 93 in down" in out
    assert "straight, covers it: 16 rows of 15\nstraight, covers it: 240 blocks\n" in out
    assert "straight, covers it: 90 in across × 96 in down" in out
    assert "straight, covers it, takes: 480 squares" in out
    assert "with sashes, covers it: 337 sashes" in out
    assert "on point, covers it: 40 side and 4 corner" in out
    data = ask(f"{command} --json").data
    assert [(one["setting"], one["blocks"]) for one in data["layouts"] if one["covers"]] == [
        ("straight", 240), ("with sashes", 156), ("on point", 221)
    ]  # fmt: skip


def test_blocks_that_are_not_square_are_not_set_on_point(ask: Ask) -> None:
    out = ask("reckon blocks --near 60 x 80 --finishes 6 x 9").out
    assert "straight, covers it: 9 rows of 10" in out
    assert "on point" not in out


def test_layouts_without_a_count_say_where_a_size_leads_to_blocks(ask: Ask) -> None:
    assert "sewalong reckon blocks" in ask("layouts --finishes 6 --near 60 x 80").err


def test_blocks_need_a_size(ask: Ask) -> None:
    answer = ask("reckon blocks --finishes 6")
    assert answer.status == 2
    assert "Give --near and a size, or --bed" in answer.err


def test_a_piece_cut_up_and_the_piece_to_begin_with(ask: Ask) -> None:
    out = ask("reckon cut-up --piece 8 1/2 --upright 2 --lying 2").out
    assert "sewn together again: 7 1/2 in across × 7 1/2 in down" in out
    out = ask("reckon cut-up --wanted 60 x 80 --upright 3 --lying 2").out
    assert "begin with: 61 1/2 × 81 in" in out
    # Two thirds more than 10 in is no line of a ruler: cut at 10 11/16, it ends 1/48 in over.
    begun = ask("reckon cut-up --wanted 10 --upright 1 --seam 1/3 --json").data
    first, after = (line["inches"] for line in begun["lines"][:2])
    assert first == 10 + 11 / 16
    assert after == pytest.approx(first - 2 / 3)
    assert "Give one of --piece" in ask("reckon cut-up --upright 2").err


def test_a_block_at_another_size(ask: Ask) -> None:
    out = ask("reckon enlarge --cut 2 1/2 --cut 2 1/2 x 4 1/2 --from 6 --to 9").out
    assert "times as large: 1 1/2" in out
    assert "instead of 2 1/2 in cut: 3 1/2 in" in out
    assert "instead of 2 1/2 × 4 1/2 in cut: 3 1/2 in × 6 1/2 in" in out
    assert "cloth: 2.25 times as much" in out
    for wrong in ("--times 0", "--times x", "--from 6", "--times 1/0"):
        assert ask(f"reckon enlarge --cut 2 1/2 {wrong}").status == 2

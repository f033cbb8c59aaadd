"""Counting troubles that makers wrote about, each with the page it comes from.

The right answers are worked out again here; the quilts are reduced to what was counted.
"""

from __future__ import annotations

import pytest

from sewalong.piecing.catalogue import method
from sewalong.piecing.method import Pieces
from sewalong.progress.plan.plan import plan
from sewalong.quilt.quilt import Target
from tests.progress import every_act as c
from tests.progress.building import a_quilt, all_units, everything, go_on, opening, play


@pytest.mark.parametrize(
    ("in_a_pack", "packs", "spare"),
    [
        (56, 3, 28),
        (50, 3, 10),
        (43, 4, 32),
        (42, 4, 28),
        (40, 4, 20),
        (32, 5, 20),
        (25, 6, 10),
        (22, 7, 14),
    ],
)
def test_packs_of_one_name_hold_22_to_56_squares(in_a_pack: int, packs: int, spare: int) -> None:
    """140 squares wanted. Source: http://imperamagna.blogspot.com/2013/01/
    tricky-little-charm-packs.html
    """
    enough = plan(opening(a_quilt("paired-squares", packs * in_a_pack, 14, 20)))
    assert enough.shortfall is None
    assert enough.units.spare // 4 * 2 + sum(p.count for p in enough.over) == spare
    one_less = plan(opening(a_quilt("paired-squares", (packs - 1) * in_a_pack, 14, 20))).shortfall
    assert one_less is not None
    assert one_less.pieces == (Pieces("square", 140 - (packs - 1) * in_a_pack),)


def test_a_pile_counted_by_eye_three_times_is_recounted_and_then_kept() -> None:
    """71 stood, 9 more were made, 11 more turned up: 91. Source:
    http://beckyquiltobsession.blogspot.com/2012/07/miscounting-ugh.html
    """
    quilt = a_quilt("paired-squares", 60, 8, 10)
    state, record = play(quilt, *everything(quilt, "press-open", make=80))
    state = go_on(state, record, c.Recount("unit", 71))
    assert state.recounted == {"unit": -9}
    assert plan(state).units.to_go == 9
    state = go_on(state, record, c.Count("press-open", 9))
    assert plan(state).units.to_go == 0
    state = go_on(state, record, c.Find("unit", 11))
    assert state.piles["unit"] == 91
    assert plan(state).units.made - state.units_wanted == 11


def test_a_hundred_units_put_in_a_basket_are_in_that_basket_months_later() -> None:
    """194 units wanted; 100 of them were found in a basket after all were made again.

    Source: http://katscottage.blogspot.com/2013/11/lost-count.html
    """
    quilt = a_quilt("half-square-two", 194, 2, 97)
    state, record = play(
        quilt, *everything(quilt, "trim", make=100), c.PutPileAway("unit", "basket by the stairs")
    )
    assert state.where["unit"] == "basket by the stairs"
    assert (state.piles["unit"], plan(state).units.to_go) == (100, 94)
    state = go_on(state, record, c.Count("trim", 94))
    assert (plan(state).units.to_go, plan(state).line("trim").to_do) == (0, 0)


def test_units_found_again_stop_the_sewing_of_new_ones() -> None:
    """The same 194, not written down at the time, and found when 94 are made anew."""
    quilt = a_quilt("half-square-two", 400, 2, 97)
    state, _record = play(quilt, *everything(quilt, "trim", make=94), c.Find("unit", 100))
    now = plan(state)
    assert now.units.to_go == 0
    assert [line.stage.id for line in now.lines if line.to_do] == ["sew-rows", "join-rows"]


def test_blocks_planned_at_the_wrong_size_leave_19_over_when_the_target_is_mended() -> None:
    """54 made for 6 x 9; at their true size 5 x 7 is enough. Source:
    https://www.gardenweb.com/discussions/6366797/my-sad-tale-of-woe
    """
    quilt = a_quilt("nine-patch", 54 * 9, 9, 6)
    state, record = play(quilt, *all_units(quilt))
    assert plan(state).units.spare == 0
    state = go_on(state, record, c.ChangeTarget(7, 5))
    assert plan(state).units.spare == 19


def test_the_target_says_stop_before_seven_nine_patches_too_many() -> None:
    """7 extra nine-patches were 63 squares and 56 seams. Source:
    https://knittingcaboodle.wordpress.com/2006/04/28/114623355981905627/
    """
    quilt = a_quilt("nine-patch", (20 + 7) * 9, 4, 5)
    to_sew = [line.to_do for line in plan(opening(quilt)).lines]
    state, _record = play(quilt, *everything(a_quilt("nine-patch", 20 * 9, 4, 5), "press"))
    now = plan(state)
    assert all(now.line(stage.id).to_do == 0 for stage in quilt.method.stages)
    assert now.suggestion is not None
    assert now.suggestion.stage == "sew-rows"
    assert state.piles["square"] == 7 * 9
    assert to_sew[0] + to_sew[2] == 20 * 3 + 20


def test_one_square_short_shows_before_the_first_seam() -> None:
    """Found only in the last strip, with no cloth left. Source:
    http://skogknits.blogspot.com/2009/07/lonely-square.html
    """
    short = plan(opening(a_quilt("four-patch", 79, 4, 5))).shortfall
    assert short is not None
    assert short.pieces == (Pieces("square", 1),)


def test_each_pair_gives_two_units() -> None:
    """24 + 16 pairs make the 80 units of 8 x 10; 80 pairs would make 160. Source:
    https://bejeweledquilts.blogspot.com/2014/09/
    ooopssssssssssssssssssomeone-did-not.html?m=1
    """
    quilt = a_quilt("half-square-two", 160, 8, 10)
    fresh = plan(opening(quilt))
    assert fresh.line("pair").needed == 40
    assert fresh.units.possible == 160
    state, _ = play(quilt, c.Count("pair", 24), c.Count("pair", 16))
    assert plan(state).line("pair").to_do == 0


def test_eight_prints_believed_to_be_seven_give_four_over() -> None:
    """3 of each print for 20; 8 x 3 = 24. Source:
    http://scrappypiece.blogspot.com/2013/11/its-numbers-game.html
    """
    quilt = a_quilt("plain-squares", 8 * 3, 4, 5)
    assert plan(opening(quilt)).units.spare == 4


def test_168_pairs_give_336_units_and_378_would_need_189() -> None:
    """Two at a time; the sheet printed 378. Source:
    http://www.quiltersclubofamerica.com/groups/mystery_quilt_9tranquility/forum/t/43657.aspx
    """
    quilt = a_quilt("half-square-two", 168 + 168, 18, 21)
    now = plan(opening(quilt))
    assert now.units.possible == 336
    assert now.line("pair").needed == 189
    assert now.shortfall is not None
    assert now.shortfall.units == 42
    assert now.shortfall.pieces == (Pieces("square", 2 * (189 - 168)),)


def test_pairs_still_to_do_when_each_gives_eight_units() -> None:
    """350 units: 44 pairs, 5 done (40 units), 39 to go, 2 units spare. Source:
    http://signofhappyquilting.blogspot.com/2011/12/progress-on-part-three.html
    """
    quilt = a_quilt("half-square-eight", 88, 14, 25)
    counts = [c.Count(stage, 5) for stage in ("pair", "mark", "sew-both-sides", "cut-eight")]
    state, _record = play(quilt, *counts, c.Count("press-open", 40), c.Count("trim", 40))
    now = plan(state)
    assert state.piles["unit"] == 40
    assert (now.line("pair").needed, now.line("cut-eight").to_do) == (44, 39)
    assert now.units.spare == 2


def test_a_row_never_made_is_told_from_a_row_mislaid() -> None:
    """8 x 8 planned, 7 rows of 8 made, and the house searched for the eighth. Source:
    http://balancingmyway.blogspot.com/2010/04/evidence-is-there.html
    """
    quilt = a_quilt("plain-squares", 64, 8, 8)
    state, record = play(
        quilt, *all_units(quilt), c.Count("sew-rows", 7), c.PutPileAway("row", "bed")
    )
    never_made = plan(state)
    assert (state.done["sew-rows"], state.piles["row"]) == (7, 7)
    assert (never_made.line("sew-rows").to_do, state.recounted) == (1, {})
    state = go_on(state, record, c.Count("sew-rows"), c.Recount("row", 7))
    mislaid = plan(state)
    assert (state.done["sew-rows"], state.piles["row"]) == (8, 7)
    assert (mislaid.line("sew-rows").to_do, state.recounted) == (1, {"row": -1})
    assert mislaid.shortfall is not None
    assert mislaid.shortfall.layouts == (Target(7, 8),)


def test_three_squares_spoiled_move_the_plan_and_not_the_target() -> None:
    """Three came out a quarter inch short with the cloth gone. Source:
    https://mychellem.blogspot.com/2009/07/i-am-furious-with-myself-last-week-i.html?m=1
    """
    quilt = a_quilt("plain-squares", 22, 4, 5)
    state, _ = play(quilt, c.Spoil("square", 3, "cut 6 1/4 instead of 6 1/2"))
    short = plan(state).shortfall
    assert short is not None
    assert (state.target, short.units) == (Target(4, 5), 1)
    assert short.layouts[0] == Target(3, 6)


def test_disappearing_nine_patches_of_180_squares() -> None:
    """20 nine-patches take 180 squares, 4 packs of 42 and 12 more; quartered, 80 units.

    Source: Paulalynn 2010, http://paulalynnsbin.blogspot.com/2010/05/
    disappearing-nine-patch-d9p.html
    """
    quilt = a_quilt("nine-patch-quartered", 4 * 42, 8, 10)
    short = plan(opening(quilt)).shortfall
    assert short is not None
    assert short.pieces == (Pieces("square", 12),)


def test_three_strip_sets_give_48_segments_and_24_four_patches() -> None:
    """Strips 2 1/2 in wide, 40 in usable. Source: Warped Spinster, Courtyard mystery clue 3
    (2016), http://warpedspinster.blogspot.com/2016/10/courtyard-mystery-quilt-clue-3.html
    """
    quilt = a_quilt("four-patch-strips", 3, 4, 6)
    now = plan(opening(quilt))
    assert now.line("cut-segments").needed == 3
    assert quilt.method.stage("cut-segments").makes.count * 3 == 48
    assert now.units.possible == 24


PUBLISHED = [
    # Rows of published counts: method, start pieces of each kind, units; then the source.
    ("half-square-two", 336, 336),  # quiltersclubofamerica.com, forum t/43657 (168 pairs)
    ("half-square-two", 80, 80),  # bejeweledquilts.blogspot.com 2014/09 (40 pairs)
    ("half-square-eight", 88, 352),  # signofhappyquilting.blogspot.com 2011/12 (44 pairs)
    ("nine-patch", 63, 7),  # knittingcaboodle.wordpress.com 2006/04/28
    ("nine-patch-quartered", 180, 80),  # paulalynnsbin.blogspot.com 2010/05
    ("four-patch-strips", 3, 24),  # warpedspinster.blogspot.com 2016/10
    ("stacked-four-patch", 168, 84),  # common practice
    ("paired-squares", 42, 84),  # common practice
]


@pytest.mark.parametrize(("method_id", "pieces", "units"), PUBLISHED)
def test_sewn_through_to_the_end_the_published_counts_come_out(
    method_id: str, pieces: int, units: int
) -> None:
    quilt = a_quilt(method_id, pieces, 2, 2)
    assert plan(opening(quilt)).units.possible == units
    state, _ = play(quilt, *all_units(quilt))
    assert state.piles[method(method_id).unit] == units

"""The stages and the boxes of a quilt as lists on paper."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from sewalong.piecing.catalogue import method_ids
from sewalong.piecing.method import Hazard
from sewalong.progress.plan.plan import plan
from sewalong.progress.resuming.box_labels import box_labels
from sewalong.progress.resuming.resume_facts import rows_begun_facts
from sewalong.progress.resuming.stage_list import stage_list
from sewalong.progress.safety.cautions import WORDS
from tests.progress import every_act as c
from tests.progress.building import a_quilt, go_on, opening, play, suited
from tests.progress.wall.test_wall_record import a_wall, sewn

FINISHING = ("layer", "quilt", "bind")


@pytest.mark.parametrize("method_id", method_ids())
def test_every_stage_is_there_with_what_is_to_do_and_its_caution(method_id: str) -> None:
    state = opening(suited(a_quilt(method_id, 90, 3, 2, borders=1, finishing=FINISHING)))
    now = plan(state)
    listed = stage_list(state, now, {})
    assert [one.label for one in listed] == [line.stage.label for line in now.lines]
    assert [one.to_do for one in listed] == [line.to_do for line in now.lines]
    for one, line in zip(listed, now.lines, strict=True):
        hazards = line.stage.hazards
        assert (one.caution is None) == (not hazards)
        if one.caution is not None:
            assert one.caution.title == " · ".join(WORDS[hazard].title for hazard in hazards)
            for hazard in hazards:
                assert WORDS[hazard].lines[0] in one.caution.lines


def test_a_caution_of_one_hazard_has_all_its_words_and_hers_first() -> None:
    state = opening(a_quilt())
    listed = {one.label: one for one in stage_list(state, plan(state), {"iron": ("Cat away.",)})}
    pressed = listed["press"].caution
    assert pressed is not None
    assert pressed.lines == ("Cat away.", *WORDS[Hazard.IRON].lines)
    assert listed["pair"].caution is None


def test_how_far_a_stage_is_stands_beside_what_is_left() -> None:
    state, _ = play(a_quilt(), c.Count("pair", 30), c.Count("sew", 10))
    listed = {one.label: one for one in stage_list(state, plan(state), {})}
    assert (listed["pair"].done, listed["pair"].to_do) == ("30 of 84 done", 54)
    assert (listed["sew"].done, listed["sew"].to_do) == ("10 of 42 done", 32)


def test_a_label_for_each_place_and_one_to_be_written_on() -> None:
    """N039: labels by place say quilt, piles, counts and the next step (ctpub.com, moving)."""
    state, _ = play(
        a_quilt(),
        c.Count("pair", 30),
        c.Count("sew", 10),
        c.PutPileAway("four-patch", "blue tray"),
        c.PutPileAway("pair", "blue tray"),
    )
    tray, rest = box_labels(state, plan(state))
    assert (tray.number, tray.of, tray.place) == (1, 2, "blue tray")
    assert set(tray.holds) == {"10 four-patches", "10 pairs"}
    assert tray.next == "press, 10 pressed four-patches"
    assert (rest.number, rest.of, rest.place) == (2, 2, "")
    assert rest.holds == ("108 squares",)
    assert rest.next == "pair, 54 pairs"


def test_what_is_begun_of_a_row_stands_where_it_is_gone_on_with() -> None:
    state, record = a_wall()
    state = go_on(sewn(state, record, 1), record, c.BeginRows(((1, 2),)))
    listed = {one.label: one for one in stage_list(state, plan(state), {})}
    assert listed["sew rows"].begun == rows_begun_facts(state)
    assert "2" in " ".join(listed["sew rows"].begun)
    assert [one.label for one in listed.values() if one.begun] == ["sew rows"]


def test_of_a_web_it_stands_at_the_pass_in_hand() -> None:
    quilt = replace(a_quilt("paired-squares", 40, 3, 4), joined="web")
    state, record = play(quilt, c.Find("unit", 12, "bought"), c.Count("start-web", 3))
    state = go_on(state, record, c.Count("sew-web", 1))
    listed = [one for one in stage_list(state, plan(state), {}) if one.begun]
    assert [one.label for one in listed] == ["sew web"]
    assert any("Pass 2" in fact for fact in listed[0].begun)

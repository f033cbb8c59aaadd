"""Another setting of the units after the start: told in words, refused only where pieces are made."""

from __future__ import annotations

from fractions import Fraction

import pytest
from msgspec.structs import replace

from sewalong.progress.plan.plan import plan
from sewalong.progress.record.events.replanning import planned
from sewalong.progress.record.state import State
from sewalong.quilt.file.reader import read_quilt
from sewalong.quilt.file.writer import quilt_file
from sewalong.quilt.plan_words import differences
from sewalong.quilt.quilt import Quilt, Target
from sewalong.quilt.setting import Cornerstones, Sashing, SetOnPoint, Setting
from tests.progress import every_act as c
from tests.progress.building import MINUTE, Record, a_quilt, do, go_on, opening, play
from tests.progress.wandering import SETTINGS

PLAIN = Sashing(Fraction(2), "oat")
QUILT = replace(a_quilt("plain-squares", 12, 3, 4), setting=PLAIN)


def change(state: State, record: Record, setting: Setting | None) -> State:
    was = planned(state)
    act = c.ChangePlan(was, replace(was, setting=setting))
    return do(state, record, act, record[-1].event.at + MINUTE)


WRITTEN = (
    None,
    *SETTINGS,
    replace(PLAIN, colour="#e3d9c3"),
    SetOnPoint("oat"),
    SetOnPoint("oat", "#e3d9c3", Fraction(1, 2)),
)


@pytest.mark.parametrize("setting", WRITTEN)
def test_a_setting_written_out_reads_back(setting: Setting | None) -> None:
    quilt = replace(QUILT, setting=setting)
    assert replace(read_quilt(quilt_file(quilt)), method_text=None) == quilt


def told(was: Setting | None, now: Setting | None) -> tuple[str, ...]:
    return differences(replace(QUILT, setting=was), replace(QUILT, setting=now))


def test_each_change_of_the_setting_is_told_by_itself() -> None:
    whole = Sashing(Fraction(5, 2), "slate", "#445566", True, Cornerstones("coral", "#e2725b"))
    assert told(PLAIN, whole) == (
        "sashes: 2 in → 2 1/2 in",
        "cloth of the sashes: oat → slate",
        "colour of the sashes: none → #445566",
        "sashes around: no → yes",
        "cornerstones: none → coral",
    )
    assert told(whole, replace(whole, cornerstones=Cornerstones("moss"))) == (
        "cornerstones: coral → moss",
        "colour of the cornerstones: #e2725b → none",
    )
    assert told(None, PLAIN) == ("units set: straight → with sashes between the units",)
    assert told(PLAIN, SetOnPoint("oat")) == (
        "units set: with sashes between the units → on point, with triangles around the edges",
    )
    assert told(SetOnPoint("oat"), SetOnPoint("slate", "#445566", Fraction(1, 2))) == (
        "cloth of the triangles: oat → slate",
        "colour of the triangles: none → #445566",
        "cut larger: nothing → 1/2 in",
    )


def test_a_straight_quilt_under_way_is_sashed_and_has_the_piles_for_it() -> None:
    quilt = replace(QUILT, setting=None)
    state, record = play(quilt, c.Count("square-up", 12))
    state = change(state, record, PLAIN)
    state = go_on(state, record, c.Count("cut-standing-sashes", 9), c.Count("sew-rows", 3))
    assert plan(state).line("add-sashes").to_do == 2
    with pytest.raises(c.Refused, match="3 rows are sewn already, set as the plan has them"):
        change(state, record, None)


def test_the_only_row_sewn_is_spoken_of_as_one() -> None:
    state, record = play(
        replace(QUILT, setting=None), c.Count("square-up", 12), c.Count("sew-rows")
    )
    with pytest.raises(c.Refused, match=r"1 row is sewn already.*Unpick it first, or keep"):
        change(state, record, PLAIN)


def test_rows_that_are_joined_come_apart_join_by_join_whatever_would_be_another() -> None:
    quilt = replace(QUILT, setting=None)
    state, record = play(quilt, c.Count("square-up", 12), c.Count("sew-rows", 3))
    state = go_on(state, record, c.Count("join-rows", 2))
    first = "unpicked first: 2 seams at join rows, then 3 rows. Or keep that setting"
    with pytest.raises(c.Refused, match=first):
        change(state, record, PLAIN)
    first = (
        f"unpicked first: 2 seams at join rows, then 3 rows. Or keep {quilt.target.columns} across"
    )
    with pytest.raises(c.Refused, match=first):
        go_on(state, record, c.ChangeTarget(3, quilt.target.columns + 1))
    state = go_on(state, record, c.Unpick("join-rows", 2), c.Unpick("sew-rows", 3))
    assert change(state, record, PLAIN).quilt.setting == PLAIN


def test_sashes_cut_to_one_width_are_not_of_another() -> None:
    state, record = play(QUILT, c.Count("cut-standing-sashes", 9), c.Count("cut-long-sashes", 2))
    with pytest.raises(c.Refused, match="9 standing sashes are made already for the setting"):
        change(state, record, replace(PLAIN, cut=Fraction(3)))
    # A frame wants longer sashes between the rows; those within a row stay as they are.
    with pytest.raises(c.Refused, match="2 long sashes are made already for the setting"):
        change(state, record, replace(PLAIN, frame=True))
    state = go_on(state, record, c.Recount("long-sash", 0))
    state = change(state, record, replace(PLAIN, frame=True))
    assert plan(state).line("cut-standing-sashes").to_do == 6
    # Cloth and colours are another matter.
    state = change(state, record, replace(PLAIN, frame=True, cloth="slate", colour="#445566"))
    assert state.quilt.sashing is not None
    assert state.quilt.sashing.cloth == "slate"


def test_a_sash_that_the_seams_would_use_up_is_refused() -> None:
    state, record = play(QUILT, c.WriteNote("begun"))
    with pytest.raises(c.Refused, match=r"setting\.cut: nothing but seams would be left"):
        change(state, record, replace(PLAIN, cut=Fraction(1, 2)))
    was = planned(state)
    wider = replace(was, seam=Fraction(1), starts=(replace(was.starts[0], size=Fraction(9)),))
    with pytest.raises(c.Refused, match=r"setting\.cut: nothing but seams"):
        do(state, record, c.ChangePlan(was, wider), record[-1].event.at)


def test_units_in_slanting_rows_stay_on_point_and_triangles_as_large_as_they_were_cut() -> None:
    quilt = replace(QUILT, setting=SetOnPoint("oat"))
    state, record = play(quilt, c.Count("square-up", 8), c.Count("cut-side-triangles", 2))
    with pytest.raises(c.Refused, match="8 side triangles are made already for the setting"):
        change(state, record, SetOnPoint("oat", larger=Fraction(1, 2)))
    state = change(state, record, SetOnPoint("slate"))
    state = go_on(state, record, c.Recount("side-triangle", 0), c.Count("cut-corner-triangles", 1))
    with pytest.raises(c.Refused, match="2 corner triangles are made already for the setting"):
        change(state, record, SetOnPoint("oat", larger=Fraction(1, 2)))
    state = go_on(state, record, c.Recount("corner-triangle", 0), c.Count("sew-rows", 3))
    # The units in their rows are the same, however large the triangles.
    state = change(state, record, SetOnPoint("slate", larger=Fraction(1, 2)))
    with pytest.raises(c.Refused, match="3 units in their rows are made already"):
        change(state, record, None)
    state = go_on(state, record, c.Unpick("sew-rows", 3))
    state = change(state, record, PLAIN)
    assert plan(state).line("cut-standing-sashes").to_do == 9


def test_the_same_setting_again_changes_nothing() -> None:
    state, record = play(QUILT, c.WriteNote("begun"))
    quilt: Quilt = planned(state)
    with pytest.raises(c.Refused):
        do(state, record, c.ChangePlan(quilt, quilt), record[-1].event.at)
    assert opening(QUILT).piles == state.piles


def test_a_plan_is_changed_from_the_layout_wanted_now_not_from_the_first() -> None:
    """In one column, as it was planned first, no sashes would meet."""
    state, record = play(a_quilt("plain-squares", 16, 5, 1), c.ChangeTarget(4, 4))
    state = change(state, record, replace(PLAIN, cornerstones=Cornerstones("coral")))
    assert (state.target, state.quilt.target) == (Target(4, 4), Target(4, 4))

"""What a count takes before the record knows: half handling, half by the length of seam and cut."""

from __future__ import annotations

from fractions import Fraction
from math import sqrt

import pytest
from msgspec.structs import replace

from sewalong.lengths import Unit
from sewalong.progress.pace.guesses import guesses
from sewalong.progress.pace.stage_lengths import UNKNOWN, StageLength, stage_lengths
from sewalong.progress.plan.plan import plan
from sewalong.progress.record.route import route_for
from sewalong.progress.record.stages.sashes import cutting_stage
from sewalong.quilt.layouts.centre_seams import centre_seams
from sewalong.quilt.quilt import Border, Quilt
from sewalong.quilt.setting import (
    CORNER,
    LONG,
    LYING,
    SIDE,
    STANDING,
    Cornerstones,
    Sashing,
    SetOnPoint,
)
from sewalong.quilt.worksheet.basis import basis
from tests.progress.building import opening
from tests.progress.pace.evenings import a_quilt

QUILT = a_quilt(borders=1, finishing=("layer", "quilt", "bind"))
"""9 x 9 units from 5 in squares; a border cut at 3 in, 2 1/2 in wide."""

UNIT = 9 / sqrt(2)
"""To the raw edges: four-patches of 9 1/2 in, sewn all round and cut twice."""

CENTRE = 9 * (UNIT - 0.5) + 0.5


def of_size(side: int) -> Quilt:
    return replace(QUILT, starts=(replace(QUILT.starts[0], size=Fraction(side)),))


def minutes(quilt: Quilt) -> dict[str, float]:
    """By stage: the guess as a part of the minutes the stage is written down with."""
    found = guesses(quilt, quilt.target)
    return {
        stage.id: found[stage.id].minutes / stage.minutes
        for stage in route_for(quilt, quilt.target).stages
    }


def test_the_length_of_every_stage() -> None:
    found = stage_lengths(QUILT, QUILT.target)
    assert found["pair"] == StageLength(0.0, 0.0)
    # Two pairs to a four-patch: two seams of 5 in and one of 9 1/2 in.
    assert found["sew"].sewn == pytest.approx(19.5)
    assert found["sew-around"].sewn == pytest.approx(4 * 9)
    assert found["cut-twice"].cut == pytest.approx(2 * 9.5 * sqrt(2))
    assert found["sew-rows"].sewn == pytest.approx(8 * UNIT)
    assert found["join-rows"].sewn == pytest.approx(CENTRE)
    # Sides as long as the centre, ends 5 in more; each of the four sides a quarter of it.
    assert found["add-borders"].sewn == pytest.approx((4 * CENTRE + 2 * 5) / 4)
    assert found["layer"] == StageLength(0.0, 0.0)
    assert found["quilt"].sewn is None
    assert found["bind"].sewn == pytest.approx(CENTRE + 5)


def test_where_no_numbers_can_be_had_every_length_is_unknown() -> None:
    found = stage_lengths(of_size(0), QUILT.target)
    assert set(found.values()) == {UNKNOWN}
    assert minutes(of_size(0)) == dict.fromkeys(minutes(QUILT), 1.0)


@pytest.mark.parametrize(
    "setting",
    [SetOnPoint("oat"), Sashing(Fraction(5), "oat"), Sashing(Fraction(5), "oat", frame=True)],
)
def test_pieces_wider_than_the_cloth_are_of_unknown_length_and_the_rest_is_known(
    setting: SetOnPoint | Sashing,
) -> None:
    wide = replace(QUILT, setting=setting)
    narrow = replace(wide, choices=replace(wide.choices, usable=Fraction(4)))
    known, found = (stage_lengths(one, one.target) for one in (wide, narrow))
    for stage in route_for(narrow, narrow.target).stages:
        assert found[stage.id] == (UNKNOWN if stage.id in CUT_FOR_IT else known[stage.id])
        assert guesses(narrow, narrow.target)[stage.id].minutes > 0


CUT_FOR_IT = {cutting_stage(pile) for pile in (STANDING, LYING, LONG, SIDE, CORNER)}


def test_borders_that_are_all_seam_are_of_unknown_length_and_the_rest_is_known() -> None:
    bare = replace(QUILT, borders=(Border(Fraction(1, 2), "plain"),))
    found = stage_lengths(bare, bare.target)
    assert found["add-borders"] == UNKNOWN
    assert found["join-rows"].sewn == pytest.approx(CENTRE)
    two = a_quilt(borders=2)
    # The second goes round a top that is 5 in wider and longer.
    assert stage_lengths(two, two.target)["add-borders"].sewn == pytest.approx(
        (4 * CENTRE + 2 * 5 + 4 * (CENTRE + 5) + 2 * 5) / 8
    )


def test_a_quilt_of_the_usual_squares_takes_the_minutes_of_its_method() -> None:
    found = minutes(QUILT)
    for stage in QUILT.method.stages:
        assert found[stage.id] == pytest.approx(1)


def test_strips_of_two_and_a_half_inches_take_the_minutes_of_their_method() -> None:
    strips = a_quilt("four-patch-strips", 20, 5, 5)
    found = minutes(strips)
    for stage in strips.method.stages:
        assert found[stage.id] == pytest.approx(1)


def test_two_rows_are_joined_along_their_width_and_one_has_nothing_to_join() -> None:
    two, one = (a_quilt(rows=rows, columns=9) for rows in (2, 1))
    assert stage_lengths(two, two.target)["join-rows"].sewn == pytest.approx(CENTRE)
    assert "join-rows" not in stage_lengths(one, one.target)


def test_squares_of_twice_the_side_take_more_by_their_seams_and_cuts() -> None:
    found = minutes(of_size(10))
    assert found["pair"] == found["press"] == 1
    assert found["sew"] == pytest.approx(0.5 + 0.5 * 39.5 / 19.5)
    assert found["sew-around"] == pytest.approx(0.5 + 0.5 * 19 / 9)
    assert found["cut-twice"] == pytest.approx(0.5 + 0.5 * 19.5 / 9.5)


def test_rows_borders_and_binding_go_by_their_length() -> None:
    found = minutes(QUILT)
    assert found["sew-rows"] == pytest.approx(0.5 + 0.5 * UNIT / 5)
    assert found["join-rows"] == pytest.approx(0.5 + 0.5 * CENTRE / (9 * 4.5 + 0.5))
    assert found["add-borders"] == pytest.approx(0.5 + 0.5 * (CENTRE + 2.5) / 45)
    assert found["bind"] == pytest.approx(0.5 + 0.5 * (CENTRE + 5) / 60)


def test_layering_and_quilting_go_by_the_area() -> None:
    found = minutes(QUILT)
    area = (UNIT - 0.5) ** 2
    assert found["layer"] == pytest.approx(0.5 + 0.5 * 81 * area / 45**2)
    assert found["quilt"] == pytest.approx(0.5 + 0.5 * area / 4.5**2)


def test_a_guess_says_what_it_is_from() -> None:
    found = guesses(QUILT, QUILT.target)
    assert found["sew-around"].reason.startswith("a guess from 36 in of seam: about ")
    assert found["cut-twice"].reason.startswith("a guess from 27 in of cutting: ")
    assert found["pair"].reason.startswith("a guess: about ")
    assert found["quilt"].reason.startswith("a guess from its size: about ")
    metric = replace(QUILT, unit=Unit.CM)
    # 36 in are 91.4 cm.
    assert guesses(metric, metric.target)["sew-around"].reason.startswith(
        "a guess from 91 cm of seam: "
    )


def test_on_point_every_seam_of_the_centre_falls_to_one_stage() -> None:
    quilt = replace(QUILT, setting=SetOnPoint("oat"))
    lengths = stage_lengths(quilt, quilt.target)
    needed = {line.stage.id: line.needed for line in plan(opening(quilt)).lines}
    stages = ("sew-rows", "add-side-triangles", "join-rows", "add-corners")
    sewn = sum(needed[one] * (lengths[one].sewn or 0) for one in stages)
    runs = centre_seams(quilt, quilt.target, basis(quilt).unit).runs
    assert sewn == pytest.approx(float(sum(run.length for run in runs)))
    for stage in route_for(quilt, quilt.target).stages:
        assert lengths[stage.id] != UNKNOWN
        assert guesses(quilt, quilt.target)[stage.id].minutes > 0
    # Squares of 9 1/2 in, four to a strip of 40 in: cut off it, and twice corner to corner.
    side = (UNIT - 0.5) * sqrt(2) + 1.25
    cut = lengths["cut-side-triangles"].cut
    assert cut == pytest.approx(side + 2 * sqrt(2) * side + 40 / 4, abs=0.8)


def test_in_a_web_every_seam_of_the_centre_falls_to_one_stage() -> None:
    """As many inches as row by row: N028, 40 seams as long as a unit and 7 as long as a row."""
    quilt = replace(QUILT, joined="web")
    lengths = stage_lengths(quilt, quilt.target)
    needed = {line.stage.id: line.needed for line in plan(opening(quilt)).lines}
    sewn = sum(
        needed[one] * (lengths[one].sewn or 0) for one in ("start-web", "sew-web", "join-rows")
    )
    runs = centre_seams(QUILT, quilt.target, basis(quilt).unit).runs
    assert sewn == pytest.approx(float(sum(run.length for run in runs)))
    for stage in route_for(quilt, quilt.target).stages:
        assert lengths[stage.id] != UNKNOWN
        assert guesses(quilt, quilt.target)[stage.id].minutes > 0


@pytest.mark.parametrize("frame", [False, True])
@pytest.mark.parametrize("stones", [None, Cornerstones("coral")])
def test_with_sashes_every_seam_of_the_centre_falls_to_one_stage(
    frame: bool, stones: Cornerstones | None
) -> None:
    quilt = replace(QUILT, setting=Sashing(Fraction(2), "oat", frame=frame, cornerstones=stones))
    lengths = stage_lengths(quilt, quilt.target)
    needed = {line.stage.id: line.needed for line in plan(opening(quilt)).lines}
    stages = ("sew-rows", "sew-sash-rows", "add-sashes", "join-rows")
    sewn = sum(needed[one] * (lengths[one].sewn or 0) for one in stages if one in needed)
    unit = basis(quilt).unit
    runs = centre_seams(quilt, quilt.target, unit).runs
    assert sewn == pytest.approx(float(sum(run.length for run in runs)))
    for stage in route_for(quilt, quilt.target).stages:
        assert lengths[stage.id] != UNKNOWN
        assert guesses(quilt, quilt.target)[stage.id].minutes > 0
    # Cut across once for each sash, and along once for each strip, six sashes of it.
    cut = lengths["cut-standing-sashes"].cut
    assert cut == pytest.approx(2 + 40 / 6, abs=0.5)

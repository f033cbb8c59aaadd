"""Pictures of the work of a stage: the marked line, the cuts where they fall, what is trimmed off."""

from __future__ import annotations

from fractions import Fraction

import pytest
from msgspec.structs import replace

from sewalong.piecing.catalogue import method_ids
from sewalong.piecing.definition import definition
from sewalong.piecing.stage_lines import stage_lines
from sewalong.quilt.derived import derived
from sewalong.quilt.quilt import Quilt
from sewalong.quilt.setting import SetOnPoint
from sewalong.quilt.size import Size
from sewalong.wall.keys import CUT, MARK, STITCHES, TRIMMED
from sewalong.wall.picture import Picture
from sewalong.wall.stage_picture import Shows, StagePicture, stage_picture
from tests.progress.building import a_quilt, opening, suited
from tests.wall.drawing import counts, drawn

SIDE = 20
"""Pixels across and down of a square piece."""


def pictured(quilt: Quilt, stage_id: str) -> StagePicture:
    stage = next(one for one in opening(quilt).route.of_pieces if one.id == stage_id)
    found = stage_picture(quilt, stage, SIDE, SIDE // 2)
    assert found is not None
    return found


def of(method: str, stage_id: str) -> StagePicture:
    return pictured(suited(a_quilt(method)), stage_id)


def where(picture: Picture, key: str) -> set[tuple[int, int]]:
    return {
        (x, y) for y, row in enumerate(picture.pixels) for x, one in enumerate(row) if one == key
    }


FALLING = {(n, n) for n in range(SIDE)}
RISING = {(n, SIDE - 1 - n) for n in range(SIDE)}


@pytest.mark.parametrize("method", method_ids())
def test_what_a_picture_shows_is_what_its_stage_does(method: str) -> None:
    """The words of the stage and the operations of its file on one side, the picture on the other."""
    quilt = suited(a_quilt(method))
    for stage in definition(method).stages:
        shows, picture = (found := pictured(quilt, stage.id)).shows, found.picture
        cuts = any(word.startswith("cut ") or word == "trim corners" for word in stage.operations)
        assert (shows is Shows.CUTS) == cuts
        assert (CUT in picture.keys) == cuts
        marks = (
            "Rule" in stage.do
            or "from the line" in stage.do
            or "from both lines" in stage.do
            or "lines cutting" in stage.do
        )
        assert (MARK in picture.keys) == marks, stage.id
        assert (shows in (Shows.MARKS, Shows.SEAMS)) == marks
        if TRIMMED in picture.keys:
            assert "trim" in stage.operations


def test_the_marked_line_is_the_diagonal() -> None:
    assert where(of("half-square-two", "mark").picture, MARK) == FALLING
    assert where(of("half-square-eight", "mark").picture, MARK) == FALLING | RISING


def test_the_seams_lie_beside_the_marked_line_which_stays_clear() -> None:
    found = of("half-square-two", "sew-both-sides")
    assert found.shows is Shows.SEAMS
    assert where(found.picture, MARK) == FALLING
    sewn = where(found.picture, STITCHES)
    assert sewn
    assert {x > y for x, y in sewn} == {True, False}


@pytest.mark.parametrize(
    ("method", "stage", "lines"),
    [
        ("half-square-two", "cut-once", FALLING),
        ("stacked-four-patch", "cut-twice", FALLING | RISING),
        ("paired-squares", "cut-twice", FALLING | RISING),
    ],
)
def test_cuts_fall_corner_to_corner(method: str, stage: str, lines: set[tuple[int, int]]) -> None:
    picture = of(method, stage).picture
    assert where(picture, CUT) == lines
    # It is what is cut, with its stitches, not what comes of it.
    assert STITCHES in picture.keys


def test_eight_at_a_time_are_cut_through_the_middle_too() -> None:
    cut = where(of("half-square-eight", "cut-eight").picture, CUT)
    assert cut > FALLING | RISING
    middle = SIDE // 2
    assert {(x, y) for x, y in cut if (x, y) not in FALLING | RISING} == {
        one
        for n in range(SIDE)
        for one in ((middle - 1, n), (n, middle - 1))
        if one not in FALLING | RISING
    }


def test_segments_are_cut_as_far_apart_as_they_are_long() -> None:
    """Of a strip set 6 1/2 in wide from strips cut 2 1/2 in, squares of 6 1/2 in are cut."""
    quilt = suited(a_quilt("rail-fence"))
    found = stage_lines(quilt.written_method, derived(quilt), "cut-squares")
    assert found is not None
    places = [start[1] for start, _ in found.cuts]
    assert places == pytest.approx([6.5 * n for n in range(1, len(places) + 1)])
    assert len(places) == 40 // 6.5


def test_corners_are_cut_off_an_allowance_outside_the_stitches() -> None:
    quilt = suited(a_quilt("flipped-corners"))
    found = stage_lines(quilt.written_method, derived(quilt), "trim-corners")
    assert found is not None
    assert len(found.cuts) == 4
    (ax, ay), (bx, by) = found.cuts[0]
    side = float(quilt.starts[1].size)
    # From the corner the stitches lie half a diagonal away, the cut 1/4 in nearer.
    assert abs(ax + ay) / 2**0.5 == pytest.approx(side / 2**0.5 - 0.25)
    assert abs(bx + by) == pytest.approx(abs(ax + ay))


def test_what_is_trimmed_off_goes_all_round() -> None:
    """Half-squares of 5 in are 4.646 in untrimmed; to 3 1/2 in an eighth of it goes on each side."""
    quilt = replace(suited(a_quilt("half-square-two")), trim=Size.square(Fraction(7, 2)))
    found = pictured(quilt, "trim")
    assert found.shows is Shows.TRIM
    rows = drawn(found.picture)
    off = round(SIDE * (4.646 - 3.5) / 2 / 4.646)
    assert all(row[:off] == (TRIMMED,) * off for row in rows)
    assert TRIMMED not in rows[SIDE // 2][off : SIDE - off]
    assert counts(found.picture)[TRIMMED] == SIDE**2 - (SIDE - 2 * off) ** 2


def test_where_nothing_is_trimmed_off_the_piece_is_shown() -> None:
    found = of("plain-squares", "square-up")
    assert found.shows is Shows.MADE
    assert found.picture.keys == ["A"]


def test_triangles_are_cut_from_squares_once_or_twice() -> None:
    quilt = replace(a_quilt("plain-squares"), setting=SetOnPoint("grey"))
    assert where(pictured(quilt, "cut-side-triangles").picture, CUT) == FALLING | RISING
    assert where(pictured(quilt, "cut-corner-triangles").picture, CUT) == FALLING

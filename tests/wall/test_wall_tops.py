"""Pictures of whole tops: units in their places, borders and sashes to scale."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from sewalong.quilt.layouts.setting_sashed import Meeting
from sewalong.wall.keys import CORNERSTONE, SASH, SETTING, border_key
from sewalong.wall.on_point import on_point_picture
from sewalong.wall.picture import EMPTY, Picture
from sewalong.wall.pieces import finished_unit
from sewalong.wall.tops import Arrangement, Placed, Sashes, by_turns, top_picture
from sewalong.wall.tracks import Side, shared, tracks
from tests.wall.drawing import METHODS, counts, drawn, pixel_height, usual

BORDERS = st.lists(st.floats(0.5, 8), max_size=3)
ROOMS = st.tuples(st.integers(1, 80), st.integers(1, 40))


def only(unit: int) -> Arrangement:
    return lambda row, column: Placed(unit)


def ring_pixels(picture: Picture) -> list[str | None]:
    """The keys met going in from the middle of the edge by column 1."""
    rows = drawn(picture)
    return list(rows[len(rows) // 2])


@given(st.integers(1, 200), st.integers(1, 60))
def test_pixels_are_shared_evenly_and_alike_from_both_ends(total: int, parts: int) -> None:
    sizes = shared(total, parts)
    assert (sum(sizes), len(sizes)) == (total, parts)
    if not (parts % 2 == 0 and total % 2):
        assert sizes == sizes[::-1]
    assert max(sizes) - min(sizes) <= 2


@pytest.mark.parametrize("method", METHODS)
def test_every_method_has_a_top(method: str) -> None:
    derivation = usual(method)
    picture = top_picture(derivation, 4, 4, across=60, down=30)
    fabrics = {patch.letter for unit in derivation.units for patch in unit.patches}
    assert set(picture.keys) == fabrics


@settings(max_examples=60)
@given(
    st.sampled_from(["hourglass", "flying-geese-four", "rail-fence"]),
    st.integers(1, 12),
    st.integers(1, 12),
    ROOMS,
    BORDERS,
    st.sampled_from([None, Sashes(1.5), Sashes(0.75, False, Meeting.LONG_SASHES)]),
)
def test_any_top_fits_any_room(
    method: str,
    rows: int,
    columns: int,
    room: tuple[int, int],
    borders: list[float],
    sashes: Sashes | None,
) -> None:
    picture = top_picture(
        usual(method), rows, columns, across=room[0], down=room[1], borders=borders, sashes=sashes
    )
    assert 1 <= picture.across <= room[0]
    assert 1 <= picture.down <= room[1]
    assert len({len(row) for row in picture.pixels}) == 1
    assert all(None not in row for row in drawn(picture))


@given(st.integers(2, 12), st.integers(2, 12), st.lists(st.floats(2, 8), max_size=2))
def test_the_shape_of_the_top_is_kept(rows: int, columns: int, borders: list[float]) -> None:
    derivation = usual("stacked-four-patch")
    picture = top_picture(derivation, rows, columns, across=100, down=60, borders=borders)
    side = finished_unit(derivation, 0).size[0]
    around = 2 * sum(borders)
    shape = (columns * side + around) / (rows * side + around)
    # Half a pixel for each track, on the shorter way.
    slack = (2 * len(borders) + 1) / min(picture.across, pixel_height(picture))
    assert picture.across / pixel_height(picture) == pytest.approx(shape, rel=slack)


@given(st.lists(st.floats(1.5, 8), min_size=1, max_size=3), st.integers(40, 120))
def test_borders_are_to_scale(borders: list[float], across: int) -> None:
    derivation = usual("plain-squares")
    picture = top_picture(derivation, 6, 6, across=across, down=across, borders=borders)
    met = ring_pixels(picture)
    scale = met.count("A") / (6 * 4.5)
    for number, width in enumerate(borders, 1):
        for side in (met[: len(met) // 2], met[len(met) // 2 :]):
            thick = side.count(border_key(number))
            # To the nearest pixel; one more where thin borders were kept alive.
            assert abs(thick - width * scale) <= 1


def test_borders_lie_one_around_the_other_the_innermost_first() -> None:
    picture = top_picture(usual("plain-squares"), 4, 4, across=60, down=30, borders=(3, 3))
    order = list(dict.fromkeys(ring_pixels(picture)))
    assert order == [border_key(2), border_key(1), "A"]
    rows = drawn(picture)
    assert rows == rows[::-1]
    assert rows == [row[::-1] for row in rows]


def test_a_thin_border_shows_while_there_is_room() -> None:
    picture = top_picture(usual("stacked-four-patch"), 30, 30, across=60, down=30, borders=(0.5, 5))
    assert counts(picture)[border_key(1)] > 0


def test_units_lie_in_their_places_and_neighbours_differ() -> None:
    derivation = usual("hourglass")
    one, other = (
        top_picture(derivation, 1, 1, across=8, down=4, arrangement=only(n)) for n in (0, 1)
    )
    top = drawn(top_picture(derivation, 2, 2, across=16, down=8))
    assert [row[:8] for row in top[:8]] == drawn(one)
    assert [row[8:] for row in top[:8]] == drawn(other)
    assert [row[:8] for row in top[8:]] == drawn(other)
    assert [row[8:] for row in top[8:]] == drawn(one)
    assert drawn(one) != drawn(other)


@pytest.mark.parametrize("different", [2, 3, 4, 5, 8])
def test_by_turns_no_two_neighbours_are_the_same_and_all_are_used(different: int) -> None:
    place = by_turns(different)
    for row in range(9):
        for column in range(9):
            here = place(row, column)
            assert here not in (place(row + 1, column), place(row, column + 1))
    assert {place(0, column).unit for column in range(different)} == set(range(different))


def test_quarter_turns() -> None:
    derivation = usual("rail-fence")
    picture = top_picture(
        derivation, 1, 2, across=26, down=7, arrangement=lambda row, column: Placed(0, column)
    )
    rows = drawn(picture)
    half = len(rows[0]) // 2
    upright = [row[:half] for row in rows]
    lying = [row[half:] for row in rows]
    assert upright[0][0] == "A"
    assert upright[-1][0] == "A"
    assert set(lying[0]) == {"A"}
    assert set(lying[-1]) == {"C"}


def test_a_unit_that_is_not_square_cannot_be_turned_by_a_quarter() -> None:
    with pytest.raises(ValueError, match="not square"):
        top_picture(
            usual("flying-geese-four"),
            1,
            1,
            across=9,
            down=9,
            arrangement=lambda r, c: Placed(0, 1),
        )


def test_sashes_and_cornerstones() -> None:
    derivation = usual("plain-squares")
    picture = top_picture(derivation, 2, 2, across=27, down=14, sashes=Sashes(1.5))
    rows = drawn(picture)
    across = list(dict.fromkeys(rows[0]))
    assert across == [CORNERSTONE, SASH]
    # 4 1/2 in units and 1 1/2 in sashes: three to one.
    assert [rows[1].count(key) for key in (CORNERSTONE, SASH)] == [9, 18]
    thick = len(rows[0]) - 18
    assert rows[len(rows) // 2].count(CORNERSTONE) == thick == 9
    # Nine cornerstones of 1 1/2 in on a top of 13 1/2 in.
    assert counts(picture)[CORNERSTONE] / (len(rows) * len(rows[0])) == pytest.approx(
        1 / 9, abs=0.01
    )


def test_long_sashes_have_no_cornerstones_and_inner_ones_leave_the_edge_free() -> None:
    picture = top_picture(
        usual("plain-squares"),
        2,
        2,
        across=42,
        down=21,
        sashes=Sashes(1.5, outer=False, meeting=Meeting.LONG_SASHES),
    )
    rows = drawn(picture)
    assert picture.keys == ["A", SASH]
    assert rows[0][0] == "A"
    assert set(rows[len(rows) // 2]) == {SASH}


def test_what_cannot_be_is_refused() -> None:
    derivation = usual("plain-squares")
    for draw in (top_picture, on_point_picture):
        with pytest.raises(ValueError, match="one row and one column"):
            draw(derivation, 0, 3, across=9, down=9)
        with pytest.raises(ValueError, match="wider than nothing"):
            draw(derivation, 3, 3, across=9, down=9, borders=(0,))
        assert draw(derivation, 3, 3, across=0, down=9) == EMPTY
    with pytest.raises(ValueError, match="wider than nothing"):
        top_picture(derivation, 3, 3, across=9, down=9, sashes=Sashes(0))
    with pytest.raises(ValueError, match="only square units"):
        on_point_picture(usual("flying-geese-four"), 3, 3, across=9, down=9)


def test_on_point_the_units_and_triangles_have_their_shares() -> None:
    # 3 x 4 steps hold 12 whole units and 6 between; a unit on point is half a square of one step.
    picture = on_point_picture(usual("plain-squares"), 3, 4, across=80, down=40)
    found = counts(picture)
    assert found["A"] / (found["A"] + found[SETTING]) == pytest.approx(
        (12 + 6) / 2 / (3 * 4), abs=0.02
    )
    assert picture.across / pixel_height(picture) == pytest.approx(4 / 3, abs=0.03)
    rows = drawn(picture)
    assert rows[0][0] == rows[-1][-1] == SETTING


def test_on_point_every_unit_is_asked_for_and_borders_go_around() -> None:
    asked: set[tuple[int, int]] = set()

    def place(row: int, column: int) -> Placed:
        asked.add((row, column))
        return Placed()

    picture = on_point_picture(
        usual("plain-squares"), 3, 4, across=60, down=40, borders=(2, 3), arrangement=place
    )
    between = {(row, column) for row in (1, 3) for column in range(3)}
    assert asked == {(row, column) for row in (0, 2, 4) for column in range(4)} | between
    order = list(dict.fromkeys(ring_pixels(picture)))
    assert order[:2] == [border_key(2), border_key(1)]


def test_units_are_all_the_same_size_when_they_have_pixels_enough() -> None:
    side = Side((5.0, *[6.0] * 9, 5.0), (False, *[True] * 9, False))
    columns, rows, is_whole = tracks(side, side, 60, 60, 3)
    assert is_whole
    assert set(columns.pixels[1:-1]) == {5}
    assert columns == rows
    assert columns.pixels[0] == columns.pixels[-1] == 4

"""No top is sampled to a false pattern: like units are drawn alike to the pixel, or fewer are shown."""

from __future__ import annotations

from collections import defaultdict

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from sewalong.piecing.derive import Derivation
from sewalong.wall.keys import border_key
from sewalong.wall.on_point import Slanting
from sewalong.wall.pieces import finished_unit
from sewalong.wall.places import Kind, Laid, Place
from sewalong.wall.tops import Arrangement, Level, Placed, Sashes
from sewalong.wall.unit_pixels import MOST, least_across, numbered
from tests.wall.drawing import METHODS, usual

ROOMS = ((10, 5), (20, 5), (36, 13), (54, 15), (106, 23), (24, 40))
LAYOUTS = ((1, 1), (3, 4), (9, 8), (30, 20))
SETTINGS = ("straight", "sashed", "on point")

Drawn = frozenset[tuple[int, int, str | None]]
"""The pixels of one unit, each by its place in the unit."""


def a_top(derivation: Derivation, setting: str, rows: int, columns: int) -> Level | Slanting:
    """With two borders."""
    if setting == "on point":
        return Slanting(derivation, rows, columns, None, (1.5, 4.0))
    sashes = Sashes(1.5) if setting == "sashed" else None
    return Level(derivation, rows, columns, None, (1.5, 4.0), sashes)


def units_drawn(laid: Laid) -> dict[Place, Drawn]:
    """The units that are shown whole: of part of a top those at its edge are cut."""
    pixels: dict[Place, list[tuple[int, int, str | None]]] = defaultdict(list)
    cut: set[Place] = set()
    last = len(laid.places) - 1, len(laid.places[0]) - 1
    for y, row in enumerate(laid.places):
        for x, place in enumerate(row):
            if place.kind is Kind.UNIT:
                pixels[place].append((x, y, laid.pixels[y][x]))
                if not laid.is_whole and (y == last[0] or x == last[1]):
                    cut.add(place)
    found = {}
    for place, where in pixels.items():
        if place not in cut:
            x0, y0 = min(x for x, _, _ in where), min(y for _, y, _ in where)
            found[place] = frozenset((x - x0, y - y0, key) for x, y, key in where)
    return found


def can_be(derivation: Derivation, setting: str) -> bool:
    width, height = finished_unit(derivation, 0).size
    return setting != "on point" or abs(width - height) < 1e-6


@pytest.mark.parametrize("setting", SETTINGS)
@pytest.mark.parametrize("method", METHODS)
def test_like_units_are_drawn_alike_in_every_layout_and_room(method: str, setting: str) -> None:
    derivation = usual(method)
    if not can_be(derivation, setting):
        pytest.skip("only square units are set on point")
    for rows, columns in LAYOUTS:
        top = a_top(derivation, setting, rows, columns)
        for room in ROOMS:
            for unit in {0, len(derivation.units) - 1}:
                laid = top.laid(*room, arrangement=every(unit))
                drawn = set(units_drawn(laid).values())
                assert len(drawn) <= 1, (room, rows, columns, unit)
            if not laid.is_whole:
                assert not top.shows_its_pattern(*room)


def every(unit: int) -> Arrangement:
    return lambda row, column: Placed(unit)


@settings(max_examples=60)
@given(
    st.sampled_from(["stacked-four-patch", "hourglass", "flipped-corners", "nine-patch"]),
    st.sampled_from(SETTINGS),
    st.integers(1, 14),
    st.integers(1, 14),
    st.tuples(st.integers(16, 90), st.integers(8, 45)),
)
def test_where_all_are_shown_every_patch_of_every_unit_shows(
    method: str, setting: str, rows: int, columns: int, room: tuple[int, int]
) -> None:
    derivation = usual(method)
    top = a_top(derivation, setting, rows, columns)
    laid = top.laid(*room)
    if not top.shows_its_pattern(*room):
        return
    assert laid.is_whole
    letters = [{p.letter for p in unit.patches} for unit in derivation.units]
    for drawn in units_drawn(laid).values():
        assert {key for _, _, key in drawn} in letters


def test_part_of_a_top_begins_at_row_1_and_column_1_with_its_border() -> None:
    laid = a_top(usual("nine-patch"), "straight", 20, 20).laid(24, 12)
    assert not laid.is_whole
    assert laid.picture.is_whole is False
    assert laid.pixels[0][0] == border_key(2)
    assert border_key(1) not in laid.pixels[-1][4:]
    shown = units_drawn(laid)
    assert Place(Kind.UNIT, 1, 1) in shown
    assert 4 <= len(shown) < 400


@pytest.mark.parametrize("method", METHODS)
def test_the_least_pixels_show_every_patch_and_one_fewer_does_not_or_is_no_slant(
    method: str,
) -> None:
    derivation = usual(method)
    units = [finished_unit(derivation, number) for number in range(len(derivation.units))]
    least = least_across(units)
    assert 1 <= least < MOST
    for unit in units:
        letters = {patch.letter for patch in unit.patches}
        assert {key for row in numbered(unit, least) for key in row} == letters
    if least > 4:
        assert any(
            len({key for row in numbered(unit, least - 1) for key in row}) < len(unit.patches)
            for unit in units
        )

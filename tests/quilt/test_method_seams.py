"""What meets what in a method, held against shapely for every method."""

from __future__ import annotations

from fractions import Fraction as F

import pytest
from msgspec.structs import replace
from shapely import LineString, Polygon

from sewalong.lengths import Unit
from sewalong.piecing.catalogue import method_ids
from sewalong.piecing.derive import Derivation, derive
from sewalong.piecing.edges import Side
from sewalong.quilt.method_seams import Seam, method_seams
from sewalong.quilt.worksheet.seam_words import seam_words, way_words


def made(id: str) -> Derivation:
    return derive(id, F(9), strip_length=F(80))


@pytest.mark.parametrize("id", method_ids())
def test_seams_are_those_that_shapely_measures(id: str) -> None:
    derived = made(id)
    measured: dict[tuple[tuple[str, str], int], float] = {}
    for number, unit in enumerate(derived.units, start=1):
        shown = [(patch.letter, Polygon(patch.points)) for patch in unit.finished(0.25)]
        for place, (letter, shape) in enumerate(shown):
            for other, other_shape in shown[place + 1 :]:
                length = shape.buffer(1e-7).intersection(other_shape.exterior).length
                if length > 1e-3:
                    key = (min(letter, other), max(letter, other)), number
                    measured[key] = measured.get(key, 0.0) + length
    told = {
        (seam.letters, unit): seam.length for seam in method_seams(derived).seams
        for unit in seam.units
    }  # fmt: skip
    assert told.keys() == measured.keys()
    for key, length in told.items():
        assert length == pytest.approx(measured[key], abs=1e-4)


@pytest.mark.parametrize("id", method_ids())
def test_outer_edges_show_what_shapely_finds_along_them(id: str) -> None:
    derived = made(id)
    for edge in method_seams(derived).edges:
        unit = derived.units[edge.unit - 1]
        shown = [(patch.letter, Polygon(patch.points)) for patch in unit.finished(0.25)]
        wide = max(x for _, shape in shown for x, _ in shape.exterior.coords)
        high = max(y for _, shape in shown for _, y in shape.exterior.coords)
        ends: dict[Side, list[tuple[float, float]]] = {
            Side.TOP: [(0, 0), (wide, 0)],
            Side.BOTTOM: [(0, high), (wide, high)],
            Side.NEAR_START: [(0, 0), (0, high)],
            Side.FAR: [(wide, 0), (wide, high)],
        }
        line = LineString(ends[edge.side]).buffer(1e-6)
        along = sorted(
            (shape.intersection(line).centroid.x + shape.intersection(line).centroid.y, letter)
            for letter, shape in shown
            if shape.intersection(line).length > 0.01
        )
        letters = [letter for _, letter in along]
        once = [a for a, b in zip(letters, [None, *letters], strict=False) if a != b]
        assert list(edge.letters) == once


def test_every_outer_edge_of_a_stack_shows_one_fabric() -> None:
    # A worked case: units with four quarters, each edge of one fabric.
    edges = method_seams(made("stacked-four-patch")).edges
    assert len(edges) == 16
    assert all(len(edge.letters) == 1 for edge in edges)


def test_the_back_turned_over_its_top_edge_makes_other_units_stand_one_way_up() -> None:
    # A worked case of sewing around: turned like a page the two side units have both prints one
    # way up; turned over its top edge the other two.
    def one_way_up(turned: dict[str, int]) -> list[int]:
        stands = method_seams(made("paired-squares"), turned).stands
        ways: dict[int, set[int]] = {}
        for one in stands:
            ways.setdefault(one.unit, set()).update(one.degrees)
        return [unit for unit, found in ways.items() if len(found) == 1]

    assert one_way_up({}) == [1, 3]
    assert one_way_up({"B": 180}) == [2, 4]


@pytest.mark.parametrize("id", method_ids())
def test_all_of_it_is_told_one_fact_a_line(id: str) -> None:
    derived = made(id)
    seams = method_seams(derived)
    words = seam_words(derived, seams, Unit.INCH)
    assert all(line.endswith(".") for line in words)
    assert sum(" meets " in line and " along " in line for line in words) == len(seams.seams)
    assert sum(line.startswith("Edge of unit ") for line in words) == len(seams.edges)
    assert sum(line.startswith("A one-way print ") for line in words) == len(seams.stands)


def test_what_meets_what_is_told_by_the_places_of_a_set() -> None:
    half_squares = made("half-square-two")
    words = seam_words(half_squares, method_seams(half_squares), Unit.INCH)
    assert words[:3] == (
        "A set: 2 squares, its places numbered as squares are taken.",
        "Units of a set: 2.",
        # Sides of 8 1/2 in, of which 8 show, and so does 8 times the root of two.
        "Place 1 meets place 2 along 11 1/2 in: every unit.",
    )
    assert words[3] == "Edge of unit 1 towards row 1: place 1."
    stack = made("stacked-four-patch")
    words = seam_words(stack, method_seams(stack), Unit.INCH)
    assert [line.split(": ")[1] for line in words[2:6]] == [
        "unit 4.", "unit 3.", "units 3 and 4.", "unit 1.",
    ]  # fmt: skip
    plain = made("plain-squares")
    words = seam_words(plain, method_seams(plain), Unit.INCH)
    assert words[1] == "Nothing meets inside a unit."


def test_a_fabric_may_meet_itself() -> None:
    stack = made("stacked-four-patch")
    seams = replace(method_seams(stack), seams=(Seam(("A", "A"), (1, 2, 4), 2.0),))
    words = seam_words(stack, seams, Unit.INCH)
    assert words[2] == "Place 1 meets itself along 2 in: units 1, 2 and 4."


def test_where_a_print_points() -> None:
    assert [way_words(degrees) for degrees in range(0, 360, 45)] == list(
        dict.fromkeys(way_words(degrees) for degrees in range(0, 360, 45))
    )
    assert way_words(315) == "towards row 1 and where the row begins"
    assert way_words(337) == "towards row 1 and where the row begins"
    assert way_words(0) == "towards row 1"
    assert way_words(135) == "away from row 1 and where the row goes on"
    assert way_words(359) == "towards row 1"

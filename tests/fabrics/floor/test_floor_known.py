"""Units as they are looked for: of which sets, with which patches, and how they may lie."""

from __future__ import annotations

import subprocess
import sys

import pytest
import shapely

from sewalong.fabrics.floor.known import UNKNOWN, shapes_of, turned, units_of_sets
from sewalong.fabrics.floor.ways import outlines_of, ways_of
from sewalong.piecing.cloth import turned as turned_piece
from sewalong.piecing.geometry import turn
from sewalong.wall.laying.edges import turned_sides
from sewalong.wall.laying.units import wall_unit
from tests.fabrics.floor.made_floors import METHODS, made


@pytest.mark.parametrize("method", METHODS)
def test_patches_lie_as_the_engine_turns_the_unit(method: str) -> None:
    derived = made(method)
    letters = tuple(derived.letters)
    seam = float(derived.seam)
    for unit, known in zip(derived.units, units_of_sets(derived, {1: letters}), strict=True):
        for quarters in known.turns:
            piece = turned_piece(unit, turn(2 * quarters))
            width, height = piece.size
            theirs = {
                (patch.letter, _cut(patch.points, seam, width, height))
                for patch in piece.finished(seam)
            }
            ours = {
                (patch.fabric, _cut(turned(patch.outline, quarters), 0, 1, 1))
                for patch in known.patches
            }
            assert ours == theirs


def test_turns_are_those_of_a_laying() -> None:
    derived = made("stacked-four-patch")
    fabrics = dict(zip(derived.letters, "KLMNOPQR", strict=True))
    for unit, known in zip(derived.units, units_of_sets(derived, {1: "KLMNOPQR"}), strict=True):
        sides = wall_unit(unit, float(derived.seam), fabrics).sides
        for quarters in (0, 1, 2, 3):
            (upper,) = (
                patch.fabric
                for patch in known.patches
                if max(y for _, y in turned(patch.outline, quarters)) < 0.51
            )
            side = turned_sides(sides, quarters)[0]
            assert max(side, key=lambda span: span.end - span.start).fabric == upper


def _cut(points: tuple[tuple[float, float], ...], seam: float, width: float, height: float) -> str:
    shape = shapely.Polygon([((x + seam) / width, (y + seam) / height) for x, y in points])
    return str(shapely.set_precision(shape, 1e-4).normalize().wkt)


def test_units_are_named_by_set_and_order_and_have_the_fabrics_of_their_squares() -> None:
    units = units_of_sets(made("stacked-four-patch"), {7: "ABCDEFGH", 3: ("K", None)})
    assert [unit.called for unit in units][:5] == [
        "set 3 unit 1",
        "set 3 unit 2",
        "set 3 unit 3",
        "set 3 unit 4",
        "set 7 unit 1",
    ]
    # Only opposite units of a stack share no fabric (what is exact: the contacts of a set).
    first, second, third, fourth = ({p.fabric for p in unit.patches} for unit in units[4:])
    assert first | third == second | fourth == set("ABCDEFGH")
    assert {p.fabric for unit in units[:4] for p in unit.patches} == {"K", UNKNOWN}


def test_a_unit_that_is_not_square_lies_two_ways() -> None:
    (geese, *_) = shapes_of(made("flying-geese-four"))
    assert geese.shape < 0.6
    assert geese.turns == (0, 2)
    assert {p.fabric for p in geese.patches} == {UNKNOWN}


def test_turns_in_which_a_unit_looks_the_same_are_one_way() -> None:
    units = units_of_sets(made("hourglass"), {1: "AB", 2: "CC"})
    ways = ways_of(units, outlines_of(units))
    assert [way.turns for way in ways if way.unit == 0] == [(0, 2), (1, 3)]
    assert [way.turns for way in ways if way.unit == 2] == [(0, 1, 2, 3)]


def test_patches_stand_in_reading_order() -> None:
    outlines = outlines_of(shapes_of(made("nine-patch")))
    middles = [shapely.Polygon(outline).centroid for outline in outlines]
    assert [(round(3 * m.y - 0.5), round(3 * m.x - 0.5)) for m in middles] == [
        (row, column) for row in range(3) for column in range(3)
    ]


def test_what_was_read_is_said_without_the_libraries() -> None:
    names = "known", "ways", "result", "mending", "floor_words", "read"
    code = "import sys; sys.modules.update(numpy=None, PIL=None, coloraide=None)\n" + "\n".join(
        f"import sewalong.fabrics.floor.{name}" for name in names
    )
    subprocess.run([sys.executable, "-c", code], check=True)

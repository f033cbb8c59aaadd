"""The top drawn as it is laid: where like fabrics meet in the drawing, the engine finds a touch."""

from __future__ import annotations

from itertools import combinations
from random import Random

import pytest
from msgspec.structs import replace
from shapely import Polygon

from sewalong.progress.record.state import State
from sewalong.progress.record.wall import OF_NO_SET, LaidUnit
from sewalong.progress.wall.on_wall import on_wall
from sewalong.progress.wall.top_as_laid import row_as_laid, units_as_laid
from sewalong.progress.wall.units import units_by_letter
from sewalong.quilt.quilt import Target
from sewalong.quilt.setting import SetOnPoint, Setting
from sewalong.wall.drawing.drawn import drawing_of_row, drawing_of_top
from sewalong.wall.keys import UNKNOWN, cloth_letter
from sewalong.wall.laying.edges import turned_sides
from sewalong.wall.laying.laying import Kind, touches
from tests.progress import every_act as c
from tests.progress.building import a_quilt, go_on, play, suited
from tests.progress.sets.fabrics import with_fabrics
from tests.progress.wall.test_wall_record import a_wall

NEAR = 1e-6
SETTINGS = {"straight": None, "on point": SetOnPoint("grey")}


def turned_about(setting: Setting | None, seed: int = 0) -> State:
    """Eight units on point, or twelve straight, mixed up and each turned anyhow."""
    chance = Random(seed)
    state, record = a_wall(*((2, 3) if setting else (3, 4)), setting=setting)
    numbers = [lies[0] for there in state.wall.rows for lies in there if lies is not None]
    chance.shuffle(numbers)
    moves = tuple(
        (row, place, numbers.pop(), chance.randrange(4))
        for row, there in enumerate(state.wall.rows, start=1)
        for place, lies in enumerate(there, start=1)
        if lies is not None
    )
    return go_on(state, record, c.MoveMany(moves))


def alike(parts: tuple[tuple[object, str], ...]) -> dict[str, float]:
    """By fabric: inches along which patches of it meet in a drawing."""
    shapes = [(Polygon(points), cloth_letter(key)) for points, key in parts]  # type: ignore[arg-type]
    found: dict[str, float] = {}
    for (one, fabric), (other, same) in combinations(shapes, 2):
        if fabric and fabric == same:
            inches = one.buffer(NEAR).intersection(other).length / 2
            if inches > 0.01:
                found[fabric] = found.get(fabric, 0.0) + inches
    return found


def of_the_engine(state: State) -> dict[str, float]:
    laid = on_wall(state)
    assert laid is not None
    found: dict[str, float] = {}
    for touch in touches(laid.laying, laid.units):
        if touch.kind is Kind.FABRIC:
            found[touch.fabric] = found.get(touch.fabric, 0.0) + touch.inches
    return found


@pytest.mark.parametrize("setting", SETTINGS)
def test_like_fabrics_meet_where_the_engine_has_a_touch(setting: str) -> None:
    met = 0
    for seed in range(12):
        state = turned_about(SETTINGS[setting], seed)
        drawing = drawing_of_top(state.quilt, state.target, units_as_laid(state), "laid")
        reckoned = of_the_engine(state)
        assert alike(drawing.parts) == pytest.approx(reckoned, abs=0.01)
        met += len(reckoned)
    assert met > 4


@pytest.mark.parametrize("setting", SETTINGS)
def test_a_row_alone_is_the_row_of_the_top(setting: str) -> None:
    """Its patches are as many and as large, and like fabrics meet in it as the engine says."""
    state = turned_about(SETTINGS[setting])
    laid = on_wall(state)
    assert laid is not None
    for row, there in enumerate(state.wall.rows, start=1):
        drawing = drawing_of_row(state.quilt, row_as_laid(state, row), "a row")
        side = drawing.size[1]
        assert drawing.size == pytest.approx((len(there) * side, side))
        area = sum(Polygon(points).area for points, _ in drawing.parts)
        assert area == pytest.approx(len(there) * side**2)
        inside: dict[str, float] = {}
        for touch in touches(laid.laying, laid.units):
            if touch.kind is Kind.FABRIC and {at[0] for at in touch.places} == {row}:
                inside[touch.fabric] = inside.get(touch.fabric, 0.0) + touch.inches
        assert alike(drawing.parts) == pytest.approx(inside, abs=0.01)


@pytest.mark.parametrize("setting", SETTINGS)
def test_the_edge_above_a_row_is_the_one_towards_the_row_before(setting: str) -> None:
    """Along the upper edge of row 2 stands what its units show to row 1, from end to end."""
    state = turned_about(SETTINGS[setting])
    laid = on_wall(state)
    assert laid is not None
    facet = 3 if state.quilt.is_on_point else 0
    shown = [
        {
            span.fabric
            for span in turned_sides(laid.units[put.unit].sides, put.turns)[facet]
            if span.end - span.start > NEAR
        }
        for put in laid.laying.places[1]
        if put is not None
    ]
    drawing = drawing_of_row(state.quilt, row_as_laid(state, 2), "a row")
    side = drawing.size[1]
    above: list[set[str]] = [set() for _ in shown]
    for points, key in drawing.parts:
        upper = [x for x, y in points if y < NEAR]
        if len(upper) > 1:
            above[int(sum(upper) / len(upper) / side)].add(cloth_letter(key) or "")
    assert above == (shown[::-1] if state.quilt.is_on_point else shown)


def test_an_empty_place_and_a_unit_by_its_letter() -> None:
    quilt = replace(with_fabrics(), target=Target(1, 3))
    state, _ = play(quilt, c.LayWall(units_by_letter("AB"), (((1, 0), None, (0, 0)),)))
    one, none, other = units_as_laid(state)
    assert none is None
    assert one is not None
    assert other is not None
    assert (set(one.squares), set(other.squares)) == ({"B"}, {"A"})
    drawing = drawing_of_row(quilt, (one, none, other), "a row")
    side = drawing.size[1]
    for points, key in drawing.parts:
        column = int(sum(x for x, _ in points) / len(points) / side)
        assert key == (UNKNOWN if column == 1 else f"cloth {'BXA'[column]}")


def test_a_unit_that_is_not_square_is_drawn_level_whatever_is_recorded() -> None:
    quilt = suited(a_quilt("flying-geese-four", 90, 2, 2))
    units = tuple(LaidUnit(OF_NO_SET, n, ("",) * 5) for n in range(4))
    state, _ = play(quilt, c.LayWall(units, (((0, 0), (1, 0)), ((2, 2), (3, 2)))))
    # The plan may have had another unit when it was laid.
    wall = replace(state.wall, rows=(((0, 1), (1, 0)), ((2, 3), (3, 2))))
    laid = units_as_laid(replace(state, wall=wall))
    assert [unit.turns if unit else None for unit in laid] == [0, 0, 2, 2]
    drawing = drawing_of_top(quilt, quilt.target, laid, "geese")
    assert drawing.size[0] == pytest.approx(2 * drawing.size[1])

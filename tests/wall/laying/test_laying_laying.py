"""Places and their neighbours, and touches by every rule."""

from __future__ import annotations

from fractions import Fraction as F

import networkx
import pytest
from msgspec.structs import replace

from sewalong.quilt.setting import Sashing, SetOnPoint, Setting
from sewalong.wall.laying.edges import TouchRule
from sewalong.wall.laying.grid import CORNERS, SASH, Grid, grid_of
from sewalong.wall.laying.laying import Kind, Laying, Put, Rules, empty_laying, touches
from sewalong.wall.laying.units import plain_unit, relabelled
from tests.wall.laying.walls import made, typed

CORNER = Rules(touch=TouchRule.CORNER)


def contacts(grid: Grid, rule: TouchRule) -> int:
    found = [
        link
        for links in grid.links
        for link in links
        if link.other >= 0 and (link.mine < CORNERS or rule is TouchRule.CORNER)
    ]
    return len(found) // 2


@pytest.mark.parametrize(
    ("rows", "columns", "along_seams", "with_points"), [(6, 6, 60, 110), (8, 9, 127, 239)]
)
def test_contacts_are_as_many_as_the_grid_and_the_king_graph_have(
    rows: int, columns: int, along_seams: int, with_points: int
) -> None:
    # Checks W02: r(c-1) + c(r-1), and 4rc - 3(r+c) + 2 (mathworld.wolfram.com/KingGraph.html).
    grid = grid_of(rows, columns)
    assert contacts(grid, TouchRule.EDGE) == along_seams
    assert contacts(grid, TouchRule.CORNER) == with_points


@pytest.mark.parametrize("setting", [None, SetOnPoint("linen")], ids=["straight", "on point"])
def test_each_contact_is_seen_from_both_its_places(setting: Setting | None) -> None:
    grid = grid_of(3, 4, setting)
    seen = {
        (here, link.mine, link.other, link.theirs)
        for here, links in enumerate(grid.links)
        for link in links
        if link.other >= 0
    }
    assert {(other, theirs, here, mine) for here, mine, other, theirs in seen} == seen
    joined = networkx.Graph((here, other) for here, _, other, _ in seen)
    assert networkx.is_connected(joined)
    assert len(joined) == len(grid.places)


def test_on_point_a_whole_unit_meets_four_units_between_and_no_whole_one_along_a_seam() -> None:
    # A worked case: 2 x 2 whole units with one between them, in slanting rows of 1, 3 and 1.
    grid = grid_of(2, 2, SetOnPoint("linen"))
    assert grid.rows == (1, 3, 1)
    assert grid.places == ((1, 1), (2, 1), (2, 2), (2, 3), (3, 1))
    near = {
        grid.places[here]: {
            grid.places[link.other] for link in links if link.mine < CORNERS and link.other >= 0
        }
        for here, links in enumerate(grid.links)
    }
    assert near[2, 2] == {(1, 1), (2, 1), (2, 3), (3, 1)}
    assert all(near[at] == {(2, 2)} for at in grid.places if at != (2, 2))
    assert [grid.shown[grid.number(at)] for at in ((1, 1), (2, 1), (2, 3))] == [
        (1, 1),
        (1, 3),
        (3, 1),
    ]


def test_no_unit_touches_another_across_a_sash_but_the_sash_where_that_is_asked() -> None:
    units, laying = typed("AA / AB")
    sashed = replace(laying, setting=Sashing(F(2), "A", frame=True))
    assert touches(sashed, units, CORNER) == ()
    # Three units of A with four sashes round each, for there is a frame.
    assert len(touches(sashed, units, Rules(sash="A"))) == 12
    assert {touch.kind for touch in touches(sashed, units, Rules(sash="A"))} == {Kind.SASH}
    open_ended = replace(laying, setting=Sashing(F(2), "A"))
    assert len(touches(open_ended, units, Rules(sash="A"))) == 6
    assert len(touches(open_ended, units, Rules(rim="A"))) == 6
    assert any(link.other == SASH for links in sashed.grid.links for link in links)


def test_the_rim_touches_what_is_of_the_border_s_fabric() -> None:
    units, laying = typed("ABA / BAB / ABA")
    found = touches(laying, units, Rules(rim="A"))
    assert [touch.places for touch in found] == [
        ((1, 1),), ((1, 1),), ((1, 3),), ((1, 3),), ((3, 1),), ((3, 1),), ((3, 3),), ((3, 3),),
    ]  # fmt: skip


def test_touches_are_named_by_both_places_and_the_fabric() -> None:
    units, laying = typed("AAB / BAC")
    assert [(touch.kind, touch.places, touch.fabric) for touch in touches(laying, units)] == [
        (Kind.FABRIC, ((1, 1), (1, 2)), "A"),
        (Kind.FABRIC, ((1, 2), (2, 2)), "A"),
    ]
    points = [touch for touch in touches(laying, units, CORNER) if touch.kind is Kind.POINT]
    assert [touch.places for touch in points] == [((1, 1), (2, 2))]


def test_units_of_one_stack_touch_where_that_is_asked() -> None:
    units = tuple(replace(plain_unit(letter), stack=n // 2) for n, letter in enumerate("ABCD"))
    laying = empty_laying(2, 2).with_places([Put(0), Put(1), Put(2), Put(3)])
    assert touches(laying, units) == ()
    found = touches(laying, units, Rules(stacks=True))
    assert [touch.places for touch in found] == [((1, 1), (1, 2)), ((2, 1), (2, 2))]
    turned = laying.with_places([Put(0), Put(2), Put(3), Put(1)])
    assert touches(turned, units, Rules(stacks=True)) == ()
    assert len(touches(turned, units, Rules(touch=TouchRule.CORNER, stacks=True))) == 2


def test_light_and_dark_quarters_all_one_way_touch_at_every_seam_and_by_turns_at_none() -> None:
    # N023: 6 x 8 units with light, dark, light, dark at their edges.
    (unit,) = made("stacked-four-patch", 1, 8)
    marks = [max(side, key=lambda span: span.end - span.start).fabric for side in unit.sides]
    dark = dict(zip(marks, ("light", "dark", "light", "dark"), strict=True))
    alike = relabelled([unit] * 48, dark)
    places = [Put(n) for n in range(48)]
    assert len(touches(empty_laying(6, 8).with_places(places), alike)) == 82
    by_turns = [Put(n, (n // 8 + n % 8) % 2) for n in range(48)]
    assert touches(empty_laying(6, 8).with_places(by_turns), alike) == ()


def test_values_can_touch_as_fabrics_do() -> None:
    units, laying = typed("AB / CD")
    dark = relabelled(units, {"A": "dark", "B": "dark", "C": "light"})
    assert [touch.fabric for touch in touches(laying, dark)] == ["dark"]


def test_a_laying_has_a_place_for_each_unit_and_each_unit_once() -> None:
    with pytest.raises(ValueError, match="a place for each unit"):
        Laying(2, 2, ((Put(0), Put(1)),))
    with pytest.raises(ValueError, match="in one place only"):
        Laying(1, 2, ((Put(0), Put(0)),))
    with pytest.raises(ValueError, match="one row and one column"):
        empty_laying(0, 3)
    laying = empty_laying(1, 2)
    assert laying.at((1, 2)) is None
    with pytest.raises(KeyError):
        laying.at((1, 3))
    with pytest.raises(KeyError):
        laying.at((0, 1))

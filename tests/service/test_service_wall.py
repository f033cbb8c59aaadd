"""The wall looked at: what is said of a move is what a count of all touches finds once it is made."""

from __future__ import annotations

import re
from fractions import Fraction
from random import Random

import pytest
from msgspec.structs import replace
from shapely import Polygon

from sewalong.fabrics.looked_at import View
from sewalong.fabrics.sight import Sight, value
from sewalong.progress.acts.act import Act
from sewalong.progress.record.refused import Refused
from sewalong.progress.record.state import State
from sewalong.progress.record.wall import LaidUnit
from sewalong.progress.wall.on_wall import on_wall
from sewalong.progress.wall.units import units_by_letter, units_to_lay
from sewalong.quilt.choices import Fabric
from sewalong.quilt.quilt import Border, Quilt, Target
from sewalong.quilt.setting import Sashing, SetOnPoint
from sewalong.service.wall.drawn import flat_unit, wall_colours
from sewalong.service.wall.in_hand import WallInHand, wall_in_hand
from sewalong.service.wall.looks import (
    LOCKED,
    SEWN,
    TOUCHES,
    Shows,
    colours,
    drawn,
    marked_words,
    pictured,
    place_page,
    signs,
    spares,
    verdict,
    worst,
)
from sewalong.service.wall.moves import lock, put_in, rows_to_type, swap, take_out, turn
from sewalong.service.wall.proposals import WallRules, rules_now, to_propose
from sewalong.service.wall.rules import (
    Wanted,
    around_words,
    fabric_around,
    fabrics_around,
    found_words,
    possible_words,
    proposed_wall,
)
from sewalong.wall.cells.stamps import Size
from sewalong.wall.keys import cloth_key
from sewalong.wall.laying.grid import At
from sewalong.wall.laying.laying import touches
from sewalong.wall.laying.plans import Plan
from sewalong.wall.laying.search import laid
from tests.progress import every_act as c
from tests.progress.building import Record, go_on, play
from tests.progress.sets.fabrics import sets_of, with_fabrics


def a_wall(*acts: Act, sets: int = 4, **changed: object) -> tuple[State, Record, WallInHand]:
    """Units of four-patches in three rows of four, laid as they were made; four are spare."""
    quilt = replace(with_fabrics(), target=Target(3, 4), **changed)
    state, record = play(quilt, c.AcceptSets(sets_of(8, sets)))
    units = units_to_lay(state)
    lengths = [row.units for row in quilt.rows_for(quilt.target)]
    numbers = iter(range(len(units)))
    rows = tuple(tuple((next(numbers), 0) for _ in range(length)) for length in lengths)
    for act in (c.LayWall(units, rows), *acts):
        state = go_on(state, record, act)
    found = wall_in_hand(state)
    assert found is not None
    return state, record, found


def counted(state: State) -> int:
    """All touches, counted from nothing."""
    now = on_wall(state)
    assert now is not None
    return len(touches(now.laying, now.units, now.rules))


def said(sentence: str) -> int:
    """How many touches there are after this."""
    found = re.search(r"(none|\d+) after this", sentence)
    assert found is not None, sentence
    return 0 if found[1] == "none" else int(found[1])


PLACES = [(row, place) for row in (1, 2, 3) for place in (1, 2, 3, 4)]


@pytest.mark.parametrize("at", PLACES[::3])
def test_what_is_said_of_each_turn_is_so_once_it_is_turned(at: At) -> None:
    state, record, wall = a_wall()
    does = place_page(wall, at).does
    assert [one.split(":")[0] for one in does] == [
        "A quarter turn", "Half way round", "Three quarters",
    ]  # fmt: skip
    for quarters, sentence in enumerate(does, start=1):
        turned = go_on(state, record.copy(), c.TurnUnit(*at, quarters))
        assert said(sentence) == counted(turned)


@pytest.mark.parametrize("empty", [(), (c.PutSpare(2, 2),)])
def test_what_is_said_of_a_swap_is_so_once_it_is_made(empty: tuple[Act, ...]) -> None:
    state, record, wall = a_wall(*empty)
    for held, at in (((1, 1), (1, 2)), ((1, 1), (3, 4)), ((2, 2), (2, 3)), ((2, 3), (2, 2))):
        first = place_page(wall, at, held).does[0]
        assert first.startswith(f"Put down here: {counted(state)} touch")
        assert said(first) == counted(go_on(state, record.copy(), swap(held, at)))
    assert wall.touches == counted(state), "nothing is moved by looking"


def test_a_swap_names_what_it_mends_and_makes() -> None:
    _, _, wall = a_wall()
    named = [
        one for held in worst(wall) for at in PLACES for one in place_page(wall, at, held).does[1:]
    ]
    for does in ("mends", "makes"):
        assert any(re.fullmatch(rf"It {does}: row \d place \d meets .*\.", one) for one in named)


def test_what_a_spare_would_cost_is_so_once_it_is_in() -> None:
    state, record, wall = a_wall()
    found = spares(wall, (2, 3))
    assert [said(one.words) for one in found] == sorted(said(one.words) for one in found)
    assert {one.unit for one in found} == {12, 13, 14, 15}
    for one in found:
        assert said(one.words) == counted(go_on(state, record.copy(), put_in((2, 3), one)))
    out = go_on(state, record, take_out((2, 3)))
    after = wall_in_hand(out)
    assert after is not None
    assert len(spares(after, (2, 3))) == 5
    for one in spares(after, (2, 3)):
        assert said(one.words) == counted(go_on(out, record.copy(), put_in((2, 3), one)))


def test_a_board_that_goes_on_is_as_one_made_anew() -> None:
    state, record, wall = a_wall()
    chance = Random(3)
    for _ in range(40):
        one, other = chance.sample(PLACES, 2)
        act = chance.choice(
            [c.TurnUnit(*one), c.SwapPlaces(*one, *other), c.PutSpare(*one), c.LockPlaces((one,))]
        )
        try:
            state = go_on(state, record, act)
        except Refused:
            continue
        went_on = wall_in_hand(state, wall)
        anew = wall_in_hand(state)
        assert went_on is wall
        assert anew is not None
        assert wall.on == anew.on
        assert wall.touches == anew.touches == counted(state)
        assert wall.board.face[: wall.board.places] == anew.board.face[: anew.board.places]
        assert [place_page(wall, at) for at in PLACES] == [place_page(anew, at) for at in PLACES]


def test_what_is_locked_or_sewn_is_marked_and_nothing_is_offered_there() -> None:
    state, record, wall = a_wall(c.LockPlaces(((3, 4),)))
    state = go_on(state, record, c.Find("unit", 12, "bought"))
    state = go_on(state, record, c.Count("sew-rows", 1))
    again = wall_in_hand(state, wall)
    assert again is wall
    assert drawn(wall).sewn == {1}
    marked = signs(wall, Shows.TOUCHES)
    assert marked[wall.board.slot((3, 4))] in (LOCKED, TOUCHES)
    page = place_page(wall, (1, 2))
    assert "It is sewn, and stays where it is." in page.lies
    assert page.does == ()
    assert place_page(wall, (3, 4)).lies[-1] == "It is locked."
    assert place_page(wall, (2, 1), (1, 2)).does == ("Row 1 place 2 stays as it is.",)
    with pytest.raises(Refused, match="sewn"):
        go_on(state, record, swap((1, 2), (2, 1)))
    state = go_on(state, record, lock(wall, (3, 4)))
    again = wall_in_hand(state, wall)
    assert again is wall
    assert not wall.on.locked
    begun = go_on(state, record, c.BeginRows(((1, 2),)))
    now = wall_in_hand(begun)
    assert now is not None
    assert [signs(now, Shows.TOUCHES).get(now.board.slot((2, place))) for place in (1, 2)] in (
        [SEWN, SEWN], [SEWN, TOUCHES], [TOUCHES, SEWN], [TOUCHES, TOUCHES],
    )  # fmt: skip
    assert now.on.sewn >= {(2, 1), (2, 2)}


def test_touches_are_marked_and_the_worst_come_first() -> None:
    state, _, wall = a_wall()
    now = on_wall(state)
    assert now is not None
    found = touches(now.laying, now.units, now.rules)
    at_places = {at for touch in found for at in touch.places}
    assert {*worst(wall)} == at_places
    marked = {n for n, sign in signs(wall, Shows.TOUCHES).items() if sign == TOUCHES}
    assert marked == {wall.board.slot(at) for at in at_places}
    often = [sum(at in touch.places for touch in found) for at in worst(wall)]
    assert often == sorted(often, reverse=True)
    assert verdict(wall).startswith(f"{len(found)} touches")


def test_blobs_are_marked_by_their_numbers_and_said() -> None:
    quilt = with_fabrics()
    alike = tuple(replace(fabric, colour="#a03020") for fabric in quilt.fabrics)
    _, _, wall = a_wall(fabrics=alike)
    assert set(signs(wall, Shows.FAMILIES).values()) == {"1"}
    title, first, *_ = marked_words(wall, Shows.FAMILIES)
    assert title == "Blobs of one colour family:"
    assert first.startswith("1: 12 units hang together that are ")
    assert signs(wall, Shows.NOTHING) == {}
    apart = a_wall(fabrics=tuple(replace(one, colour=None) for one in alike))[2]
    assert marked_words(apart, Shows.VALUES) == ("There are no blobs of one value.",)


def test_what_is_drawn_is_what_lies_there_in_her_colours_and_as_others_see_them() -> None:
    state, _, wall = a_wall(c.TurnUnit(1, 2))
    shown = drawn(wall)
    assert shown.puts == wall.on.laying.in_order
    plain, grey, seen = (colours(wall, view) for view in (
        View(), View(in_grey=True), View(sight=Sight.WITHOUT_RED),
    ))  # fmt: skip
    for fabric in state.quilt.counted_fabrics:
        key = cloth_key(fabric.letter)
        assert str(plain[key]) == fabric.colour
        assert len({grey[key].red, grey[key].green, grey[key].blue}) == 1
        assert value(grey[key]) == pytest.approx(value(plain[key]), abs=0.5)
    assert seen != plain
    there = pictured(wall, (1, 2), 12, 6)
    assert there is not None
    assert len(there.keys) == 4
    assert (there.across, there.down) == (12, 6)
    assert pictured(a_wall(c.PutSpare(1, 2))[2], (1, 2), 12, 6) is None


def test_from_afar_a_unit_is_the_light_of_its_patches_by_their_areas() -> None:
    """sRGB to linear light and back as in IEC 61966-2-1, areas by shapely."""
    _, _, wall = a_wall()
    hung, seen = drawn(wall), colours(wall)
    put = hung.puts[0]
    assert put is not None
    unit = flat_unit(wall.state.quilt, wall.pieced[put.unit])
    areas = {patch.letter: Polygon(patch.points).area for patch in unit.patches}
    (pixel,) = {key for row in hung.afar.of(put, Size(2, 2)).pixels for key in row}
    assert pixel is not None
    for part in ("red", "green", "blue"):
        light = sum(linear(getattr(seen[key], part)) * area for key, area in areas.items())
        there = linear(getattr(seen[pixel], part))
        assert there == pytest.approx(light / sum(areas.values()), abs=0.01)
    assert hung.lightness[pixel] == pytest.approx(value(seen[pixel]))


def linear(part: int) -> float:
    """Linear light of a part of an sRGB colour, 0 to 255."""
    share = part / 255
    return share / 12.92 if share <= 0.04045 else float(((share + 0.055) / 1.055) ** 2.4)


def test_zoomed_out_units_are_seen_from_afar_where_not_all_show_what_they_are() -> None:
    hung = drawn(a_wall()[2])
    for down, far in ((12, False), (5, True)):
        room = hung.room(40, down)
        assert (hung.drawn(room, -1)[0] is hung.afar) is far
        assert hung.drawn(room, 0)[0] is hung.drawn(room, 99)[0] is hung.stamps


def test_cloth_of_which_only_light_or_dark_is_known_has_strokes() -> None:
    quilt = with_fabrics()
    only = replace(quilt.fabrics[0], colour=None, value="dark")
    _, _, wall = a_wall(fabrics=(only, *quilt.fabrics[1:]))
    assert drawn(wall).strokes == {cloth_key("A"): "#ffffff"}


def test_a_one_way_print_that_does_not_stand_upright_is_said() -> None:
    quilt = with_fabrics()
    one_way = tuple(replace(fabric, kind="one-way") for fabric in quilt.fabrics)
    _, _, wall = a_wall(c.TurnUnit(1, 1, 2), fabrics=one_way)
    found = [one for one in place_page(wall, (1, 1)).lies if re.search("stands|lies ", one)]
    assert found, "of four patches turned half round some do not stand upright"
    assert not any("stands" in one for one in place_page(a_wall()[2], (1, 1)).lies)


def by_letters(quilt: Quilt, *rows: str) -> tuple[State, Record, WallInHand]:
    """Units known by a letter each, typed row by row."""
    letters = [letter for row in rows for letter in row]
    numbers = iter(range(len(letters)))
    lies = tuple(tuple((next(numbers), 0) for _ in row) for row in rows)
    state, record = play(
        quilt, c.LayWall(units_by_letter(letters), lies, stacks=False, how="typed")
    )
    found = wall_in_hand(state)
    assert found is not None
    return state, record, found


def test_units_known_by_a_letter_are_squares_and_no_turn_changes_them() -> None:
    quilt = replace(with_fabrics(), target=Target(2, 3))
    state, _, wall = by_letters(quilt, "ABA", "ACB")
    assert wall.touches == 1
    page = place_page(wall, (1, 1))
    assert page.lies == ("A chalk.",)
    assert page.touches == ("Row 1 place 1 meets row 2 place 1: A chalk along a seam.",)
    assert page.does == ()
    with pytest.raises(Refused, match="shows the same"):
        turn(wall, (1, 1))
    (patch,) = flat_unit(quilt, wall.pieced[0]).patches
    assert patch.letter == cloth_key("A")
    assert [row.typed for row in rows_to_type(state)] == ["A B A", "A C B"]
    assert [row.words for row in rows_to_type(state)] == ["Row 1: 3 units", "Row 2: 3 units"]


def test_on_point_rows_to_type_are_those_that_are_sewn() -> None:
    quilt = replace(with_fabrics(), target=Target(2, 2), setting=SetOnPoint("grey"))
    assert [row.words for row in rows_to_type(play(quilt)[0])] == [
        "Row 1: 1 unit", "Row 2: 3 units", "Row 3: 1 unit",
    ]  # fmt: skip


def test_a_letter_that_is_no_fabric_is_drawn_in_a_colour_of_the_palette() -> None:
    quilt = replace(with_fabrics(), target=Target(1, 2), fabrics=())
    _, _, wall = by_letters(quilt, "AB")
    assert len({str(wall_colours(quilt, wall.pieced, View())[cloth_key(one)]) for one in "AB"}) == 2


def test_where_nothing_is_laid_there_is_nothing_to_look_at() -> None:
    assert wall_in_hand(play(with_fabrics())[0]) is None


def test_the_rules_are_picked_and_said() -> None:
    state, _, _ = a_wall()
    wanted = Wanted(rules_now(state))
    assert wanted.words(state) == "By seams, stacks apart, seed 1"
    wanted = wanted.with_points_or_not().with_stacks_or_not().with_rim("A")
    wanted = replace(wanted, spread=True, plan=Plan.RINGS, seed=4)
    assert (
        wanted.words(state)
        == "By seams and points, A chalk off the rim, spread evenly, rings, seed 4"
    )
    asked = to_propose(state, **wanted.asked())
    assert (asked.asked.plan, asked.asked.spread, asked.asked.seed) == (Plan.RINGS, True, 4)
    assert asked.rules == WallRules("corner", False, "A")
    back = wanted.with_points_or_not().with_stacks_or_not().with_rim("")
    assert back.rules == rules_now(state)


@pytest.mark.parametrize(("cloth", "letter"), [("moss", "F"), ("velvet", "")])
def test_the_border_s_fabric_is_known_by_its_name(cloth: str, letter: str) -> None:
    state, _, _ = a_wall(borders=(Border(Fraction(3), cloth),))
    assert fabric_around(state) == letter
    assert fabric_around(a_wall(borders=())[0]) == ""


def test_the_verdict_says_nothing_is_best_that_no_bound_meets() -> None:
    quilt = replace(
        with_fabrics(),
        target=Target(2, 3),
        fabrics=(Fabric("A", "chalk", squares=4), Fabric("B", "oat", squares=4)),
    )
    state, _, _ = by_letters(quilt, "AAA", "AAB")
    asked = to_propose(state, WallRules(stacks=False))
    before = found_words(possible_words(state, asked), None)
    assert before[0].startswith("Not possible: like fabrics meet along a seam ")
    assert any(
        one.startswith("A chalk: 5 units, and 3 can lie apart: 2 too many") for one in before
    )
    found = laid(asked.asked, 30)
    after = found_words(before, found)[-1]
    assert ("no layout has fewer." in after) is found.is_least
    assert proposed_wall(state, asked, found).touches == found.touches
    possible = to_propose(by_letters(quilt, "AAB", "ABB")[0], WallRules(stacks=False))
    assert found_words(possible_words(state, possible), laid(possible.asked, 5)) == (
        "Possible, and here it is: nothing touches.",
    )


def test_what_lies_on_the_wall_of_no_set_goes_on_being_what_it_was_seen_to_be() -> None:
    quilt = replace(with_fabrics(), target=Target(1, 1))
    unit = LaidUnit(0, 0, ("A", "B", "", "", "C", "", "", ""))
    state, _ = play(quilt, c.LayWall((unit,), (((0, 0),),)))
    wall = wall_in_hand(state)
    assert wall is not None
    assert pictured(wall, (1, 1), 8, 4) is not None
    assert "one not known" in " ".join(place_page(wall, (1, 1)).lies)


def test_a_board_is_kept_while_the_same_units_lie_by_the_same_rules() -> None:
    state, record, wall = a_wall()
    board = wall.board
    state = go_on(state, record, c.SwapPlaces(1, 1, 2, 2), c.TurnUnit(3, 3), c.Count("pair"))
    assert wall_in_hand(state, wall) is wall
    assert wall.board is board
    by_points = c.LayWall(state.wall.units, state.wall.rows, touch="corner")
    assert wall_in_hand(go_on(state, record.copy(), by_points), wall) is not wall
    dyed = replace(state.quilt, fabrics=(replace(state.quilt.fabrics[0], colour="#000000"),))
    assert wall_in_hand(replace(state, quilt=dyed), wall) is not wall


def test_rows_begun_are_marked_place_by_place_and_whole_ones_by_their_number() -> None:
    quilt = replace(with_fabrics(), target=Target(2, 3))
    state, record, _ = by_letters(quilt, "ABC", "BCA")
    sewn = (c.Find("unit", 6, "bought"), c.Count("sew-rows", 1), c.BeginRows(((1, 2),)))
    wall = wall_in_hand(go_on(state, record, *sewn))
    assert wall is not None
    assert drawn(wall).sewn == {1}
    assert signs(wall, Shows.TOUCHES) == {3: SEWN, 4: SEWN}
    assert place_page(wall, (2, 3)).lies == ("A chalk.",)


def test_blobs_of_one_value_are_others_than_those_of_one_family() -> None:
    quilt = with_fabrics()
    dark = tuple(replace(one, colour=None, value="dark") for one in quilt.fabrics)
    wall = a_wall(fabrics=dark)[2]
    assert signs(wall, Shows.FAMILIES) == {}
    assert set(signs(wall, Shows.VALUES).values()) == {"1"}
    assert marked_words(wall, Shows.NOTHING) == ("Nothing is marked.",)


def test_a_turn_goes_on_by_the_next_that_fits() -> None:
    state, record, wall = a_wall()
    for quarters in (1, 2, 3, 0):
        assert turn(wall, (2, 2)) == c.TurnUnit(2, 2, 1)
        state = go_on(state, record, turn(wall, (2, 2)))
        assert state.wall.at((2, 2)) == (5, quarters)
        assert wall_in_hand(state, wall) is wall
    # One that is not square fits its place in two turns only.
    oblong = tuple(replace(unit, turns=(0, 2)) for unit in wall.on.units)
    wall.on = replace(wall.on, units=oblong)
    assert turn(wall, (2, 2)) == c.TurnUnit(2, 2, 2)
    empty = a_wall(c.PutSpare(2, 2))
    with pytest.raises(Refused, match="Nothing lies at row 2 place 2"):
        go_on(empty[0], empty[1], turn(empty[2], (2, 2)))


@pytest.mark.parametrize("turns", [1, 2, 3])
def test_a_unit_is_pictured_as_it_lies(turns: int) -> None:
    """A quarter turn takes the edge towards row 1 towards the end of the row."""
    upright = pictured(a_wall()[2], (1, 1), 12, 6)
    turned = pictured(a_wall(c.TurnUnit(1, 1, turns))[2], (1, 1), 12, 6)
    assert upright is not None
    assert turned is not None
    edges = [
        [picture.pixels[y][x] for y, x in ((0, 6), (6, 11), (11, 6), (6, 0))]
        for picture in (upright, turned)
    ]
    assert edges[1] == [edges[0][(side - turns) % 4] for side in range(4)]


def test_what_is_drawn_again_is_known_to_be_the_same() -> None:
    state, record, wall = a_wall()
    before = drawn(wall)
    moved = go_on(state, record, c.SwapPlaces(1, 1, 2, 2))
    assert wall_in_hand(moved, wall) is wall
    assert drawn(wall).alike(before)
    assert not before.alike(None)
    assert not before.alike(drawn(a_wall(sets=3)[2]))
    assert before.gap == 0.0


def test_sashes_are_drawn_as_wide_as_they_are() -> None:
    sashes = Sashing(Fraction(5, 2), "oat")
    wall = a_wall(setting=sashes)[2]
    unit = flat_unit(wall.state.quilt, wall.pieced[0]).size[0]
    assert drawn(wall).gap == pytest.approx(2 / unit, rel=0.05), "trimmed to a mark at most"


def test_what_may_lie_around_is_offered_by_letter_and_name() -> None:
    bordered = a_wall(borders=(Border(Fraction(3), "moss"), Border(Fraction(3), "navy")))[0]
    assert fabric_around(bordered) == "F"
    assert fabrics_around(bordered)[5] == ("F", "F moss")
    assert around_words(bordered) == "is the border of"
    assert around_words(a_wall(borders=())[0]) == "lies around the units"

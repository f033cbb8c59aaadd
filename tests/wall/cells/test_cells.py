"""The wall in cells: every pixel shows what lies there, and each place can be drawn anew alone."""

from __future__ import annotations

from itertools import pairwise, product
from math import hypot
from random import Random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import Point, Polygon
from shapely.affinity import rotate, scale, translate

from sewalong.piecing.cloth import Flat, Patch
from sewalong.quilt.derived import derived
from sewalong.quilt.setting import SetOnPoint, Setting
from sewalong.wall.cells.picture import Cells, WallPicture, step
from sewalong.wall.cells.sections import Room, section
from sewalong.wall.cells.stamps import Size, Stamps
from sewalong.wall.cells.words import part_words
from sewalong.wall.keys import SASH, SETTING, Key, cloth_key, cloth_letter
from sewalong.wall.laying.grid import grid_of
from sewalong.wall.laying.laying import Put
from sewalong.wall.set_picture import units_of_set
from tests.wall.laid_sets import FABRICS, a_quilt_with_fabrics, a_set

ON_POINT = SetOnPoint("grey")

OBLONG = "oblong"


def oblong_unit(number: int) -> Flat:
    """Three bars, 4 x 2 inches."""
    return Flat(
        tuple(
            Patch(
                ((a, 0.0), (b, 0.0), (b, 2.0), (a, 2.0)),
                cloth_key(FABRICS[(3 * number + bar) % len(FABRICS)].letter),
                (0.0, -1.0),
            )
            for bar, (a, b) in enumerate(((0.0, 1.0), (1.0, 2.5), (2.5, 4.0)))
        )
    )


def some_units(method: str = "stacked-four-patch", sets: int = 6) -> list[Flat]:
    """Units of a few sets, each patch of a fabric of its own; or twice as wide as high."""
    if method == OBLONG:
        return [oblong_unit(n) for n in range(4 * sets)]
    made = derived(a_quilt_with_fabrics(method))
    return [unit for n in range(sets) for unit in units_of_set(made, a_set(n, len(made.letters)))]


def a_room(
    stamps: Stamps, rows: int, columns: int, across: int, down: int, gap: float = 0.0
) -> Room:
    wide, high = stamps.inches
    return Room(across, down, rows, columns, stamps.least, high / wide, gap, stamps.on_point)


def a_picture(
    units: list[Flat],
    rows: int,
    columns: int,
    setting: Setting | None = None,
    *,
    room: tuple[int, int] = (60, 24),
    zoom: int = 0,
    at: int = 0,
) -> WallPicture:
    """A wall of these units, laid one after the other and each turned on from the one before where
    it is square."""
    grid = grid_of(rows, columns, setting)
    stamps = Stamps(units, on_point=grid.on_point)
    there = a_room(stamps, rows, columns, *room)
    picture = WallPicture(grid, stamps, there, there.sizes()[zoom], at)
    picture.lay_all(some_puts(units, len(grid.places)))
    return picture


def some_puts(units: list[Flat], places: int) -> list[Put]:
    wide, high = units[0].size
    turns = 1 if abs(wide - high) < 1e-6 else 2
    return [Put(n % len(units), n * turns % 4) for n in range(places)]


def shown_there(unit: Flat, turns: int, x: float, y: float, *, on_point: bool) -> set[Key]:
    """By shapely: what lies at a share of the box a unit is drawn in, or within a hair of it."""
    wide, high = unit.size
    found = set()
    for patch in unit.patches:
        shape = Polygon(patch.points)
        shape = translate(scale(shape, 1 / wide, 1 / high, origin=(0, 0)), -0.5, -0.5)
        shape = rotate(shape, 90 * turns, origin=(0, 0))
        if on_point:
            # The unit's top is towards the place before it in its row, up and across.
            shape = scale(rotate(shape, 45, origin=(0, 0)), 2**-0.5, 2**-0.5, origin=(0, 0))
        if shape.distance(Point(x - 0.5, y - 0.5)) < 0.02:
            found.add(patch.letter)
    return found


@pytest.mark.parametrize(
    ("method", "setting"),
    [
        (OBLONG, None),
        *product(("stacked-four-patch", "nine-patch-quartered", "hourglass"), (None, ON_POINT)),
    ],
)
def test_every_pixel_shows_the_patch_that_lies_there(method: str, setting: Setting | None) -> None:
    units = some_units(method)
    picture = a_picture(units, 2, 2, setting, room=(40, 16))
    puts = some_puts(units, len(picture.grid.places))
    for number, cells in picture.cells.items():
        unit, turns = units[puts[number].unit], puts[number].turns
        stamp = picture.stamps.of(puts[number], picture.size)
        for y in range(2 * cells.down):
            for x in range(cells.across):
                if stamp.pixels[y][x] is None:
                    continue
                key = picture.pixels[2 * cells.y + y][cells.x + x]
                share = ((x + 0.5) / cells.across, (y + 0.5) / (2 * cells.down))
                there = shown_there(unit, turns, *share, on_point=picture.grid.on_point)
                assert key in there, (number, x, y)


@pytest.mark.parametrize("setting", [None, ON_POINT])
def test_a_place_drawn_anew_alone_is_as_if_all_were(setting: Setting | None) -> None:
    units, chance = some_units(), Random(7)
    picture = a_picture(units, 3, 4, setting, room=(40, 16), zoom=1)
    puts: list[Put | None] = [*some_puts(units, len(picture.grid.places))]
    for _ in range(30):
        number = chance.randrange(len(puts))
        puts[number] = chance.choice([None, Put(chance.randrange(len(units)), chance.randrange(4))])
        before = [row[:] for row in picture.pixels]
        lines = picture.lay(number, puts[number])
        changed = {y // 2 for y, row in enumerate(picture.pixels) if row != before[y]}
        assert changed <= {*lines}
        anew = WallPicture(
            picture.grid, picture.stamps, picture.room, picture.size, 0, picture.part
        )
        anew.lay_all(puts)
        assert picture.pixels == anew.pixels
        assert picture.letters == anew.letters


def test_a_letter_stands_in_a_cell_that_is_all_of_its_patch() -> None:
    for setting, zoom in product((None, ON_POINT), (0, 1, -1)):
        picture = a_picture(some_units(), 4, 4, setting, room=(60, 30), zoom=zoom)
        assert picture.letters.keys() == picture.cells.keys()
        for number, letters in picture.letters.items():
            cells = picture.cells[number]
            for x, y, letter in letters:
                for column in range(len(letter)):
                    for row in (0, 1):
                        key = picture.pixels[2 * (cells.y + y) + row][cells.x + x + column]
                        assert key is not None
                        assert cloth_letter(key) == letter


@pytest.mark.parametrize("setting", [None, ON_POINT])
def test_a_letter_stands_as_near_the_middle_of_its_patch_as_can_be(setting: Setting | None) -> None:
    """Measured from the centre that shapely finds, among all cells that hold the letter whole."""
    units = some_units()
    picture = a_picture(units, 2, 2, setting, room=(60, 30))
    for put in some_puts(units, 4):
        stamp = picture.stamps.of(put, picture.size)
        for x, y, letter in stamp.letters:
            (patch,) = [one for one in units[put.unit].patches if one.letter == cloth_key(letter)]
            middle = where_shown(units[put.unit], patch, put.turns, picture)
            cells = [
                (a, b)
                for b in range(len(stamp.pixels) // 2)
                for a in range(len(stamp.pixels[0]) - 1)
                if all(
                    stamp.pixels[2 * b + row][a + column] == cloth_key(letter)
                    for row in (0, 1)
                    for column in (0, 1)
                )
            ]
            # From the middle of its first cell, with an allowance for what lies on a seam.
            away = {at: hypot(at[0] + 0.5 - middle[0], 2 * at[1] + 1 - middle[1]) for at in cells}
            assert away[x, y] <= min(away.values()) + 1.5


def where_shown(unit: Flat, patch: Patch, turns: int, picture: WallPicture) -> tuple[float, float]:
    """The centre of a patch in pixels of the unit's stamp."""
    wide, high = unit.size
    shape = translate(scale(Polygon(patch.points), 1 / wide, 1 / high, origin=(0, 0)), -0.5, -0.5)
    shape = rotate(shape, 90 * turns, origin=(0, 0))
    if picture.grid.on_point:
        shape = scale(rotate(shape, 45, origin=(0, 0)), 2**-0.5, 2**-0.5, origin=(0, 0))
    x, y = shape.centroid.coords[0]
    return (x + 0.5) * picture.size.wide, (y + 0.5) * picture.size.high


def test_a_letter_of_two_signs_needs_two_cells_and_one_of_one_does_not() -> None:
    units = [oblong_unit(n) for n in range(10)]
    written = {
        wide: {
            letter
            for n in range(10)
            for _, _, letter in Stamps(units, on_point=False).of(Put(n), Size(wide, 2)).letters
        }
        for wide in (4, 8)
    }
    assert {len(letter) for letter in written[4]} == {1, 2}
    narrow = Stamps(units, on_point=False).of(Put(9), Size(4, 2))
    # Of its four cells AC has two; AB and AD have no room in one.
    assert [letter for _, _, letter in narrow.letters] == ["AC"]
    assert {letter for letter in written[8] if len(letter) == 2} == {"AA", "AB", "AC", "AD"}


def test_on_point_every_patch_shows_from_the_least_size_on_and_not_below() -> None:
    units = some_units()
    least = Stamps(units, on_point=True).least
    for wide, all_show in ((least, True), (least - 2, False)):
        stamp = Stamps(units, on_point=True).of(Put(0), Size(wide, wide, True))
        shown = {key for row in stamp.pixels for key in row} - {None}
        assert (len(shown) == 4) is all_show


@pytest.mark.parametrize("setting", [None, ON_POINT])
@pytest.mark.parametrize("gap", [0.0, 0.2])
def test_whatever_place_is_in_hand_is_shown_whole_in_the_room_there_is(
    setting: Setting | None, gap: float
) -> None:
    if setting is not None:
        gap = 0.0
    units, grid = some_units(), grid_of(7, 9, setting)
    stamps = Stamps(units, on_point=grid.on_point)
    room = a_room(stamps, 7, 9, 37, 15, gap=gap)
    for size in room.sizes():
        part = None
        for at in (*range(len(grid.places)), *range(0, len(grid.places), 5)):
            picture = WallPicture(grid, stamps, room, size, at, part)
            part = picture.part
            cells = picture.cells[at]
            assert 0 <= cells.x <= picture.across - cells.across
            assert 0 <= cells.y <= picture.down - cells.down
            assert picture.across <= 37
            assert picture.down <= 15
            x, y = cells.middle
            if grid.on_point:
                # Where it is widest it is as wide as it can be.
                assert picture.stamps.outside(size)[2 * (y - cells.y)][x - cells.x] is False
            assert cells.y <= y < cells.y + cells.down


def test_between_all_and_four_there_are_sizes_and_sashes_always_show() -> None:
    room = Room(120, 60, 10, 10, 4, gap=0.05)
    assert len(room.sizes()) == 4
    assert room.gaps(Size(4, 4)) == (1, 2)
    # So many units, and one sash fewer.
    assert room.holds(Size(4, 4)) == (10, 10)
    assert Room(14, 7, 10, 10, 4, gap=0.25).holds(Size(4, 4)) == (2, 3)
    assert Room(13, 8, 10, 10, 4, gap=0.25).holds(Size(4, 4)) == (3, 2)


def test_where_one_row_is_all_there_is_room_for_it_is_that_one() -> None:
    assert [section(1, 5, range(row, row + 1), 0) for row in range(5)] == [0, 1, 2, 3, 4]


def test_sashes_show_between_units_and_triangles_around_those_on_point() -> None:
    units = some_units()
    grid, stamps = grid_of(3, 4), Stamps(units, on_point=False)
    room = a_room(stamps, 3, 4, 60, 24, gap=0.2)
    picture = WallPicture(grid, stamps, room, room.sizes()[0], 0)
    picture.lay_all([Put(n) for n in range(12)])
    across, down = room.gaps(picture.size)
    sashes = sum(key == SASH for row in picture.pixels for key in row)
    whole = len(picture.pixels) * picture.across
    assert (across > 0, down % 2) == (True, 0)
    assert whole - sashes == 12 * picture.size.wide * picture.size.high
    slanting = a_picture(units, 2, 3, ON_POINT)
    # 2 x 3 whole units fill their box with 2 between them: the corners and sides are half units.
    triangles = sum(key == SETTING for row in slanting.pixels for key in row)
    assert triangles == (2 * 3 * 2 - len(slanting.grid.places)) * slanting.size.wide**2 // 2


@given(
    st.integers(1, 40), st.integers(1, 40), st.integers(8, 160), st.integers(4, 60),
    st.sampled_from([0.0, 0.25]), st.booleans(), st.sampled_from([1.0, 0.5]), st.integers(1, 9),
)  # fmt: skip
@settings(max_examples=300)
def test_sizes_go_from_all_units_or_as_many_as_fit_to_four(
    rows: int,
    columns: int,
    across: int,
    down: int,
    gap: float,
    on_point: bool,
    shape: float,
    least: int,
) -> None:
    if on_point:
        gap, shape = 0.0, 1.0
    room = Room(across, down, rows, columns, least, shape, gap, on_point)
    sizes = room.sizes()
    assert all(one.wide < other.wide for one, other in pairwise(sizes))
    assert all(size.wide >= least and size.wide % room.step == 0 == size.high % 2 for size in sizes)
    larger = room.size(sizes[-1].wide + room.step)
    fewest = (min(2, rows), min(2, columns))
    fits = room.holds(larger) >= fewest and room.holds(larger)[1] >= fewest[1]
    assert not (fits and larger.high <= 2 * down and larger.wide <= across)
    if room.holds(sizes[0]) != (rows, columns):
        # Not all are shown: then none smaller would show what it is.
        assert sizes[0].wide < least + room.step


def test_where_not_all_units_show_what_they_are_all_are_seen_from_afar() -> None:
    room = Room(120, 40, 30, 30, 4)
    assert room.holds(room.sizes()[0]) == (20, 30)
    far = room.far_size()
    assert far == Size(2, 2)
    assert room.holds(far) == (30, 30)
    assert Room(120, 60, 30, 30, 4).far_size() is None
    # Where there is no room for all even so, for more of them.
    few = Room(36, 14, 30, 30, 4)
    far = few.far_size()
    assert far is not None
    assert (few.holds(few.sizes()[0]), few.holds(far)) == ((7, 9), (14, 18))


@given(st.integers(2, 30), st.integers(1, 60))
def test_neighbouring_rows_are_seen_together_in_some_section(shown: int, whole: int) -> None:
    now, seen = 0, set()
    for row in [*range(whole), *reversed(range(whole))]:
        now = section(shown, whole, range(row, row + 1), now)
        assert now <= row < now + shown
        assert 0 <= now <= max(0, whole - shown)
        seen |= {*pairwise(range(now, min(whole, now + shown)))}
    assert seen == {*pairwise(range(whole))}


def test_a_section_stays_while_it_holds_what_is_wanted() -> None:
    assert [section(9, 30, range(at, at + 1), 8) for at in (8, 12, 16)] == [8, 8, 8]
    # Columns 9 to 17 are followed by 17 to 25: the one at which they meet is in both.
    assert section(9, 30, range(17, 18), 8) == 16
    assert section(9, 30, range(7, 8), 8) == 0


def test_what_is_shown_is_said_only_where_it_is_not_all() -> None:
    units = some_units()
    assert part_words(a_picture(units, 2, 3)) == ""
    assert part_words(a_picture(units, 1, 9, room=(6, 2), at=8)) == "column 9 of 9"
    part = a_picture(units, 30, 30, room=(36, 40), at=0)
    assert part_words(part) == "rows 1 to 20 of 30, columns 1 to 9 of 30"


@pytest.mark.parametrize("setting", [None, ON_POINT])
def test_every_place_is_walked_to_and_steps_go_back(setting: Setting | None) -> None:
    grid = grid_of(3, 4, setting)
    reached, todo = {0}, [0]
    while todo:
        at = todo.pop()
        for across, down in ((1, 0), (-1, 0), (0, 1), (0, -1)):
            there = step(grid, at, across, down)
            if across and there != at:
                assert step(grid, there, -across, 0) == at
                assert grid.shown[there][0] == grid.shown[at][0]
            if there not in reached:
                reached.add(there)
                todo.append(there)
    assert reached == {*range(len(grid.places))}
    assert step(grid, 0, 0, -1) == 0


def test_the_middle_of_a_place_is_a_cell_of_it() -> None:
    assert Cells(10, 3, 8, 4).middle == (14, 4)
    assert Cells(0, 0, 2, 1).middle == (1, 0)


def test_a_size_begins_with_a_cell() -> None:
    room = Room(60, 24, 2, 2, 4, 0.6)
    assert room.size(11) == Size(10, 6)
    assert Room(60, 24, 2, 2, 4, on_point=True).size(11) == Size(8, 8, True)

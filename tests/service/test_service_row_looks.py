"""The unit of the row in hand as it is pictured: turned as it lies on the wall."""

from __future__ import annotations

from msgspec.structs import replace

from sewalong.progress.wall.units import units_by_letter, wall_units
from sewalong.progress.wall.wall_words import lies_words
from sewalong.quilt.setting import SetOnPoint
from sewalong.service.wall.row_looks import above, first_row, row_page, told, unit_pictured
from sewalong.wall.keys import cloth_key
from sewalong.wall.laying.edges import turned_sides
from tests.progress import every_act as c
from tests.progress.building import go_on, play
from tests.progress.wall.laid_rows import QUILT, laid


def test_the_edges_of_the_picture_are_those_that_touch_on_the_wall() -> None:
    """What the picture shows along its edges is what the engine of layings says meets there."""
    state, _ = play(QUILT, *laid(QUILT))
    for row in range(1, 4):
        for place in range(1, 5):
            lies = state.wall.at((row, place))
            assert lies is not None
            picture = unit_pictured(state, (row, place), 40, 20)
            assert picture is not None
            pixels = picture.pixels
            middle = len(pixels) // 2
            edges = (pixels[0][20], pixels[middle][-1], pixels[-1][20], pixels[middle][0])
            (shown,) = wall_units(state, (state.wall.units[lies[0]],))
            sides = turned_sides(shown.sides, lies[1])
            longest = [max(side, key=lambda span: span.end - span.start) for side in sides]
            assert edges == tuple(cloth_key(span.fabric) for span in longest)


def test_a_page_for_every_row_and_none_beyond() -> None:
    state, record = play(QUILT, *laid(QUILT), c.BeginRows(((1, 3),)))
    assert first_row(state) == 1
    page = row_page(state, 1)
    assert page is not None
    assert page.title == "Row 1 of 3: 3 of 4 sewn"
    assert page.press == "Row 1: press its seams towards where the row begins."
    assert page.places[3] == f"4  {lies_words(state, state.wall.at((1, 4)))}  next"
    assert page.short[0].endswith("  sewn")
    assert told(state, (1, 4))[-1] == "It is next."
    assert told(state, (1, 3))[-1] == "It is sewn."
    assert len(told(state, (2, 1))) == 2
    assert told(state, (2, 5)) == ()
    assert row_page(state, 4) is None
    state = go_on(state, record, c.Count("sew-rows", 3))
    assert first_row(state) == 1
    state = go_on(state, record, c.Undo(), c.Undo(), c.PutSpare(2, 1))
    page = row_page(state, 2)
    assert page is not None
    assert page.short[0] == "1  nothing"
    assert unit_pictured(state, (2, 1), 40, 20) is None
    assert unit_pictured(state, (9, 1), 40, 20) is None


def test_a_unit_known_by_a_letter_is_a_square_of_it() -> None:
    rows = tuple(tuple((4 * n + place, 0) for place in range(4)) for n in range(3))
    state, _ = play(QUILT, c.LayWall(units_by_letter("ABCD" * 3), rows, how="typed"))
    picture = unit_pictured(state, (1, 1), 40, 20)
    assert picture is not None
    assert picture.keys == [cloth_key("A")]
    assert "A chalk" in told(state, (1, 1))[0]


def test_what_is_above_in_the_picture() -> None:
    state, _ = play(QUILT)
    assert above(state) == "as it lies, row 1 above"
    assert first_row(state) == 0
    state, _ = play(replace(QUILT, setting=SetOnPoint("oat")))
    assert above(state) == "as it lies, the start of the row above"

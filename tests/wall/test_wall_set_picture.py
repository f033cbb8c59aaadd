"""The units of a set, seen before they are cut: every patch in the fabric laid for it."""

from __future__ import annotations

import pytest

from sewalong.fabrics.colours import Colour, parse_colour
from sewalong.fabrics.sight import from_afar, value
from sewalong.quilt.choices import Fabric
from sewalong.quilt.set_shape import shape_of
from sewalong.wall.cloth_colours import cloth_colours
from sewalong.wall.keys import (
    STITCHES,
    UNKNOWN,
    cloth_key,
    cloth_letter,
    is_wrong_side,
    right_side,
    wrong_side,
)
from sewalong.wall.palette import FABRICS as PALETTE
from sewalong.wall.palette import colour_of
from sewalong.wall.picture import EMPTY, Picture, from_pixels
from sewalong.wall.pieces import finished_unit
from sewalong.wall.set_picture import in_her_fabrics, picture_of_set, set_picture, units_of_set
from sewalong.wall.textures import textures
from tests.wall.drawing import METHODS, counts, usual
from tests.wall.laid_sets import a_quilt_with_fabrics, a_set

WITH_SETS = [method for method in METHODS if shape_of(usual(method)) is not None]
SIZES = [(12, 4), (15, 5), (16, 16), (20, 8), (33, 11), (50, 9), (100, 40)]


def test_there_are_methods_with_sets() -> None:
    assert {"stacked-four-patch", "paired-squares", "nine-patch"} <= set(WITH_SETS)


@pytest.mark.parametrize("method", WITH_SETS)
def test_every_patch_is_of_the_square_it_was_cut_from(method: str) -> None:
    """The method's letters say which square a patch comes from; hers are put in their places."""
    made = usual(method)
    squares = a_set(3, len(made.letters))
    hers = dict(zip(made.letters, squares, strict=True))
    for number, unit in enumerate(units_of_set(made, squares)):
        plain = finished_unit(made, number)
        assert [p.points for p in unit.patches] == [p.points for p in plain.patches]
        assert [cloth_letter(p.letter) for p in unit.patches] == [
            hers[p.letter] for p in plain.patches
        ]


@pytest.mark.parametrize("method", WITH_SETS)
@pytest.mark.parametrize("size", SIZES)
def test_a_whole_picture_shows_every_patch_and_no_false_pattern(
    method: str, size: tuple[int, int]
) -> None:
    """Whatever the size: units apart from one another, in each as many areas as it has patches,
    each about as large as its patch; or fewer units, and it says that it is not whole."""
    made = usual(method)
    units = units_of_set(made, a_set(0, len(made.letters)))
    picture = set_picture(units, *size)
    assert picture.across <= size[0]
    assert picture.down <= size[1]
    shown = units_shown(picture.pixels)
    assert len(shown) == len(units) if picture.is_whole else 0 < len(shown) < len(units)
    for unit, pixels in zip(units, shown, strict=False):
        whole = sum(pixels.values())
        assert set(pixels) == {patch.letter for patch in unit.patches}
        if whole >= 200:
            shares = unit.shares(0.0)
            for key, n in pixels.items():
                share = sum(part for letter, part in shares if letter == key)
                assert n / whole == pytest.approx(share, abs=0.1)


def units_shown(pixels: tuple[tuple[str | None, ...], ...]) -> list[dict[str, int]]:
    """The pixels of every key in each of the areas that empty rows and columns part."""
    found = []
    for rows in stretches([any(row) for row in pixels]):
        band = [pixels[y] for y in rows]
        for columns in stretches([any(column) for column in zip(*band, strict=True)]):
            part = from_pixels([[row[x] for x in columns] for row in band])
            found.append(dict(counts(part)))
    return found


def stretches(filled: list[bool]) -> list[range]:
    found, start = [], None
    for place, here in enumerate([*filled, False]):
        if here and start is None:
            start = place
        elif not here and start is not None:
            found.append(range(start, place))
            start = None
    return found


@pytest.mark.parametrize("size", [(30, 4), (60, 6), (20, 20), (12, 30), (33, 11)])
@pytest.mark.parametrize("method", ["stacked-four-patch", "nine-patch", "hourglass"])
def test_no_larger_units_would_fit(method: str, size: tuple[int, int]) -> None:
    """Tried out: so many units one pixel larger each way, with gaps of an eighth and a pixel at the
    least, are wider or higher than the room in whatever lines they lie."""
    made = usual(method)
    units = units_of_set(made, a_set(0, len(made.letters)))
    picture = set_picture(units, *size)
    assert picture.is_whole
    shown = units_shown(picture.pixels)
    wide = max(len(run) for row in picture.pixels[:1] for run in stretches([*map(bool, row)]))
    larger = wide + 1
    gap = max(1, larger // 8)
    for columns in range(1, len(units) + 1):
        lines = -(-len(units) // columns)
        across = columns * larger + (columns - 1) * gap
        down = lines * larger + (lines - 1) * gap
        assert across > size[0] or down > 2 * size[1], (columns, lines)
    assert len(shown) == len(units)


def test_with_more_room_units_are_larger() -> None:
    units = units_of_set(usual("stacked-four-patch"), a_set(0, 8))
    areas = [sum(counts(set_picture(units, *size)).values()) for size in ((20, 8), (40, 16))]
    assert areas[1] > 3 * areas[0]


def test_no_room_at_all_shows_nothing() -> None:
    units = units_of_set(usual("stacked-four-patch"), a_set(0, 8))
    assert set_picture(units, 3, 1) == EMPTY


def test_a_square_that_is_not_known_is_said_to_be_unknown() -> None:
    units = units_of_set(usual("paired-squares"), ("A", None))
    assert {p.letter for unit in units for p in unit.patches} == {cloth_key("A"), UNKNOWN}
    assert {
        p.letter for unit in units_of_set(usual("paired-squares"), ()) for p in unit.patches
    } == {UNKNOWN}


def test_with_no_colour_every_fabric_has_its_letter() -> None:
    """A, AA and AB are told apart by what stands by turns."""
    picture = from_pixels([[cloth_key("A")] * 4 + [cloth_key("AA")] * 4 + [cloth_key("AB")] * 4])
    assert textures(picture) == ["AAAAAaAaAbAb"]


def test_a_picture_of_a_quilts_set_is_in_her_colours() -> None:
    quilt = a_quilt_with_fabrics()
    squares = a_set(1, 8)
    picture = picture_of_set(quilt, squares, 40, 12)
    assert picture is not None
    assert picture.is_whole
    own = cloth_colours(quilt.fabrics)
    by_letter = {fabric.letter: fabric.colour for fabric in quilt.fabrics}
    assert {str(colour_of(key, own)) for key in picture.keys} == {
        by_letter[s or ""] for s in squares
    }


def test_a_print_has_its_colour_from_afar_and_a_value_alone_is_a_grey() -> None:
    fabrics = (
        Fabric("A", "navy dots", "#1a2a5a", squares=4, second="#ffffff", share=30),
        Fabric("B", "lights", squares=60, kind="assorted", value="light"),
        Fabric("C", "no idea", squares=4),
        Fabric("AC", "no idea either", squares=4),
        Fabric("D", "a name of the method's", "#ff0000"),
    )
    own = cloth_colours(fabrics)
    navy, white = parse_colour("#1a2a5a"), parse_colour("#ffffff")
    assert own[cloth_key("A")] == from_afar(navy, white, 0.3)
    grey = own[cloth_key("B")]
    assert grey.red == grey.green == grey.blue
    assert value(grey) == pytest.approx(85, abs=0.5)
    assert set(own) == {cloth_key("A"), cloth_key("B")}
    assert colour_of(cloth_key("C"), own) == colour_of(cloth_key("AC"), own) == PALETTE["C"]


def test_backs_of_her_fabrics_are_told_from_their_faces_and_unknown_ones_from_both() -> None:
    picture = Picture((("A", "a", "B", "b"), ("C", "c", STITCHES, None)))
    found = in_her_fabrics(picture, ("A", "B", "C"), ("AB", "Q", None))
    upper, lower = found.pixels
    assert upper == (
        cloth_key("AB"), wrong_side(cloth_key("AB")), cloth_key("Q"), wrong_side(cloth_key("Q")),
    )  # fmt: skip
    assert lower == (UNKNOWN, UNKNOWN, STITCHES, None)
    assert [is_wrong_side(key) for key in upper] == [False, True, False, True]
    assert not any(is_wrong_side(key) for key in (UNKNOWN, STITCHES))
    assert [right_side(key) for key in upper[:2]] == [cloth_key("AB")] * 2
    own = {cloth_key("AB"): Colour(200, 10, 10)}
    back = colour_of(wrong_side(cloth_key("AB")), own)
    assert back != own[cloth_key("AB")]
    assert back.red > back.green
    assert textures(found)[0][:2] != textures(found)[0][2:]

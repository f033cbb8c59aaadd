"""A set and a top as SVG and PNG, judged by an XML parser, by `shapely` and by their pixels."""

from __future__ import annotations

import builtins
import sys
from fractions import Fraction
from io import BytesIO
from itertools import combinations, pairwise
from typing import Any
from xml.etree import ElementTree

import numpy as np
import pytest
from msgspec.structs import replace
from PIL import Image, ImageFont
from shapely import MultiPolygon, Polygon, box, union_all

from sewalong.piecing.geometry import centre
from sewalong.quilt.choices import Choices, Fabric
from sewalong.quilt.derived import derived
from sewalong.quilt.quilt import Quilt
from sewalong.quilt.setting import Cornerstones, Sashing, SetOnPoint
from sewalong.quilt.size import Size
from sewalong.wall.drawing.drawn import (
    APART,
    Drawing,
    drawing_of_pattern,
    drawing_of_set,
    drawing_of_top,
)
from sewalong.wall.drawing.ink import DARK, ink_on
from sewalong.wall.drawing.page import page_of
from sewalong.wall.drawing.png import CannotPaint, as_png
from sewalong.wall.drawing.svg import as_svg, bare_svg
from sewalong.wall.keys import SASH, SETTING, UNKNOWN, border_key, cloth_letter
from sewalong.wall.set_picture import units_of_set
from sewalong.wall.top_of_sets import all_units
from tests.progress.building import a_quilt
from tests.wall.laid_sets import FABRICS, a_quilt_with_fabrics, a_set

SVG = "{http://www.w3.org/2000/svg}"
SETS = tuple(a_set(n, 8) for n in range(2))
STONES = Sashing(Fraction(2), "grey", frame=True, cornerstones=Cornerstones("dark"))
SETTINGS = {
    "straight": None,
    "sashed, a frame and cornerstones": STONES,
    "sashed, long sashes": replace(STONES, cornerstones=None),
    "sashed, no frame": replace(STONES, frame=False),
    "on point": SetOnPoint("grey", "#8d99a6"),
}


def a_top(setting: str, corners: str = "sides first") -> tuple[Quilt, Drawing]:
    quilt = replace(
        a_quilt_with_fabrics(borders=2), setting=SETTINGS[setting], choices=Choices(corners=corners)
    )
    units = all_units(SETS, derived(quilt))
    return quilt, drawing_of_top(quilt, quilt.target, units, "Window seat")


@pytest.mark.parametrize("method", ["stacked-four-patch", "paired-squares", "nine-patch"])
def test_the_patches_of_a_set_are_its_units(method: str) -> None:
    """No two overlap, and together they are as large as the units are once they are sewn in."""
    quilt = a_quilt_with_fabrics(method)
    made = derived(quilt)
    squares = a_set(0, len(made.letters))
    drawing = drawing_of_set(quilt, squares, "Set 1")
    units = units_of_set(made, squares)
    whole = sum(unit.size[0] * unit.size[1] for unit in units)
    shapes = [Polygon(points) for points, _ in drawing.parts]
    assert sum(shape.area for shape in shapes) == pytest.approx(whole)
    assert union_all(shapes).area == pytest.approx(whole)
    for letter in squares:
        drawn = sum(
            Polygon(points).area for points, key in drawing.parts if cloth_letter(key) == letter
        )
        laid = sum(
            Polygon(p.points).area
            for u in units
            for p in u.patches
            if cloth_letter(p.letter) == letter
        )
        assert drawn == pytest.approx(laid)


def test_units_that_are_not_sewn_together_lie_apart() -> None:
    quilt = a_quilt_with_fabrics()
    drawing = drawing_of_set(quilt, SETS[0], "Set 1")
    whole = union_all([Polygon(points) for points, _ in drawing.parts])
    assert isinstance(whole, MultiPolygon)
    units = sorted(whole.geoms, key=lambda unit: unit.bounds)
    wide = units[0].bounds[2]
    assert len(units) == 4
    assert whole.bounds == pytest.approx((0, 0, *drawing.size))
    for one, other in pairwise(units):
        assert other.bounds[0] - one.bounds[2] == pytest.approx(APART * wide)


@pytest.mark.parametrize("setting", SETTINGS)
@pytest.mark.parametrize("corners", ["sides first", "ends first", "mitred"])
def test_a_top_is_filled_without_gap_or_overlap(setting: str, corners: str) -> None:
    _, drawing = a_top(setting, corners)
    shapes = [Polygon(points) for points, _ in drawing.parts]
    wide, high = drawing.size
    assert all(shape.is_valid for shape in shapes)
    assert sum(shape.area for shape in shapes) == pytest.approx(wide * high)
    assert union_all(shapes).bounds == pytest.approx((0, 0, wide, high))
    assert union_all(shapes).area == pytest.approx(wide * high)


@pytest.mark.parametrize("setting", SETTINGS)
def test_a_pattern_is_filled_and_says_that_no_unit_has_its_place(setting: str) -> None:
    quilt = replace(a_quilt("paired-squares", 40, 3, 4, borders=1), setting=SETTINGS[setting])
    drawing = drawing_of_pattern(quilt, quilt.target, "Window seat")
    shapes = [Polygon(points) for points, _ in drawing.parts]
    wide, high = drawing.size
    assert sum(shape.area for shape in shapes) == pytest.approx(wide * high)
    assert union_all(shapes).area == pytest.approx(wide * high)
    assert {drawing.names[key] for key in ("A", "B")} == {"fabric A", "fabric B"}
    assert (drawing.letters["A"], drawing.letters["B"]) == ("A", "B")
    assert "not settled" in drawing.about
    shares = {key: sum(Polygon(p).area for p, k in drawing.parts if k == key) for key in "AB"}
    assert shares["A"] == pytest.approx(shares["B"]), "a pair of squares shows as much of both"


def test_fabrics_named_and_counted_are_told_apart_in_a_pattern() -> None:
    """Her letter A is not the method's: there its letters are places of a set."""
    named = replace(
        a_quilt("paired-squares", 40, 3, 4), fabrics=(Fabric("A", "rust", colour="#a0522d"),)
    )
    drawing = drawing_of_pattern(named, named.target, "Window seat")
    assert drawing.names["A"] == "A rust"
    assert drawing.names["B"] == "fabric B"
    assert str(drawing.colours["A"]) == "#a0522d"
    counted = a_quilt_with_fabrics("paired-squares")
    drawing = drawing_of_pattern(counted, counted.target, "Window seat")
    assert drawing.names["B"] == "2: square 2 of a set"
    assert drawing.letters["B"] == "2"


def test_a_drawing_within_a_page_is_the_drawing_alone() -> None:
    _, drawing = a_top("straight")
    root = ElementTree.fromstring(bare_svg(drawing))
    assert [float(part) for part in root.attrib["viewBox"].split()] == pytest.approx(
        [0, 0, *drawing.size], abs=1e-3
    )
    title = root.find(f"{SVG}title")
    assert title is not None
    assert title.text == "Window seat"
    assert len(list(root.iter(f"{SVG}polygon"))) == len(drawing.parts)
    texts = [one.text for one in root.iter(f"{SVG}text")]
    assert texts == [letter for _, key in drawing.parts if (letter := cloth_letter(key))]
    assert not [one for one in root.iter() if "id" in one.attrib]


def test_a_top_is_as_large_as_its_trimmed_units_and_borders() -> None:
    """3 × 4 units trimmed to 6 in, and two borders cut at 3 in: 4 × 5 1/2 and 4 × 2 1/2 in across."""
    quilt = replace(a_top("straight")[0], trim=Size.square(Fraction(6)))
    drawing = drawing_of_top(quilt, quilt.target, (), "Window seat")
    assert [border.cut for border in quilt.borders] == [Fraction(3)] * 2
    assert drawing.size == pytest.approx((4 * 5.5 + 4 * 2.5, 3 * 5.5 + 4 * 2.5))


def test_on_point_the_triangles_have_their_share() -> None:
    """3 × 4 whole units along the edges are 18 units of 24 diagonals squared halved: 12 of them
    are filled by 18 units of half a diagonal squared, so the triangles are a quarter."""
    _, drawing = a_top("on point")
    inner = {key: 0.0 for _, key in drawing.parts}
    for points, key in drawing.parts:
        inner[key] += Polygon(points).area
    rings = {border_key(1), border_key(2)}
    whole = sum(area for key, area in inner.items() if key not in rings)
    assert inner[SETTING] / whole == pytest.approx(1 - 18 / 24)


def test_sashes_and_borders_are_named() -> None:
    _, drawing = a_top("sashed, a frame and cornerstones")
    assert drawing.names[SASH] == "sashes: grey"
    assert drawing.names[border_key(1)] == "border 1: plain"
    assert drawing.names[UNKNOWN] == "not known"
    assert "the fabrics of 8 are known" in drawing.about


@pytest.mark.parametrize("title", ["Set 1", "A very long name " * 9])
def test_nothing_on_the_page_lies_over_anything_else(title: str) -> None:
    """Texts are as wide as the type that Pillow ships sets them."""
    _, drawing = a_top("straight")
    page = page_of(replace(drawing, title=title))
    sheet = box(0, 0, *page.size)
    swatches = [Polygon(points) for points, _ in page.swatches]
    cloth = union_all([Polygon(points) for points, _ in page.parts])
    heads = [one for one in page.texts if one.on is None]
    written = []
    font = ImageFont.load_default(100)
    for one in heads:
        x, y = one.at
        assert not one.is_centred
        wide = one.high * font.getlength(one.text) / 100
        written.append(box(x, y - one.high / 2, x + wide, y + one.high / 2))
    for shape in (*swatches, cloth, *written):
        assert sheet.contains(shape)
    for shape, other in combinations((*swatches, cloth, *written), 2):
        assert shape.intersection(other).area < 1e-9
    names = dict(zip((key for _, key in page.swatches), heads[1:], strict=True))
    for (points, key), swatch in zip(page.swatches, swatches, strict=True):
        assert names[key].text == drawing.names[key]
        assert names[key].at[0] > swatch.bounds[2]
        assert swatch.bounds[1] < names[key].at[1] < swatch.bounds[3], points


def test_what_is_too_long_is_cut_and_says_so() -> None:
    _, drawing = a_top("straight")
    name = "cream linen with a very small sprig of heather all over it, and then some"
    page = page_of(replace(drawing, names={**drawing.names, border_key(1): name}))
    (cut,) = [one.text for one in page.texts if one.text.endswith("…")]
    assert name.startswith(cut[:-1])
    assert len(cut) > 20
    for length in (len(cut), len(cut) + 1):
        names = {**drawing.names, border_key(1): name[:length]}
        texts = [one.text for one in page_of(replace(drawing, names=names)).texts]
        assert (name[:length] if length == len(cut) else cut) in texts


def test_letters_stand_within_their_patches_and_small_ones_are_left_out() -> None:
    drawing = drawing_of_set(a_quilt_with_fabrics(), a_set(3, 8), "Set 4")
    page = page_of(drawing)
    cloth = {key: [Polygon(p) for p, k in page.parts if k == key] for _, key in page.parts}
    letters = [one for one in page.texts if one.on is not None]
    assert len(letters) == sum(cloth_letter(key) is not None for _, key in page.parts)
    for one in letters:
        assert one.is_centred
        half, tall = 0.3 * one.high * len(one.text), 0.35 * one.high
        around = box(one.at[0] - half, one.at[1] - tall, one.at[0] + half, one.at[1] + tall)
        assert any(patch.contains(around) for patch in cloth[one.on or ""])
    two, single = (max(o.high for o in letters if len(o.text) == n) for n in (2, 1))
    assert two < single
    tiny = [(tuple((x / 40, y / 40) for x, y in points), key) for points, key in drawing.parts]
    small = page_of(replace(drawing, parts=tuple(tiny)))
    assert [one for one in small.texts if one.on is not None] == []


def test_texts_of_the_document_stand_where_the_page_has_them() -> None:
    """A capital is about seven tenths of its type high, so half of that below the middle."""
    _, drawing = a_top("straight")
    page = page_of(drawing)
    found = list(read(as_svg(drawing)).iter(f"{SVG}text"))
    for element, one in zip(found, page.texts, strict=True):
        size = float(element.attrib["font-size"])
        assert size == pytest.approx(one.high, abs=1e-3)
        assert float(element.attrib["x"]) == pytest.approx(one.at[0], abs=1e-3)
        assert float(element.attrib["y"]) == pytest.approx(one.at[1] + 0.35 * size, abs=1e-3)
        assert ("text-anchor" in element.attrib) is one.is_centred


HOSTILE = '<script>alert("&amp;")</script> ]]> [red] \x00\x07\ud800 å 猫'


def read(svg: str) -> ElementTree.Element:
    assert svg.startswith('<?xml version="1.0" encoding="UTF-8"?>')
    # As a file, so that what cannot be encoded would be found.
    return ElementTree.fromstring(svg.encode("utf-8"))


@pytest.mark.parametrize("setting", SETTINGS)
def test_a_document_of_a_top_can_be_read(setting: str) -> None:
    _, drawing = a_top(setting)
    root = read(as_svg(drawing))
    page = page_of(drawing)
    assert root.tag == f"{SVG}svg"
    shown = [float(part) for part in root.attrib["viewBox"].split()]
    assert shown == pytest.approx([0, 0, *page.size], abs=1e-3)
    title, about = root.find(f"{SVG}title"), root.find(f"{SVG}desc")
    assert title is not None
    assert title.text == "Window seat"
    assert about is not None
    assert (about.text or "").startswith("3 × 4 units;")
    shapes = root.findall(f"{SVG}g[@class='cloth']/{SVG}polygon")
    assert len(shapes) == len(drawing.parts)
    areas = []
    for shape, (_, key) in zip(shapes, drawing.parts, strict=True):
        points = [tuple(map(float, pair.split(","))) for pair in shape.attrib["points"].split()]
        areas.append(Polygon(points).area)
        colour = "#ffffff" if key == UNKNOWN else str(drawing.colours[key])
        assert shape.attrib["fill"] == colour
        assert all(0 <= x <= page.size[0] and 0 <= y <= page.size[1] for x, y in points)
    assert sum(areas) == pytest.approx(drawing.size[0] * drawing.size[1], rel=1e-4)


def test_every_patch_has_the_letter_of_its_fabric_and_every_letter_its_name() -> None:
    """So a print in grey can be read, and nobody has to know a letter by heart."""
    quilt = a_quilt_with_fabrics()
    drawing = drawing_of_set(quilt, SETS[1], "Set 2")
    root = read(as_svg(drawing))
    texts = [one.text for one in root.iter(f"{SVG}text")]
    assert texts[0] == "Set 2"
    letters = [cloth_letter(key) for _, key in drawing.parts]
    assert texts[1 : 1 + len(letters)] == letters
    names = {fabric.letter: fabric.name for fabric in FABRICS}
    assert set(texts[1 + len(letters) :]) == {f"{s} {names[s or '']}" for s in SETS[1]}
    legend = root.findall(f"{SVG}g[@class='legend']/{SVG}polygon")
    assert {one.attrib["fill"] for one in legend} == {
        fabric.colour for fabric in FABRICS if fabric.letter in SETS[1]
    }


def test_what_she_wrote_does_no_harm_and_stands_as_she_wrote_it() -> None:
    quilt = a_quilt_with_fabrics()
    first = Fabric("A", HOSTILE, colour="#112233", squares=8)
    quilt = replace(quilt, fabrics=(first, *quilt.fabrics[1:]))
    drawing = drawing_of_set(quilt, SETS[0], HOSTILE)
    svg = as_svg(drawing)
    root = read(svg)
    title = root.find(f"{SVG}title")
    assert title is not None
    assert title.text == HOSTILE.replace("\x00", "").replace("\x07", "").replace("\ud800", "")
    assert {one.tag for one in root.iter()} <= {
        f"{SVG}{tag}" for tag in ("svg", "title", "desc", "rect", "g", "polygon", "text")
    }


def test_it_needs_no_other_file() -> None:
    svg = as_svg(a_top("straight")[1])
    assert "http" not in svg.replace("http://www.w3.org/2000/svg", "")
    assert "url(" not in svg
    assert "href" not in svg


@pytest.mark.parametrize("setting", SETTINGS)
def test_the_pixels_of_a_png_are_those_of_the_fabrics(setting: str) -> None:
    """Looked at beside the middle of every patch, where no letter stands."""
    _, drawing = a_top(setting)
    page = page_of(drawing)
    image = Image.open(BytesIO(as_png(drawing, 1000))).convert("RGB")
    assert max(image.size) == 1000
    scale = 1000 / max(page.size)
    for points, key in page.parts:
        if key == UNKNOWN:
            continue
        middle, corner = centre(points), points[0]
        at = [scale * (0.35 * m + 0.65 * c) for m, c in zip(middle, corner, strict=True)]
        colour = drawing.colours[key]
        found = image.getpixel((int(at[0]), int(at[1])))
        assert found == (colour.red, colour.green, colour.blue)


def test_the_texts_of_a_png_stand_where_the_page_has_them() -> None:
    """Looked at so near that no seam is: a letter about its middle, a name from where it begins."""
    drawing = drawing_of_set(a_quilt_with_fabrics(), SETS[0], "Set 1")
    page = page_of(drawing)
    image = np.asarray(Image.open(BytesIO(as_png(drawing, 1600))).convert("RGB")).astype(int)
    scale = 1600 / max(page.size)
    assert image.shape[:2] == tuple(round(side * scale) for side in page.size[::-1])
    for one in page.texts:
        ink = DARK if one.on is None else ink_on(drawing.colours[one.on])
        (x, y), high = ((scale * part for part in one.at), scale * one.high)
        before, after = (0.6, 0.6) if one.is_centred else (0.3, 1.5)
        near = image[
            round(y - 0.6 * high) : round(y + 0.6 * high),
            round(x - before * high) : round(x + after * high),
        ]
        is_ink = np.abs(near - [ink.red, ink.green, ink.blue]).max(axis=-1) < 40
        down, along = (line / high for line in np.nonzero(is_ink))
        assert (down.min() + down.max()) / 2 == pytest.approx(0.6, abs=0.15), one.text
        begins = 0.6 - (along.max() - along.min()) / 2 if one.is_centred else 0.3
        assert along.min() == pytest.approx(begins, abs=0.15), one.text


def test_without_the_library_a_png_is_refused_in_a_sentence(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    really = builtins.__import__

    def without(name: str, *rest: Any, **more: Any) -> Any:
        if name.partition(".")[0] == "PIL":
            raise ImportError(name)
        return really(name, *rest, **more)

    drawing = a_top("straight")[1]
    for name in [name for name in sys.modules if name.partition(".")[0] == "PIL"]:
        monkeypatch.delitem(sys.modules, name)
    monkeypatch.setattr(builtins, "__import__", without)
    with pytest.raises(
        CannotPaint, match=r"sewalong\[photo\].*An SVG can be written without it\.$"
    ):
        as_png(drawing)

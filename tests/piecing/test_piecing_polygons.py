"""The engine's polygons against shapely: area, size and no overlap, at random seams."""

from __future__ import annotations

from fractions import Fraction as F
from itertools import combinations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely.geometry import Polygon, box
from shapely.ops import unary_union

from sewalong.piecing.catalogue import method, method_ids
from sewalong.piecing.cloth import Flat, Layered, Patch
from sewalong.piecing.derive import derive
from sewalong.piecing.method import Method

IDS = method_ids()
SEAMS = st.fractions(F(1, 8), F(1, 2), max_denominator=64)
SIZES = st.fractions(F(3), F(14), max_denominator=16)


def _polygons(patches: tuple[Patch, ...]) -> list[Polygon]:
    return [Polygon(patch.points) for patch in patches]


def _no_overlap(polygons: list[Polygon]) -> bool:
    return all(a.intersection(b).area < 1e-6 for a, b in combinations(polygons, 2))


@settings(max_examples=60, deadline=None)
@given(id=st.sampled_from(IDS), size=SIZES, seam=SEAMS)
def test_the_patches_of_every_unit_fill_it_without_overlap(id: str, size: F, seam: F) -> None:
    derived = derive(id, size + 8 * seam, seam, strip_length=F(120))
    for unit in derived.units:
        polygons = _polygons(unit.patches)
        assert all(polygon.is_valid for polygon in polygons)
        assert _no_overlap(polygons)
        whole = unary_union(polygons)
        assert whole.area == pytest.approx(derived.unit.width * derived.unit.height)
        assert whole.symmetric_difference(
            box(0, 0, derived.unit.width, derived.unit.height)
        ).area == pytest.approx(0, abs=1e-5)


@settings(max_examples=60, deadline=None)
@given(id=st.sampled_from(IDS), size=SIZES, seam=SEAMS)
def test_all_units_of_a_batch_show_the_same_patches(id: str, size: F, seam: F) -> None:
    starts = derive(id, size + 8 * seam, seam, strip_length=F(120)).starts
    exact = {pile: F(entry.exact) for pile, entry in starts.items()}
    derived = derive(id, exact, seam, strip_length=F(120))
    first = _polygons(derived.units[0].finished(float(seam)))
    for unit in derived.units[1:]:
        others = _polygons(unit.finished(float(seam)))
        assert len(others) == len(first)
        for a, b in zip(first, others, strict=True):
            assert a.symmetric_difference(b).area == pytest.approx(0, abs=1e-6)


@settings(max_examples=40, deadline=None)
@given(id=st.sampled_from(IDS), size=SIZES, seam=SEAMS)
def test_what_shows_is_the_unit_less_a_seam_on_every_side(id: str, size: F, seam: F) -> None:
    derived = derive(id, size + 8 * seam, seam, strip_length=F(120))
    width, height = derived.unit.finishes
    shown = unary_union(_polygons(derived.units[0].finished(float(seam))))
    assert shown.bounds == pytest.approx((0, 0, width, height), abs=1e-6)
    assert shown.area == pytest.approx(width * height)


@pytest.mark.parametrize("known", [method(id) for id in IDS], ids=lambda m: m.id)
def test_layers_of_every_pile_are_whole_and_apart(known: Method) -> None:
    derived = derive(known.id, F(3) if known.starts[0].endswith("strip") else F(9))
    for shape in derived.piles.values():
        for piece in shape.pieces:
            layers = [piece.patches] if isinstance(piece, Flat) else [piece.base]
            if isinstance(piece, Layered):
                layers += [top.patches for top in piece.tops]
            for layer in layers:
                polygons = _polygons(layer)
                assert all(polygon.is_valid and polygon.area > 0 for polygon in polygons)
                assert _no_overlap(polygons)


@settings(max_examples=40, deadline=None)
@given(size=SIZES, seam=SEAMS)
def test_sewing_around_and_cutting_twice_loses_exactly_the_ring(size: F, seam: F) -> None:
    derived = derive("paired-squares", size + 8 * seam, seam)
    ring = float(size + 8 * seam - 2 * seam)
    # Each quarter opens to half of the square inside the ring.
    assert derived.unit.width * derived.unit.height == pytest.approx(ring**2 / 2)
    assert derived.stage("sew-around").sewn == pytest.approx(4 * ring)


@pytest.mark.parametrize(
    ("id", "whole", "parts"),
    [
        ("paired-squares", "sewn-pair", "cut-unit"),
        ("stacked-four-patch", "sewn-stack", "cut-unit"),
        ("half-square-two", "sewn-pair", "cut-unit"),
        ("half-square-eight", "sewn-pair", "cut-unit"),
        ("hourglass", "sewn-pair", "cut-half"),
        ("flying-geese-four", "sewn-pair", "cut-half"),
        ("nine-patch-quartered", "pressed-nine-patch", "unit"),
    ],
)
def test_no_cloth_is_lost_by_cutting(id: str, whole: str, parts: str) -> None:
    piles = derive(id, F(8)).piles
    before = sum(polygon.area for polygon in _polygons(piles[whole].pieces[0].patches))
    after = sum(p.area for piece in piles[parts].pieces for p in _polygons(piece.patches))
    assert after == pytest.approx(before)

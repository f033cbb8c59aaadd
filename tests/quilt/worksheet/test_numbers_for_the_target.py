"""Cut list and shopping list are for the target: what is there, and what is short of it."""

from __future__ import annotations

from fractions import Fraction as F

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from msgspec.structs import replace

from sewalong.piecing.catalogue import method_ids
from sewalong.quilt.choices import Fabric
from sewalong.quilt.layouts.yield_of_method import units_from
from sewalong.quilt.quilt import Quilt, Target
from sewalong.quilt.worksheet.basis import basis
from sewalong.quilt.worksheet.piece_cloth import fabric_counts, start_needs
from sewalong.quilt.worksheet.worksheet import worksheet
from tests.progress.building import a_quilt
from tests.quilt.worksheet.quilts import plain


def texts(quilt: Quilt, section: str, short: dict[str, int] | None = None) -> str:
    """A section as it is read."""
    found = worksheet(quilt, short=short)
    return "\n".join(str(one) for s in found.sections if s.id == section for one in s.lines)


def of_method(id: str, there: int, rows: int = 9, columns: int = 9) -> Quilt:
    """A quilt of any method, small squares small enough for their large ones."""
    quilt = a_quilt(id, there, rows, columns)
    small = {"flipped-corners": F(5, 3), "flying-geese-four": F(23, 8)}.get(id, F(5))
    starts = tuple(
        replace(start, size=small) if start.pile == "small-square" else start
        for start in quilt.starts
    )
    return replace(quilt, starts=starts)


COUNTED = '[squares]\nsize = "5"\ncount = 42\n'
PACKED = '[squares]\nsize = "5"\npacks = 1\nin_a_pack = 42\n'


def test_22_squares_short_are_listed_with_the_42_there() -> None:
    # 6 rows of 5, 30 units: 8 stacks of two four-patches, 64 squares.
    quilt = plain("stacked-four-patch", COUNTED, 6, 5)
    cut = texts(quilt, "cut-list")
    assert "squares: 64 squares of 5 in from 8 strips of 5 in (64 for the target: 42 there" in cut
    assert "squares still short: 22 squares of 5 in from 3 strips of 5 in" in cut
    shop = texts(quilt, "shopping")
    assert "cloth for squares, if not cut yet: buy 1 1/8 yd (64 squares 40 in" in shop
    assert (
        "cloth for squares still short: buy 1/2 yd (64 for the target: 42 there, 22 short" in shop
    )


def test_packs_that_are_short_are_bought_by_the_pack() -> None:
    quilt = plain("stacked-four-patch", PACKED, 6, 5)
    assert "squares of 5 in, still short: 1 more pack of 42 (22 squares short)" in (
        texts(quilt, "shopping")
    )


def test_squares_that_are_over_are_not_shopped_for() -> None:
    quilt = plain("stacked-four-patch", COUNTED, 2, 2)
    cut = texts(quilt, "cut-list")
    assert "squares: 8 squares of 5 in from 1 strip of 5 in (8 for the target: 42 there" in cut
    assert "short:" not in texts(quilt, "shopping")


def test_what_the_record_knows_is_short_goes_before_the_plan() -> None:
    # All 42 were there, but 6 were spoiled.
    quilt = plain("stacked-four-patch", COUNTED, 4, 5)
    assert "40 for the target: 42 there, none short" in texts(quilt, "cut-list")
    said = texts(quilt, "cut-list", short={"square": 4})
    assert "40 for the target: 36 there, 4 short" in said
    assert "squares still short: 4 squares of 5 in from 1 strip of 5 in" in said


def test_what_the_record_does_not_miss_is_there_even_if_the_plan_began_with_less() -> None:
    # 64 are needed and 42 were begun with; by the record more were found since.
    said = texts(plain("stacked-four-patch", COUNTED, 6, 5), "cut-list", short={})
    assert "64 for the target: 64 there, none short" in said
    assert "still short" not in said


def test_each_named_fabric_has_its_own_count_from_packs_too() -> None:
    named = '[[fabric]]\nletter = "A"\nname = "sand"\n[[fabric]]\nletter = "B"\nname = "sea"\n'
    quilt = plain("half-square-two", PACKED, 6, 5, more=named)
    for section, label in (("cut-list", "squares"), ("shopping", "squares of 5 in")):
        said = texts(quilt, section)
        assert f"{label}, sand: 15 squares (for the target)" in said
        assert f"{label}, sea: 15 squares (for the target)" in said


@pytest.mark.parametrize("id", method_ids())
@settings(max_examples=15, deadline=None)
@given(rows=st.integers(1, 9), columns=st.integers(1, 9), there=st.integers(1, 60))
def test_there_and_short_make_the_target_and_one_piece_less_does_not(
    id: str, rows: int, columns: int, there: int
) -> None:
    quilt = of_method(id, there, rows, columns)
    needs = start_needs(basis(quilt, Target(rows, columns)))
    enough = {one.start.pile: one.need for one in needs}
    wanted = rows * columns
    assert units_from(quilt.method, enough) >= wanted
    for one in needs:
        assert one.there + one.short >= one.need
        assert one.short == max(0, one.need - there)
        fewer = {**enough, one.start.pile: one.need - 1}
        assert units_from(quilt.method, fewer) < wanted


@pytest.mark.parametrize("id", method_ids())
@settings(max_examples=15, deadline=None)
@given(units=st.integers(1, 60), names=st.lists(st.sampled_from("xyz"), min_size=8, max_size=8))
def test_the_counts_of_named_fabrics_are_enough_for_every_batch(
    id: str, units: int, names: list[str]
) -> None:
    letters = sorted(basis(of_method(id, 1)).made.letters)
    fabrics = tuple(Fabric(letter, name) for letter, name in zip(letters, names * 2, strict=False))
    found = basis(replace(of_method(id, 99), fabrics=fabrics), Target(1, units))
    for one in start_needs(found):
        counts = fabric_counts(one, found)
        assert one.need <= sum(counts.values()) < one.need + len(counts)
        # No fabric more than one piece from its even share.
        mine = [
            name.letter for name in fabrics if found.made.letters[name.letter] == one.start.pile
        ]
        for name, count in counts.items():
            share = sum(1 for fabric in fabrics if fabric.letter in mine and fabric.name == name)
            assert count == -(-one.need * share // len(mine))

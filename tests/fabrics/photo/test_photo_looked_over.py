"""What is said while the sheet of a photograph is looked over."""

from __future__ import annotations

from msgspec.structs import replace

from sewalong.fabrics.photo.looked_over import place_in_hand, sheet_in_short
from sewalong.fabrics.photo.mending import rename, split
from tests.fabrics.photo.test_photo_mending import photo


def test_doubles_are_said_to_be_likely_only() -> None:
    assert sheet_in_short(photo()) == (
        "4 squares, 3 fabrics; 4 packs, 16 squares in all. 1 fabric lies at several places: that "
        "is likely, not sure."
    )
    assert "2 fabrics lie at" in sheet_in_short(photo("AABB"))


def test_where_all_differ_that_is_said() -> None:
    apart = replace(split(photo(), 2, 2), packs=1)
    assert sheet_in_short(apart) == "4 squares, 4 fabrics. No two look alike."


def test_the_place_in_hand_is_told_with_letter_name_and_where_else() -> None:
    first, second, *_ = photo().places
    assert place_in_hand(photo(), first) == (
        "1·1: A red 1·1, solid, #a5532f, value 45 of 100. Likely the same at 2·2."
    )
    named = rename(photo(), "B", "[navy]")
    assert place_in_hand(named, second) == "1·2: B [navy], solid, #2f4a7c, value 32 of 100."


def test_of_many_places_a_few_are_named() -> None:
    many = replace(photo("AAAA"), places=tuple(photo("AAAA").places) * 2)
    assert place_in_hand(many, many.places[0]).endswith("1·2, 2·1, 2·2, 1·2 and 2 more.")

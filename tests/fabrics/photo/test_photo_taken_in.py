"""What a photograph showed becomes fabrics of the quilt."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from sewalong.fabrics.colours import Colour
from sewalong.fabrics.photo.mending import rename
from sewalong.fabrics.photo.result import Kind, Place, ReadPhoto, TwoColours
from sewalong.fabrics.photo.taken_in import taken_in
from sewalong.quilt.choices import Fabric
from sewalong.quilt.refusal import NumbersFault

RUST, NAVY, CREAM = Colour(165, 83, 47), Colour(47, 74, 124), Colour(244, 240, 230)
STARS = TwoColours(NAVY, CREAM, 0.3)
PHOTO = ReadPhoto(
    2,
    2,
    4,
    (
        Place(1, 1, RUST, 1.0, Kind.SOLID, "A"),
        Place(1, 2, Colour(134, 141, 161), 9.0, Kind.SMALL_PRINT, "B", STARS),
        Place(2, 1, CREAM, 6.0, Kind.PRINT, "C"),
        Place(2, 2, RUST, 1.0, Kind.SOLID, "A"),
    ),
)


def test_letters_names_colours_and_squares() -> None:
    assert taken_in(rename(PHOTO, "B", "stars")) == (
        Fabric("A", "red 1·1", "#a5532f", 8, "solid"),
        Fabric("B", "stars", "#2f4a7c", 4, "small print", "#f4f0e6", 30),
        Fabric("C", "neutral 2·1", "#f4f0e6", 4),
    )


THERE = (Fabric("A", "indigo"), Fabric("B", "moss", None, 6))


def test_a_letter_that_is_taken_gives_way_to_the_next_that_is_free_in_both() -> None:
    assert [(one.letter, one.name) for one in taken_in(PHOTO, THERE)] == [
        ("A", "indigo"),
        ("B", "moss"),
        ("C", "neutral 2·1"),
        ("D", "red 1·1"),
        ("E", "neutral 1·2"),
    ]


def test_in_place_of_the_counted_fabrics_the_names_of_the_method_stay() -> None:
    now = taken_in(PHOTO, THERE, instead=True)
    assert [(one.letter, one.name) for one in now] == [
        ("A", "indigo"),
        ("B", "neutral 1·2"),
        ("C", "neutral 2·1"),
        ("D", "red 1·1"),
    ]


def test_what_no_quilt_can_have_is_refused() -> None:
    one = replace(PHOTO, rows=1, columns=1, places=PHOTO.places[:1])
    assert taken_in(replace(one, packs=9_999))[0].squares == 9_999
    with pytest.raises(NumbersFault, match="fewer packs"):
        taken_in(replace(PHOTO, packs=5_000))
    with pytest.raises(NumbersFault, match="The name of A"):
        taken_in(rename(PHOTO, "A", "x" * 81))

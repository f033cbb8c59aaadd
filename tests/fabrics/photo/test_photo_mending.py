"""A person puts right what was read, and sees it in pictures and in words."""

from __future__ import annotations

import subprocess
import sys
from io import BytesIO

import msgspec
import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from PIL import Image

from sewalong.fabrics.colours import Colour
from sewalong.fabrics.photo.mending import merge, rename, split
from sewalong.fabrics.photo.read import read_photo
from sewalong.fabrics.photo.refused import PhotoRefused
from sewalong.fabrics.photo.result import Kind, Place, ReadPhoto, TwoColours
from sewalong.fabrics.photo.sheet import contact_sheet
from sewalong.fabrics.photo.sheet_words import fabric_lines, place_lines
from sewalong.quilt.letters import letter, number_of
from tests.fabrics.photo.made_photos import Scene, laid

RUST, NAVY, CREAM = Colour(165, 83, 47), Colour(47, 74, 124), Colour(244, 240, 230)


def photo(letters: str = "ABCA", packs: int = 4) -> ReadPhoto:
    colours = {"A": RUST, "B": NAVY, "C": CREAM}
    places = tuple(
        Place(1 + at // 2, 1 + at % 2, colours[one], 1.0, Kind.SOLID, one)
        for at, one in enumerate(letters)
    )
    return ReadPhoto(2, 2, packs, places, ("A note.",))


def letters(of: ReadPhoto) -> str:
    return "".join(place.letter for place in of.places)


def test_fabrics_follow_from_the_places() -> None:
    first, second, third = photo().fabrics
    assert (first.letter, first.squares, [p.address for p in first.places]) == (
        "A",
        8,
        ["1·1", "2·2"],
    )
    assert (second.letter, second.squares) == ("B", 4)
    assert third.colour == CREAM


def test_two_letters_are_merged_and_the_old_reading_stays() -> None:
    before = rename(photo(), "B", "the blue")
    after = merge(before, "A", "B")
    assert (letters(before), letters(after)) == ("ABCA", "AACA")
    assert after.fabrics[0].name == "the blue"
    assert after.fabrics[0].squares == 12
    kept = merge(rename(before, "A", "rust"), "A", "B")
    assert kept.fabrics[0].name == "rust"
    assert len(kept.names) == 1


def test_one_place_is_split_off_with_the_next_free_letter() -> None:
    after = split(photo(), 2, 2)
    assert letters(after) == "ABCD"
    assert letters(merge(after, "A", "D")) == "ABCA"
    assert letters(split(merge(photo("ABCC"), "A", "B"), 1, 2)) == "ADCC"


def test_a_fabric_is_named_and_its_name_taken_away() -> None:
    named = rename(photo(), "C", "  cream [b]dots[/b] ")
    assert named.fabrics[2].name == "cream [b]dots[/b]"
    assert rename(named, "C", " ").names == ()


def test_what_cannot_be_mended_is_refused() -> None:
    none_such = r"^No square has the letter .* There are A, B, C\.$"
    with pytest.raises(PhotoRefused, match=none_such):
        merge(photo(), "A", "D")
    with pytest.raises(PhotoRefused, match=none_such):
        merge(photo(), "d", "A")
    with pytest.raises(PhotoRefused, match=none_such):
        rename(photo(), "", "x")
    with pytest.raises(PhotoRefused, match="is one fabric already"):
        merge(photo(), "A", "A")
    with pytest.raises(PhotoRefused, match="There is no place 3·1: rows go from 1 to 2"):
        split(photo(), 3, 1)
    with pytest.raises(PhotoRefused, match="B has only this square"):
        split(photo(), 1, 2)


def test_a_reading_goes_through_a_file_unchanged() -> None:
    reading = read_photo(Scene(squares=laid(2, 2), size=(220, 220)).file(), 2, 2, packs=3)
    stored = msgspec.json.encode(reading)
    assert msgspec.json.decode(stored, type=type(reading)) == reading


@pytest.mark.parametrize(
    ("number", "text"), [(0, "A"), (25, "Z"), (26, "AA"), (27, "AB"), (701, "ZZ"), (702, "AAA")]
)
def test_letters_go_on_after_z(number: int, text: str) -> None:
    assert letter(number) == text


@given(st.integers(0, 10**6))
def test_a_letter_is_its_number_and_back(number: int) -> None:
    assert number_of(letter(number)) == number


@pytest.mark.parametrize("text", ["", "a", "A1", "É"])
def test_what_is_no_letter_has_no_number(text: str) -> None:
    with pytest.raises(ValueError, match="not a letter"):
        number_of(text)
    with pytest.raises(ValueError, match="from 0"):
        letter(-1)


def test_the_contact_sheet_shows_every_square_where_it_lies() -> None:
    reading = read_photo(Scene(squares=laid(2, 3), size=(300, 220), fall_off=0.3).file(), 2, 3)
    sheet = Image.open(BytesIO(contact_sheet(reading)))
    assert sheet.format == "PNG"
    assert sheet.info == {}
    pixels = np.asarray(sheet).reshape(-1, 3)
    for place in reading.photo.places:
        wide, high = sheet.size
        middle = (wide * (place.column - 0.5) / 3, high * (place.row - 0.55) / 2)
        shown = sheet.getpixel((int(middle[0]), int(middle[1])))
        assert isinstance(shown, tuple)
        assert (
            np.abs(
                np.array(shown) - [place.colour.red, place.colour.green, place.colour.blue]
            ).max()
            <= 2
        )
    assert (pixels < 60).all(axis=1).sum() > 100  # The letters.


def test_what_was_read_is_mended_and_said_without_the_libraries() -> None:
    names = "result", "mending", "sheet_words", "read"
    code = "import sys; sys.modules.update(numpy=None, PIL=None, coloraide=None)\n" + "\n".join(
        f"import sewalong.fabrics.photo.{name}" for name in names
    )
    subprocess.run([sys.executable, "-c", code], check=True)


def test_the_sheet_in_words_has_one_fact_a_line() -> None:
    read = rename(photo(), "A", "rust [dots]")
    assert place_lines(read)[1] == "row 1 place 2: B, #2f4a7c, solid"
    assert fabric_lines(read) == (
        "A (rust [dots]): 8 squares, #a5532f, solid, at 1·1, 2·2, likely one fabric",
        "B: 4 squares, #2f4a7c, solid, at 1·2",
        "C: 4 squares, #f4f0e6, solid, at 2·1",
        "A note.",
    )
    print_of_two = msgspec.structs.replace(
        read.places[1], kind=Kind.SMALL_PRINT, two=TwoColours(NAVY, CREAM, 0.3)
    )
    two = msgspec.structs.replace(read, packs=1, places=(print_of_two,))
    assert place_lines(two) == (
        "row 1 place 2: B, #2f4a7c, small print, #2f4a7c with 30 % #f4f0e6",
    )
    assert fabric_lines(two)[0].startswith("B: 1 square, ")

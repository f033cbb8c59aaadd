"""Units laid out and photographed, by plain command: read, asked about, mended, kept.

The pictures are made here, so that the truth is known.
"""

from __future__ import annotations

from io import BytesIO
from pathlib import Path
from typing import Any

import pytest
from msgspec.structs import replace
from PIL import Image

from sewalong.fabrics.colours import parse_colour
from sewalong.fabrics.photo import read
from tests.cli.cloth.conftest import DRAWER
from tests.cli.conftest import Desk
from tests.fabrics.floor.made_floors import Floor, Lying
from tests.fabrics.photo.made_photos import file_of

MAKER = "A maker's own telephone"


def the_floor(desk: Desk, rows: list[Any], sets: list[Any]) -> Floor:
    """What a report has on the wall, as it lies on a floor."""
    colours = {
        one["letter"]: parse_colour(one["from_afar"])
        for one in desk.ok("fabrics", "--json").data["fabrics"]
    }
    laid = [
        [
            None
            if place["unit"] is None
            else Lying(4 * (place["unit"]["set"] - 1) + place["unit"]["unit"] - 1, place["turns"])
            for place in row
        ]
        for row in rows
    ]
    squares = {one["number"]: one["squares"] for one in sets}
    return Floor(method="stacked-four-patch", sets=squares, colours=colours, laid=laid)


def taken(desk: Desk, floor: Floor) -> str:
    """The file of a photograph of it, with what a telephone writes into one."""
    exif = Image.Exif()
    exif[0x010F] = MAKER
    image = floor.scene(turned=2.0, noise=3.0).image()
    path = desk.folder / "floor.jpg"
    path.write_bytes(file_of(image, "JPEG", quality=85, exif=exif))
    return str(path)


def swapped(floor: Floor, *pairs: tuple[tuple[int, int], tuple[int, int]]) -> Floor:
    rows = [[*row] for row in floor.laid]
    for (a, b), (c, d) in pairs:
        rows[a][b], rows[c][d] = rows[c][d], rows[a][b]
    return replace(floor, laid=rows)


@pytest.fixture
def floor(laid: Desk) -> Floor:
    """The layout that was accepted, as it lies on the floor; nothing is on the wall any more."""
    sets = laid.ok("sets", "--json").data["sets"]
    found = the_floor(laid, laid.ok("wall", "--json").data["rows"], sets)
    laid.ok("wall", "clear")
    return found


def test_what_lies_there_is_read_and_kept_only_when_asked(laid: Desk, floor: Floor) -> None:
    photo = taken(laid, floor)
    before = laid.record()
    said = laid.ok("wall", "--photo", photo)
    assert said.lines[0] == "30 of 30 places are sure."
    assert said.lines[-1].endswith("the same with --accept")
    assert laid.record() == before
    told = laid.ok("wall", "--photo", photo, "--accept")
    assert told.lines[0].startswith("Laid on the wall, as photographed: 30 units")
    now = laid.ok("wall", "--json").data["rows"]
    sets = laid.ok("sets", "--json").data["sets"]
    # Units that look the same may stand for each other: what shows is what lay there.
    for was, is_now in zip(floor.laid, the_floor(laid, now, sets).laid, strict=True):
        assert list(map(floor.shows, was)) == list(map(floor.shows, is_now))
    assert MAKER.encode() not in (laid.record() or b"")
    assert photo.encode() not in (laid.record() or b"")


def test_the_moves_it_names_mend_what_touches(laid: Desk, floor: Floor) -> None:
    photo = taken(laid, swapped(floor, ((0, 0), (2, 3)), ((1, 4), (4, 1))))
    data = laid.ok("wall", "--photo", photo, "--json").data
    assert data["touches"]
    lines = laid.ok("wall", "--photo", photo, "--accept").lines
    moves = data["moves"]
    assert len(moves) <= 4, "two swaps made it, and the turns that go with them"
    assert sum(line.startswith(f"{n}. Row ") for n in range(1, 5) for line in lines) == len(moves)
    for move in moves:
        row, place = move["place"]
        lies = {
            (one["row"], one["place"]): one
            for there in laid.ok("wall", "--json").data["rows"]
            for one in there
        }
        mine = lies[row, place]["turns"]
        if move["with"] is None:
            laid.ok("wall", "turn", f"{row}.{place}", str((move["turns"] - mine) % 4))
        else:
            other = tuple(move["with"])
            quarters = (move["with_turns"] - mine) % 4
            others = (move["turns"] - lies[other]["turns"]) % 4
            laid.ok("wall", "swap", f"{row}.{place}/{quarters}", f"{other[0]}.{other[1]}/{others}")
    assert len(laid.ok("wall", "--json").data["touches"]) == data["left"]


def test_what_is_not_known_is_asked_about_and_said(laid: Desk, floor: Floor) -> None:
    photo = taken(laid, floor)
    (row, place), gone = next(
        ((r, p), one)
        for r, there in enumerate(floor.laid, 1)
        for p, one in enumerate(there, 1)
        if one is not None and one.unit // 4 == 2
    )
    laid.ok("sets", "--hold-back", "3")
    said = laid.ok("wall", "--photo", photo)
    unknown = [line for line in said.lines if "no unit that is known looks like it" in line]
    assert any(line.startswith(f"row {row} place {place}: ") for line in unknown)
    assert any(line.startswith("To answer: --said 2.3=7/2") for line in said.lines)
    laid.ok("sets", "--let-in", "3")
    where = f"{row}.{place}"
    answer = f"{where}=3/{gone.unit % 4 + 1}/{gone.turn}"
    data = laid.ok("wall", "--photo", photo, "--said", answer, "--json").data
    lies = data["rows"][row - 1][place - 1]
    assert (lies["unit"]["set"], lies["unit"]["unit"], lies["turns"]) == (
        3, gone.unit % 4 + 1, gone.turn,
    )  # fmt: skip
    assert data["read"][(row - 1) * 6 + place - 1]["said"] is True
    empty = laid.ok("wall", "--photo", photo, "--said", f"{where}=nothing", "--json").data
    assert empty["rows"][row - 1][place - 1]["unit"] is None
    for wrong in (where, "0.1=3/1", "1.1=99/1", "1.1=what", "1.1/1=A", "1.1/x=A"):
        laid.refused("wall", "--photo", photo, "--said", wrong)


def test_without_sets_each_patch_is_named_by_its_fabric(laid: Desk, floor: Floor) -> None:
    photo = taken(laid, floor)
    laid.ok("undo")  # of clearing
    laid.ok("undo")  # of laying
    laid.ok("undo")  # of accepting the sets
    said = laid.ok("wall", "--photo", photo, "--accept")
    assert said.lines[0].startswith("Laid on the wall, as photographed: 30 units")
    data = laid.ok("wall", "--json").data
    for was, row in zip(floor.laid, data["rows"], strict=True):
        for one, place in zip(was, row, strict=True):
            shown = {letter for letter in place["unit"]["squares"] if letter}
            assert shown == set(floor.shows(one).values())
    answered = laid.ok("wall", "--photo", photo, "--said", "1.1/1=navy", "--json").data
    assert "F" in answered["rows"][0][0]["unit"]["squares"]
    laid.refused("wall", "--photo", photo, "--said", "1.1=1/1")


def test_what_cannot_be_read_is_refused_and_says_what_to_do(
    begun: Desk, monkeypatch: pytest.MonkeyPatch
) -> None:
    assert "no file" in begun.refused("wall", "--photo", "gone.jpg").err
    path = Path(begun.file("floor.jpg", "this is no picture"))
    assert "colours" in begun.refused("wall", "--photo", str(path)).err
    begun.ok("fabrics", "--say", DRAWER)
    begun.refused("wall", "--photo", str(path))
    begun.refused("wall", "--photo", str(path), "--corners", "1,1")
    grey = BytesIO()
    Image.new("RGB", (800, 700), "#999999").save(grey, "PNG")
    path.write_bytes(grey.getvalue())
    said = begun.refused("wall", "--photo", str(path)).err
    assert "square" not in said
    monkeypatch.setattr(read, "find_spec", lambda name: None)
    assert "sewalong[photo]" in begun.refused("wall", "--photo", str(path)).err

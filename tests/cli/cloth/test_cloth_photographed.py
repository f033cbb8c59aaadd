"""One photograph by plain commands: read, put right, shown back, taken into the plan.

The pictures are made here, so that the truth is known.
"""

from __future__ import annotations

from io import BytesIO
from pathlib import Path

import pytest
from PIL import Image

from sewalong.fabrics.photo import read
from tests.cli.conftest import Desk
from tests.fabrics.photo.made_photos import COLOURS, Scene, file_of, laid, solid

# Five solids, the first of them twice, at the end of row 2.
PACK = [laid(1, 3)[0], [*laid(2, 3)[1][:2], solid(COLOURS[0])]]
SCENE = Scene(squares=PACK, size=(300, 220))
MAKER = "A maker's own telephone"


@pytest.fixture
def photo(begun: Desk) -> str:
    path = begun.folder / "pack.jpg"
    exif = Image.Exif()
    exif[0x010F] = MAKER  # Who made the camera.
    path.write_bytes(file_of(SCENE.image(), "JPEG", quality=95, exif=exif))
    return str(path)


def test_what_was_read_is_told_place_by_place(begun: Desk, photo: str) -> None:
    before = begun.record()
    said = begun.ok("fabrics", "--photo", photo, "--grid", "2x3", "--packs", "4")
    assert said.lines[0].startswith("row 1 place 1: A, #")
    assert said.lines[5].startswith("row 2 place 3: A, #")
    assert "A: 8 squares" in said.out
    assert "at 1·1, 2·3, likely one fabric" in said.out
    assert said.lines[-1].endswith("the same with --keep")
    assert begun.record() == before
    data = begun.ok("fabrics", "--photo", photo, "--grid", "2", "x", "3", "--json").data
    assert [one["letter"] for one in data["places"]] == list("ABCDEA")
    assert [one["squares"] for one in data["found"]] == [2, 1, 1, 1, 1]


def test_it_is_put_right_by_options_and_kept(begun: Desk, photo: str) -> None:
    said = begun.ok(
        "fabrics", "--photo", photo, "--grid", "2x3", "--packs", "4", "--split", "2.3",
        "--merge", "B,C", "--merge", "D E", "--rename", "A rust dots", "--rename", "f the gift",
        "--keep",
    )  # fmt: skip
    assert "Plan changed: fabric A added: rust dots, 4 squares." in said.lines
    now = {one["letter"]: one for one in begun.ok("fabrics", "--json").data["fabrics"]}
    assert {letter: one["squares"] for letter, one in now.items()} == {
        "A": 4, "B": 8, "D": 8, "F": 4,
    }  # fmt: skip
    assert now["F"]["name"] == "the gift"
    assert now["B"]["name"].endswith(" 1·2")
    begun.ok("undo")
    assert begun.ok("fabrics", "--json").data["fabrics"] == []


def test_a_second_photograph_comes_beside_or_instead(begun: Desk, photo: str) -> None:
    keep = ("fabrics", "--photo", photo, "--grid", "2x3", "--keep")
    begun.ok(*keep)
    assert "--beside" in begun.refused(*keep).err
    assert "not both" in begun.refused(*keep, "--beside", "--instead").err
    begun.ok(*keep, "--beside")
    assert len(begun.ok("fabrics", "--json").data["fabrics"]) == 10
    begun.ok(*keep, "--instead", "--rename", "A chalk")
    names = [one["name"] for one in begun.ok("fabrics", "--json").data["fabrics"]]
    assert (len(names), names[0]) == (5, "chalk")


def test_the_contact_sheet_is_written_and_nothing_of_the_file_is_kept(
    begun: Desk, photo: str
) -> None:
    sheet = begun.folder / "sheet.png"
    words = ("fabrics", "--photo", photo, "--grid", "2x3", "--sheet", str(sheet))
    said = begun.ok(*words, "--keep", "--json")
    with Image.open(BytesIO(sheet.read_bytes())) as shown:
        assert shown.format == "PNG"
        assert not shown.info
    assert MAKER.encode() in Path(photo).read_bytes()
    record = begun.record()
    assert record is not None
    exported = begun.ok("export", "-").out
    for kept in (sheet.read_bytes(), record, exported.encode(), said.out.encode()):
        assert MAKER.encode() not in kept
    assert "pack.jpg" not in exported
    assert "is there already" in begun.refused(*words).err
    begun.ok(*words, "--replace")


def test_corners_can_be_given(begun: Desk, photo: str) -> None:
    points = [f"{x:.0f},{y:.0f}" for x, y in SCENE.corners()]
    said = begun.ok("fabrics", "--photo", photo, "--grid", "2x3", "--corners", *points, "--json")
    assert [one["letter"] for one in said.data["places"]] == list("ABCDEA")


@pytest.mark.parametrize(
    ("words", "says"),
    [
        ((), "--grid 6x7"),
        (("--grid", "7"), "rows"),
        (("--grid", "3x3"), "squares"),
        (("--grid", "99x99"), "The grid has from 1 to 40 rows"),
        (("--grid", "2x3", "--packs", "0"), "1 pack at least"),
        (("--grid", "2x3", "--corners", "1,2", "3,4"), "four points"),
        (("--grid", "2x3", "--corners", "1,1", "1,1", "1,1", "1,1"), "corner"),
        (("--grid", "2x3", "--split", "five"), "--split takes a place"),
        (("--grid", "2x3", "--split", "9.9"), "There is no place 9·9"),
        (("--grid", "2x3", "--merge", "A"), "two letters or more"),
        (("--grid", "2x3", "--merge", "A,Z"), "No square has the letter Z"),
        (("--grid", "2x3", "--rename", "Z name"), "No square has the letter Z"),
        (("--grid", "2x3", "--instead"), "go with --keep"),
        (("--grid", "2x3", "--packs", "9999", "--keep"), "fewer packs"),
        (("--grid", "2x3", "--rename", f"A {'x' * 81}", "--keep"), "81 characters"),
    ],
)
def test_what_cannot_be_read_or_done_is_refused(
    begun: Desk, photo: str, words: tuple[str, ...], says: str
) -> None:
    assert says in begun.refused("fabrics", "--photo", photo, *words).err


def test_a_file_that_is_no_picture_is_refused(begun: Desk) -> None:
    no_picture = begun.file("words.png", "not a picture")
    assert "no picture" in begun.refused("fabrics", "--photo", no_picture, "--grid", "2x3").err
    gone = begun.refused("fabrics", "--photo", "nowhere.png", "--grid", "2x3")
    assert "There is no file" in gone.err
    folder = begun.refused("fabrics", "--photo", str(begun.folder), "--grid", "2x3")
    assert "not a file" in folder.err


def test_without_the_extra_it_says_what_to_install(
    begun: Desk, photo: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(read, "find_spec", lambda name: None)
    said = begun.refused("fabrics", "--photo", photo, "--grid", "2x3")
    assert "sewalong[photo]" in said.err
    assert begun.ok("fabrics", "--say", "lights 60").status == 0


def test_no_quilt_is_needed_to_look_at_a_photograph(desk: Desk) -> None:
    path = desk.folder / "pack.png"
    path.write_bytes(SCENE.file())
    assert "row 1 place 1" in desk.ok("fabrics", "--photo", str(path), "--grid", "2x3").out
    assert (
        "no quilt" in desk.refused("fabrics", "--photo", str(path), "--grid", "2x3", "--keep").err
    )

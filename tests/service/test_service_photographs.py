"""What was typed about a photograph, and its file."""

from __future__ import annotations

from pathlib import Path

import pytest
from msgspec.structs import replace

from sewalong.fabrics.photo import bounds
from sewalong.fabrics.photo.refused import PhotoRefused
from sewalong.quilt.refusal import NumbersFault
from sewalong.service.photographs import MOST_BYTES, offered_for, photo_asked, read_photographed
from sewalong.store.faults import StoreFault
from tests.fabrics.photo.made_photos import Scene, laid
from tests.progress.building import a_quilt

CORNERS = "120 80, 910,85; (905 700) 118x690"


def test_the_bound_is_that_of_the_reader() -> None:
    assert MOST_BYTES == bounds.MOST_BYTES


def test_what_is_typed_is_read(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("HOME", str(tmp_path))
    asked = photo_asked(" ~/pack.jpg ", "6 by 7", "", CORNERS)
    assert asked.path == str(tmp_path / "pack.jpg")
    assert (asked.rows, asked.columns, asked.packs) == (6, 7, 1)
    assert asked.corners == ((120, 80), (910, 85), (905, 700), (118, 690))
    assert photo_asked("pack.jpg", "6x7", "4").corners is None


@pytest.mark.parametrize(
    ("typed", "says"),
    [
        ((" ", "6 x 7", "1"), "file of the photograph"),
        (("a.png", "six", "1"), "6 x 7"),
        (("a.png", "6 x 7", "four"), "whole number"),
        (("a.png", "6 x 7", "1", "120 80"), "four points"),
        (("a.png", "6 x 7", "1", "a" + CORNERS), "four points"),
        (("a.png", "6 x 7", "1", "-1 2 3 4 5 6 7 8"), "four points"),
    ],
)
def test_what_cannot_be_read_is_a_sentence(typed: tuple[str, ...], says: str) -> None:
    with pytest.raises(NumbersFault, match=r"\.$") as refused:
        photo_asked(*typed)
    assert says in str(refused.value)


@pytest.mark.parametrize(
    ("count", "packs", "grid", "offered"),
    [
        (168, 4, "6 x 7", "4"),
        (160, 4, "5 x 8", "4"),
        (22, 1, "2 x 11", "1"),
        (48, None, "6 x 7", "1"),
        (100, 3, "6 x 7", "1"),
        (17, 1, "1 x 17", "1"),
    ],
)
def test_what_is_offered_follows_the_packs_of_the_plan(
    count: int, packs: int | None, grid: str, offered: str
) -> None:
    quilt = a_quilt("stacked-four-patch")
    plan = replace(quilt, starts=(replace(quilt.starts[0], count=count, packs=packs, lots=()),))
    assert offered_for(plan) == {"grid": grid, "packs": offered}
    photo_asked("pack.png", **offered_for(plan))


def test_a_photograph_is_read_from_its_file(tmp_path: Path) -> None:
    file = tmp_path / "pack.png"
    file.write_bytes(Scene(squares=laid(2, 3), size=(300, 220)).file())
    reading = read_photographed(photo_asked(str(file), "2 x 3", "4"))
    assert len(reading.photo.fabrics) == 6
    assert reading.photo.packs == 4
    with pytest.raises(PhotoRefused, match="3 rows"):
        read_photographed(photo_asked(str(file), "3 x 2", "1"))
    with pytest.raises(StoreFault, match="There is no file"):
        read_photographed(photo_asked(str(tmp_path / "none.png"), "2 x 3", "1"))
    with pytest.raises(StoreFault, match="not a file"):
        read_photographed(photo_asked(str(tmp_path), "2 x 3", "1"))

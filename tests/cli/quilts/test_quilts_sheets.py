"""`sheets`: a quilt on paper, written into a folder; nothing that lies there is lost unasked."""

from __future__ import annotations

import builtins
import os
import sys
from pathlib import Path
from typing import Any
from xml.etree import ElementTree

import pytest

from sewalong.cli.registry import index
from sewalong.sheets.contents import PARTS
from tests.cli.conftest import QUILT_FILE, Desk
from tests.cli.quilts.test_quilts_safekeeping import sew, spoil_the_last
from tests.sheets.conforming import faults, parsed, text_of

FILES = ["sheets.html", "top.png", "top.svg"]


def test_the_folder_is_made_and_holds_pages_and_pictures(begun: Desk) -> None:
    folder = begun.folder / "paper" / "of the gate"
    said = begun.ok("sheets", str(folder))
    assert said.lines == [
        f"Written: {folder}/sheets.html",
        f"Written: {folder}/top.svg",
        f"Written: {folder}/top.png",
        f"Open {folder}/sheets.html in a browser and print it.",
    ]
    assert sorted(os.listdir(folder)) == FILES
    root = parsed((folder / "sheets.html").read_text(encoding="utf-8"))
    assert list(faults(root)) == []
    assert "Gate Post" in text_of(root)
    assert "2 Nov 2026, 20:15" in text_of(root)
    ElementTree.parse(folder / "top.svg")
    assert (folder / "top.png").read_bytes().startswith(b"\x89PNG")
    assert begun.ok("sheets", str(folder), "--json").data["files"] == [
        str(folder / name) for name in ("sheets.html", "top.svg", "top.png")
    ]


def test_a_quilt_is_named_in_its_place_or_not_at_all(begun: Desk) -> None:
    begun.ok("start", begun.file("other.toml", _named("Other")))
    begun.ok("sheets", "Gate Post", str(begun.folder / "one"))
    begun.ok("sheets", "--quilt", "Gate", str(begun.folder / "two"))
    begun.ok("sheets", str(begun.folder / "three"))
    names = [
        "Gate Post" in (begun.folder / one / "sheets.html").read_text(encoding="utf-8")
        for one in ("one", "two", "three")
    ]
    assert names == [True, True, False]
    assert "There is no quilt" in begun.refused("sheets", "Nobody's", "paper").err


def _named(name: str) -> str:
    return QUILT_FILE.replace("Gate Post", name)


def test_what_lies_there_is_written_over_only_when_that_is_said(begun: Desk) -> None:
    folder = begun.folder / "paper"
    begun.ok("sheets", str(folder))
    begun.ok("sheets", str(folder))  # at the same moment the same pages
    was = {name: (folder / name).read_bytes() for name in FILES}
    begun.ok("count", "pair", "4", "--caution-read")
    said = begun.refused("sheets", str(folder))
    assert said.err.strip() == (
        f"{folder}/sheets.html is there already, with something else in it. Name another folder, "
        "or add --replace"
    )
    assert {name: (folder / name).read_bytes() for name in FILES} == was
    begun.ok("sheets", str(folder), "--replace")
    assert (folder / "sheets.html").read_bytes() != was["sheets.html"]
    assert (folder / "top.svg").read_bytes() == was["top.svg"]


@pytest.mark.parametrize("name", FILES)
def test_a_file_of_hers_with_such_a_name_is_kept_and_nothing_is_half_written(
    begun: Desk, name: str
) -> None:
    (begun.folder / name).write_text("mine", encoding="utf-8")
    before = sorted(os.listdir(begun.folder))
    assert "with something else in it" in begun.refused("sheets", str(begun.folder)).err
    assert (begun.folder / name).read_text(encoding="utf-8") == "mine"
    assert sorted(os.listdir(begun.folder)) == before


def test_where_no_folder_can_be_it_is_said(begun: Desk) -> None:
    begun.file("a-file", "mine")
    for place, why in (
        (str(begun.folder / "a-file"), "is not a folder"),
        (str(begun.folder / "a-file" / "in-it"), "cannot be made"),
        (str(begun.folder / "home"), "folder of your record"),
        (str(begun.folder / "home" / "paper"), "folder of your record"),
        ("", "cannot be made"),
    ):
        assert why in begun.refused("sheets", place).err, place


def test_a_link_to_the_record_is_not_written_over(begun: Desk) -> None:
    folder = begun.folder / "paper"
    folder.mkdir()
    (folder / "top.svg").symlink_to(begun.folder / "home" / "quilts.db")
    assert "folder of your record" in begun.refused("sheets", str(folder), "--replace").err


@pytest.mark.parametrize("part", PARTS)
def test_one_part_alone(desk: Desk, part: str) -> None:
    folder = desk.folder / part
    desk.ok("sheets", "--demo", "--quilt", "Signal Garden", str(folder), "--only", part)
    assert sorted(os.listdir(folder)) == (FILES if part == "top" else FILES[:1])
    text = (folder / "sheets.html").read_text(encoding="utf-8")
    assert [f'<section id="{one}">' in text for one in PARTS] == [one == part for one in PARTS]


@pytest.mark.parametrize("part", ["layout", "sets"])
def test_a_part_with_nothing_in_it_is_refused(begun: Desk, part: str) -> None:
    assert "to print" in begun.refused("sheets", "paper", "--only", part).err
    assert not (begun.folder / "paper").exists()


def test_the_parts_that_can_be_named_are_those_there_are() -> None:
    command = index.command("sheets")
    assert command is not None
    (only,) = [one for one in command.arguments if one.name == "--only"]
    assert only.choices == PARTS


def test_without_the_library_that_paints_all_but_the_png_is_written(
    begun: Desk, monkeypatch: pytest.MonkeyPatch
) -> None:
    really = builtins.__import__

    def without(name: str, *rest: Any, **more: Any) -> Any:
        if name.partition(".")[0] == "PIL":
            raise ImportError(name)
        return really(name, *rest, **more)

    for name in [name for name in sys.modules if name.partition(".")[0] == "PIL"]:
        monkeypatch.delitem(sys.modules, name)
    monkeypatch.setattr(builtins, "__import__", without)
    folder = begun.folder / "paper"
    said = begun.ok("sheets", str(folder))
    assert "sewalong[photo]" in said.err
    assert sorted(os.listdir(folder)) == ["sheets.html", "top.svg"]


def test_a_damaged_record_is_printed_as_far_as_it_is_whole_and_says_so(begun: Desk) -> None:
    sew(begun)
    spoil_the_last(begun)
    folder = begun.folder / "paper"
    said = begun.run("sheets", str(folder))
    assert said.status == 2
    assert "“Gate Post” is damaged: at event 7" in said.err
    page = parsed((folder / "sheets.html").read_text(encoding="utf-8"))
    assert list(faults(page)) == []
    assert "is damaged: at event 7" in text_of(page)


def test_the_sheets_of_every_demo_quilt_conform(desk: Desk) -> None:
    for one in desk.ok("demo", "--list", "--json").data["quilts"]:
        folder = desk.folder / str(one["number"])
        desk.ok("sheets", "--demo", "--quilt", str(one["number"]), str(folder))
        page = Path(folder / "sheets.html").read_text(encoding="utf-8")
        assert list(faults(parsed(page))) == [], one

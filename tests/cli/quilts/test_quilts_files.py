"""Quilts in and out: a quilt file with all its faults, an archive without loss."""

from __future__ import annotations

import json
import os
from pathlib import Path
from typing import TYPE_CHECKING

from sewalong.__main__ import main

if TYPE_CHECKING:
    import pytest

    from tests.cli.conftest import Desk

FAULTY = """\
name = "Gate Post"
method = "stacked-four-patch"
colour = "green"

[squares]
size = "four"
count = 64

[layout]
rows = 0
columns = 6
"""


def test_a_quilt_file_is_begun_and_told(desk: Desk) -> None:
    said = desk.ok("start", desk.file("gate-post.toml"))
    assert said.lines == [
        "Begun: Gate Post",
        "Method: Stacked four-patch",
        "There are: 64 squares, enough for 32 units.",
        "Target: 5 × 6, 30 units in all.",
        "Spare: 2 units.",
        "Open it with: sewalong",
    ]


def test_too_few_squares_are_said_before_the_first_cut(desk: Desk) -> None:
    from_file = desk.file("few.toml", FEW)
    said = desk.ok("check", from_file)
    assert said.lines[-1].startswith("Short: 5 × 8 is 4 units short. Find or buy 2 ")


FEW = """\
name = "Few"
method = "paired-squares"
[squares]
size = "5"
count = 18
[layout]
rows = 5
columns = 8
"""


def test_all_faults_are_told_at_once_each_with_its_line_and_key(desk: Desk) -> None:
    said = desk.run("check", desk.file("faulty.toml", FAULTY))
    assert said.status == 2
    assert said.err == ""
    assert [line.partition(": ")[0] for line in said.lines[:3]] == [
        "line 3, colour",
        "line 6, squares.size",
        "line 10, layout.rows",
    ]
    assert said.lines[3].startswith("3 faults in ")
    told = desk.run("check", desk.file("faulty.toml", FAULTY), "--json")
    assert told.status == 2
    assert [(f["line"], f["key"]) for f in told.data["faults"]] == [
        (3, "colour"),
        (6, "squares.size"),
        (10, "layout.rows"),
    ]


def test_a_quilt_file_with_faults_begins_nothing(desk: Desk) -> None:
    said = desk.refused("start", desk.file("faulty.toml", FAULTY))
    assert said.err.startswith("line 3, colour: ")
    assert said.err.endswith("Nothing was begun.\n")
    assert not (desk.folder / "home").exists()


def test_checking_begins_nothing(desk: Desk) -> None:
    said = desk.ok("check", desk.file("gate-post.toml"))
    assert said.lines[0] == "No faults: Gate Post"
    assert desk.ok("check", desk.file("gate-post.toml"), "--json").data["faults"] == []
    assert not (desk.folder / "home").exists()


def test_two_quilts_of_one_name_are_refused(begun: Desk) -> None:
    assert "already" in begun.refused("start", begun.file("gate-post.toml")).err


def test_what_is_no_readable_file_is_refused_in_a_sentence(desk: Desk) -> None:
    binary = desk.folder / "binary"
    binary.write_bytes(b"\x00\xff\xfe" * 100)
    huge = desk.folder / "huge"
    huge.write_bytes(b"#" * 1_000_001)
    pipe = desk.folder / "pipe"
    os.mkfifo(pipe)
    dangling = desk.folder / "dangling"
    dangling.symlink_to(desk.folder / "nowhere")
    for command in ("start", "import"):
        for file in (binary, pipe, dangling, desk.folder, desk.folder / "none", "", "a" * 5000):
            desk.refused(command, str(file))
    desk.refused("start", str(huge))
    assert desk.run("check", str(binary)).status == 2
    assert desk.run("check", str(huge)).status == 2
    assert not (desk.folder / "home").exists()


def test_a_quilt_exported_and_imported_is_the_same(
    begun: Desk, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    begun.ok("count", "pair", "8")
    begun.ok("note", 'a “note” with\ttabs, ünïcode \u202e and "quotes"')
    begun.ok("undo")
    begun.ok("settings", "--foot", "patchwork")
    file = str(tmp_path / "out.json")
    said = begun.ok("export", file)
    assert said.lines == [f"Exported: Gate Post, 5 events, to {file}"]
    before = begun.status()
    log = begun.ok("log", "--json").data

    monkeypatch.setenv("SEWALONG_HOME", str(tmp_path / "elsewhere"))
    assert begun.ok("import", file).lines == ["Imported: Gate Post, 5 events."]
    assert begun.status() == before
    assert begun.ok("log", "--json").data == log
    again = str(tmp_path / "again.json")
    begun.ok("export", "Gate Post", again)
    assert Path(again).read_bytes() == Path(file).read_bytes()


def test_one_event_is_told_as_one(begun: Desk, tmp_path: Path) -> None:
    begun.ok("alter", "--call", "Blue Tin")
    file = str(tmp_path / "out.json")
    assert begun.ok("export", file).lines == [f"Exported: Blue Tin, 1 event, to {file}"]


def test_an_export_to_the_terminal_is_the_same_quilt(begun: Desk, tmp_path: Path) -> None:
    begun.ok("note", "\u009b[2J")
    said = begun.ok("export", "-")
    assert "\u009b" not in said.out
    begun.ok("export", str(tmp_path / "out.json"))
    assert json.loads(said.out) == json.loads((tmp_path / "out.json").read_text("utf-8"))


def test_a_file_that_is_there_is_not_written_over_unasked(begun: Desk, tmp_path: Path) -> None:
    there = tmp_path / "precious.txt"
    there.write_text("precious", "utf-8")
    begun.refused("export", str(there))
    begun.refused("export", str(tmp_path))
    begun.refused("export", str(tmp_path / "none" / "out.json"))
    assert there.read_text("utf-8") == "precious"
    begun.ok("export", str(there), "--replace")
    assert "Gate Post" in there.read_text("utf-8")


def test_the_same_quilt_is_not_imported_twice_but_under_another_name(
    begun: Desk, tmp_path: Path
) -> None:
    file = str(tmp_path / "out.json")
    begun.ok("export", file)
    assert "here already" in begun.refused("import", file).err
    begun.ok("import", file, "--name", "Gate Post again")
    assert [q["name"] for q in begun.ok("list", "--json").data["quilts"]] == [
        "Gate Post again",
        "Gate Post",
    ]
    begun.refused("import", file, "--name", "\x1b[2J")
    begun.refused("import", file, "--name", " ")


def test_an_archive_that_cannot_be_is_refused(begun: Desk, tmp_path: Path) -> None:
    begun.ok("count", "pair", "8")
    file = tmp_path / "out.json"
    begun.ok("export", str(file))
    content = json.loads(file.read_text("utf-8"))
    content["key"] = "another"
    content["quilt"]["name"] = "Another"
    content["events"][1]["n"] = 33
    file.write_text(json.dumps(content), "utf-8")
    assert "does not hold together" in begun.refused("import", str(file)).err
    for text in ("", "{}", "[]", "null", "{" * 100_000, file.read_text("utf-8")[:-20]):
        file.write_text(text, "utf-8")
        begun.refused("import", str(file))


def test_standard_input_that_is_closed_is_refused(
    desk: Desk, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("sys.stdin", None)
    assert main(["import", "-"]) == 2
    assert "standard input" in desk.capsys.readouterr().err

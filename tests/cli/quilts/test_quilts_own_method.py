"""A maker's own method from the first check to the last export, whatever becomes of its file."""

from __future__ import annotations

import json
from pathlib import Path
from typing import TYPE_CHECKING, Any

import pytest

from sewalong.piecing import catalogue, kept_method, method_files
from sewalong.piecing import definition as definitions
from tests.quilt.file.own_method import OWN, changed, line_of

if TYPE_CHECKING:
    from tests.cli.conftest import Desk

QUILT = """\
name = "Turnstile"
method_file = "methods/turned.toml"
[squares]
size = "2 1/2"
count = 80
[layout]
rows = 4
columns = 5
"""


def put(desk: Desk, text: str = OWN, quilt: str = QUILT) -> str:
    """The method file and the quilt file; the name of the latter."""
    folder = desk.folder / "patterns" / "methods"
    folder.mkdir(parents=True, exist_ok=True)
    (folder / "turned.toml").write_text(text, "utf-8")
    return desk.file("patterns/turnstile.toml", quilt)


def all_of(desk: Desk) -> list[Any]:
    """What can be asked of the quilt."""
    return [
        desk.ok(*command, "--json").data
        for command in (("status",), ("plan",), ("layouts",), ("forecast",), ("log",))
    ]


@pytest.fixture
def turnstile(desk: Desk) -> Desk:
    desk.ok("start", put(desk))
    desk.ok("count", "sew-twos", "8", "--caution-read")
    return desk


def test_a_quilt_with_a_method_of_its_own_is_checked_planned_begun_and_counted(desk: Desk) -> None:
    file = put(desk)
    assert desk.ok("check", file).lines[:2] == ["No faults: Turnstile", "Method: Turned twos"]
    assert "4 in across × 4 in down" in desk.ok("plan", file).out
    assert "enough for 20 units" in desk.ok("start", file).out
    desk.ok("count", "sew-twos", "40", "--caution-read")
    desk.ok("count", "sew-fours", "20", "--caution-read")
    desk.ok("count", "press", "20", "--caution-read")
    status = desk.status()
    assert status["method"] == "turned-twos"
    assert status["units"]["made"] == 20


def test_it_is_found_from_the_quilt_file_and_from_where_one_stands_for_standard_input(
    desk: Desk, monkeypatch: pytest.MonkeyPatch
) -> None:
    import io

    file = put(desk)
    monkeypatch.chdir(desk.folder)
    desk.ok("check", "patterns/turnstile.toml")
    monkeypatch.chdir(desk.folder / "patterns")
    desk.ok("check", "turnstile.toml")
    for folder, status in ((desk.folder / "patterns", 0), (desk.folder, 2)):
        monkeypatch.chdir(folder)
        text = io.TextIOWrapper(io.BytesIO(Path(file).read_bytes()))
        monkeypatch.setattr("sys.stdin", text)
        assert desk.run("check", "-").status == status


@pytest.mark.parametrize("name", ["methods", "none.toml", "-", "/dev/zero", "pipe", "big.toml"])
def test_a_method_file_that_cannot_be_read_is_a_fault_with_its_line(desk: Desk, name: str) -> None:
    import os

    file = put(desk, quilt=QUILT.replace("methods/turned.toml", name))
    os.mkfifo(desk.folder / "patterns" / "pipe")
    (desk.folder / "patterns" / "big.toml").write_bytes(b"#" * 300_000)
    said = desk.run("check", file)
    assert said.status == 2
    assert said.lines[0].startswith("line 2, method_file: ")
    assert len(said.lines) == 2
    assert desk.refused("start", file).err.endswith("Nothing was begun.\n")


AFTER = {
    "edited": lambda path: path.write_text(changed(OWN, '"take two", "take two"', '"take two"')),
    "spoiled": lambda path: path.write_text("no method at all"),
    "another's": lambda path: path.write_text(method_files.text_of("four-patch") or ""),
    "deleted": lambda path: path.unlink(),
}


@pytest.mark.parametrize("what", AFTER)
def test_nothing_that_becomes_of_the_file_changes_the_quilt(
    turnstile: Desk, what: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    before = all_of(turnstile)
    AFTER[what](turnstile.folder / "patterns" / "methods" / "turned.toml")
    assert all_of(turnstile) == before
    turnstile.ok("count", "sew-fours", "2", "--caution-read")
    turnstile.ok("count", "press", "2", "--caution-read")
    assert turnstile.status()["units"]["made"] == 2
    turnstile.ok("undo")
    turnstile.ok("undo")

    file = str(turnstile.folder / "out.json")
    turnstile.ok("export", file)
    after = all_of(turnstile)
    monkeypatch.setenv("SEWALONG_HOME", str(turnstile.folder / "elsewhere"))
    turnstile.ok("import", file)
    assert all_of(turnstile) == after
    again = str(turnstile.folder / "again.json")
    turnstile.ok("export", "Turnstile", again)
    assert Path(again).read_bytes() == Path(file).read_bytes()
    assert "\n".join(json.loads(Path(file).read_text("utf-8"))["quilt"]["method_text"]) == OWN


def later_version(monkeypatch: pytest.MonkeyPatch, id: str, old: str, new: str) -> None:
    """The program's own method says something else from now on."""
    text = changed(method_files.text_of(id) or "", old, new)
    for module in (method_files, kept_method):
        monkeypatch.setattr(
            module, "read_method_file", lambda wanted: text.encode() if wanted == id else None
        )
    monkeypatch.setattr(kept_method, "__version__", "99.0")
    forget()


def forget() -> None:
    """What a fresh start would not know."""
    catalogue._REMEMBERED.clear()
    for kept in (catalogue._counted_out, catalogue._known, catalogue._read, definitions.definition):
        kept.cache_clear()


@pytest.fixture
def fresh_afterwards() -> Any:
    yield
    forget()


@pytest.mark.usefixtures("fresh_afterwards")
def test_a_later_version_of_the_program_changes_no_quilt_under_way(
    desk: Desk, monkeypatch: pytest.MonkeyPatch
) -> None:
    own = QUILT.replace('method_file = "methods/turned.toml"', 'method = "four-patch"')
    desk.ok("start", desk.file("here.toml", own))
    desk.ok("count", "pair", "4", "--caution-read")
    before = all_of(desk)
    later_version(
        monkeypatch, "four-patch", '["take four-patch"]', '["take four-patch", "take four-patch"]'
    )
    assert "takes 2 four-patches, makes 2 units" in desk.ok("methods", "show", "four-patch").out
    assert all_of(desk) == before
    forget()
    desk.ok("count", "pair", "2", "--caution-read")
    file = str(desk.folder / "out.json")
    desk.ok("export", file)
    after = all_of(desk)
    monkeypatch.setenv("SEWALONG_HOME", str(desk.folder / "elsewhere"))
    desk.ok("import", file)
    assert all_of(desk) == after
    content = json.loads(Path(file).read_text("utf-8"))
    # A quilt begun before its method was kept goes by the program's own, as it always did.
    del content["quilt"]["method_text"]
    Path(file).write_text(json.dumps(content), "utf-8")
    desk.ok("import", file, "--name", "Old")
    old = desk.ok("status", "--quilt", "Old", "--json").data
    needed = [
        {stage["id"]: stage["needed"] for stage in status["stages"]}["press"]
        for status in (after[0], old)
    ]
    assert needed == [20, 10]


@pytest.mark.usefixtures("fresh_afterwards")
def test_a_method_of_ones_own_and_the_programs_of_the_same_id_are_not_mixed_up(desk: Desk) -> None:
    own = changed(OWN, 'id = "turned-twos"', 'id = "four-patch"')
    desk.ok("start", put(desk, own))
    theirs = QUILT.replace('method_file = "methods/turned.toml"', 'method = "four-patch"')
    desk.ok("start", desk.file("theirs.toml", theirs.replace("Turnstile", "Theirs")))
    for _ in range(2):
        for name, method, first in (
            ("Turnstile", "Turned twos", "sew-twos"),
            ("Theirs", "Four-patch", "pair"),
        ):
            # As in a new start, when all that is known is what the record keeps.
            forget()
            status = desk.ok("status", "--quilt", name, "--json").data
            assert (status["method"], status["method_name"]) == ("four-patch", method)
            assert status["stages"][0]["id"] == first
            assert desk.ok("plan", "--quilt", name).status == 0


def test_an_exported_method_that_is_none_is_not_taken_in(turnstile: Desk) -> None:
    file = turnstile.folder / "out.json"
    turnstile.ok("export", str(file))
    content = json.loads(file.read_text("utf-8"))
    content["quilt"]["name"], content["key"] = "Another", "another"
    lines = content["quilt"]["method_text"]
    for tampered in (
        [line.replace('station = "iron"', 'station = "sofa"') for line in lines],
        [line.replace("minutes = 0.5", "minutes = 1e999") for line in lines],
        [line.replace('id = "turned-twos"', 'id = "another"') for line in lines],
        [line.replace('id = "sew-twos"', 'id = "sew-three"') for line in lines],
        [
            line.replace('id = "square"', 'id = "oblong"').replace("square", "oblong")
            for line in lines
        ],
        [*lines, "\x1b[2J"],
        [*lines, "a\nb"],
        [*lines, "#" * 60_000],
        [],
        [1],
        "\n".join(lines),
        ["["] * 20_000,
    ):
        content["quilt"]["method_text"] = tampered
        file.write_text(json.dumps(content), "utf-8")
        said = turnstile.refused("import", str(file))
        assert said.err.rstrip().endswith("Nothing was taken in.")
    content["quilt"]["method_text"] = lines
    file.write_text(json.dumps(content), "utf-8")
    turnstile.ok("import", str(file))


def test_an_edited_quilt_file_changes_the_plan_and_leaves_the_method(turnstile: Desk) -> None:
    written = turnstile.ok("quilt-file").out
    assert (
        '# As it was when the quilt began: it is kept with the quilt.\nmethod = "turned-twos"'
        in written
    )
    file = turnstile.file("edited.toml", changed(written, "rows = 4", "rows = 3"))
    turnstile.ok("alter", file)
    own = put(turnstile, "spoiled meanwhile", changed(QUILT, "rows = 4", "rows = 2"))
    turnstile.ok("alter", own)
    assert turnstile.status()["target"]["rows"] == 2
    assert turnstile.status()["method"] == "turned-twos"
    other = changed(written, 'method = "turned-twos"', 'method = "four-patch"')
    assert "stays as it is" in turnstile.refused("alter", turnstile.file("other.toml", other)).err


def test_the_faults_of_a_method_file_are_what_checking_it_tells(desk: Desk) -> None:
    text = changed(OWN, 'station = "iron"', 'station = "sofa"')
    text = changed(text, "turn last half way", "turn it")
    file = desk.file("own.toml", text)
    said = desk.run("methods", "check", file)
    assert (said.status, said.err) == (2, "")
    assert [line.partition(": ")[0] for line in said.lines] == [
        f"line {line_of(text, 'turn it')}, stages[2].operations",
        f"line {line_of(text, 'sofa')}, stages[3].station",
        f"2 faults in {file}.",
    ]
    told = desk.run("methods", "check", file, "--json")
    assert told.status == 2
    assert [fault["line"] for fault in told.data["faults"]] == [
        line_of(text, "turn it"),
        line_of(text, "sofa"),
    ]
    assert not (desk.folder / "home").exists()


def test_a_right_method_file_is_shown_as_the_programs_own_are(desk: Desk) -> None:
    said = desk.ok("methods", "check", desk.file("own.toml", OWN), "--square", "2 1/2")
    assert said.lines[0] == "No faults: Turned twos"
    for line in (
        "begins with squares: 2 1/2 in (4 to a unit)",
        "stage 1, sew twos: takes 2 squares, makes 1 two-patch, 2 1/2 in of seam",
        "stage 2, sew fours: takes 2 two-patches, makes 1 unpressed four, 4 1/2 in of seam",
        "unit finishes at: 4 in across × 4 in down",
        "unit's outer edges: all on the straight grain",
        "picture, row  1: AAAAAAAAAAAABBBBBBBBBBBB",
        "picture, row 12: DDDDDDDDDDDDCCCCCCCCCCCC",
    ):
        assert line in said.out
    piped = desk.ok(
        "methods", "check", str(desk.folder / "own.toml"), "--square", "2", "--seam", "3/8"
    )
    assert "unit finishes at: 2 1/2 in across × 2 1/2 in down" in piped.out


def test_sizes_that_a_right_method_cannot_be_sewn_at_are_refused(desk: Desk) -> None:
    said = desk.refused("methods", "check", desk.file("own.toml", OWN), "--square", "1/2")
    assert said.err.startswith("The file has no faults, but no unit comes of pieces of this size: ")
    assert "Which file?" in desk.refused("methods", "check").err
    assert "There is no file" in desk.refused("methods", "check", "none.toml").err
    assert "is not a file" in desk.refused("methods", "check", str(desk.folder)).err
    assert desk.run("methods", "check", desk.file("bytes", "")).status == 2


def test_a_name_that_looks_like_markup_is_printed_as_written(desk: Desk) -> None:
    text = changed(OWN, 'name = "Turned twos"', 'name = "[red]Turned[/]"')
    assert (
        desk.ok("methods", "check", desk.file("own.toml", text)).lines[0]
        == "No faults: [red]Turned[/]"
    )

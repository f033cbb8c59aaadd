"""`alter` and `quilt-file`: the plan changed by an edited file, or a part at a time."""

from __future__ import annotations

import pytest

from tests.cli.conftest import QUILT_FILE, Desk


def test_a_quilt_file_is_printed_edited_and_taken(begun: Desk) -> None:
    written = begun.ok("quilt-file").out
    assert begun.ok("check", begun.file("same.toml", written)).status == 0
    begun.refused("alter", begun.file("same.toml", written))
    edited = begun.file("edited.toml", written.replace("rows = 5", "rows = 4"))
    assert "layout: 5 × 6 → 4 × 6" in begun.ok("alter", edited).out
    assert begun.status()["target"] == {"rows": 4, "columns": 6, "units": 24}
    assert "Plan changed: layout: 5 × 6 → 4 × 6." in begun.ok("log").out
    begun.ok("undo")
    assert begun.status()["target"] == {"rows": 5, "columns": 6, "units": 30}


def test_a_faulty_file_changes_nothing_and_names_every_fault(begun: Desk) -> None:
    faulty = QUILT_FILE.replace('size = "4 1/2"', 'size = "0"').replace("rows = 5", "rows = 0")
    said = begun.refused("alter", begun.file("faulty.toml", faulty))
    assert said.err.count("line ") == 2
    assert "Nothing was changed." in said.err


def test_looking_says_what_would_change_and_records_nothing(begun: Desk) -> None:
    before = begun.record()
    said = begun.ok("alter", "--seam", "3/8", "--look")
    assert said.lines[0] == "Would change: seam: 1/4 in → 3/8 in"
    assert any(line.startswith("Units: ") for line in said.lines)
    assert begun.record() == before
    begun.ok("count", "pair", "4", "--caution-read")
    said = begun.ok("alter", "--square", "4", "--look")
    assert "It would be refused: 4 pairs are made already" in said.out


PARTS = (
    (("--call", "Slow water"), "name: Gate Post → Slow water"),
    (("--seam", "3/8"), "seam: 1/4 in → 3/8 in"),
    (("--square", "4", "7/8"), "squares: 4 1/2 in → 4 7/8 in"),
    (("--trim-to", "5 1/2"), "units trimmed to: as the method gives them → 5 1/2 in"),
    (("--bought", "10", "--of", "4"), "10 squares of 4 in added"),
    (("--bought", "10", "--of", "4 1/2"), "squares: 64 → 74"),
    (("--border", "1", "--cut", "4", "--cloth", "oat"), "border 1 added: 4 in of oat"),
    (("--finishing", "bind, layer"), "finishing: none → layer, bind"),
    (("--fabric", "A indigo print"), "fabric A: no name → indigo print"),
    (("--usable", "42"), "usable width of cloth: 40 in → 42 in"),
    (("--corners", "mitred"), "border corners: sides first → mitred"),
)


@pytest.mark.parametrize(("words", "said"), PARTS, ids=[part[0][0] for part in PARTS])
def test_each_part_can_be_changed_by_itself(begun: Desk, words: tuple[str, ...], said: str) -> None:
    assert f"Plan changed: {said}." in begun.ok("alter", *words).out
    assert begun.ok("undo").status == 0


def test_a_border_is_changed_and_left_out_by_its_number(begun: Desk) -> None:
    begun.ok("alter", "--border", "1", "--cut", "3", "--cloth", "oat")
    begun.ok("alter", "--border", "2", "--cut", "5", "--cloth", "navy")
    assert "border 2: 5 in → 4 in" in begun.ok("alter", "--border", "2", "--cut", "4").out
    assert (
        "cloth of border 2: navy → indigo"
        in begun.ok("alter", "--border", "2", "--cloth", "indigo").out
    )
    assert "border 2 left out (4 in of indigo)" in begun.ok("alter", "--drop-border", "2").out


REFUSED = (
    (),
    ("--border", "2", "--cut", "4"),
    ("--border", "1", "--cut", "4"),
    ("--cut", "4"),
    ("--drop-border", "1"),
    ("--bought", "10"),
    ("--bought", "10", "--of", "4", "--pile", "pair"),
    ("--finishing", "press"),
    ("--fabric", "indigo"),
    ("--call", " "),
    ("--seam", "3"),
    ("--call", "Gate Post"),
)


@pytest.mark.parametrize("words", REFUSED, ids=" ".join)
def test_what_cannot_be_is_refused_in_a_sentence(begun: Desk, words: tuple[str, ...]) -> None:
    begun.refused("alter", *words)


def test_file_and_parts_together_are_refused(begun: Desk) -> None:
    begun.refused("alter", begun.file("same.toml"), "--seam", "3/8")

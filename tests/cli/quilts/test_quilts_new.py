"""`new`: by plain questions back and forth, kept where it is left, and as a quilt file to edit."""

from __future__ import annotations

import io
import sys
from types import ModuleType, SimpleNamespace

import pytest

from sewalong.piecing.catalogue import method_ids
from sewalong.quilt.file.reader import read_quilt
from sewalong.store.drafts import Draft, Drafts
from sewalong.store.home import data_folder, record_path
from tests.cli.conftest import Desk, Said

QUESTIONS = 11
TAKE_ALL = "\n" * QUESTIONS
YES = "\n"


def answered(desk: Desk, *answers: str) -> Said:
    """`new` with these lines typed."""
    return desk.run("new", "--plain", typed="".join(f"{one}\n" for one in answers))


def drafts() -> tuple[Draft, ...]:
    return Drafts(data_folder()).all()[0]


def test_taking_every_usual_answer_begins_a_quilt(desk: Desk) -> None:
    said = desk.ok("new", "--plain", typed=TAKE_ALL + YES)
    assert said.lines[0] == "Begun: Stacked four-patch"
    assert f"Kept in: {record_path()}" in said.lines
    assert "The same as a quilt file: sewalong quilt-file" in said.lines
    assert said.lines[-1] == "Open it with: sewalong"
    assert "Target: 9 × 9" in desk.ok("status").lines
    # Its draft is gone with the beginning.
    assert drafts() == ()


def test_every_question_is_asked_with_its_usual_answer(desk: Desk) -> None:
    said = desk.ok("new", "--plain", typed=TAKE_ALL + YES)
    for question in (
        "1 of 11. By which method? [Stacked four-patch]",
        "2 of 11. The size the squares are cut at? [5 in]",
        "3 of 11. How many squares are there? [4 packs of 42] (168 in all)",
        "7 of 11. How many rows and columns? [9 × 9] (3 spare)",
        "10 of 11. Which fabrics are there (none need be said)? [none yet]",
        "11 of 11. What is the quilt called? [Stacked four-patch]",
        "Begin it?",
    ):
        assert question in said.err


def test_an_answer_changes_what_is_said_and_the_next_usual_answers(desk: Desk) -> None:
    said = answered(desk, "", "", "120", *[""] * 8, "")
    assert "120 squares make 60 units." in said.err
    assert "[8 × 7] (4 spare)" in said.err
    # What is as it was is not said again.
    assert said.err.count("A unit finishes at") == 2


def test_back_goes_back_and_on_again(desk: Desk) -> None:
    said = answered(desk, "", "", "back", "6", "", *[""] * 8, "back", "Sunday squares", "")
    assert said.err.count("2 of 11.") == 2
    assert said.err.count("11 of 11.") == 2
    assert said.lines[0] == "Begun: Sunday squares"
    assert desk.ok("quilt-file").out.count('size = "6 in"') == 1


def test_a_fault_is_said_at_once_and_asked_again(desk: Desk) -> None:
    said = answered(desk, "", "large", "5", *[""] * 9, "")
    assert "No number was found in 'large'." in said.err
    assert said.status == 0


def test_what_there_is_to_choose_is_listed_and_taken_by_its_number(desk: Desk) -> None:
    said = answered(desk, "?", "3", *[""] * 10, "")
    for id in method_ids():
        assert read_method_name(id) in said.err
    assert "  3. Four-patch: Four squares joined two and two: one unit." in said.err
    assert said.lines[0] == "Begun: Four-patch"


def read_method_name(id: str) -> str:
    from sewalong.piecing.catalogue import written_method

    return written_method(id).name


def test_a_bare_number_at_the_trim_is_a_length(desk: Desk) -> None:
    said = answered(desk, "", "", "", "", "?", "2", *[""] * 6, "")
    assert "  - not trimmed" in said.err
    assert "Units are trimmed to 2 in." in said.err


def test_a_method_with_several_piles_asks_for_each(desk: Desk) -> None:
    said = answered(desk, "Rail fence from strips", *[""] * 12, "")
    assert "How many medium strips are there? [20] (of 2 1/2 in)" in said.err
    assert said.lines[0] == "Begun: Rail fence from strips"


def test_left_in_the_middle_it_is_kept_and_gone_on_with(desk: Desk) -> None:
    said = answered(desk, "", "6")
    assert said.status == 2
    assert "Nothing was begun. Your answers are kept as a draft." in said.err
    (draft,) = drafts()
    assert draft.answers.said == {"size": "6"}
    assert "A draft, not begun: a new quilt, today." in desk.ok("list").out
    assert desk.ok("list", "--json").data["drafts"][0]["name"] == "a new quilt"
    said = answered(desk, "yes", *[""] * QUESTIONS, "")
    assert "There is a draft: a new quilt. Go on with it?" in said.err
    assert "[6 in]" in said.err
    assert said.status == 0
    assert drafts() == ()


def test_a_draft_can_be_left_alone_or_thrown_away(desk: Desk) -> None:
    answered(desk, "", "6")
    answered(desk, "perhaps", "no", "", "7")
    assert sorted(one.answers.said["size"] for one in drafts()) == ["6", "7"]
    answered(desk, "throw away", "throw away", "")
    assert drafts() == ()


def test_left_before_anything_is_answered_nothing_is_kept(desk: Desk) -> None:
    said = answered(desk)
    assert "Nothing was begun, and nothing was answered" in said.err
    assert drafts() == ()


def test_ctrl_c_keeps_the_draft(desk: Desk, monkeypatch: pytest.MonkeyPatch) -> None:
    lines = iter(["\n", "6\n"])

    def readline() -> str:
        try:
            return next(lines)
        except StopIteration:
            raise KeyboardInterrupt from None

    monkeypatch.setattr("sys.stdin", SimpleNamespace(readline=readline))
    said = desk.run("new", "--plain")
    assert said.status == 2
    assert "kept as a draft" in said.err
    assert len(drafts()) == 1


def test_at_the_end_it_can_be_written_as_a_file_or_left(desk: Desk) -> None:
    file = desk.folder / "sunday.toml"
    said = answered(desk, *[""] * 10, "Sunday", "file", str(file), "later")
    assert said.status == 0
    assert f"Written: {file}" in said.err
    assert read_quilt(file.read_text()).name == "Sunday"
    assert "kept as a draft" in said.out
    assert desk.ok("list").lines[0].startswith("There is no quilt yet.")
    assert "No faults: Sunday" in desk.ok("check", str(file)).out


def test_where_there_is_no_terminal_it_asks_in_plain_lines(
    desk: Desk, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("sys.stdin", io.StringIO(TAKE_ALL + YES))
    assert desk.ok("new").lines[0] == "Begun: Stacked four-patch"
    monkeypatch.setattr("sys.stdin", io.StringIO(TAKE_ALL + YES))
    data = desk.ok("new", "--json").data
    assert (data["quilt"], data["number"]) == ("Stacked four-patch 2", 2)
    monkeypatch.setenv("TERM", "dumb")
    assert desk.ok("new", typed=TAKE_ALL + YES).lines[0] == "Begun: Stacked four-patch 3"


def test_in_a_terminal_the_form_opens(desk: Desk, monkeypatch: pytest.MonkeyPatch) -> None:
    opened: list[tuple[str, bool]] = []

    def run_app(path: str, quilt: str | None, demo: bool, asked: object, *, new: bool) -> int:
        opened.append((path, new))
        return 0

    module = ModuleType("sewalong.screens.app")
    module.run_app = run_app  # type: ignore[attr-defined]
    monkeypatch.setitem(sys.modules, "sewalong.screens.app", module)
    monkeypatch.setenv("TERM", "xterm")
    desk.ok("new", typed="")
    assert opened == [(record_path(), True)]


# -- a file to edit ----------------------------------------------------------


def test_a_commented_file_is_written_checked_and_begun(desk: Desk) -> None:
    file = desk.folder / "mine.toml"
    said = desk.ok("new", "--file", str(file))
    assert said.lines[0] == f"Written: {file}"
    assert desk.ok("check", str(file)).lines[0] == "No faults: Stacked four-patch"
    assert desk.ok("start", str(file)).lines[0] == "Begun: Stacked four-patch"
    assert desk.ok("new", "--file", "-").out == file.read_text()


def test_no_file_is_written_over(desk: Desk) -> None:
    file = desk.folder / "mine.toml"
    file.write_text("hers")
    assert "is there already" in desk.refused("new", "--file", str(file)).err
    assert file.read_text() == "hers"
    assert "not both" in desk.refused("new", "--plain", "--file", "other.toml").err
    inside = f"{data_folder()}/mine.toml"
    desk.ok("new", "--plain", typed=TAKE_ALL + YES)
    assert "folder of your record" in desk.refused("new", "--file", inside).err


def test_it_begins_what_start_of_the_written_file_begins(desk: Desk) -> None:
    file = desk.folder / "same.toml"
    begun = answered(
        desk, "Hourglass", "4 1/2", "90", "", "", "on point", "", "3", "bind", "", "One", ""
    )
    assert begun.status == 0
    one = desk.ok("quilt-file").out
    answered(
        desk, "Hourglass", "4 1/2", "90", "", "", "on point", "", "3", "bind", "", "Two", "file", str(file)
    )  # fmt: skip
    desk.ok("start", str(file))
    assert desk.ok("quilt-file").out == one.replace('"One"', '"Two"')

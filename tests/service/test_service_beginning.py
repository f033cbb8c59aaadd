"""Beginning a quilt by questions: what begins is what a quilt file of the same would begin."""

from __future__ import annotations

from datetime import UTC, datetime
from pathlib import Path

import pytest

from sewalong.lengths import Unit
from sewalong.piecing.catalogue import method_ids
from sewalong.piecing.method_files import text_of
from sewalong.quilt.file.reader import read_quilt
from sewalong.service.beginning import Beginning, how_long, load_method
from sewalong.store.drafts import Draft, Drafts
from sewalong.store.faults import StoreFault
from sewalong.store.library import Library

EVENING = datetime(2026, 11, 2, 20, 15, tzinfo=UTC)


def clock() -> datetime:
    return EVENING


def a_beginning(home: Path, draft: Draft | None = None, **more: object) -> Beginning:
    return Beginning(Drafts(str(home)), clock, draft=draft, **more)  # type: ignore[arg-type]


def drafts(home: Path) -> tuple[Draft, ...]:
    return Drafts(str(home)).all()[0]


@pytest.mark.parametrize("id", method_ids())
def test_what_begins_is_what_its_quilt_file_would_begin(tmp_path: Path, id: str) -> None:
    beginning = a_beginning(tmp_path)
    assert beginning.answer("method", id) == ""
    assert beginning.answer("setting", "sashes 1 1/2, frame") == ""
    assert beginning.answer("name", "Sunday squares") == ""
    beginning.write_file(str(tmp_path / "sunday.toml"))
    library = Library(tmp_path / "quilts.db", EVENING)
    try:
        entry = beginning.begin(library)
        begun = library.load(entry).quilt
    finally:
        library.close()
    assert begun == read_quilt((tmp_path / "sunday.toml").read_text())
    assert entry.name == "Sunday squares"


def test_from_the_first_answer_on_it_is_a_draft(tmp_path: Path) -> None:
    beginning = a_beginning(tmp_path)
    assert drafts(tmp_path) == ()
    beginning.answer("size", "6")
    (draft,) = drafts(tmp_path)
    assert draft.answers.said == {"size": "6"}
    on = a_beginning(tmp_path, draft)
    assert on.filled == beginning.filled
    on.answer("count", "80")
    (draft,) = drafts(tmp_path)
    assert draft.answers.said == {"size": "6", "count": "80"}


def test_an_empty_answer_is_as_usual_again(tmp_path: Path) -> None:
    beginning = a_beginning(tmp_path)
    as_usual = beginning.filled
    beginning.answer("size", "6")
    beginning.answer("size", " ")
    assert beginning.filled == as_usual


def test_what_will_not_do_is_not_taken(tmp_path: Path) -> None:
    beginning = a_beginning(tmp_path)
    before = beginning.filled
    assert "number" in beginning.answer("size", "large")
    assert beginning.filled == before
    assert drafts(tmp_path) == ()


def test_an_answer_that_breaks_another_is_taken_and_that_one_told(tmp_path: Path) -> None:
    """A border of 1 in goes with seams of 1/4 in and not with those of 1/2 in."""
    beginning = a_beginning(tmp_path)
    assert beginning.answer("borders", "1") == ""
    assert beginning.answer("seam", "1/2") == ""
    assert [row.question.id for row in beginning.filled.faults] == ["borders"]
    with pytest.raises(ValueError, match="borders"):
        beginning.quilt()


def test_the_draft_goes_only_once_the_quilt_is_on_disk(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    beginning = a_beginning(tmp_path)
    beginning.answer("name", "Harbour lights")
    library = Library(tmp_path / "quilts.db", EVENING)
    try:
        with monkeypatch.context() as broken:
            broken.setattr(library, "add", _no_room)
            with pytest.raises(StoreFault, match="No room"):
                beginning.begin(library)
        assert len(drafts(tmp_path)) == 1
        beginning.begin(library)
        assert drafts(tmp_path) == ()
        assert [entry.name for entry in library.entries()] == ["Harbour lights"]
    finally:
        library.close()


def _no_room(*_: object) -> None:
    raise StoreFault("No room on the disk.")


def test_where_no_draft_can_be_kept_the_answers_hold_all_the_same(tmp_path: Path) -> None:
    (tmp_path / "drafts").write_text("a file where the folder should be")
    beginning = a_beginning(tmp_path)
    assert beginning.answer("count", "80") == ""
    assert beginning.fault.startswith("Not kept as a draft: ")
    assert beginning.filled.units == 40


def test_names_of_quilts_there_are_are_not_offered(tmp_path: Path) -> None:
    beginning = a_beginning(tmp_path, names=("stacked FOUR-patch",))
    assert beginning.filled.row("name").text == "Stacked four-patch 2"
    assert "already" in beginning.answer("name", "Stacked four-patch")


def test_she_works_in_the_unit_she_prefers(tmp_path: Path) -> None:
    assert a_beginning(tmp_path, unit=Unit.CM).quilt().unit is Unit.CM


def test_without_a_preference_she_works_in_the_unit_of_the_size_she_types(tmp_path: Path) -> None:
    beginning = a_beginning(tmp_path)
    beginning.answer("borders", "3")
    beginning.answer("size", "12 cm")
    quilt = beginning.quilt()
    assert quilt.unit is Unit.CM
    assert beginning.filled.row("size").text == "12 cm"
    # What was said in inches is as wide as it was.
    assert beginning.filled.row("borders").text == "7.62 cm"
    assert beginning.filled.row("seam").text == "0.635 cm"
    beginning.answer("size", '5"')
    assert beginning.filled.row("borders").text == "3 in"
    preferring = a_beginning(tmp_path, unit=Unit.INCH)
    preferring.answer("size", "12.7 cm")
    assert preferring.filled.row("size").text == "5 in"


def test_a_method_file_is_found_from_anywhere(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    own = (text_of("paired-squares") or "").replace('"paired-squares"', '"my-own"', 1)
    (tmp_path / "my-own.toml").write_text(own)
    monkeypatch.chdir(tmp_path)
    beginning = a_beginning(tmp_path)
    assert beginning.answer("method", "my-own.toml") == ""
    monkeypatch.chdir("/")
    (draft,) = drafts(tmp_path)
    on = a_beginning(tmp_path, draft)
    assert on.quilt().method_text == own
    assert read_quilt(on.file(), load_method) == on.quilt()
    (tmp_path / "my-own.toml").unlink()
    assert "There is no file" in a_beginning(tmp_path, draft).filled.row("method").fault


def test_a_quilt_file_is_never_written_over_anything(tmp_path: Path) -> None:
    there = tmp_path / "there.toml"
    there.write_text("hers")
    with pytest.raises(StoreFault, match="already"):
        a_beginning(tmp_path).write_file(str(there))
    assert there.read_text() == "hers"


def test_what_stands_beside_is_what_the_numbers_say(tmp_path: Path) -> None:
    """168 squares of 5 in: 21 stacks of eight give 84 units that finish at 5 7/8 in; 9 of them and
    borders of 2 in and 4 1/2 in finished each side are 52 7/8 + 13 in."""
    short, lines = a_beginning(tmp_path).beside()
    assert short.unit == "5 7/8 in"
    assert short.top == "65 3/4 in square"
    assert lines[:3] == (
        "168 squares make 84 units.",
        "9 × 9 takes 81: 3 spare.",
        "A unit finishes at 5 7/8 in, the top at 65 3/4 in square.",
    )
    assert any(line.startswith("Border cloth: ") for line in lines)


def test_hours_are_a_range_and_more_for_more() -> None:
    from sewalong.quilt.beginning.answers import Answers
    from sewalong.quilt.beginning.filled_in import fill_in

    few, many = (fill_in(Answers(said={"count": n})).quilt for n in ("32", "800"))
    assert few is not None
    assert many is not None
    assert how_long(few).endswith("hours, a guess until you have sewn.")
    assert _least(how_long(few)) < _least(how_long(many))


def _least(words: str) -> float:
    return float(words.split()[0])

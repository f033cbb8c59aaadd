"""A quilt can be called otherwise: the list, finding it, files out and in, and no name twice."""

from __future__ import annotations

from contextlib import closing
from pathlib import Path

import pytest
from msgspec.structs import replace

from sewalong.progress.record.events.replanning import planned
from sewalong.service.open_quilt import OpenQuilt
from sewalong.store.archive import from_text, take_in, to_text
from sewalong.store.examination import examine
from sewalong.store.faults import StoreFault
from sewalong.store.library import Library
from tests.progress import every_act as c
from tests.store.shelf import EVENING, a_quilt, begin, opened, shelf, ticking


@pytest.fixture
def path(tmp_path: Path) -> Path:
    path = tmp_path / "quilts.db"
    begin(path)
    with shelf(path) as library:
        library.add(a_quilt("Orchard"), EVENING)
    return path


def call(quilt: OpenQuilt, name: str) -> None:
    was = planned(quilt.state)
    quilt.do(c.ChangePlan(was, replace(was, name=name)))


def names(path: Path) -> list[str]:
    with shelf(path) as library:
        return sorted(entry.name for entry in library.entries())


def test_it_is_listed_and_found_by_its_new_name_alone(path: Path) -> None:
    with opened(path) as quilt:
        call(quilt, "Harbour lights")
        assert quilt.entry.name == "Harbour lights"
    assert names(path) == ["Harbour lights", "Orchard"]
    with opened(path, "harbour") as quilt:
        assert quilt.state.quilt.name == "Harbour lights"
    with shelf(path) as library, pytest.raises(StoreFault):
        library.find("Hedgerow")


def test_undo_gives_the_old_name_back(path: Path) -> None:
    with opened(path) as quilt:
        call(quilt, "Harbour lights")
        quilt.do(c.Undo())
    assert names(path) == ["Hedgerow", "Orchard"]


def test_no_name_is_taken_twice_and_then_nothing_is_recorded(path: Path) -> None:
    with opened(path) as quilt:
        with pytest.raises(StoreFault, match="a quilt called “orchard” already"):
            call(quilt, "orchard")
        assert not quilt.record
        call(quilt, "Harbour lights")
    with shelf(path) as library:
        with pytest.raises(StoreFault, match="harbour LIGHTS"):
            library.add(a_quilt("harbour LIGHTS"), EVENING)
        library.add(a_quilt("Hedgerow"), EVENING)
    with opened(path, "Harbour") as quilt, pytest.raises(StoreFault, match="Hedgerow"):
        quilt.do(c.Undo())
    assert names(path) == ["Harbour lights", "Hedgerow", "Orchard"]


def test_another_window_sees_the_name(path: Path) -> None:
    library = Library(path, EVENING)
    with closing(library):
        mine = OpenQuilt(library, library.find("Hedgerow"), ticking())
        with opened(path) as other:
            call(other, "Harbour lights")
        assert mine.refresh()
        assert mine.entry.name == "Harbour lights"
        mine.do(c.Count("pair"))
    assert names(path) == ["Harbour lights", "Orchard"]


def test_a_file_brings_the_name_along_or_gets_one_of_its_own(path: Path, tmp_path: Path) -> None:
    with opened(path) as quilt:
        call(quilt, "Harbour lights")
        quilt.do(c.Count("pair", 2))
    with shelf(path) as library:
        text = to_text(library.load(library.find("Harbour")))
    other = tmp_path / "other.db"
    with shelf(other) as library:
        take_in(library, from_text(text), EVENING)
        take_in(library, from_text(text), EVENING, name="Second of its kind")
    assert names(other) == ["Harbour lights", "Second of its kind"]
    for name in names(other):
        with opened(other, name) as quilt:
            assert quilt.state.quilt.name == name
            assert quilt.state.done["pair"] == 2


@pytest.mark.parametrize("undone", [False, True])
@pytest.mark.parametrize("name", ["Second of its kind", "Harbour lights", "Hedgerow"])
def test_under_another_name_the_record_still_could_have_happened(
    path: Path, tmp_path: Path, undone: bool, name: str
) -> None:
    with opened(path) as quilt:
        call(quilt, "Harbour lights")
        if undone:
            quilt.do(c.Undo())
        now = quilt.entry.name
    with shelf(path) as library:
        text = to_text(library.load(library.find(now)))
    other = tmp_path / "other.db"
    with shelf(other) as library:
        first = from_text(text)
        assert take_in(library, first, EVENING, name=name).name == name
        assert len(library.load(library.find(name)).record) == len(first.record)
        assert from_text(to_text(library.load(library.find(name)))).quilt
    assert [(one.name, one.wrong) for one in examine(str(other)).quilts] == [(name, "")]


def test_undo_goes_on_in_one_taken_in_under_another_name(path: Path) -> None:
    with opened(path) as quilt:
        quilt.do(c.Count("pair", 2))
        call(quilt, "Harbour lights")
        quilt.do(c.Undo())
    with shelf(path) as library:
        text = to_text(library.load(library.find("Hedgerow")))
        take_in(library, from_text(text), EVENING, name="Second of its kind")
    with opened(path, "Second") as quilt:
        quilt.do(c.Undo())
        assert quilt.state.done["pair"] == 0
        assert quilt.entry.name == "Second of its kind"


def test_an_examination_names_quilts_as_they_are_called_now(path: Path) -> None:
    with opened(path) as quilt:
        call(quilt, "Harbour lights")
    assert [one.name for one in examine(str(path)).quilts] == ["Harbour lights", "Orchard"]

"""Quilts on the shelf: names of every sort, finding, the order of the list."""

from __future__ import annotations

import unicodedata
from datetime import timedelta
from pathlib import Path
from typing import Any

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st
from msgspec.structs import replace

from sewalong.quilt.rules import a_name
from sewalong.service.open_quilt import OpenQuilt
from sewalong.store.faults import StoreFault
from sewalong.store.library import Library, Shelved
from tests.progress import every_act as c
from tests.store.shelf import EVENING, a_quilt, opened, shelf, ticking


@pytest.fixture
def path(tmp_path: Path) -> Path:
    return tmp_path / "quilts.db"


def add(library: Library, name: str) -> Shelved:
    return library.add(a_quilt(name), EVENING)


def is_a_name(text: str) -> bool:
    try:
        return bool(a_name(text))
    except ValueError:
        return False


ODD = (
    "'; DROP TABLE event; --",
    '"quoted"',
    "100 %",
    "a_b?*",
    "[red]bold[/]",
    "../../etc/passwd",
    "-1",
    "--json",
    "٣",
    "ẞ and ß",
    "e\u0301toile",
    "\U0001f9f5 thread",
    "\u200b",
    "null",
    "{name!r}",
)


@given(st.text(min_size=1, max_size=80).filter(is_a_name))
@settings(max_examples=30)
@example(ODD[0])
@example("ǰ\u0323")
def test_any_name_is_kept_and_found(tmp_path_factory: pytest.TempPathFactory, name: str) -> None:
    path = tmp_path_factory.mktemp("names") / "quilts.db"
    with shelf(path) as library:
        entry = add(library, name)
        assert library.entries() == (entry,)
        assert library.find(name) == entry
        assert library.load(entry).quilt.name == name
        with pytest.raises(StoreFault, match="already"):
            add(library, name)


def test_odd_names_stand_beside_each_other(path: Path) -> None:
    with shelf(path) as library:
        entries = {name: add(library, name) for name in ODD}
        for name, entry in entries.items():
            assert library.find(name) == entry
    # In another window, too.
    for name in ODD:
        with opened(path, name) as quilt:
            quilt.do(c.Count("pair"))
    with shelf(path) as library:
        assert [len(library.load(e).record) for e in entries.values()] == [2] * len(ODD)


def test_letters_put_together_in_another_way_are_the_same_name(path: Path) -> None:
    """One keyboard writes é as one character, another as e and an accent."""
    with shelf(path) as library:
        entry = add(library, unicodedata.normalize("NFC", "Étoile"))
        assert library.find(unicodedata.normalize("NFD", "étoile")) == entry
        with pytest.raises(StoreFault, match="already"):
            add(library, unicodedata.normalize("NFD", "Étoile"))


def test_a_quilt_is_found_by_number_and_by_how_its_name_begins(path: Path) -> None:
    with shelf(path) as library:
        hedgerow, harbour = add(library, "Hedgerow"), add(library, "Harbour")
        third = add(library, "1")
        assert library.find(" HEDGEROW ") == hedgerow
        assert library.find("har") == harbour
        assert library.find("2") == harbour
        # A name goes before a number, and a whole name before a beginning.
        assert library.find("1") == third
        assert library.find("Hedge") == hedgerow
        add(library, "Hedge")
        assert library.find("Hedge").name == "Hedge"


def test_what_is_not_found_is_said_with_what_there_is(path: Path) -> None:
    with shelf(path) as library:
        with pytest.raises(StoreFault, match=r"no quilt yet\. Begin one with"):
            library.find("Hedgerow")
        add(library, "Hedgerow")
        add(library, "Harbour")
        with pytest.raises(StoreFault, match=r"There is no quilt “Meadow”\. There are: “"):
            library.find("Meadow")
        with pytest.raises(StoreFault, match="“h” fits several quilts"):
            library.find("h")
        for nothing in ("", "  "):
            with pytest.raises(StoreFault, match="There is no quilt"):
                library.find(nothing)


def test_the_list_begins_with_the_last_touched(path: Path) -> None:
    with shelf(path) as library:
        first, second = add(library, "Hedgerow"), add(library, "Harbour")
        clock = ticking(EVENING + timedelta(days=1))
        OpenQuilt(library, first, clock).do(c.Count("pair"))
        assert [entry.name for entry in library.entries()] == ["Hedgerow", "Harbour"]
        OpenQuilt(library, second, clock).do(c.Count("pair"))
        assert [entry.name for entry in library.entries()] == ["Harbour", "Hedgerow"]


def test_the_last_touched_is_told_by_the_moment_not_by_the_digits(path: Path) -> None:
    with shelf(path) as library:
        early = EVENING.replace(hour=23)  # 22:00 UTC
        late = (EVENING + timedelta(hours=4)).astimezone(tz=None).replace()  # 22:00 UTC as well
        library.add(a_quilt("Hedgerow"), early - timedelta(minutes=1))
        library.add(a_quilt("Harbour"), late)
        assert library.entries()[0].name == "Harbour"


def test_a_quilt_that_is_not_there_is_not_written_to(path: Path) -> None:
    with shelf(path) as library:
        gone = replace(add(library, "Hedgerow"), id=99)
        with pytest.raises(StoreFault, match="no longer in the record"):
            library.load(gone)
        with pytest.raises(StoreFault, match="no longer in the record"):
            library.append(gone, 0, [])


def test_a_refused_command_writes_nothing(path: Path) -> None:
    with shelf(path) as library:
        quilt = OpenQuilt(library, add(library, "Hedgerow"), ticking())
        for command in (c.Count("sew-around"), c.Undo(), c.Count("dye"), c.CloseSession()):
            with pytest.raises(c.Refused):
                quilt.do(command)
        assert not quilt.record
        assert library.load(quilt.entry).record == ()


def test_a_stop_just_after_a_write_is_made_good_at_the_next(
    path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Ctrl+C between the disk and the screen: the count stands, and is not counted again."""

    write = Library.append

    def written_then_stopped(*args: Any, called: str | None) -> None:
        write(*args, called=called)
        raise KeyboardInterrupt

    with shelf(path) as library:
        quilt = OpenQuilt(library, add(library, "Hedgerow"), ticking())
        with monkeypatch.context() as patch:
            patch.setattr(Library, "append", written_then_stopped)
            with pytest.raises(KeyboardInterrupt):
                quilt.do(c.Count("pair", 3))
        assert quilt.state.done["pair"] == 0
        quilt.do(c.Count("pair", 2))
        assert quilt.state.done["pair"] == 5
        assert tuple(quilt.record) == library.load(quilt.entry).record


def test_what_opens_a_session_and_is_then_refused_opens_none(path: Path) -> None:
    """Opening the session and the count in it are one: both or neither."""
    with shelf(path) as library:
        quilt = OpenQuilt(library, add(library, "Hedgerow"), ticking())
        with pytest.raises(c.Refused):
            quilt.do(c.Count("pair", 9999))
        assert quilt.state.session is None
        assert library.load(quilt.entry).record == ()

"""When the power is cut, all that was said to be counted is on the disk, or a loss is said.

How it was recorded: by `strace`, at each run of these tests, from a process that sews as the
program does (`recording.py`). What a disk may make of it: `power_cut.py`. The cut comes after any
of the recorded calls. `long`: after every one, each time
another throw of the dice; else after some of them.
"""

from __future__ import annotations

import shutil
from collections.abc import Callable, Iterator
from datetime import timedelta
from pathlib import Path
from random import Random

import pytest

from sewalong.service.open_quilt import OpenQuilt
from sewalong.store.backups import backups_of
from sewalong.store.faults import WAY_OUT, StoreFault
from sewalong.store.restoring import put_back
from sewalong.store.soundness import faults_of_file
from tests.faults.power_cut import CUTS, Disk, leave
from tests.faults.recording import recorded
from tests.progress import every_act as c
from tests.store.shelf import EVENING, begin, opened, shelf, ticking, worker
from tests.store.test_store_killed import HALF_WAY

RECORDS = Path(__file__).parents[1] / "records"
SHORT, LONG = 25, 10_000
"""Moments of each story at which the power is cut, at most."""

BEGINNING = """
import sys
from datetime import timedelta
from pathlib import Path
from sewalong.progress.acts.counting import Count
from sewalong.progress.acts.notes import WriteNote
from sewalong.progress.acts.undoing import Undo
from sewalong.service.open_quilt import OpenQuilt
from sewalong.store.library import Library
from sewalong.store.restoring import put_back
from sewalong.store.writing import write_whole
from tests.store.shelf import EVENING, a_quilt, ticking

path = Path(sys.argv[1])

def said(what):
    print(what, flush=True)

def sew(quilt, times):
    for n in range(times):
        quilt.do(Count("pair", n + 1))
        said(quilt.state.seq)
        if n % 3 == 2:
            quilt.do(WriteNote("y" * 2000))
            said(quilt.state.seq)
            quilt.do(Undo())
            said(quilt.state.seq)
"""

A_FIRST_START = """
library = Library(path, EVENING)
library.add(a_quilt(), EVENING)
said(0)
sew(OpenQuilt(library, library.find("Hedgerow"), ticking()), 4)
library.close()
"""

THE_NEXT_EVENING = """
now = EVENING + timedelta(days=1)
library = Library(path, now)
sew(OpenQuilt(library, library.find("Hedgerow"), ticking(now)), 7)
library.close()
"""

A_NEWER_VERSION = """
library = Library(path, EVENING)
quilt = OpenQuilt(library, library.entries()[0], ticking())
said(quilt.state.seq)
quilt.do(WriteNote("brought up to date"))
said(quilt.state.seq)
library.close()
"""

A_RESTORE = """
put_back(str(path), sys.argv[2], EVENING)
said("restored")
"""

A_FILE_OVER_ANOTHER = """
write_whole(path, "new " * 3000)
said("written")
"""


class Story:
    """What a process did in a home, recorded; copies of what `was` there and is in the `end`."""

    def __init__(self, folder: Path, script: str, before: Callable[[Path], object]) -> None:
        self.folder, self.disk = folder, folder / "disk"
        self.was, self.end = folder / "was", folder / "end"
        self.disk.mkdir()
        before(self.disk)
        shutil.copytree(self.disk, self.was)
        record = self.disk / "home" / "quilts.db"
        backups = [backup.path for backup in backups_of(str(record))]
        self.calls = recorded(BEGINNING + script, record, *backups, folder=folder)
        shutil.copytree(self.disk, self.end)

    def cuts(self, most: int, seed: int) -> Iterator[tuple[Path, list[str], str]]:
        """What is left of the home after each cut, what had been said, and which cut it was.

        With no cut there must be what the process left: so nothing it did was overlooked.
        """
        chance = Random(seed)
        disk = Disk(self.disk, self.was)
        matter = [place for place, call in enumerate(self.calls) if disk.do(call)]
        leave(disk.top, self.folder / "whole", CUTS[1], chance)
        assert files(self.folder / "whole") == files(self.end)
        chosen = set(chance.sample(matter, min(most, len(matter))))
        disk = Disk(self.disk, self.was)
        for place, call in enumerate(self.calls):
            disk.do(call)
            if place not in chosen:
                continue
            said = b"".join(disk.said).decode().split()
            for cut in (*CUTS, *CUTS[2:]):
                left = self.folder / "left"
                leave(disk.top, left, cut, chance)
                yield left / "home", said, f"{cut.__name__} after call {place}, {call.name}"
                shutil.rmtree(left)


def files(folder: Path) -> dict[str, bytes]:
    return {str(p.relative_to(folder)): p.read_bytes() for p in folder.rglob("*") if p.is_file()}


def read(home: Path) -> list[str] | StoreFault:
    """The events of the one quilt that lies there, or why it is refused; [] where there is none."""
    try:
        with shelf(home / "quilts.db") as library:
            entries = library.entries()
            if not entries:
                return []
            quilt = OpenQuilt(library, entries[0], ticking())
            assert not quilt.damage, quilt.damage
            return [repr(event) for event in quilt.record]
    except StoreFault as fault:
        return fault


def assert_backups_are_sound(home: Path) -> None:
    for backup in backups_of(str(home / "quilts.db")):
        assert faults_of_file(backup.path) == ()


def a_home_with_an_evening(disk: Path) -> None:
    path = disk / "home" / "quilts.db"
    begin(path)
    with opened(path) as quilt:
        for n in range(5):
            quilt.do(c.Count("pair", n + 1))
            quilt.do(c.WriteNote("x" * 1500))


def a_home_of_version_1(disk: Path) -> None:
    (disk / "home").mkdir()
    shutil.copyfile(RECORDS / "written_by_version_1.db", disk / "home" / "quilts.db")


SEWING = {
    "a first start": (A_FIRST_START, lambda disk: None),
    "the next evening": (THE_NEXT_EVENING, a_home_with_an_evening),
    "a newer version": (A_NEWER_VERSION, a_home_of_version_1),
}


def sew_and_cut(folder: Path, story: str, most: int, seed: int = 0, before_it: str = "") -> int:
    """How many cuts there were; fails at the first that loses what was said to be counted."""
    script, before = SEWING[story]
    told = Story(folder, before_it + script, before)
    truth = read(told.end / "home")
    assert isinstance(truth, list)
    cuts = 0
    for home, said, cut in told.cuts(most, seed):
        cuts += 1
        assert_backups_are_sound(home)
        there = read(home)
        if isinstance(there, StoreFault):
            # Only a file that was there and had yet to be written to may be nothing now.
            assert not said, f"{cut}: {there}"
            assert WAY_OUT in str(there) or "sewalong restore" in str(there), cut
        else:
            assert len(there) >= int(said[-1] if said else 0), f"lost by {cut}"
            assert there == truth[: len(there)], cut
    return cuts


@pytest.mark.parametrize("story", SEWING)
def test_what_was_said_to_be_counted_is_there(tmp_path: Path, story: str) -> None:
    assert sew_and_cut(tmp_path, story, SHORT) == SHORT * 6


@pytest.mark.long
@pytest.mark.parametrize("seed", range(1, 6))
@pytest.mark.parametrize("story", SEWING)
def test_wherever_the_power_is_cut(tmp_path: Path, story: str, seed: int) -> None:
    assert sew_and_cut(tmp_path, story, LONG, seed) > 1000


@pytest.mark.parametrize("way", [pytest.param("OFF", marks=pytest.mark.long), "NORMAL"])
def test_a_record_that_were_synced_less_would_lose_counts(tmp_path: Path, way: str) -> None:
    """Else the tests above would find nothing whatever the program did."""
    less = f"""
from sewalong.store import database
database._PRAGMAS = ("synchronous = {way}",)
"""
    with pytest.raises(AssertionError, match=r"lost by|is damaged"):
        sew_and_cut(tmp_path, "the next evening", LONG, before_it=less)


def cut_short(disk: Path) -> None:
    a_home_with_two_evenings(disk)
    path = disk / "home" / "quilts.db"
    path.write_bytes(path.read_bytes()[:-4096])


def removed_beside_its_journal(disk: Path) -> None:
    """Killed in the middle of a write; then the file was taken away."""
    a_home_with_two_evenings(disk)
    path = disk / "home" / "quilts.db"
    with worker(HALF_WAY, path) as window:
        _, error = window.communicate()
    assert Path(f"{path}-journal").stat().st_size, error
    path.unlink()


def a_home_with_two_evenings(disk: Path) -> None:
    a_home_with_an_evening(disk)
    with opened(disk / "home" / "quilts.db", clock=ticking(EVENING + timedelta(days=1))) as quilt:
        quilt.do(c.Count("pair"))


@pytest.mark.parametrize(
    "before", [cut_short, pytest.param(removed_beside_its_journal, marks=pytest.mark.long)]
)
def test_cut_while_a_backup_is_put_back(tmp_path: Path, before: Callable[[Path], object]) -> None:
    """The backup lies there or what lay there before, and that is kept in one place at least."""
    told = Story(tmp_path, A_RESTORE, before)
    lay = files(told.was / "home")
    restored = read(told.end / "home")
    assert isinstance(restored, list)
    assert len(restored) == 11
    for home, said, cut in told.cuts(LONG, 0):
        kept = list(files(home).values())
        assert all(content in kept for content in lay.values() if content), cut
        assert_backups_are_sound(home)
        there = read(home)
        if isinstance(there, StoreFault):
            assert not said, cut
            assert "sewalong restore" in str(there), cut
            put_back(str(home / "quilts.db"), backups_of(str(home / "quilts.db"))[0].path, EVENING)
            there = read(home)
        assert there == restored, cut


def test_cut_while_a_file_takes_the_place_of_another(tmp_path: Path) -> None:
    def the_other(disk: Path) -> None:
        (disk / "home").mkdir()
        (disk / "home" / "quilts.db").write_text("old " * 4000)

    told = Story(tmp_path, A_FILE_OVER_ANOTHER, the_other)
    found = set()
    for home, said, cut in told.cuts(LONG, 0):
        text = (home / "quilts.db").read_text()
        assert text == "new " * 3000 or (not said and text == "old " * 4000), cut
        found.add(text[:3])
    assert found == {"new", "old"}

"""Backups: one a day before its first write, read back when made, few enough, in nobody's way."""

from __future__ import annotations

import os
import shutil
import sqlite3
from contextlib import closing
from datetime import date, datetime, timedelta
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sewalong.progress.record.fold import fold
from sewalong.store import backups as b
from sewalong.store.faults import Damaged, StoreFault
from sewalong.store.soundness import Fault, faults_of_file
from tests.progress import every_act as c
from tests.store.shelf import EVENING, a_quilt, begin, opened, shelf, ticking


@pytest.fixture
def path(tmp_path: Path) -> Path:
    path = tmp_path / "home" / "quilts.db"
    begin(path)
    return path


def made(path: Path) -> list[str]:
    folder = path.parent / "backups"
    return sorted(file.name for file in folder.iterdir()) if folder.exists() else []


def on(day: int) -> datetime:
    return EVENING + timedelta(days=day)


def count_on(path: Path, *days: int) -> None:
    for day in days:
        with opened(path, clock=ticking(on(day))) as quilt:
            quilt.do(c.Count("pair"))


def test_one_a_day_of_use_before_its_first_write(path: Path) -> None:
    assert made(path) == [], "there was nothing to back up before the first quilt"
    count_on(path, 0, 0, 1, 1, 4)
    assert made(path) == ["quilts-2023-11-04.db", "quilts-2023-11-05.db", "quilts-2023-11-08.db"]
    for name, events in zip(made(path), (0, 3, 7), strict=True):
        with opened(path.parent / "backups" / name) as quilt:
            assert len(quilt.record) == events, name


def test_a_window_left_open_over_midnight_makes_the_backup_of_the_next_day(path: Path) -> None:
    with opened(path, clock=ticking(EVENING, timedelta(hours=7))) as quilt:
        for _ in range(4):
            quilt.do(c.WriteNote("late"))
    assert made(path) == ["quilts-2023-11-04.db", "quilts-2023-11-05.db"]


def test_looking_makes_none(path: Path) -> None:
    with opened(path), shelf(path) as library:
        library.keep_summary(library.entries()[0], 0, "{}")
    assert made(path) == []


def test_a_quilt_begun_on_another_day_is_a_first_write_too(path: Path) -> None:
    with shelf(path) as library:
        library.add(a_quilt("Second"), on(1))
    assert made(path) == ["quilts-2023-11-05.db"]


def test_the_copy_is_read_back_and_what_is_not_sound_is_none(
    path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The disk takes the copy and gives something else back."""

    def spoilt(name: str) -> tuple[Fault, ...]:
        data = bytearray(Path(name).read_bytes())
        data[4096:8192] = b"\xa5" * 4096
        Path(name).write_bytes(data)
        return faults_of_file(name)

    monkeypatch.setattr("sewalong.store.backups.faults_of_file", spoilt)
    with opened(path) as quilt:
        with pytest.raises(Damaged, match="is damaged"):
            quilt.do(c.Count("pair"))
        assert not quilt.record
    assert made(path) == []


def test_a_record_damaged_inside_is_not_written_to(path: Path) -> None:
    """What the quick look at the start cannot see, the first write of a day does."""
    count_on(path, 0, 1)
    data = bytearray(path.read_bytes())
    with closing(sqlite3.connect(path)) as connection:
        sql = "SELECT rootpage FROM sqlite_master WHERE name = 'touched'"
        ((page,),) = connection.execute(sql).fetchall()
    data[(page - 1) * 4096 + 3 : (page - 1) * 4096 + 5] = b"\x00\x09"  # how many rows are on it
    path.write_bytes(data)
    with (
        opened(path, clock=ticking(on(2))) as quilt,
        pytest.raises(StoreFault, match="is damaged"),
    ):
        quilt.do(c.Count("pair"))
    assert path.read_bytes() == data
    assert len(made(path)) == 2


def test_damage_in_one_quilt_keeps_no_other_from_being_backed_up(
    path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """And no sound backup goes to make room for one with the damage in it."""
    monkeypatch.setattr(b, "DAYS", 1)
    begin(path, a_quilt("Second"))
    count_on(path, 0, 1)
    with closing(sqlite3.connect(path)) as connection:
        connection.execute("UPDATE plan_mark SET mark = 1 WHERE quilt = 1")
        connection.commit()
    with opened(path, "Second", ticking(on(2))) as quilt:
        quilt.do(c.Count("pair"))
    assert made(path) == [f"quilts-2023-11-0{day}.db" for day in (4, 5, 6)]


@pytest.mark.parametrize("way", ["a file in the way", "no room"])
def test_where_none_can_be_made_work_goes_on(
    path: Path, way: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    if way == "no room":
        usage = shutil.disk_usage(path.parent)
        room = 3 * path.stat().st_size
        monkeypatch.setattr(shutil, "disk_usage", lambda _: usage._replace(free=room))
    else:
        (path.parent / "backups").write_text("a shopping list")
    count_on(path, 0)
    assert not (path.parent / "backups").is_dir()
    with opened(path) as quilt:
        assert quilt.state.done["pair"] == 1


def test_another_window_that_reads_or_writes_meanwhile_loses_nothing(path: Path) -> None:
    with opened(path, clock=ticking(on(1))) as one, opened(path, clock=ticking(on(1))) as other:
        one.do(c.Count("pair"))
        other.do(c.Count("pair"))
        one.refresh()
        assert one.state.done["pair"] == 2
        assert one.state == fold(one.state.quilt, one.record)
    assert made(path) == ["quilts-2023-11-05.db"]


def test_the_demo_begun_afresh_is_no_loss(tmp_path: Path) -> None:
    from sewalong.service.demo_quilts import begin_afresh

    path = tmp_path / "demo" / "quilts.db"
    begin(path)
    count_on(path, 0)
    begin_afresh(str(path))
    assert [file.name for file in path.parent.rglob("*")] == ["backups"]
    begin(path)


# Which are kept

DAYS = st.sets(st.dates(date(2020, 1, 1), date(2024, 12, 31)), max_size=60)


@given(DAYS)
def test_the_last_fourteen_days_and_the_first_of_each_month_are_kept(days: set[date]) -> None:
    kept = days - b.days_to_drop(days)
    assert set(sorted(days)[-14:]) <= kept
    older = sorted(kept)[:-14]
    assert len(older) <= 12
    assert len({(day.year, day.month) for day in older}) == len(older)
    # Of the months before, the latest twelve are there.
    months = sorted({(day.year, day.month) for day in sorted(days)[:-14]})
    assert [(day.year, day.month) for day in older] == months[-12:]


def test_two_years_of_evenings_leave_twenty_six() -> None:
    days: set[date] = set()
    for n in range(730):
        days.add(date(2024, 1, 1) + timedelta(days=n))
        days -= b.days_to_drop(days)
    assert len(days) == 26
    # 2024 was a leap year: the 730th day is 30 December 2025.
    assert max(days) == date(2025, 12, 30)
    assert min(days) == date(2025, 1, 1)
    assert {day.day for day in sorted(days)[:-14]} == {1}


def test_only_those_of_days_are_thinned_out(path: Path) -> None:
    count_on(path, 0)
    b.back_up_record(str(path), on(0), None)
    b.back_up_record(str(path), on(0), None)
    asked_for = [name for name in made(path) if "T" in name]
    assert len(asked_for) == 2
    count_on(path, *range(1, 40))
    assert [name for name in made(path) if "T" in name] == asked_for
    # 4 November, 1 December of 2023 begin their months; the last fourteen end on 13 December.
    days = [name for name in made(path) if "T" not in name]
    assert days[0] == "quilts-2023-11-04.db"
    assert days[-1] == "quilts-2023-12-13.db"
    assert len(days) == 15


def test_they_are_listed_the_newest_first(path: Path) -> None:
    count_on(path, 0)
    for why in ("", "", "v3-", "before-restore-"):
        file = b.back_up_record(str(path), on(0), None, why=why)
    assert os.path.basename(file) == "quilts-before-restore-20231104T190000.db"
    count_on(path, 1)
    (path.parent / "backups" / "quilts-20231104.db").write_text("a day as we do not write it")
    (path.parent / "backups" / "quilts-notes.txt").write_text("none of ours")
    assert [(one.made, one.why) for one in b.backups_of(str(path))] == [
        ("2023-11-05", "before the first write of the day"),
        ("2023-11-04 19:00", "on request"),
        ("2023-11-04 19:00", "on request"),
        ("2023-11-04 19:00", "before a restore"),
        ("2023-11-04 19:00", "before a newer sewalong took over"),
        ("2023-11-04", "before the first write of the day"),
    ]


def test_a_backup_lies_where_it_is_asked_for_and_opens(path: Path, tmp_path: Path) -> None:
    count_on(path, 0)
    file = b.back_up_record(str(path), on(0), str(tmp_path / "usb"))
    assert os.path.dirname(file) == str(tmp_path / "usb")
    with opened(Path(file)) as quilt:
        assert quilt.state.done["pair"] == 1

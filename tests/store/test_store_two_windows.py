"""Two windows on one quilt: neither loses the other's events, and the stale one catches up."""

from __future__ import annotations

import json
import sqlite3
from collections import Counter
from collections.abc import Sequence
from contextlib import ExitStack, closing, suppress
from datetime import datetime, timedelta
from pathlib import Path
from typing import Any

import pytest

from sewalong.progress.record.events.every_kind import Event, Recorded
from sewalong.progress.record.fold import fold
from sewalong.service.open_quilt import OpenQuilt
from sewalong.store.database import Database
from sewalong.store.faults import StoreFault
from sewalong.store.library import Library, Loaded, Shelved
from tests.progress import every_act as c
from tests.store.shelf import EVENING, a_quilt, begin, counts, opened, ran, shelf, ticking, worker


@pytest.fixture
def path(tmp_path: Path) -> Path:
    path = tmp_path / "quilts.db"
    begin(path)
    return path


COUNTING = """
import sys
from datetime import timedelta
from pathlib import Path
from sewalong.progress.acts.counting import Count
from sewalong.progress.record.refused import Refused
from sewalong.store.faults import StoreFault
from sewalong.store.library import Library
from sewalong.service.open_quilt import OpenQuilt, local_now

path, wanted = Path(sys.argv[1]), int(sys.argv[2])
library = Library(path, local_now())
quilt = OpenQuilt(library, library.find("Hedgerow"))
print("ready", flush=True)
sys.stdin.readline()
done = failed = 0
while done < wanted and failed < 10 * wanted:
    try:
        new = quilt.do(Count("pair"))
    except (StoreFault, Refused):  # the other window was writing; a person would press again
        failed += 1
        continue
    done += 1
    print(*(r.seq for r in new), flush=True)
library.close()
"""


@pytest.mark.parametrize("each", [100, pytest.param(1000, marks=pytest.mark.long)])
def test_two_processes_count_at_once_and_nothing_is_lost(tmp_path: Path, each: int) -> None:
    path = tmp_path / "quilts.db"
    begin(path, a_quilt(pieces=4 * each))
    with worker(COUNTING, path, each) as one, worker(COUNTING, path, each) as other:
        for window in (one, other):
            assert window.stdout is not None
            assert window.stdout.readline() == "ready\n"
        for window in (one, other):
            assert window.stdin is not None
            window.stdin.write("go\n")
            window.stdin.flush()
        seqs = [int(seq) for window in (one, other) for seq in ran(window).split()]
    with opened(path) as quilt:
        assert counts(quilt.record) == 2 * each
        assert quilt.state.done["pair"] == 2 * each
        assert quilt.state.piles["square"] == 0
        assert [r.seq for r in quilt.record] == list(range(1, len(quilt.record) + 1))
        # What was acknowledged to the one was not acknowledged to the other.
        assert sorted(seqs) == [r.seq for r in quilt.record]
        assert Counter(r.event.kind for r in quilt.record)["session opened"] == 1


def test_many_processes_begin_one_record_at_once(tmp_path: Path) -> None:
    script = """
import sys
from pathlib import Path
from sewalong.store.database import Database
from sewalong.service.open_quilt import local_now
Database(Path(sys.argv[1]), local_now()).close()
print("open")
"""
    path = tmp_path / "new" / "quilts.db"
    with ExitStack() as stack:
        windows = [stack.enter_context(worker(script, path)) for _ in range(4)]
        assert [ran(window) for window in windows] == ["open\n"] * 4
    with shelf(path) as library:
        assert library.entries() == ()


def test_a_stale_window_takes_in_what_the_other_wrote(path: Path) -> None:
    with opened(path) as one, opened(path) as other:
        assert not one.refresh()
        other.do(c.Count("pair", 3))
        other.do(c.WriteNote("three laid"))
        assert one.state.done["pair"] == 0
        assert one.refresh()
        assert one.state == other.state
        assert one.record == other.record
        assert not one.refresh()


def test_a_count_in_a_stale_window_goes_on_top_of_the_others(path: Path) -> None:
    with opened(path) as one, opened(path) as other:
        other.do(c.Count("pair", 3))
        (new,) = one.do(c.Count("pair", 2))
        assert new.seq == 3
        assert one.state.done["pair"] == 5
        other.refresh()
        assert other.state == one.state


def test_a_stale_window_does_not_count_what_the_other_used_up(path: Path) -> None:
    with opened(path) as one, opened(path) as other:
        one.do(c.WriteNote("both sit down"))
        other.do(c.Count("pair", 200))
        with pytest.raises(c.Refused, match="0 squares wait"):
            one.do(c.Count("pair"))
        assert counts(one.record) == 200


def test_a_stale_window_can_count_what_the_other_just_made(path: Path) -> None:
    """Deciding on what was read an hour ago would refuse what is true now."""
    with opened(path) as one, opened(path) as other:
        with pytest.raises(c.Refused):
            one.do(c.Count("sew-around"))
        other.do(c.Count("pair", 3))
        other.do(c.ReadCaution("sew-around"))
        one.do(c.Count("sew-around", 3))
        assert one.state.piles["sewn-pair"] == 3


def test_undo_of_what_the_other_window_undid_is_refused(path: Path) -> None:
    with opened(path) as one, opened(path) as other:
        one.do(c.Count("pair", 2))
        (seen,) = one.do(c.Count("pair", 5))
        other.do(c.Undo(of=seen.seq))
        with pytest.raises(c.Refused, match="went on in another window"):
            one.do(c.Undo(of=seen.seq))
        assert one.state.done["pair"] == 2


def test_undo_does_not_take_back_what_this_window_has_not_shown(path: Path) -> None:
    with opened(path) as one, opened(path) as other:
        (_, seen) = one.do(c.Count("pair", 2))
        other.do(c.Count("pair", 5))
        with pytest.raises(c.Refused, match="went on in another window"):
            one.do(c.Undo(of=seen.seq))
        assert one.state.done["pair"] == 7


class _Interrupted(Library):
    """A library in which another window writes at the worst moment."""

    path: Path
    armed = False

    def load(self, entry: Shelved) -> Loaded:
        loaded = super().load(entry)
        self._other()
        return loaded

    def append(
        self,
        entry: Shelved,
        after: int,
        events: Sequence[Event],
        summary: str = "",
        *,
        called: str | None = None,
    ) -> tuple[Recorded, ...]:
        self._other()
        return super().append(entry, after, events, summary, called=called)

    def _other(self) -> None:
        if self.armed:
            self.armed = False
            with opened(self.path) as other:
                other.do(c.Count("pair", 3))


def test_what_is_written_while_a_quilt_is_being_opened_is_seen(path: Path) -> None:
    library = _Interrupted(path, EVENING)
    with closing(library):
        library.path, library.armed = path, True
        quilt = OpenQuilt(library, library.find("Hedgerow"), ticking())
        assert quilt.state.done["pair"] == 0
        assert quilt.refresh()
        assert quilt.state.done["pair"] == 3


def test_what_is_written_while_the_marks_are_read_is_no_damage(
    path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Events and marks are read one after the other, and must be of one moment."""
    real = Database.readable_rows
    tried: list[str] = []

    with opened(path) as one, opened(path) as other:
        other.do(c.Count("pair", 3))

        def slowly(self: Database, sql: str, *values: str | int) -> list[tuple[Any, ...]]:
            rows = real(self, sql, *values)
            if " FROM event " in sql and not tried:
                tried.append(sql)
                with suppress(StoreFault):
                    other.do(c.Count("pair", 4))
            return rows

        with monkeypatch.context() as patch:
            patch.setattr(Database, "readable_rows", slowly)
            assert one.refresh()
        assert tried
        assert one.damage == ""
        other.do(c.Count("pair", 5))
        one.refresh()
        assert one.state == other.state


def test_what_is_written_between_deciding_and_writing_is_decided_on_anew(path: Path) -> None:
    library = _Interrupted(path, EVENING)
    with closing(library):
        quilt = OpenQuilt(library, library.find("Hedgerow"), ticking())
        library.path, library.armed = path, True
        (new,) = quilt.do(c.Recount("square", 100))
        # The other window laid 3 pairs, so 394 squares were recorded and not 400.
        assert json.loads(_body(path, new.seq))["recorded"] == 394
        assert quilt.state == fold(a_quilt(), quilt.record)


def _body(path: Path, seq: int) -> str:
    with closing(sqlite3.connect(path)) as connection:
        ((body,),) = connection.execute("SELECT body FROM event WHERE seq = ?", (seq,)).fetchall()
        return str(body)


class _Besieged(Library):
    """A library in which another window is always a little faster."""

    path: Path

    def append(
        self,
        entry: Shelved,
        after: int,
        events: Sequence[Event],
        summary: str = "",
        *,
        called: str | None = None,
    ) -> tuple[Recorded, ...]:
        with opened(self.path) as other:
            other.do(c.Count("pair"))
        return super().append(entry, after, events, summary, called=called)


def test_a_window_that_never_gets_its_turn_says_so(path: Path) -> None:
    library = _Besieged(path, EVENING)
    with closing(library):
        library.path = path
        quilt = OpenQuilt(library, library.find("Hedgerow"), ticking())
        with pytest.raises(c.Refused, match="Nothing was recorded; try again"):
            quilt.do(c.WriteNote("let me in"))
    with opened(path) as quilt:
        assert not quilt.state.notes


def test_an_older_record_put_back_in_place_is_noticed(path: Path) -> None:
    """As `cp backup.db quilts.db` does: the same file, with less in it."""
    older = path.read_bytes()
    with opened(path) as quilt:
        quilt.do(c.Count("pair"))
        path.write_bytes(older)
        with pytest.raises(StoreFault, match=r"put back or replaced\. Nothing was recorded"):
            quilt.do(c.Count("pair"))
    assert path.read_bytes() == older


def test_other_quilts_are_no_news(path: Path) -> None:
    with opened(path) as quilt, shelf(path) as other:
        other.add(a_quilt("Second"), EVENING)
        assert not quilt.refresh()


def test_a_clock_far_behind_ends_the_session_of_its_future_and_loses_nothing(path: Path) -> None:
    """What was written last comes last, whatever either clock says."""

    def slow() -> datetime:
        return EVENING - timedelta(hours=9)

    with opened(path) as one, opened(path, clock=slow) as other:
        one.do(c.Count("pair"))
        other.do(c.Count("pair"))
        one.do(c.Count("pair"))
        assert [r.event.session for r in one.record] == [1, 1, 1, 2, 2, 2, 3, 3]
        assert one.state.done["pair"] == 3

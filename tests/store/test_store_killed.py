"""What was acknowledged is in the record, whenever the program is killed."""

from __future__ import annotations

import os
import signal
from pathlib import Path

import pytest

from sewalong.progress.record.fold import fold
from tests.progress import every_act as c
from tests.store.shelf import a_quilt, begin, counts, opened, worker

COUNTING = """
import sys
from pathlib import Path
from sewalong.progress.acts.counting import Count
from sewalong.progress.acts.notes import WriteNote
from sewalong.progress.acts.undoing import Undo
from sewalong.store.library import Library
from sewalong.service.open_quilt import OpenQuilt, local_now

library = Library(Path(sys.argv[1]), local_now())
quilt = OpenQuilt(library, library.find("Hedgerow"))
while True:
    quilt.do(Count("pair"))
    sys.stdout.write("+")
    sys.stdout.flush()
    quilt.do(WriteNote("x" * 2000))
"""


@pytest.mark.skipif(os.name != "posix", reason="there is no SIGKILL")
def test_killed_again_and_again_it_has_all_that_was_acknowledged(tmp_path: Path) -> None:
    path = tmp_path / "quilts.db"
    begin(path, a_quilt(pieces=9999))
    acknowledged = 0
    for least in (1, 7, 18, 33):
        with worker(COUNTING, path) as window:
            assert window.stdout is not None
            first = window.stdout.read(least)
            window.send_signal(signal.SIGKILL)
            rest, error = window.communicate()
        assert window.returncode == -signal.SIGKILL, error
        assert set(first + rest) == {"+"}
        acknowledged += len(first + rest)
        with opened(path) as quilt:
            # One more than was acknowledged may have reached the disk, each time.
            assert acknowledged <= counts(tuple(quilt.record)) <= acknowledged + 1
            acknowledged = counts(tuple(quilt.record))
            assert [r.seq for r in quilt.record] == list(range(1, len(quilt.record) + 1))
            assert quilt.state == fold(quilt.state.quilt, quilt.record)
            quilt.do(c.Count("pair"))
            acknowledged += 1


HALF_WAY = """
import os, signal, sys
from pathlib import Path
from sewalong.progress.record.events.every_kind import Noted
from sewalong.store import library as shelf, rows
from sewalong.service.open_quilt import local_now

library = shelf.Library(Path(sys.argv[1]), local_now())
entry = library.find("Hedgerow")
after = len(library.load(entry).record)
with library._db.writing() as connection:
    connection.execute("PRAGMA cache_size = 1")  # so that pages go to the file before the end
    events = [Noted(at=local_now(), session=0, text="y" * 2000) for _ in range(60)]
    connection.executemany(rows._INSERT, rows._rows(entry.id, after, events, ["y" * 2000] * 60))
    os.kill(os.getpid(), signal.SIGKILL)
"""


@pytest.mark.skipif(os.name != "posix", reason="there is no SIGKILL")
def test_killed_in_the_middle_of_a_write_it_has_none_of_it(tmp_path: Path) -> None:
    path = tmp_path / "quilts.db"
    begin(path)
    before = path.read_bytes()
    with worker(HALF_WAY, path) as window:
        _, error = window.communicate()
    assert window.returncode == -signal.SIGKILL, error
    # Half of it did reach the file, and the journal to take it back with lies beside it.
    assert path.read_bytes() != before
    assert (tmp_path / "quilts.db-journal").stat().st_size > 0
    with opened(path) as quilt:
        assert not quilt.record
        quilt.do(c.WriteNote("sat down again"))

"""What the disk took although it reported a fault is not written twice, whoever tries again."""

from __future__ import annotations

from pathlib import Path

import pytest

from sewalong.progress.acts.act import Act
from sewalong.service.acting import do
from sewalong.service.unsaved import Unsaved
from sewalong.store.faults import InDoubt, StoreFault
from tests.progress import every_act as c
from tests.service.failing_disk import FailingDisk
from tests.service.opened_quilt import a_window, another_window
from tests.service.test_service_two_windows import agrees_with_the_disk
from tests.story.twins.histories import PAIRED

ACTS = [c.Count("pair", 2), c.WriteNote("the blue thread"), c.Undo(None)]


@pytest.mark.parametrize("act", ACTS, ids=lambda act: type(act).__name__)
def test_what_it_took_is_done_at_once_where_it_can_be_read(tmp_path: Path, act: Act) -> None:
    with a_window(tmp_path, *PAIRED) as window, a_window(_beside(tmp_path), *PAIRED) as sound:
        FailingDisk(window.library, takes=True)
        outcome, wanted = do(window.quilt, act), do(sound.quilt, act)
        assert (outcome.recorded, outcome.words) == (wanted.recorded, wanted.words)
        assert window.on_disk() == sound.on_disk()
        agrees_with_the_disk(window)


def test_what_it_did_not_take_is_said_not_to_be_recorded(tmp_path: Path) -> None:
    with a_window(tmp_path, *PAIRED) as window:
        disk = FailingDisk(window.library, takes=False)
        with pytest.raises(StoreFault, match="so nothing was recorded") as fault:
            do(window.quilt, c.Count("pair", 2))
        assert not isinstance(fault.value, InDoubt)
        agrees_with_the_disk(window)
        disk.fails = False
        do(window.quilt, c.Count("pair", 2))
        assert window.quilt.state.done["pair"] == 22
        agrees_with_the_disk(window)


@pytest.mark.parametrize("takes", [True, False])
@pytest.mark.parametrize("other", [False, True], ids=["alone", "another window between"])
def test_a_count_that_waits_is_in_the_record_once(tmp_path: Path, takes: bool, other: bool) -> None:
    with a_window(tmp_path, *PAIRED) as window:
        disk = FailingDisk(window.library, takes=takes, unreadable=True)
        count = c.Count("pair", 2)
        with pytest.raises(InDoubt, match="not known whether this was recorded") as fault:
            do(window.quilt, count)
        waiting = Unsaved(window.quilt)
        waiting.keep(count, str(fault.value))
        assert "did not answer" in waiting.save()
        assert len(waiting) == 1
        disk.fails = False
        if other:
            with another_window(window.path, window.clock) as second:
                do(second.quilt, c.Count("pair", 1))
        assert waiting.save() == ""
        assert len(waiting) == 0
        assert window.quilt.state.done["pair"] == 20 + 2 + other
        agrees_with_the_disk(window)


def test_another_count_of_as_many_is_another(tmp_path: Path) -> None:
    with a_window(tmp_path, *PAIRED) as window:
        disk = FailingDisk(window.library, takes=True, unreadable=True)
        with pytest.raises(InDoubt):
            do(window.quilt, c.Count("pair", 2))
        disk.fails = False
        do(window.quilt, c.Count("pair", 2))
        assert window.quilt.state.done["pair"] == 24
        agrees_with_the_disk(window)


def _beside(folder: Path) -> Path:
    other = folder / "other"
    other.mkdir()
    return other

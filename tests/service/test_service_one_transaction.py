"""One act is one transaction: what goes wrong in the middle leaves nothing behind."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

import pytest

from sewalong.progress.acts.act import Act
from sewalong.progress.record.events.event import Event, Recorded
from sewalong.progress.record.fold import fold
from sewalong.service import acting
from sewalong.service.acting import do, sit_down
from sewalong.store.faults import StoreFault
from sewalong.store.library import Library
from sewalong.store.shelved import Shelved
from tests.progress import every_act as c
from tests.service.opened_quilt import Window, a_window, another_window, write
from tests.story.twins.histories import FOOT_CHANGED, PAIRED, SEWN

REFUSES = "CREATE TRIGGER refuses BEFORE INSERT ON {} BEGIN SELECT RAISE(ABORT, 'no room'); END"
REFUSES_A_KIND = (
    "CREATE TRIGGER refuses BEFORE INSERT ON event WHEN NEW.kind = '{}' "
    "BEGIN SELECT RAISE(ABORT, 'no room'); END"
)
"""The disk says no, at the event of that kind and not before."""

CLOSING = c.CloseSession({"machine": "yes"}, "sew on", {"pair": "tin", "four-patch": "tray"})


@pytest.mark.parametrize(
    ("history", "act", "kind"),
    [
        pytest.param(FOOT_CHANGED, c.Count("sew"), "counted", id="a count, after going on"),
        pytest.param(PAIRED, c.Count("sew", 3, caution_read=True), "went on", id="after a caution"),
        pytest.param(SEWN, CLOSING, "put away", id="the first that is put away"),
        pytest.param(SEWN, CLOSING, "session closed", id="the closing, after what was put away"),
    ],
)
def test_a_store_that_fails_in_the_middle_leaves_nothing(
    tmp_path: Path, history: tuple[Act, ...], act: Act, kind: str
) -> None:
    with a_window(tmp_path, *history) as window:
        sit_down(window.quilt)
        untouched_by(window, act, REFUSES_A_KIND.format(kind))
        works_again(window, act, kind)


def test_what_is_said_fails_with_the_act_it_follows(tmp_path: Path) -> None:
    with a_window(tmp_path, *FOOT_CHANGED) as window:
        untouched_by(window, c.WriteNote("zip in"), REFUSES_A_KIND.format("mentioned"))
        works_again(window, c.WriteNote("zip in"), "mentioned")


def test_a_summary_that_cannot_be_kept_leaves_nothing_either(tmp_path: Path) -> None:
    with a_window(tmp_path, *PAIRED) as window:
        untouched_by(window, c.Count("pair"), REFUSES.format("summary"))
        works_again(window, c.Count("pair"), "counted")


def test_an_undo_that_fails_in_the_middle_takes_nothing_back(tmp_path: Path) -> None:
    with a_window(tmp_path, *FOOT_CHANGED) as window:
        sit_down(window.quilt)
        do(window.quilt, c.Count("sew"))
        went_on = window.quilt.state.last_act[0]
        second = REFUSES_A_KIND.format("undone").replace(
            "BEGIN SELECT", f"AND NEW.body LIKE '%\"of\":{went_on},%' BEGIN SELECT"
        )
        untouched_by(window, c.Undo(), second)
        assert window.quilt.state.done["sew"] == 5
        works_again(window, c.Undo(), "undone")
        assert window.quilt.state.done["sew"] == 4


def untouched_by(window: Window, act: Act, trigger: str) -> None:
    """`act` fails in the middle, and neither the window nor the disk knows of it."""
    quilt = window.quilt
    state, record, disk = quilt.state, list(quilt.record), window.on_disk()
    write(window.path, trigger)
    with pytest.raises(StoreFault):
        do(quilt, act)
    write(window.path, "DROP TRIGGER refuses")
    assert window.on_disk() == disk
    assert quilt.state == state
    assert quilt.record == record


def works_again(window: Window, act: Act, kind: str) -> None:
    """The same act goes through now, and the state is that of the record."""
    outcome = do(window.quilt, act)
    assert kind in [recorded.event.kind for recorded in outcome.recorded]
    is_that_of_the_disk(window)


def is_that_of_the_disk(window: Window) -> None:
    quilt = window.quilt
    assert tuple(recorded.event for recorded in quilt.record) == window.on_disk()
    assert quilt.state == fold(quilt.state.quilt, quilt.record)


def test_what_breaks_while_the_summary_is_worked_out_leaves_nothing(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    with a_window(tmp_path, *FOOT_CHANGED) as window:
        state, disk = window.quilt.state, window.on_disk()

        def interrupted(*_: object) -> None:
            raise KeyboardInterrupt

        with monkeypatch.context() as patch:
            patch.setattr(acting, "summary_of", interrupted)
            with pytest.raises(KeyboardInterrupt):
                do(window.quilt, c.Count("sew"))
        assert window.on_disk() == disk
        assert window.quilt.state == state
        works_again(window, c.Count("sew"), "counted")


class _Cut(Library):
    """A library whose first answer is lost after the disk has taken the act."""

    armed = True

    def append(
        self,
        entry: Shelved,
        after: int,
        events: Sequence[Event],
        summary: str = "",
        *,
        called: str | None = None,
    ) -> tuple[Recorded, ...]:
        written = super().append(entry, after, events, summary, called=called)
        if self.armed:
            self.armed = False
            raise KeyboardInterrupt
        return written


def test_what_is_on_disk_although_its_answer_was_lost_is_counted_once(tmp_path: Path) -> None:
    with a_window(tmp_path, *PAIRED, kind=_Cut) as window:
        with pytest.raises(KeyboardInterrupt):
            do(window.quilt, c.Count("pair", 2))
        do(window.quilt, c.WriteNote("the lamp went out"))
        assert window.quilt.state.done["pair"] == 22
        is_that_of_the_disk(window)


def test_an_act_and_all_that_follows_from_it_are_written_at_once(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    written: list[list[str]] = []
    append = Library.append

    def watched(
        self: Library,
        entry: Shelved,
        after: int,
        events: Sequence[Event],
        summary: str = "",
        *,
        called: str | None = None,
    ) -> tuple[Recorded, ...]:
        written.append([event.kind for event in events])
        assert summary
        return append(self, entry, after, events, summary, called=called)

    with a_window(tmp_path, *PAIRED) as window:
        monkeypatch.setattr(Library, "append", watched)
        do(window.quilt, c.ChooseStage("sew"))
        do(window.quilt, c.Count("sew", 3, caution_read=True))
        assert written == [
            ["stage chosen", "mentioned"],
            ["caution read", "went on", "counted"],
        ]


def test_another_window_sees_the_whole_act_or_none(tmp_path: Path) -> None:
    with (
        a_window(tmp_path, *FOOT_CHANGED) as window,
        another_window(window.path, window.clock) as other,
    ):
        sit_down(window.quilt)
        do(window.quilt, c.Count("sew"))
        assert other.quilt.refresh()
        assert other.quilt.state == window.quilt.state
        assert other.quilt.state.last_act == window.quilt.state.last_act

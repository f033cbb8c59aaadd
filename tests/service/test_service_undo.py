"""One undo takes back one act, however many events it gave."""

from __future__ import annotations

from pathlib import Path

import pytest

from sewalong.progress.record.events.counting import Counted
from sewalong.progress.record.events.seam import WentOn
from sewalong.progress.record.events.undoing import Undone
from sewalong.service.acting import do, sit_down
from tests.progress import every_act as c
from tests.screens.sewing_room import MINUTE
from tests.service.opened_quilt import a_window, another_window
from tests.story.twins.histories import FOOT_CHANGED, SEWN, WENT_ON


def test_going_on_and_the_count_that_came_with_it_are_taken_back_together(tmp_path: Path) -> None:
    with a_window(tmp_path, *FOOT_CHANGED) as window:
        sit_down(window.quilt)
        before = window.quilt.state
        went = do(window.quilt, c.Count("sew", 2))
        assert [one.event.kind for one in went.recorded][:2] == ["went on", "counted"]
        back = do(window.quilt, c.Undo())
        assert [one.event.kind for one in back.recorded] == ["undone", "undone"]
        assert back.words == "Undone: counted 2 four-patches at sew."
        now = window.quilt.state
        assert (now.done, now.piles, now.went_on) == (before.done, before.piles, before.went_on)
        assert now.last_act == before.last_act


def test_after_it_was_taken_back_counting_on_is_going_on_once_more(tmp_path: Path) -> None:
    with a_window(tmp_path, *FOOT_CHANGED) as window:
        sit_down(window.quilt)
        for _ in range(2):
            went = do(window.quilt, c.Count("sew"))
            assert [one.event.kind for one in went.recorded][:2] == ["went on", "counted"]
            do(window.quilt, c.Undo())


def test_the_count_after_it_is_taken_back_alone(tmp_path: Path) -> None:
    with a_window(tmp_path, *FOOT_CHANGED) as window:
        sit_down(window.quilt)
        do(window.quilt, c.Count("sew", 2))
        do(window.quilt, c.Count("sew", 3))
        do(window.quilt, c.Undo())
        assert window.quilt.state.done["sew"] == 4 + 2
        assert window.quilt.state.went_on


def test_going_on_that_was_said_before_the_count_is_an_act_of_its_own(tmp_path: Path) -> None:
    with a_window(tmp_path, *WENT_ON) as window:
        window.clock.forward(MINUTE)
        window.quilt.do(c.Count("sew"))
        assert [one.event.kind for one in window.quilt.record[-2:]] == ["went on", "counted"]
        do(window.quilt, c.Undo())
        assert window.quilt.state.done["sew"] == 4
        assert window.quilt.state.went_on
        do(window.quilt, c.Undo())
        assert not window.quilt.state.went_on


def test_what_was_put_away_in_closing_is_taken_back_together(tmp_path: Path) -> None:
    with a_window(tmp_path, *SEWN, c.PutPileAway("pair", "hook")) as window:
        window.clock.forward(MINUTE)
        closing = c.CloseSession({"machine": "yes"}, "", {"pair": "tin", "four-patch": "tray"})
        do(window.quilt, closing)
        assert window.quilt.state.where == {"pair": "tin", "four-patch": "tray"}
        do(window.quilt, c.Undo())
        assert window.quilt.state.where == {"pair": "hook"}
        assert window.quilt.state.session is None
        do(window.quilt, c.Undo())
        assert window.quilt.state.where == {}


def test_what_was_put_away_before_closing_is_taken_back_one_by_one(tmp_path: Path) -> None:
    with a_window(tmp_path, *SEWN) as window:
        window.quilt.do(c.PutPileAway("pair", "hook"))
        window.quilt.do(c.PutPileAway("four-patch", "tray"))
        window.clock.forward(MINUTE)
        do(window.quilt, c.CloseSession({"machine": "yes"}))
        do(window.quilt, c.Undo())
        assert window.quilt.state.where == {"pair": "hook"}


def test_a_closing_with_nothing_put_away_leaves_the_last_act_to_be_taken_back(
    tmp_path: Path,
) -> None:
    with a_window(tmp_path, *SEWN) as window:
        window.clock.forward(MINUTE)
        do(window.quilt, c.CloseSession({"machine": "yes"}))
        do(window.quilt, c.Undo())
        assert window.quilt.state.done["sew"] == 0


def test_a_record_in_which_going_on_stands_after_the_count_is_undone_one_by_one(
    tmp_path: Path,
) -> None:
    """As the first version wrote it: the count, and going on in a transaction of its own."""
    with a_window(tmp_path, *FOOT_CHANGED) as window:
        at, session = window.clock(), 1
        window.library.append(
            window.quilt.entry,
            len(window.quilt.record),
            (
                Counted(at=at, session=session, stage="sew", n=1),
                WentOn(at=at, session=session, stage="sew", why="another foot went on"),
            ),
        )
        window.quilt.refresh(force=True)
        do(window.quilt, c.Undo())
        assert window.quilt.state.done["sew"] == 5
        assert not window.quilt.state.went_on
        do(window.quilt, c.Undo())
        assert window.quilt.state.done["sew"] == 4


def test_one_act_of_several_events_is_put_back_whole(tmp_path: Path) -> None:
    with a_window(tmp_path, *FOOT_CHANGED) as window:
        sit_down(window.quilt)
        do(window.quilt, c.Count("sew", 2))
        went_on = window.quilt.state
        do(window.quilt, c.Undo())
        back = do(window.quilt, c.Redo())
        assert [one.event.kind for one in back.recorded] == ["put back", "put back"]
        assert back.words == "Put back: counted 2 four-patches at sew."
        now = window.quilt.state
        assert (now.done, now.piles, now.went_on) == (went_on.done, went_on.piles, went_on.went_on)
        assert now.last_act == went_on.last_act


def test_acts_of_one_moment_are_undone_and_put_back_one_by_one(tmp_path: Path) -> None:
    with a_window(tmp_path, *SEWN) as window:
        for n in (1, 2):
            window.quilt.do(c.WriteNote(f"note {n}"))
        for _ in range(2):
            window.quilt.do(c.Undo())
        for n in (1, 2):
            window.quilt.do(c.Redo())
            assert [note.text for note in window.quilt.state.notes][-1] == f"note {n}"
            assert len(window.quilt.state.notes) == n


def test_after_something_else_was_done_nothing_is_put_back(tmp_path: Path) -> None:
    with a_window(tmp_path, *SEWN) as window:
        with pytest.raises(c.Refused, match=r"^There is nothing to put back"):
            do(window.quilt, c.Redo())
        window.quilt.do(c.WriteNote("lamp on"))
        do(window.quilt, c.Undo())
        do(window.quilt, c.WriteNote("lamp off"))
        # Undone as well, and yet the note before it stays undone.
        do(window.quilt, c.Undo())
        do(window.quilt, c.Redo())
        assert [note.text for note in window.quilt.state.notes] == ["lamp off"]
        with pytest.raises(c.Refused, match=r"^There is nothing to put back"):
            do(window.quilt, c.Redo())


def test_putting_back_is_taken_back_by_undo_and_can_be_put_back_again(tmp_path: Path) -> None:
    with a_window(tmp_path, *SEWN) as window:
        sewn = window.quilt.state.done["sew"]
        last = window.quilt.state.last_act
        for _ in range(3):
            do(window.quilt, c.Undo())
            assert window.quilt.state.last_act != last
            do(window.quilt, c.Redo())
            assert (window.quilt.state.done["sew"], window.quilt.state.last_act) == (sewn, last)
        assert window.since(0).count("put back") == 3


def test_what_another_window_undid_can_be_put_back_once_it_is_seen(tmp_path: Path) -> None:
    with (
        a_window(tmp_path, *SEWN) as window,
        another_window(window.path, window.clock) as other,
    ):
        sewn = window.quilt.state.done["sew"]
        do(other.quilt, c.Undo())
        with pytest.raises(c.Refused, match="went on in another window"):
            do(window.quilt, c.Redo(sewn + 99))
        window.quilt.refresh()
        do(window.quilt, c.Redo(window.quilt.state.last_undone[-1]))
        assert window.quilt.state.done["sew"] == sewn
        other.quilt.refresh()
        assert other.quilt.state.done["sew"] == sewn


def test_what_was_undone_by_the_first_version_can_be_put_back(tmp_path: Path) -> None:
    """It did not write which of them were one act, so they come back one by one."""
    with a_window(tmp_path, *FOOT_CHANGED) as window:
        sit_down(window.quilt)
        do(window.quilt, c.Count("sew", 2))
        counted, at = window.quilt.state.last_act, window.clock()
        window.library.append(
            window.quilt.entry,
            len(window.quilt.record),
            [Undone(at=at, session=1, of=seq) for seq in reversed(counted)],
        )
        window.quilt.refresh(force=True)
        do(window.quilt, c.Redo())
        assert window.quilt.state.went_on
        assert window.quilt.state.done["sew"] == 4
        do(window.quilt, c.Redo())
        assert window.quilt.state.done["sew"] == 6
        assert window.quilt.state.last_act == counted


def test_undo_takes_back_only_what_this_window_has_shown(tmp_path: Path) -> None:
    with (
        a_window(tmp_path, *FOOT_CHANGED) as window,
        another_window(window.path, window.clock) as other,
    ):
        sit_down(window.quilt)
        do(window.quilt, c.Count("sew"))
        shown = window.quilt.state.last_act[-1]
        do(other.quilt, c.WriteNote("lamp on"))
        with pytest.raises(c.Refused, match="went on in another window"):
            do(window.quilt, c.Undo(shown))
        assert window.quilt.state.done["sew"] == 5

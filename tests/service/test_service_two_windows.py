"""Another window writes between deciding and writing: the act is decided anew, and both are kept."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from pathlib import Path

import pytest

from sewalong.progress.acts.act import Act
from sewalong.progress.record.events.event import Event, Recorded
from sewalong.progress.record.events.said import Mentioned
from sewalong.progress.record.fold import fold
from sewalong.service.acting import do, sit_down
from sewalong.store.library import Library
from sewalong.store.shelved import Shelved
from tests.progress import every_act as c
from tests.service.opened_quilt import Window, a_window, another_window
from tests.story.twins.histories import FOOT_CHANGED, PAIRED


class Slow(Library):
    """A library that lets another window write first, once."""

    meanwhile: Callable[[], object] | None = None

    def append(
        self,
        entry: Shelved,
        after: int,
        events: Sequence[Event],
        summary: str = "",
        *,
        called: str | None = None,
    ) -> tuple[Recorded, ...]:
        if self.meanwhile is not None:
            meanwhile, self.meanwhile = self.meanwhile, None
            meanwhile()
        return super().append(entry, after, events, summary, called=called)


def meanwhile(window: Window, act: Act) -> None:
    """Let another window do `act` between this one's next deciding and writing."""

    def write() -> None:
        with another_window(window.path, window.clock) as other:
            do(other.quilt, act)

    assert isinstance(window.library, Slow)
    window.library.meanwhile = write


def test_both_counts_are_kept(tmp_path: Path) -> None:
    with a_window(tmp_path, *PAIRED, kind=Slow) as window:
        meanwhile(window, c.Count("pair", 2))
        do(window.quilt, c.Count("pair"))
        assert window.quilt.state.done["pair"] == 23
        agrees_with_the_disk(window)


def test_what_the_other_used_up_is_not_counted(tmp_path: Path) -> None:
    with a_window(tmp_path, *PAIRED, kind=Slow) as window:
        meanwhile(window, c.Count("pair", 4))
        with pytest.raises(c.Refused, match="0 squares wait"):
            do(window.quilt, c.Count("pair"))
        assert window.quilt.state.done["pair"] == 24
        agrees_with_the_disk(window)


def test_going_on_that_the_other_has_said_is_not_said_twice(tmp_path: Path) -> None:
    with a_window(tmp_path, *FOOT_CHANGED, kind=Slow) as window:
        sit_down(window.quilt)
        before = len(window.quilt.record)
        meanwhile(window, c.Count("sew", 2))
        outcome = do(window.quilt, c.Count("sew"))
        assert "went on" not in [one.event.kind for one in outcome.recorded]
        assert window.since(before).count("went on") == 1
        assert window.quilt.state.done["sew"] == 4 + 3
        agrees_with_the_disk(window)


def test_a_notice_that_the_other_has_said_is_not_said_twice(tmp_path: Path) -> None:
    with a_window(tmp_path, *FOOT_CHANGED, kind=Slow) as window:
        meanwhile(window, c.WriteNote("zip sewn in"))
        outcome = do(window.quilt, c.WriteNote("cushion done"))
        said = [one.event.what for one in window.quilt.record if isinstance(one.event, Mentioned)]
        assert len(set(said)) == len(said)
        assert outcome.notice is None or "another foot" not in outcome.notice.text
        agrees_with_the_disk(window)


def test_what_is_shown_afterwards_knows_of_both(tmp_path: Path) -> None:
    with a_window(tmp_path, *PAIRED, kind=Slow) as window:
        meanwhile(window, c.Spoil("pair", 5, "cut askew"))
        outcome = do(window.quilt, c.Count("pair"))
        assert outcome.plan.line("sew").ready == (20 - 5 + 1) // 2
        assert outcome.words == "Counted 1 pair."


def agrees_with_the_disk(window: Window) -> None:
    assert tuple(one.event for one in window.quilt.record) == window.on_disk()
    assert window.quilt.state == fold(window.quilt.state.quilt, window.quilt.record)

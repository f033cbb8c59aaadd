"""Who leaves without an answer is asked first at the next return, as long as that can be answered."""

from __future__ import annotations

from pathlib import Path

from sewalong.service.acting import do
from sewalong.service.left_unasked import is_asked_about, leave_unasked, questions_left
from tests.progress import every_act as c
from tests.screens.sewing_room import HOUR, MINUTE
from tests.service.opened_quilt import a_window

SEWN = (c.OpenSession(), c.Count("pair", 20), c.Count("sew", 2))


def test_what_was_left_is_asked_until_something_else_is_done(tmp_path: Path) -> None:
    with a_window(tmp_path, *SEWN) as window:
        quilt = window.quilt
        assert is_asked_about(quilt)
        assert questions_left(quilt) == ()
        leave_unasked(quilt)
        window.clock.forward(HOUR)
        assert [one.id for one in questions_left(quilt)] == ["machine"]
        do(quilt, c.WriteNote("the blue thread"))
        assert questions_left(quilt) == ()
        window.clock.forward(MINUTE)
        leave_unasked(quilt)
        assert [one.id for one in questions_left(quilt)] == ["machine"]
        do(quilt, c.CloseSession({"machine": "yes"}))
        assert questions_left(quilt) == ()
        assert not is_asked_about(quilt)


def test_a_session_long_over_is_for_the_return_sheet(tmp_path: Path) -> None:
    with a_window(tmp_path, *SEWN) as window:
        leave_unasked(window.quilt)
        window.clock.forward(12 * HOUR)
        assert questions_left(window.quilt) == ()
        before = window.on_disk()
        leave_unasked(window.quilt)
        assert window.on_disk() == before


def test_where_nothing_was_used_nothing_is_written(tmp_path: Path) -> None:
    with a_window(tmp_path, c.OpenSession()) as window:
        before = window.on_disk()
        leave_unasked(window.quilt)
        assert window.on_disk() == before
        assert not is_asked_about(window.quilt)

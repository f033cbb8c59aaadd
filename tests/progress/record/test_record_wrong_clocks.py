"""A clock that was wrong: nothing is muted by it, nothing is lost, and the right quilt is counted.

An hour's error must not send counts to another quilt, and a caution read in 2036 must not mute
the cautions of today.
"""

from __future__ import annotations

from contextlib import closing
from datetime import timedelta
from pathlib import Path

import pytest
from msgspec.structs import replace

from sewalong.progress.acts.decide import decide
from sewalong.progress.record.events.sessions import (
    SESSION_GAP,
    SessionClosed,
    SessionOpened,
    is_over,
)
from sewalong.progress.record.time_words import CLOCKS_DIFFER
from sewalong.progress.safety.cautions import CautionFirst
from sewalong.service.open_quilt import OpenQuilt
from sewalong.store.library import Library
from tests.progress import every_act as c
from tests.progress.building import EVENING, HOUR, MINUTE, a_quilt, play

YEARS_AHEAD = timedelta(days=3650)
NAMES = ("First", "Second")


@pytest.mark.parametrize("ahead", [YEARS_AHEAD, 5 * HOUR, CLOCKS_DIFFER + MINUTE])
def test_a_session_opened_in_the_future_ends(ahead: timedelta) -> None:
    state, _ = play(a_quilt(), c.Count("pair", 4), start=EVENING + ahead)
    closed, opened, counted = decide(state, c.Count("pair"), EVENING)
    assert isinstance(closed, SessionClosed)
    assert closed.forgotten
    assert isinstance(opened, SessionOpened)
    assert (opened.session, counted.session) == (2, 2)


@pytest.mark.parametrize("ahead", [timedelta(0), MINUTE, CLOCKS_DIFFER])
def test_clocks_that_hardly_differ_end_nothing(ahead: timedelta) -> None:
    state, _ = play(a_quilt(), c.Count("pair", 4), start=EVENING + ahead)
    (counted,) = decide(state, c.Count("pair"), EVENING)
    assert counted.session == 1


def test_a_session_heard_from_in_the_far_future_is_over_however_it_began() -> None:
    state, _ = play(a_quilt(), c.OpenSession())
    assert state.session is not None
    heard = replace(state.session, last_at=EVENING + YEARS_AHEAD)
    assert is_over(heard, EVENING)
    assert is_over(replace(heard, last_at=EVENING + SESSION_GAP), EVENING)
    assert not is_over(replace(heard, last_at=EVENING + SESSION_GAP - MINUTE), EVENING)


def test_a_caution_read_in_the_future_is_due_again() -> None:
    """Read by a clock set to 2036 within a session that began by the right one."""
    quilt = a_quilt()
    at_the_iron = [c.Count("pair", 8), c.Count("sew", 4)]
    state, _ = play(quilt, *at_the_iron)
    read = dict.fromkeys(("iron", "needle", "pins", "cutter"), EVENING + YEARS_AHEAD)
    muted = replace(state, cautions_read=read)
    with pytest.raises(CautionFirst):
        decide(muted, c.Count("press"), EVENING + 10 * MINUTE)
    just_now = replace(state, cautions_read=dict.fromkeys(read, EVENING + 10 * MINUTE))
    assert decide(just_now, c.Count("press"), EVENING + 10 * MINUTE)


def test_a_blade_of_the_future_is_not_new_for_ever() -> None:
    quilt = a_quilt("plain-squares", 12, 3, 3)
    state, _ = play(quilt, c.OpenSession())
    now = EVENING + 10 * MINUTE
    read = dict.fromkeys(("iron", "needle", "pins", "cutter", "cross cut"), now)
    future = replace(state, cautions_read=read, changed={"blade": EVENING + YEARS_AHEAD})
    assert decide(future, c.Count("square-up"), now)
    new = replace(future, cautions_read={}, changed={"blade": now})
    with pytest.raises(CautionFirst):
        decide(new, c.Count("square-up"), now)


@pytest.mark.parametrize("error", [HOUR, YEARS_AHEAD])
def test_last_touched_goes_by_the_order_of_writing(tmp_path: Path, error: timedelta) -> None:
    """The first quilt was counted by a clock that was ahead; the second is counted after it."""
    with closing(Library(tmp_path / "quilts.db", EVENING)) as library:
        entries = [library.add(replace(a_quilt(), name=name), EVENING) for name in NAMES]
        first = OpenQuilt(library, entries[0], lambda: EVENING + error)
        second = OpenQuilt(library, entries[1], lambda: EVENING + MINUTE)
        first.do(c.Count("pair"))
        second.do(c.Count("pair"))
        assert [entry.name for entry in library.entries()] == ["Second", "First"]
        first.do(c.Count("pair"))
        assert [entry.name for entry in library.entries()] == ["First", "Second"]

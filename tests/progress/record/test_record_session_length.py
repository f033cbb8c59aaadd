"""The one length of a session, whatever became of it."""

from __future__ import annotations

from datetime import datetime, timedelta

import pytest

from sewalong.progress.record.events.sessions import SESSION_GAP, session_length
from sewalong.progress.record.state import SessionRecord
from tests.progress.building import EVENING, MINUTE


def a_session(
    heard: int, *, ended: int | None = None, opened: datetime = EVENING, forgotten: bool = False
) -> SessionRecord:
    """Minutes after it was opened when it was last heard from, and when it ended."""
    return SessionRecord(
        number=1,
        opened=opened,
        last_at=opened + heard * MINUTE,
        ended=None if ended is None else opened + ended * MINUTE,
        forgotten=forgotten,
    )


@pytest.mark.parametrize(
    ("session", "minutes_later", "minutes"),
    [
        # Closed by hand: from sitting down to putting away, whatever was counted when.
        (a_session(40, ended=52), 60, 52),
        (a_session(40, ended=52), 100_000, 52),
        # One count, typed as the session was opened, and put away.
        (a_session(0, ended=0), 600, 0),
        # Forgotten: it ended when it was last heard from.
        (a_session(25, ended=25, forgotten=True), 600, 25),
        # Open, and still at it: until now.
        (a_session(6), 6, 6),
        (a_session(6), 49, 49),
        (a_session(0), 49, 49),
        # Left open and silent for four hours: over when it was last heard from.
        (a_session(6), 6 + 4 * 60 - 1, 6 + 4 * 60 - 1),
        (a_session(6), 6 + 4 * 60, 6),
        (a_session(0), 600, 0),
        # The clock was set back while it was open, by little, by an hour, and to another day.
        (a_session(20), 18, 20),
        (a_session(90), 30, 90),
        (a_session(20), -2, 20),
        (a_session(20), -60, 20),
        (a_session(20), -100_000, 20),
        # And before it was closed.
        (a_session(20, ended=20), -60, 20),
        (a_session(0, ended=-30), 60, 0),
    ],
)
def test_a_session_has_one_length(session: SessionRecord, minutes_later: int, minutes: int) -> None:
    now = EVENING + minutes_later * MINUTE
    assert session_length(session, now) == timedelta(minutes=minutes)


def test_four_hours_are_those_after_which_a_session_is_over() -> None:
    assert timedelta(hours=4) == SESSION_GAP

"""A forecast in words: the whole in one range, its unit said once; the reasons one sentence each."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from sewalong.progress.pace.forecast import Forecast, forecast_from
from sewalong.progress.pace.forecast_words import (
    hours_left,
    sessions_left,
    summary,
    why,
    why_in_all,
)
from sewalong.progress.pace.hours_ahead import Hours
from sewalong.progress.pace.paces import paces
from sewalong.progress.pace.sessions import session_facts
from tests.progress import every_act as c
from tests.progress.building import MINUTE, a_quilt, play


def a_forecast() -> Forecast:
    state, record = play(
        a_quilt(pieces=40, rows=4, columns=5),
        *[c.Count("pair", 4)] * 4,
        c.CloseSession({"machine": "yes"}),
        every=2 * MINUTE,
    )
    now = record[-1].event.at
    known = paces(state, record, now)
    return forecast_from(state, known, session_facts(state, known.measured, now), now)


@pytest.mark.parametrize(
    ("low", "middle", "high", "said"),
    [
        (5.6, 9.2, 14.4, "5 to 15 hours left, most likely 9"),
        (1.2, 2.4, 4.6, "1 to 5 hours left, most likely 2 1/2"),
        (0.4, 0.9, 1.4, "20 to 90 minutes left, most likely 54"),
        (0.4, 1.0, 1.4, "20 to 90 minutes left, most likely 1 hour"),
        (0.4, 0.9, 2.4, "20 minutes to 2 1/2 hours left, most likely 54 minutes"),
        (0.7, 1.1, 2.4, "1/2 to 2 1/2 hours left, most likely 1 hour"),
    ],
)
def test_the_answer_is_one_range_and_its_unit_is_said_once(
    low: float, middle: float, high: float, said: str
) -> None:
    assert hours_left(replace(a_forecast(), in_all=Hours(low, middle, high))) == said


def test_with_nothing_left_there_are_no_hours_and_no_sessions() -> None:
    done = replace(a_forecast(), in_all=None, stages=())
    assert (hours_left(done), sessions_left(done)) == ("", "")


def test_sessions_say_whose_they_are_and_how_sure() -> None:
    found = a_forecast()
    assert sessions_left(found).endswith(" sessions like yours, partly a guess")
    assert f"{sessions_left(found)}." == summary(found)[-1]
    assert " of 45 minutes" in sessions_left(replace(found, own_sessions=False, session_hours=0.75))


def test_every_stage_says_what_its_hours_come_from() -> None:
    found = a_forecast()
    for one in found.stages:
        to_go, reason = why(one)
        assert to_go.startswith(f"{one.to_do_in_words} to go: ")
        assert reason[:-1].casefold() == one.pace.reason.casefold()
    assert why_in_all(found)[:-1] == summary(found)
    assert "8 times in 10" in why_in_all(found)[-1], "hours_ahead.HELD"

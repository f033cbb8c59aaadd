"""The hours over the dates: what is drawn holds what was counted, and says the same in words."""

from __future__ import annotations

from datetime import date, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from sewalong.owner.ascii_only import ascii_only
from sewalong.progress.pace.course import Course, course, course_in_words
from sewalong.progress.pace.course_plot import (
    AXIS,
    EIGHTHS,
    PERHAPS,
    WANTED,
    Part,
    Run,
    column_of,
    day_of,
    fan_on,
    plotted,
)
from sewalong.progress.pace.forecast import forecast_from
from sewalong.progress.pace.paces import paces
from sewalong.progress.pace.sessions import session_facts
from tests.progress import every_act as c
from tests.progress.building import EVENING, MINUTE, Record, a_quilt, go_on, opening

DAY = timedelta(days=1)
TODAY = date(2026, 11, 26)
SEEN = Course(
    so_far=(
        (date(2026, 9, 5), 0.5),
        (date(2026, 9, 12), 1.4),
        (date(2026, 10, 3), 2.2),
        (date(2026, 11, 2), 3.1),
    ),
    today=TODAY,
    low=9.1,
    high=17.5,
    a_week=0.5,
    early=date(2027, 2, 20),
    late=date(2027, 6, 1),
    wanted=date(2027, 4, 1),
    sure=", partly a guess",
)
WIDE, HIGH = 60, 9


def drawn(found: Course, wide: int = WIDE, high: int = HIGH) -> list[str]:
    """The columns of a plot, each from the bottom up, without the words at its edges."""
    rows = ["".join(run.text for run in row) for row in plotted(found, wide + AXIS, high)]
    assert len(rows) == high + 1
    assert {len(row) for row in rows} == {wide + AXIS}
    return ["".join(row[AXIS + x] for row in reversed(rows[:-1])) for x in range(wide)]


def test_every_column_that_has_been_is_as_high_as_the_hours_measured_by_then() -> None:
    columns = drawn(replace(SEEN, wanted=None))
    past = [x for x in range(WIDE) if day_of(SEEN, x, WIDE) <= TODAY]
    assert len(past) > 10
    for x in past:
        eighths = sum(EIGHTHS.index(sign) for sign in columns[x])
        hours = SEEN.hours_on(day_of(SEEN, x, WIDE))
        assert eighths == round(hours / SEEN.high * HIGH * 8)


def test_what_is_left_fans_out_from_today_to_the_least_and_the_most() -> None:
    columns = drawn(replace(SEEN, wanted=None))
    ahead = [x for x in range(WIDE) if day_of(SEEN, x, WIDE) > TODAY]
    thick = []
    for x in ahead:
        low, top = fan_on(SEEN, day_of(SEEN, x, WIDE))
        cells = [y for y, sign in enumerate(columns[x]) if sign == PERHAPS]
        assert cells == list(range(cells[0], cells[-1] + 1)), "one piece"
        assert cells[0] == min(HIGH - 1, int(low / SEEN.high * HIGH))
        assert cells[-1] == min(HIGH - 1, int(top / SEEN.high * HIGH))
        thick.append(len(cells))
    assert thick[0] == 1
    assert thick[-1] == max(thick) > 3
    assert fan_on(SEEN, SEEN.end) == pytest.approx((SEEN.low, SEEN.high))
    assert fan_on(SEEN, TODAY) == pytest.approx((SEEN.spent, SEEN.spent))


@pytest.mark.parametrize("wanted", [date(2026, 12, 24), date(2027, 4, 1), date(2028, 1, 1)])
def test_the_day_it_is_wanted_by_is_a_line_from_top_to_bottom(wanted: date) -> None:
    found = replace(SEEN, wanted=wanted)
    columns = drawn(found)
    lines = [x for x, column in enumerate(columns) if column == WANTED * HIGH]
    assert lines == [column_of(found, wanted, WIDE)]
    assert abs((day_of(found, lines[0], WIDE) - wanted).days) <= (found.end - found.first).days / 50
    day = f"{wanted.day} {wanted:%b}"
    assert day in "".join(run.text for run in plotted(found, WIDE + AXIS, HIGH)[-1])


def test_what_is_drawn_can_be_told_apart_by_its_part_and_in_ascii() -> None:
    parts = {run.part for row in plotted(SEEN, WIDE, HIGH) for run in row}
    assert parts == set(Part)
    signs = {
        part: {
            sign
            for row in plotted(SEEN, WIDE, HIGH)
            for run in row
            if run.part is part
            for sign in ascii_only(run.text)
        }
        - {" "}
        for part in (Part.MEASURED, Part.AHEAD, Part.WANTED)
    }
    assert signs == {Part.MEASURED: {"#"}, Part.AHEAD: {":"}, Part.WANTED: {"|"}}


@given(
    days=st.lists(st.integers(0, 400), min_size=0, max_size=20, unique=True),
    hours=st.lists(st.floats(0, 50), min_size=20, max_size=20),
    ahead=st.tuples(st.floats(0, 100), st.floats(0, 100)),
    late=st.none() | st.integers(0, 900),
    wanted=st.none() | st.integers(-500, 900),
    size=st.tuples(st.integers(0, 200), st.integers(0, 40)),
)
def test_anything_can_be_drawn_and_told(
    days: list[int],
    hours: list[float],
    ahead: tuple[float, float],
    late: int | None,
    wanted: int | None,
    size: tuple[int, int],
) -> None:
    so_far, spent = [], 0.0
    for day, more in zip(sorted(days), hours, strict=False):
        spent += more
        so_far.append((TODAY - (400 - day) * DAY, spent))
    found = Course(
        so_far=tuple(so_far),
        today=TODAY,
        low=spent + min(ahead),
        high=spent + max(ahead),
        a_week=None if late is None else 1.0,
        early=None if late is None else TODAY + late // 2 * DAY,
        late=None if late is None else TODAY + late * DAY,
        wanted=None if wanted is None else TODAY + wanted * DAY,
        sure="",
    )
    rows: list[list[Run]] = plotted(found, *size)
    assert len({sum(len(run.text) for run in row) for row in rows}) == 1
    assert all(line.endswith(".") for line in course_in_words(found))


# -- from a record ---------------------------------------------------------------------------------


def evenings(*days: int) -> Course:
    """The course after an evening of eight timed pairs on each of these days, seen on the last."""
    quilt = a_quilt(pieces=168)
    state, record = opening(quilt), Record(quilt)
    for day in days:
        acts = (*[c.Count("pair", 1)] * 8, c.CloseSession({"machine": "yes"}))
        state = go_on(state, record, *acts, at=EVENING + day * DAY, every=2 * MINUTE)
    now = EVENING + days[-1] * DAY + 60 * MINUTE
    known = paces(state, record, now)
    facts = session_facts(state, known.measured, now)
    left = forecast_from(state, known, facts, now)
    found = course(facts, left, now.date())
    assert left.in_all is not None
    assert (found.low, found.high) == pytest.approx(
        (left.spent + left.in_all.low, left.spent + left.in_all.high)
    )
    assert [day for day, _ in found.so_far] == [(EVENING + day * DAY).date() for day in days]
    assert found.so_far[-1][1] == pytest.approx(left.spent)
    if found.a_week is not None:
        at_work = sum(one.at_work for one in facts)
        assert found.a_week == pytest.approx(at_work / days[-1] * 7)
    return found


@pytest.mark.parametrize("days", [(0,), (0, 3), (0, 13), (20,)])
def test_before_a_habit_shows_no_end_is_named(days: tuple[int, ...]) -> None:
    found = evenings(*days)
    assert (found.a_week, found.early, found.late) == (None, None, None)
    assert "Too early to say when it is done" in course_in_words(found)[1]


def test_with_a_habit_the_end_is_named_as_a_range() -> None:
    found = evenings(0, 7, 14, 21)
    assert found.early is not None
    assert found.late is not None
    assert found.today < found.early < found.late == found.end
    (measured, end) = course_in_words(found)
    assert measured.endswith("measured so far.")
    assert end.startswith("At ")
    assert " it is done between " in end
    assert end.endswith("partly a guess.")


def test_with_nothing_left_nothing_is_ahead() -> None:
    found = replace(SEEN, low=3.1, high=3.1, early=None, late=None, wanted=None)
    assert course_in_words(found) == ("3 hours measured so far.",)
    assert not any(PERHAPS in column for column in drawn(found))

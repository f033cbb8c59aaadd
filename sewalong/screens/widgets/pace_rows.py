"""The rows of how is it going: stages, sessions, and what took the time, each with its reasons."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from textual.content import Content

from sewalong.progress.pace.duration_words import each_short, hours_short
from sewalong.progress.pace.forecast import Forecast
from sewalong.progress.pace.forecast_words import (
    HEADINGS,
    Columns,
    hours_left,
    table,
    why,
    why_in_all,
)
from sewalong.progress.pace.session_words import session_lines
from sewalong.progress.pace.sessions import SessionFacts, StageTime
from sewalong.progress.record.route import Route
from sewalong.progress.record.time_words import day_said
from sewalong.screens.widgets.literal_text import Words
from sewalong.screens.widgets.reasoned import ReasonedRow

LAST_SESSIONS = 12
BAR = "▇"
WIDEST_BAR, NARROW_BAR = 24, 10


def answer(left: Forecast) -> str:
    """All that is left, in one range."""
    words = hours_left(left)
    return f"{words[:1].upper()}{words[1:]}" if words else "Nothing is left to do."


def stage_rows(
    left: Forecast, spent: Sequence[StageTime], *, narrow: bool
) -> Iterator[Words | ReasonedRow]:
    """A row for each stage with something to do, and one for all of them."""
    rows = table(left)
    if not rows or left.in_all is None:
        return
    widest = max(len(row.label) for row in rows)
    yield Words(_columns(HEADINGS, widest, narrow=narrow), classes="heading spaced")
    took = {one.stage: one.sentence for one in spent}
    for row, one in zip(rows, left.stages, strict=True):
        so_far = took.get(one.pace.stage.id)
        reasons = (*why(one), *((f"So far {so_far}.",) if so_far else ()))
        words = Words(_columns(row, widest, narrow=narrow))
        yield ReasonedRow(words, of=one.pace.stage.label.capitalize(), why=reasons)
    in_all = Columns("in all", "", "", hours_short(left.in_all), "" if narrow else "enter: why")
    words = Words(_columns(in_all, widest, narrow=narrow))
    yield ReasonedRow(words, of="In all", why=why_in_all(left))


def _columns(row: Columns, widest: int, *, narrow: bool) -> str:
    """A row as it lines up; what a small window has no room for is behind enter."""
    if narrow:
        return f"{row.label:<{widest}} {row.in_all:>12} {row.source}"
    return f"{row.label:<{widest}}{row.to_go:>7}   {row.each:<13}{row.in_all:<17}{row.source}"


def session_rows(
    facts: Sequence[SessionFacts], route: Route, widest: int
) -> Iterator[Words | ReasonedRow]:
    """The last few in which anything was counted: day, pieces, bar."""
    shown = [session for session in facts if session.pieces][-LAST_SESSIONS:]
    if not shown:
        yield Words("Nothing counted yet.")
        return
    most = max(session.pieces for session in shown)
    digits = len(str(most))
    for session in shown:
        day = day_said(session.opened.date())
        text = Content.assemble(
            f"{day:>6}  {session.pieces:>{digits}}  ", (_bar(session.pieces, most, widest), "$good")
        )
        yield ReasonedRow(Words(text), of=f"The {day}", why=session_lines(session, route))


def time_rows(times: Sequence[StageTime], widest: int) -> Iterator[Words | ReasonedRow]:
    """The longest first: stage, hours, bar."""
    if not times:
        yield Words("Not enough is known yet.")
        return
    most = max(time.hours for time in times)
    label = max(len(time.label) for time in times)
    for time in times:
        spent = each_short(time.hours * 60) if time.hours else "no time"
        text = Content.assemble(
            f"{time.label:<{label}}  {spent:>10}  ", (_bar(time.hours, most, widest), "$good")
        )
        reason = f"{time.sentence[:1].upper()}{time.sentence[1:]}."
        yield ReasonedRow(Words(text), of=time.label.capitalize(), why=(reason,))


def _bar(amount: float, most: float, widest: int) -> str:
    """A bar as long as its share of the most; never nothing for something."""
    cells = max(1, round(widest * amount / most)) if most and amount > 0 else 0
    return BAR * cells

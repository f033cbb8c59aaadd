"""How is it going? Sessions, pace, what took the time, and what is left as a range."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date

from textual.app import ComposeResult
from textual.binding import Binding
from textual.containers import Horizontal, VerticalScroll
from textual.content import Content

from sewalong.progress.pace.by_date import by_date
from sewalong.progress.pace.forecast import Forecast
from sewalong.progress.pace.sessions import (
    SessionFacts,
    StageTime,
    what_took_the_time,
    work_over_time,
)
from sewalong.screens.asking import AskingScreen
from sewalong.screens.prompts.dialogs import Field, FormDialog, LinesDialog
from sewalong.screens.widgets.breakpoints import mark_size
from sewalong.screens.widgets.literal_text import Words
from sewalong.service.looks import how_it_goes
from sewalong.service.open_quilt import OpenQuilt

LAST_SESSIONS = 12
BAR = "▇"
SURE = "="
PERHAPS = "."
"""Hours there will be at least, and those there may be."""

WIDEST_BAR = 24
NARROW_BAR = 10


class PaceScreen(AskingScreen[None]):
    """Bars for looking, and the same facts in words."""

    CSS_PATH = ["facts.tcss", "sheet.tcss"]
    BINDINGS = [
        Binding("escape,g,G,enter", "leave", "back", id="pace.leave"),
        Binding("d,D", "wanted_by", "wanted by", id="pace.wanted_by"),
    ]

    def __init__(self, quilt: OpenQuilt) -> None:
        super().__init__()
        self._quilt = quilt

    def compose(self) -> ComposeResult:
        state, going = self._quilt.state, how_it_goes(self._quilt)
        pace, facts = going.pace, going.sessions
        left = self._left = going.left
        with Horizontal(id="top"):
            yield Words(state.quilt.name, id="top-name")
            yield Words("how is it going?", id="top-clock")
        with VerticalScroll(classes="sheet"):
            yield Words("What is left, as a range and not a promise", classes="sheet-title")
            yield from _left(left)
            yield Words("Pieces in each session", classes="sheet-title spaced")
            yield from _sessions(facts, self._bar())
            yield Words(
                "Hours of work so far, and the range to the end", classes="sheet-title spaced"
            )
            yield from _course(facts, left, self._bar())
            yield Words("What took the time", classes="sheet-title spaced")
            yield from _times(what_took_the_time(pace), self._bar())
        yield Words("d: wanted by a date   up/down: read on   esc: back", id="keys")

    def _bar(self) -> int:
        return WIDEST_BAR if self.app.size.width >= 70 else NARROW_BAR

    def on_mount(self) -> None:
        self.query_one(VerticalScroll).focus()

    def on_resize(self) -> None:
        mark_size(self)

    def action_wanted_by(self) -> None:
        """Hours a week for a date, and plainly when it cannot be done."""
        self.ask_in_turn(self._wanted_by())

    async def _wanted_by(self) -> None:
        said: list[str] = []

        def work_out(values: dict[str, str]) -> str | None:
            try:
                wanted = date.fromisoformat(values["date"].strip())
            except ValueError:
                return "Write the date as year-month-day, such as 2027-03-01."
            said[:] = [by_date(self._left, self._quilt.now().date(), wanted).sentence]
            return None

        lines = (Field("date", "Wanted by (year-month-day)"),)
        if await self.app.push_screen_wait(FormDialog("Wanted by a date", lines, work_out)):
            await self.app.push_screen_wait(LinesDialog("Wanted by a date", said))

    def action_leave(self) -> None:
        """Back to sewing."""
        self.dismiss(None)


def _left(left: Forecast) -> list[Words]:
    said = [Words(Content.styled(left.sentence, "bold $number"), classes="fact-line")]
    return said + [Words(line, classes="fact-line") for line in left.lines]


def _sessions(facts: Sequence[SessionFacts], widest: int) -> list[Words]:
    shown = [session for session in facts if session.pieces][-LAST_SESSIONS:]
    if not shown:
        return [Words("Nothing counted yet.", classes="fact-line")]
    most = max(session.pieces for session in shown)
    return [
        Words(
            Content.assemble(
                f"{session.opened:%d %b}  ",
                (_bar(session.pieces, most, widest), "$good"),
                f"  {session.pieces} in {session.hours:.1f} h",
            ),
            classes="fact-line",
        )
        for session in shown
    ]


def _course(facts: Sequence[SessionFacts], left: Forecast, widest: int) -> list[Words]:
    """The hours added up session by session; then where the end lies, from low to high."""
    points = work_over_time(facts)
    so_far = points[-1].hours if points else 0.0
    most = so_far + left.high
    rows = [
        Content.assemble(
            f"{point.at:%d %b}  ",
            (_bar(point.hours, most, widest), "$good"),
            f"  {point.hours:.1f} h, {point.units} units",
        )
        for point in points[-LAST_SESSIONS:]
    ]
    if not left.nothing_left:
        sure, range_ = (round(widest * hours / most) for hours in (so_far + left.low, most))
        done = round(widest * so_far / most)
        rows.append(
            Content.assemble(
                "the end ",
                (BAR * done, "$good"),
                (SURE * (sure - done), "$quiet"),
                (PERHAPS * (range_ - sure), "$quiet"),
                f"  between {so_far + left.low:.1f} and {most:.1f} h",
            )
        )
    return [Words(row, classes="fact-line") for row in rows]


def _times(times: Sequence[StageTime], widest: int) -> list[Words]:
    if not times:
        return [Words("Not enough is known yet.", classes="fact-line")]
    most = max(time.hours for time in times)
    return [
        Words(
            Content.assemble((_bar(time.hours, most, widest), "$good"), f"  {time.sentence}"),
            classes="fact-line",
        )
        for time in times
    ]


def _bar(amount: float, most: float, widest: int) -> str:
    """A bar as long as its share of the most; never nothing for something."""
    cells = max(1, round(widest * amount / most)) if most else 0
    return f"{BAR * cells:<{widest}}"

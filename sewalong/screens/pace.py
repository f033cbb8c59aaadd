"""How is it going? Sessions, pace, what took the time, and what is left as a range."""

from __future__ import annotations

from collections.abc import Sequence

from textual.app import ComposeResult
from textual.containers import Horizontal, VerticalScroll
from textual.content import Content

from sewalong.piecing.method import Noun
from sewalong.progress.pace.by_date import by_date, hours_of_habit, read_day
from sewalong.progress.pace.duration_words import each_short, hours_short
from sewalong.progress.pace.forecast import Forecast
from sewalong.progress.pace.forecast_words import HEADINGS, Columns, summary, table
from sewalong.progress.pace.hours_ahead import Hours
from sewalong.progress.pace.session_words import what_is_missing
from sewalong.progress.pace.sessions import SessionFacts, StageTime, hours_so_far
from sewalong.progress.record.time_words import spoken
from sewalong.screens.helped import HelpedScreen
from sewalong.screens.prompts.common import whole
from sewalong.screens.prompts.dialogs import Field, FormDialog, LinesDialog
from sewalong.screens.widgets.breakpoints import NARROW_BELOW, mark_size
from sewalong.screens.widgets.keys import Key, help_at, keys_with, line_of
from sewalong.screens.widgets.literal_text import Words
from sewalong.service.looks import how_it_goes
from sewalong.service.open_quilt import OpenQuilt

LAST_SESSIONS = 12
BAR = "▇"
SURE = "="
PERHAPS = "."
GUESS = "?"
"""Hours there will be at least, those there may be, and those that are only guessed."""

NOTHING = Hours(0.0, 0.0, 0.0)

WIDEST_BAR = 24
NARROW_BAR = 10


KEYS = (
    Key(
        "pace.wanted_by",
        "d",
        "wanted_by",
        "wanted by a date",
        "How many hours a week it takes to be done by a date.",
        True,
        words="deadline birthday finish when",
    ),
    Key(
        "pace.leave", "escape", "leave", "back", "Back to sewing.", True, ("g", "enter"), "quit sew"
    ),
    help_at("pace"),
)


class PaceScreen(HelpedScreen[None]):
    """Bars for looking, and the same facts in words."""

    CSS_PATH = ["facts.tcss", "sheet.tcss"]
    BINDINGS = [
        *(key.binding() for key in KEYS),
    ]

    def __init__(self, quilt: OpenQuilt) -> None:
        super().__init__()
        self._quilt = quilt
        self.keys = keys_with(quilt.preferences.keys, KEYS)

    def compose(self) -> ComposeResult:
        state, going = self._quilt.state, how_it_goes(self._quilt)
        facts, left = going.sessions, going.left
        self._left = left
        with Horizontal(id="top"):
            yield Words(state.quilt.name, id="top-name")
            yield Words("how is it going?", id="top-clock")
        with VerticalScroll(classes="sheet"):
            yield Words("What is left, as a range and not a promise", classes="sheet-title")
            yield from _left(left, narrow=self._bar() == NARROW_BAR)
            yield Words("Pieces in each session", classes="sheet-title spaced")
            yield from _sessions(facts, self._bar())
            yield Words(
                "Hours measured so far, and what is still to come", classes="sheet-title spaced"
            )
            unit = state.quilt.method.pile(state.quilt.method.unit).noun
            yield from _course(facts, left, unit, self._bar())
            yield Words("What took the time", classes="sheet-title spaced")
            yield from _times(going.spent, self._bar())
        yield Words(line_of(self.app.size.width - 4, self.keys), id="keys")

    def _bar(self) -> int:
        return WIDEST_BAR if self.app.size.width >= NARROW_BELOW else NARROW_BAR

    def on_mount(self) -> None:
        self.query_one(VerticalScroll).focus()

    def on_resize(self) -> None:
        mark_size(self)
        self.query_one("#keys", Words).say(line_of(self.app.size.width - 4, self.keys))

    def action_wanted_by(self) -> None:
        """Hours a week for a date, held against a habit, and plainly when it cannot be done."""
        self.ask_in_turn(self._wanted_by())

    async def _wanted_by(self) -> None:
        said: list[str] = []

        def work_out(values: dict[str, str]) -> str | None:
            minutes, times = values["minutes"].strip(), values["times"].strip()
            if bool(minutes) != bool(times):
                return "Write both, the minutes of a session and how many a week, or neither."
            try:
                wanted = read_day(values["date"])
                a_week = hours_of_habit(whole(minutes), whole(times)) if minutes else None
            except ValueError as error:
                return str(error)
            said[:] = by_date(self._left, self._quilt.now().date(), wanted, a_week).lines
            return None

        lines = (
            Field("date", "Wanted by (year-month-day)"),
            Field("minutes", "Minutes of a session (empty: as it was so far)"),
            Field("times", "Sessions a week (empty: as it was so far)"),
        )
        if await self.app.push_screen_wait(FormDialog("Wanted by a date", lines, work_out)):
            await self.app.push_screen_wait(LinesDialog("Wanted by a date", said))

    def action_leave(self) -> None:
        """Back to sewing."""
        self.dismiss(None)


def _left(left: Forecast, *, narrow: bool) -> list[Words]:
    first, *others = summary(left)
    said = [Words(Content.styled(first, "bold $number"), classes="fact-line")]
    said += [Words(line, classes="fact-line") for line in others]
    rows = table(left)
    if rows:
        said.append(Words(_columns(HEADINGS, narrow=narrow), classes="fact-line spaced"))
        said += [Words(_columns(row, narrow=narrow), classes="fact-line") for row in rows]
    return said


def _columns(row: Columns, *, narrow: bool) -> str:
    """A row as it lines up; what a small window has no room for is in the commands."""
    if narrow:
        return f"{row.label}{row.in_all:>{28 - len(row.label)}} {row.source}"
    return f"{row.label:<18}{row.to_go:>5}   {row.each:<13}{row.in_all:<17}{row.source}"


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
                f"  {session.pieces} in {spoken(session.length)}{what_is_missing(session)}",
            ),
            classes="fact-line",
        )
        for session in shown
    ]


def _course(facts: Sequence[SessionFacts], left: Forecast, unit: Noun, widest: int) -> list[Words]:
    """The hours measured added up session by session; then how far there is to go at their
    pace; then the guess for the rest, in a row of its own."""
    added_up = list(zip(facts, hours_so_far(facts), strict=True))
    so_far = added_up[-1][1] if added_up else 0.0
    ahead = left.measured or NOTHING
    guessed = left.guessed or NOTHING
    most = so_far + ahead.high + guessed.high
    rows = [
        Content.assemble(
            f"{one.opened:%d %b}  ",
            (_bar(hours, most, widest), "$good"),
            f"  {each_short(hours * 60) if hours else 'no time'}, {unit.count(one.units)}",
        )
        for one, hours in added_up[-LAST_SESSIONS:]
    ]
    done = BAR * round(widest * so_far / most) if most else ""
    if left.measured is not None:
        sure, range_ = (round(widest * hours / most) for hours in (ahead.low, ahead.high))
        more = f"{SURE * sure + PERHAPS * (range_ - sure):<{widest - len(done)}}"
        words = f"  {hours_short(ahead)} more at your pace"
        rows.append(Content.assemble("to go   ", (done, "$good"), (more, "$quiet"), words))
    if left.guessed is not None:
        bar = f"{GUESS * round(widest * guessed.high / most):>{widest}}"
        words = f"  {hours_short(guessed)} at what was never timed"
        rows.append(Content.assemble("a guess ", (bar, "$quiet"), words))
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

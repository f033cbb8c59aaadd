"""How is it going? The answer first, then stage by stage, then pictures of the sessions so far."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date

from textual.app import ComposeResult
from textual.containers import Horizontal, Vertical
from textual.widget import Widget

from sewalong.progress.pace.by_date import by_date, hours_of_habit, read_day
from sewalong.progress.pace.course import course, course_in_words
from sewalong.progress.pace.duration_words import hours_short
from sewalong.progress.pace.forecast_words import sessions_left
from sewalong.screens.following import FollowingScreen
from sewalong.screens.prompts.common import whole
from sewalong.screens.prompts.dialogs import Field, FormDialog, LinesDialog
from sewalong.screens.widgets.big_number import BigText
from sewalong.screens.widgets.block_letters import Dot, can_be_drawn
from sewalong.screens.widgets.breakpoints import is_narrow, is_roomy, is_wide, mark_size
from sewalong.screens.widgets.course_view import CourseView
from sewalong.screens.widgets.keys import Key, help_at, keys_with, line_of
from sewalong.screens.widgets.literal_text import Words
from sewalong.screens.widgets.pace_rows import (
    NARROW_BAR,
    WIDEST_BAR,
    answer,
    session_rows,
    stage_rows,
    time_rows,
)
from sewalong.screens.widgets.reasoned import ReasonedPage
from sewalong.service.looks import how_it_goes
from sewalong.service.open_quilt import OpenQuilt

KEYS = (
    Key(
        "pace.why",
        "enter",
        "why",
        "why",
        "What the marked number comes from.",
        True,
        words="reason explain how measured guess",
    ),
    Key(
        "pace.wanted_by",
        "d",
        "wanted_by",
        "wanted by a date",
        "How many hours a week it takes to be done by a date.",
        True,
        words="deadline birthday finish when",
    ),
    Key("pace.leave", "escape", "leave", "back", "Back to sewing.", True, ("g",), "quit sew"),
    help_at("pace"),
)


LARGE = Dot(2, 1)
"""The dots of the answer, where there is room for it to be read from a metre away."""


class PaceScreen(FollowingScreen[None]):
    """A table with its reasons behind enter, and plots of the same record."""

    CSS_PATH = ["facts.tcss", "sheet.tcss", "reasoned.tcss", "pace.tcss"]
    BINDINGS = [
        *(key.binding() for key in KEYS),
    ]

    def __init__(self, quilt: OpenQuilt) -> None:
        super().__init__(quilt)
        self.keys = keys_with(quilt.preferences.keys, KEYS)
        self._going = how_it_goes(quilt)
        self._wanted: date | None = None
        self._form: tuple[bool, bool, bool] | None = None

    def compose(self) -> ComposeResult:
        with Horizontal(id="top"):
            yield Words(self.quilt.state.quilt.name, id="top-name")
            yield Words("how is it going?", id="top-clock")
        yield ReasonedPage(classes="sheet")
        yield Words(id="keys")

    def _page(self) -> Iterator[Widget]:
        left, narrow = self._going.left, is_narrow(self)
        large = hours_short(left.in_all) if left.in_all else ""
        if is_roomy(self) and large and can_be_drawn(large):
            yield BigText(large, LARGE, classes="answer")
        yield Words(answer(left), classes="answer")
        sessions = sessions_left(left)
        yield Words(f"{sessions[:1].upper()}{sessions[1:]}." if sessions else "")
        bar = NARROW_BAR if narrow else WIDEST_BAR
        numbers = [*stage_rows(left, self._going.spent, narrow=narrow)]
        plots = [
            Words("Pieces in each session", classes="sheet-title spaced"),
            *session_rows(self._going.sessions, self.quilt.state.route, bar),
            Words("Hours over the dates", classes="sheet-title spaced"),
            *self._course(),
        ]
        # Beside the plots there is room below the numbers.
        (numbers if is_wide(self) else plots).extend(
            (
                Words("What took the time", classes="sheet-title spaced"),
                *time_rows(self._going.spent, bar),
            )
        )
        halves = (Vertical(*half, classes="half") for half in (numbers, plots))
        yield Horizontal(*halves, classes="halves")

    def _course(self) -> Iterator[Widget]:
        today = self.quilt.now().date()
        found = course(self._going.sessions, self._going.left, today, self._wanted)
        yield CourseView(found)
        yield from (Words(line) for line in course_in_words(found))

    def on_mount(self) -> None:
        self.query_one(ReasonedPage).focus()
        self.follow()

    def on_resize(self) -> None:
        mark_size(self)
        form = (is_narrow(self), is_wide(self), is_roomy(self))
        if form != self._form:
            self._form = form
            self.call_later(self.bring_up_to_date)
        self.query_one("#keys", Words).say(line_of(self.app.size.width - 4, self.keys))

    async def show_anew(self) -> None:
        """The page as it stands now, in the form that fits the window."""
        self._going = how_it_goes(self.quilt)
        await self.query_one(ReasonedPage).put(self._page(), keep=True)

    def action_why(self) -> None:
        """What the marked number comes from."""
        self.query_one(ReasonedPage).ask()

    def on_reasoned_page_asked(self, event: ReasonedPage.Asked) -> None:
        """The reasons behind a number, in a dialog."""
        event.stop()
        self.app.push_screen(LinesDialog(event.row.of, event.row.why))

    def action_wanted_by(self) -> None:
        """Hours a week for a date, held against a habit, and plainly when it cannot be done."""
        self.ask_in_turn(self._wanted_by())

    async def _wanted_by(self) -> None:
        said: list[str] = []
        chosen: list[date] = []

        def work_out(values: dict[str, str]) -> str | None:
            minutes, times = values["minutes"].strip(), values["times"].strip()
            if bool(minutes) != bool(times):
                return "Write both, the minutes of a session and how many a week, or neither."
            try:
                wanted = read_day(values["date"])
                a_week = hours_of_habit(whole(minutes), whole(times)) if minutes else None
            except ValueError as error:
                return str(error)
            today = self.quilt.now().date()
            said[:] = by_date(self._going.left, today, wanted, a_week).lines
            chosen[:] = [wanted]
            return None

        lines = (
            Field("date", "Wanted by (year-month-day)"),
            Field("minutes", "Minutes of a session (empty: as it was so far)"),
            Field("times", "Sessions a week (empty: as it was so far)"),
        )
        if await self.app.push_screen_wait(FormDialog("Wanted by a date", lines, work_out)):
            self._wanted = chosen[0]
            await self.bring_up_to_date()
            await self.app.push_screen_wait(LinesDialog("Wanted by a date", said))

    def action_leave(self) -> None:
        """Back to sewing."""
        self.dismiss(None)

"""What now? The sewing screen: one stage, one large number to go, one key to count."""

from __future__ import annotations

from textual.app import ComposeResult
from textual.binding import Binding
from textual.containers import Horizontal, Vertical

from sewalong.progress.acts.counting import Count
from sewalong.progress.acts.steering import ChooseStage
from sewalong.progress.acts.undoing import Redo, Undo
from sewalong.progress.joining.border_side import expected_in_words
from sewalong.progress.joining.cut_span import ruler_words
from sewalong.progress.joining.next_joins import joining
from sewalong.progress.joining.next_stage import then_in_words
from sewalong.progress.joining.stage_words import what_to_do
from sewalong.progress.plan.plan import out_of, over_in_words, spare_in_words
from sewalong.progress.record.events.sessions import session_length
from sewalong.progress.record.joined_rows import asks_which_rows, unnumbered
from sewalong.progress.record.route import ADD_BORDERS
from sewalong.progress.record.state import Standing
from sewalong.progress.record.time_words import clock
from sewalong.progress.resuming.interruption import after_interruption
from sewalong.progress.safety.cautions import hazards_in_words
from sewalong.screens.carrying_out import CarryingOut
from sewalong.screens.prompts.registry import ask
from sewalong.screens.widgets.breakpoints import LOOK_AGAIN, is_narrow, mark_size
from sewalong.screens.widgets.hand_panel import HandPanel, Saying, Shown
from sewalong.screens.widgets.keys import SEWING_KEYS, cap_of, key_line
from sewalong.screens.widgets.literal_text import Words
from sewalong.screens.widgets.picture_view import PictureView
from sewalong.screens.widgets.route_panel import RoutePanel, route_height
from sewalong.screens.widgets.sewing_layout import SewingLayout, sewing_layout
from sewalong.screens.widgets.unsaved_banner import UnsavedBanner
from sewalong.service.acting import sit_down
from sewalong.service.looks import came_to, coloured, top_pictured, work_pictured
from sewalong.service.open_quilt import OpenQuilt

MOST_DIGITS = 4

FAR = "far"
"""The class of the screen while it is shown for far off."""


class SewingScreen(CarryingOut):
    """The screen that is open nearly all the time. It shows an outcome and computes none."""

    BINDINGS = [
        *(key.binding() for key in SEWING_KEYS),
        Binding("ctrl+z", "undo", "undo", show=False, id="sew.undo_too"),
        Binding("ctrl+y", "redo", "put back", show=False, id="sew.redo_too"),
        *(
            Binding(digit, f"type('{digit}')", show=False, id=f"sew.digit{digit}")
            for digit in "0123456789"
        ),
        Binding("backspace", "rub_out", show=False, id="sew.rub_out"),
    ]

    def __init__(self, quilt: OpenQuilt) -> None:
        super().__init__(quilt)
        self.typed = ""
        self._caption = ""

    def compose(self) -> ComposeResult:
        now, hand = self._outcome.plan, self._outcome.hand
        with Horizontal(id="top"):
            yield Words(self.quilt.state.quilt.name, id="top-name")
            yield Words(self._clock_line(), id="top-clock")
        yield UnsavedBanner(self.unsaved, cap_of("elsewhere", self.keys))
        with Horizontal(id="body"):
            yield HandPanel(self.keys, self._shown(), id="hand")
            with Vertical(id="beside"):
                yield RoutePanel(
                    now, hand.line.stage.id, self._footer(), self._layout().route, id="route"
                )
                yield Words(id="top-caption")
                yield PictureView(id="top-now")
        yield Words(id="message")
        yield Words(key_line(self.app.size.width - 4, self.keys), id="keys")

    def _place_the_route(self, layout: SewingLayout) -> None:
        beside = self.query_one("#beside")
        beside.display = layout.route > 0
        if layout.route:
            beside.styles.width = layout.route

    def on_mount(self) -> None:
        mark_size(self)
        self._place_the_route(self._layout())
        self.set_interval(LOOK_AGAIN, self._look_again)
        # The number comes first. What else there is to say, and the picture, which wants the
        # geometry loaded, come when it stands.
        self.call_after_refresh(self._settle_down)

    @property
    def _is_filled(self) -> bool:
        """False where the app ends before this screen was ready."""
        return bool(self.query(PictureView))

    def _settle_down(self) -> None:
        if not self._is_filled:
            return
        self.carry(lambda: sit_down(self.quilt), say=False)
        self._show_pictures()
        self.show()

    def on_resize(self) -> None:
        mark_size(self)
        self.show()

    def on_screen_resume(self) -> None:
        self.show()

    # -- showing ---------------------------------------------------------------

    def show(self) -> None:
        """Draw everything that is not drawn so already."""
        if not self._is_filled:
            return
        now, hand = self._outcome.plan, self._outcome.hand
        self._show_top()
        self.query_one(UnsavedBanner).show()
        if self.query_one(PictureView).was_shown:
            self._show_pictures()
        self.query_one(HandPanel).show(self._shown(), self._caption)
        route = self._layout().route
        self.query_one(RoutePanel).show(now, hand.line.stage.id, self._footer(), route)
        self._show_message()
        self.query_one("#keys", Words).say(key_line(self.app.size.width - 4, self.keys))

    def _footer(self) -> tuple[str, str]:
        """What is spare and what is over, below the route."""
        now = self._outcome.plan
        over = over_in_words(self.quilt.state, now)
        return (
            spare_in_words(now),
            f"left over: {over}" if over else "nothing left over",
        )

    @property
    def _came_to(self) -> tuple[str, ...]:
        """What a quilt that is done came to, one fact each; empty until it is."""
        facts = came_to(self.quilt, self._outcome.plan)
        return tuple(f"{label}: {text}" if label else text for label, text in facts)

    def _layout(self) -> SewingLayout:
        width, height = self.app.size
        route = route_height(len(self._outcome.plan.lines), height)
        return sewing_layout(width, height, self._digits, route)

    @property
    def _digits(self) -> int:
        """How many the number to go can have at this stage."""
        line = self._outcome.hand.line
        return len(str(max(line.needed, line.to_do)))

    def _shown(self) -> Shown:
        layout, done = self._layout(), self._came_to
        # Beside the top where the route stood, else below it.
        facts = () if layout.route else done
        mark = f"Every stage is done. Press {cap_of('aside', self.keys)} to mark the quilt done."
        if done and self.quilt.state.standing is not Standing.DONE:
            facts = (mark, *facts)
        return Shown(self._outcome.hand, self._saying(), layout, bool(done), facts)

    def _saying(self) -> Saying:
        state, hand = self.quilt.state, self._outcome.hand
        stage, which = hand.line.stage, hand.which
        if stage.id == ADD_BORDERS:
            expected = expected_in_words(state.quilt, state.target, state.done[stage.id])
            which = f"{which} {expected}".strip()
        return Saying(
            do=what_to_do(state.quilt, stage),
            which=which,
            ruler=ruler_words(state.quilt, stage.id),
            then=then_in_words(state, self._outcome.plan, hand.line),
        )

    def _show_far(self) -> None:
        """The same from far off: of what is said one thing, else the caution of the stage."""
        from sewalong.screens.widgets.far_view import Far, FarView

        hand, now = self._outcome.hand, self._outcome.plan
        line = hand.line
        typed = f"{self.typed}, then enter" if self.typed else ""
        then = then_in_words(self.quilt.state, now, line)
        far = Far(
            number=line.to_do,
            digits=self._digits,
            stage="done" if self._came_to else line.stage.label,
            noun=f"{line.stage.counts.of(line.to_do)} to go",
            said=typed or self._message or self._advice or then or hazards_in_words(line.stage),
        )
        self.query_one(FarView).show(far)

    def _show_pictures(self) -> None:
        """The work of the stage in hand beside the number, and where there is room the top."""
        from sewalong.progress.joining.sewn_top import said_of_the_top

        state, layout, done = self.quilt.state, self._layout(), self._came_to
        own = coloured(self.quilt)
        if done:
            found = top_pictured(self.quilt, *layout.whole_picture)
        else:
            found = work_pictured(self.quilt, self._outcome.hand, *layout.picture)
        self._caption = found.shows.value if found else ""
        self.query_one("#picture", PictureView).show(found.picture if found else None, own)
        self._place_the_route(layout)
        top = None if done else top_pictured(self.quilt, *layout.top)
        beside = "\n\n".join(done) or (said_of_the_top(state) if top else "")
        self.query_one("#top-caption", Words).say(beside)
        self.query_one(RoutePanel).display = not done
        self.set_class(bool(done), "done")
        self.query_one("#top-now", PictureView).show(top.picture if top else None, own)

    def _show_top(self) -> None:
        self.query_one("#top-name", Words).say(self.quilt.state.quilt.name)
        self.query_one("#top-clock", Words).say(self._clock_line())

    def _clock_line(self) -> str:
        state, now = self.quilt.state, self._outcome.plan
        session = state.session
        length = clock(session_length(session, self.quilt.now())) if session else "closed"
        units = out_of(now.units.made, state.units_wanted, "units")
        return f"session {length}" if is_narrow(self) else f"{units}   session {length}"

    def _show_message(self) -> None:
        self._forget_what_is_past()
        if self.has_class(FAR):
            self._show_far()
        line = self.query_one("#message", Words)
        typing = bool(self.typed) and not self._refused
        line.set_class(self._refused, "refusal")
        line.set_class(typing, "typed")
        if typing:
            line.say(f"{self.typed}_  enter: count them   esc: clear")
        elif self._refused:
            line.say(self._message)
        else:
            line.say("\n".join(text for text in (self._message, self._advice) if text))

    def _look_again(self) -> None:
        if len(self.unsaved):
            self._save_again()
            return
        self.take_in()
        interrupted = after_interruption(self.quilt.state, self.quilt.now())
        if interrupted and self._advice != interrupted:
            self._message = ""
            self._advise(interrupted)
            self._show_message()
        self._show_top()

    # -- keys ------------------------------------------------------------------

    def action_type(self, digit: str) -> None:
        """Gather a typed number; what would be too long is refused, and what was typed stays."""
        if len(self.typed) < MOST_DIGITS:
            self._type((self.typed + digit).lstrip("0"))
            return
        several, clear = (cap_of(name, self.keys) for name in ("several", "leave"))
        self.tell(
            f"{MOST_DIGITS} digits are the most. {several.capitalize()} counts {self.typed}, "
            f"{clear} clears it.",
            refused=True,
        )

    def action_rub_out(self) -> None:
        """Take back the last digit of a half-typed number."""
        if self.typed:
            self._type(self.typed[:-1])

    def _type(self, number: str) -> None:
        """Show the half-typed number in place of what was said before."""
        self.typed = number
        self._message, self._refused = "", False
        self._show_message()

    def action_count_one(self) -> None:
        """Count one; a half-typed number is neither lost nor mixed in."""
        if self.typed:
            several, clear = (cap_of(name, self.keys) for name in ("several", "leave"))
            self.tell(
                f"Press {several} to count {self.typed}, or {clear} to clear it.", refused=True
            )
            return
        self._count(1)

    def action_count_typed(self) -> None:
        """Count as many as were typed."""
        if not self.typed:
            several, one = (cap_of(name, self.keys) for name in ("several", "count"))
            self.tell(f"Type how many, then {several}. {one.capitalize()} counts one.")
            return
        n, self.typed = int(self.typed), ""
        self._count(n)

    def _count(self, n: int) -> None:
        stage = self._outcome.hand.line.stage.id
        named = asks_which_rows(self.quilt.state, stage)
        if named and n == 1:
            self.action_ask("join")
            return
        self.count(Count(stage, n))
        if named and unnumbered(self.quilt.state):
            self.tell(" ".join((self._message, *joining(self.quilt.state).lines)))
        self._ask_on_leaving()

    def action_undo(self) -> None:
        """Take back the last act, as this window shows it; of a half-typed number only that."""
        if self._cleared():
            return
        last = self.quilt.state.last_act
        if self.attempt(Undo(last[-1] if last else None)) is None:
            self.tell(f"{self._message} {cap_of('redo', self.keys)} puts it back.")

    def action_redo(self) -> None:
        """Put back what was taken back last, as this window shows it."""
        if self._cleared():
            return
        last = self.quilt.state.last_undone
        if last:
            self.attempt(Redo(last[-1]))
            return
        quilts, end = (cap_of(name, self.keys) for name in ("leave", "close"))
        self.tell(
            f"There is nothing to put back. {quilts.capitalize()} goes to all quilts, {end} ends the "
            "session.",
            refused=True,
        )

    def _cleared(self) -> bool:
        """Clear a half-typed number, and say so, as another thing may have been meant."""
        number, self.typed = self.typed, ""
        if number:
            self.tell(f"{number} is cleared. Nothing else was changed.")
        return bool(number)

    def action_leave(self) -> None:
        """Clear a typed number, or go back to all quilts with the session still open."""
        if self.typed:
            self._type("")
            return
        if self.has_class(FAR):
            self.action_far_view()
            return
        if self.can_be_left():
            self.dismiss(None)

    def action_far_view(self) -> None:
        """The number as large as the window; again for all that stands beside it."""
        from sewalong.screens.widgets.far_view import FarView

        if not self.query(FarView):
            self.mount(FarView(id="far"), before="#message")
        self.toggle_class(FAR)
        self.call_after_refresh(self.show)

    def action_ask(self, what: str) -> None:
        """One of the longer asks, by its name; then the iron's question, if owed."""
        self.ask_in_turn(self._ask(what))

    async def _ask(self, what: str) -> None:
        await ask(what)(self)
        if self.is_attached:
            self._ask_on_leaving()

    def on_route_panel_stage_clicked(self, event: RoutePanel.StageClicked) -> None:
        """Work at the stage that was clicked, as if it had been chosen by its key."""
        if not self.asks:
            self.attempt(ChooseStage(event.stage))

    def action_pace(self) -> None:
        """Sessions, pace and what is left."""
        from sewalong.screens.pace import PaceScreen

        self.app.push_screen(PaceScreen(self.quilt))

    def action_close_session(self) -> None:
        """Ask about each thing used, take the next step, close, and go back to all quilts."""
        self.ask_in_turn(self._close())

    async def _close(self) -> None:
        from sewalong.screens.prompts.closing_prompts import close

        if await close(self):
            self.dismiss(None)
        elif self.is_attached:
            self.tell("The session stays open.")

"""What now? The sewing screen: one stage, one large number to go, one key to count."""

from __future__ import annotations

from textual.app import ComposeResult
from textual.binding import Binding
from textual.containers import Horizontal

from sewalong.progress.acts.counting import Count
from sewalong.progress.acts.steering import ChooseStage
from sewalong.progress.acts.undoing import Redo, Undo
from sewalong.progress.joining.cut_span import ruler_words
from sewalong.progress.joining.stage_words import what_to_do
from sewalong.progress.plan.plan import out_of, over_in_words, spare_in_words
from sewalong.progress.record.events.sessions import session_length
from sewalong.progress.record.joined_rows import asks_which_rows
from sewalong.progress.record.time_words import clock
from sewalong.progress.resuming.interruption import after_interruption
from sewalong.screens.carrying_out import CarryingOut
from sewalong.screens.prompts.registry import ask
from sewalong.screens.widgets.breakpoints import LOOK_AGAIN, is_roomy, mark_size
from sewalong.screens.widgets.hand_panel import HandPanel, picture_room
from sewalong.screens.widgets.keys import SEWING_KEYS, cap_of, key_line
from sewalong.screens.widgets.literal_text import Words
from sewalong.screens.widgets.picture_view import PictureView
from sewalong.screens.widgets.route_panel import RoutePanel
from sewalong.screens.widgets.unsaved_banner import UnsavedBanner
from sewalong.service.acting import sit_down
from sewalong.service.open_quilt import OpenQuilt

MOST_DIGITS = 4


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

    def compose(self) -> ComposeResult:
        now, hand = self._outcome.plan, self._outcome.hand
        with Horizontal(id="top"):
            yield Words(self.quilt.state.quilt.name, id="top-name")
            yield Words(self._clock_line(), id="top-clock")
        yield UnsavedBanner(self.unsaved, cap_of("elsewhere", self.keys))
        with Horizontal(id="body"):
            yield HandPanel(hand, now, self._do(), self.keys, scale=self._scale, id="hand")
            yield RoutePanel(now, hand.line.stage.id, self._footer(), id="route")
        yield Words(id="message")
        yield Words(key_line(self.app.size.width - 4, self.keys), id="keys")

    def on_mount(self) -> None:
        mark_size(self)
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
        self._show_picture()

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
        self.query_one(HandPanel).show(hand, now, self._do(), scale=self._scale)
        if self.query_one(PictureView).was_shown:
            self._show_picture()
        self.query_one(RoutePanel).show(now, hand.line.stage.id, self._footer())
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
    def _scale(self) -> int:
        return 2 if is_roomy(self) else 1

    def _show_picture(self) -> None:
        """What the stage in hand makes, beside the number."""
        from sewalong.wall.of_quilt import own_colours, picture_made

        state, pile = self.quilt.state, self._outcome.hand.makes_pile
        picture = picture_made(state.quilt, state.target, pile, *picture_room(self._scale))
        self.query_one(PictureView).show(picture, own_colours(state.quilt))

    def _do(self) -> str:
        quilt, stage = self.quilt.state.quilt, self._outcome.hand.line.stage
        ruler = ruler_words(quilt, stage.id)
        do = f"{self._outcome.hand.which} {what_to_do(quilt, stage)}".strip()
        return f"{do} Ruler: {ruler}." if ruler else do

    def _show_top(self) -> None:
        self.query_one("#top-name", Words).say(self.quilt.state.quilt.name)
        self.query_one("#top-clock", Words).say(self._clock_line())

    def _clock_line(self) -> str:
        state, now = self.quilt.state, self._outcome.plan
        session = state.session
        length = clock(session_length(session, self.quilt.now())) if session else "closed"
        units = out_of(now.units.made, state.units_wanted, "units")
        wide = self.app.size.width >= 70
        return f"{units}   session {length}" if wide else f"session {length}"

    def _show_message(self) -> None:
        self._forget_what_is_past()
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
        if asks_which_rows(self.quilt.state, self._outcome.hand.line.stage.id):
            self.action_ask("join")
        else:
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
        self.count(Count(self._outcome.hand.line.stage.id, n))
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
        if self.can_be_left():
            self.dismiss(None)

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

"""What now? The sewing screen: one stage, one large number to go, one key to count."""

from __future__ import annotations

from collections.abc import Callable
from contextlib import suppress

from textual import events, work
from textual.app import ComposeResult
from textual.containers import Horizontal, Vertical
from textual.screen import Screen

from sewalong.piecing.faults import SizeRefused
from sewalong.progress.acts.act import Act
from sewalong.progress.acts.counting import Count
from sewalong.progress.acts.said import Answer, Mention
from sewalong.progress.acts.seam import GoOn
from sewalong.progress.acts.sessions import OpenSession
from sewalong.progress.acts.undoing import Undo
from sewalong.progress.joining.current_stage import InHand, in_hand
from sewalong.progress.measuring.proof import goes_on_unproved
from sewalong.progress.plan.plan import Plan, over_in_words, plan
from sewalong.progress.record.event_words import told
from sewalong.progress.record.events import Recorded
from sewalong.progress.record.refused import Refused
from sewalong.progress.record.time_words import clock
from sewalong.progress.resuming.interruption import after_interruption
from sewalong.progress.resuming.notice import one_line
from sewalong.progress.safety.cautions import CautionFirst
from sewalong.progress.safety.closing_questions import Question, leaving_question
from sewalong.REMOVED import ReadCaution
from sewalong.screens.prompts import stage_prompts as asking
from sewalong.screens.prompts.dialogs import CautionDialog, QuestionDialog
from sewalong.screens.prompts.help import HelpDialog
from sewalong.screens.prompts.registry import ASKS
from sewalong.screens.widgets.big_number import NUMBER_LINES, BigNumber
from sewalong.screens.widgets.breakpoints import is_roomy, mark_size
from sewalong.screens.widgets.keys import SEWING_KEYS, key_line
from sewalong.screens.widgets.literal_text import Words
from sewalong.screens.widgets.picture_view import PictureView
from sewalong.screens.widgets.route_panel import RoutePanel
from sewalong.service.open_quilt import OpenQuilt
from sewalong.store.faults import StoreFault
from sewalong.wall.of_quilt import own_colours, picture_made

LOOK_AGAIN = 1.0
"""Seconds between looks at the record for what another window wrote, and at the clock."""

MOST_DIGITS = 4


class SewingScreen(Screen[None]):
    """The screen that is open nearly all the time. It shows a state and computes none."""

    BINDINGS = [key.binding() for key in SEWING_KEYS]

    def __init__(self, quilt: OpenQuilt) -> None:
        super().__init__()
        self.quilt = quilt
        self.typed = ""
        self._message = ""
        self._refused = False
        self._dialog_coming = False
        self._advice = ""

    def compose(self) -> ComposeResult:
        with Horizontal(id="top"):
            yield Words(id="top-name")
            yield Words(id="top-clock")
        with Horizontal(id="body"):
            with Vertical(id="hand"):
                yield Words(id="stage")
                with Horizontal(id="head"):
                    yield BigNumber(id="number")
                    yield PictureView(id="picture")
                yield Words(id="noun")
                yield Words(id="flow")
                yield Words(id="do")
                yield Words(id="check")
            yield RoutePanel(id="route")
        yield Words(id="message")
        yield Words(id="keys")

    def on_mount(self) -> None:
        self.attempt(OpenSession(), say=False)
        self._advise()
        self.set_interval(LOOK_AGAIN, self._look_again)
        self.show()

    def on_resize(self) -> None:
        mark_size(self)
        self.show()

    def on_screen_resume(self) -> None:
        self.show()

    # -- showing ---------------------------------------------------------------

    @property
    def plan(self) -> Plan:
        """The plan for the state on disk."""
        return plan(self.quilt.state)

    @property
    def hand(self) -> InHand:
        """The stage in hand."""
        return in_hand(self.quilt.state, self.plan)

    def show(self) -> None:
        """Draw everything from the state."""
        state, now = self.quilt.state, self.plan
        hand = in_hand(state, now)
        stage = hand.line.stage
        self._show_top()
        self.query_one("#stage", Words).say(f"{stage.label.upper()}  at the {stage.station.value}")
        number = self.query_one(BigNumber)
        number.number, number.scale = hand.line.to_do, 2 if is_roomy(self) else 1
        self._show_picture(hand)
        self.query_one("#noun", Words).say(_noun(hand, now))
        self.query_one("#flow", Words).say(_flow(hand))
        self.query_one("#do", Words).say(f"{hand.which} {stage.do}".strip())
        self.query_one("#check", Words).say(f"Check: {stage.check}")
        over = over_in_words(state, now)
        footer = (
            f"{now.units.spare or 'no'} units spare",
            f"left over: {over}" if over else "nothing left over",
        )
        self.query_one(RoutePanel).show(now, stage.id, footer)
        self._show_message()
        self.query_one("#keys", Words).say(key_line(self.app.size.width - 4))

    def _show_picture(self, hand: InHand) -> None:
        """What the stage in hand makes, beside the number."""
        state = self.quilt.state
        room = _room(self.query_one(BigNumber).scale)
        try:
            picture = picture_made(state.quilt, state.target, hand.makes_pile, *room)
        except SizeRefused:
            picture = None  # pieces too small for their seams have no picture
        self.query_one(PictureView).show(picture, own_colours(state.quilt))

    def _show_top(self) -> None:
        state, now = self.quilt.state, self.plan
        self.query_one("#top-name", Words).say(state.quilt.name)
        session = state.session
        length = clock(self.quilt.now() - session.opened) if session else "closed"
        units = f"{now.units.made} of {state.target.units} units"
        wide = self.app.size.width >= 70
        self.query_one("#top-clock", Words).say(
            f"{units}   session {length}" if wide else f"session {length}"
        )

    def _show_message(self) -> None:
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

    def tell(self, text: str, *, refused: bool = False) -> None:
        """Say one thing below the stage; a refusal is marked with words, not only colour."""
        self._message = f"Not done: {text}" if refused else text
        self._refused = refused
        self.show()

    def _look_again(self) -> None:
        try:
            if self.quilt.refresh():
                self.tell("Another window recorded something; this is how it stands now.")
        except StoreFault as fault:
            self.tell(str(fault), refused=True)
        interrupted = after_interruption(self.quilt.state, self.quilt.now())
        if interrupted and self._advice != interrupted:
            self._message, self._advice = "", interrupted
            self._show_message()
        self._show_top()

    # -- doing -----------------------------------------------------------------

    def attempt(self, command: Act, *, say: bool = True) -> str | None:
        """Carry out a command and say so; a refusal is said, returned, and changes nothing."""
        try:
            new = self.quilt.do(command)
        except CautionFirst as caution:
            # A second press may come before the dialog for the first is on the screen.
            if not self._dialog_coming:
                self._dialog_coming = True
                self._caution_then(caution, command)
            return None
        except (Refused, StoreFault) as refusal:
            self.tell(str(refusal), refused=True)
            return str(refusal)
        self._advise()
        if say and new:
            self.tell(self._told(new))
        return None

    def _advise(self) -> None:
        """Work out the one thing to say now, and record that it was said."""
        quilt = self.quilt
        line = one_line(quilt.state, quilt.record, self.plan, quilt.now())
        self._advice = line.text if line else ""
        if line and line.mention:
            with suppress(Refused, StoreFault):  # said again next time, and no harm in that
                quilt.do(Mention(line.mention))

    def _told(self, new: tuple[Recorded, ...]) -> str:
        return told(self.quilt.state, new[-1].event, self.quilt.record)

    @work
    async def _caution_then(self, due: CautionFirst, command: Act) -> None:
        """Show the caution; once it is read, carry out what was asked."""
        stage = self.quilt.state.route.stage(due.stage)
        label = stage.label if stage else due.stage
        was_read = await self.app.push_screen_wait(CautionDialog(due.caution, label))
        self._dialog_coming = False
        if was_read:
            self.attempt(ReadCaution(due.stage), say=False)
            self.attempt(command)
            self._ask_on_leaving()
        else:
            self.tell("Nothing was counted.")

    def _count(self, n: int) -> None:
        stage = self.hand.line.stage.id
        unproved = goes_on_unproved(self.quilt.state, stage, self.quilt.now())
        if self.attempt(Count(stage, n)) is None and unproved and not self._dialog_coming:
            with suppress(Refused, StoreFault):
                self.quilt.do(GoOn(stage))
        self._ask_on_leaving()

    def _ask_on_leaving(self) -> None:
        """Ask about the iron if that is owed; after a caution that is due, not over it."""
        question = leaving_question(self.quilt.state, self.hand.line.stage.id)
        if question is not None and not self._dialog_coming:
            self._dialog_coming = True
            self._ask(question)

    @work
    async def _ask(self, question: Question) -> None:
        answer = await self.app.push_screen_wait(QuestionDialog(question))
        self._dialog_coming = False
        if answer is not None:
            self.attempt(Answer(question.id, answer), say=False)

    # -- keys ------------------------------------------------------------------

    def on_key(self, event: events.Key) -> None:
        """Gather a typed number; everything else is a binding."""
        if event.character and event.character in "0123456789":
            event.stop()
            if len(self.typed) < MOST_DIGITS:
                self._type((self.typed + event.character).lstrip("0"))
        elif event.key == "backspace" and self.typed:
            event.stop()
            self._type(self.typed[:-1])

    def _type(self, number: str) -> None:
        """Show the half-typed number in place of what was said before."""
        self.typed = number
        self._message, self._refused = "", False
        self._show_message()

    def action_count_one(self) -> None:
        """Count one; a half-typed number is neither lost nor mixed in."""
        if self.typed:
            self.tell(f"Press enter to count {self.typed}, or esc to clear it.", refused=True)
            return
        self._count(1)

    def action_count_typed(self) -> None:
        """Count as many as were typed."""
        if not self.typed:
            self.tell("Type how many, then enter. Space counts one.")
            return
        n, self.typed = int(self.typed), ""
        self._count(n)

    def action_undo(self) -> None:
        """Take back the last thing, as this window shows it."""
        undoable = self.quilt.state.undoable
        self.attempt(Undo(undoable[-1].seq if undoable else None))

    def action_leave(self) -> None:
        """Clear a typed number, or go back to all quilts with the session still open."""
        if self.typed:
            self._type("")
            return
        self.dismiss(None)

    def action_help(self) -> None:
        """All keys."""
        self.app.push_screen(HelpDialog())

    def action_look(self) -> None:
        """Change between the two looks."""
        self._app_action("toggle_look")

    def _app_action(self, name: str) -> None:
        action: Callable[[], None] = getattr(self.app, f"action_{name}")
        action()

    @work
    async def action_ask(self, what: str) -> None:
        """One of the longer asks, by its name in `ASKS`; then the iron's question, if owed."""
        await ASKS[what](self)
        if self.is_attached:
            self._ask_on_leaving()

    def action_going(self) -> None:
        """Sessions, pace and what is left."""
        from sewalong.screens.pace import GoingScreen

        self.app.push_screen(GoingScreen(self.quilt))

    @work
    async def action_close_session(self) -> None:
        """Ask about each thing used, take the next step, close, and go back to all quilts."""
        if await asking.close(self):
            self.dismiss(None)


def _room(scale: int) -> tuple[int, int]:
    """Columns and lines for the picture beside a number of this scale: as high as it is."""
    return 2 * NUMBER_LINES * scale, NUMBER_LINES * scale


def _noun(hand: InHand, now: Plan) -> str:
    line = hand.line
    if now.complete:
        return "Every stage is done. Press a to mark the quilt done."
    noun = line.stage.counts.of(line.to_do)
    if line.to_do == 0:
        return f"{noun} to go: this stage is done. Press o for another."
    return f"{noun} to go   {line.done} of {line.needed} done"


def _flow(hand: InHand) -> str:
    line = hand.line
    if not hand.makes:
        ready = "The top is ready for it."
        return ready if line.ready else "The top is not ready yet. Press o for another stage."
    takes = f"Takes {hand.takes}, makes {hand.makes}."
    verb = "waits" if line.waiting == 1 else "wait"
    if line.to_do and not line.ready:
        few = f"{line.waiting} {verb}, too few" if line.waiting else "None wait"
        return f"{takes}\n{few}. Press o for another stage."
    waiting = f"{line.waiting_noun.count(line.waiting)} {verb}"
    return f"{takes}\n{waiting.capitalize()}."

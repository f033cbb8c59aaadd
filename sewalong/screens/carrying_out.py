"""Carrying out what is asked at the sewing screen: counts first of all, and what comes with them."""

from __future__ import annotations

from abc import abstractmethod
from collections.abc import Callable
from functools import partial

from msgspec.structs import replace

from sewalong.progress.acts.act import Act
from sewalong.progress.acts.begun import BeginRows
from sewalong.progress.acts.counting import Count
from sewalong.progress.acts.joining import JoinRows
from sewalong.progress.acts.said import Answer
from sewalong.progress.record.joined_rows import asks_which_rows
from sewalong.progress.record.refused import Refused
from sewalong.progress.resuming.notice import Notice
from sewalong.progress.safety.cautions import CautionFirst
from sewalong.screens.helped import HelpedScreen
from sewalong.screens.prompts.registry import ask
from sewalong.screens.widgets.keys import cap_of, keys_of, keys_with
from sewalong.service.acting import Outcome, chain_or_stage_done, do, looked
from sewalong.service.open_quilt import OpenQuilt
from sewalong.service.unsaved import Unsaved
from sewalong.store.faults import StoreFault


class CarryingOut(HelpedScreen[None]):
    """A screen on one quilt that carries acts out and keeps what came of the last one.

    A caution that is due comes up first, the question about the iron after; a count that cannot
    be saved is kept.
    """

    def __init__(self, quilt: OpenQuilt) -> None:
        super().__init__()
        self.quilt = quilt
        self.keys = keys_with(quilt.preferences.keys)
        self.unsaved = Unsaved(quilt)
        self._outcome = looked(quilt)
        self._message = ""
        self._refused = False
        self._advice = ""
        self._said_at = self._advised_at = self._stands_at()
        self._unread = ""
        self._dialog_coming = False
        self._leaves_without = False

    async def count_here(self, n: int) -> None:
        """Count `n` at the stage in hand; of joins the rows are asked for, one after the other."""
        stage = self._outcome.hand.line.stage.id
        while n and asks_which_rows(self.quilt.state, stage):
            await ask("join")(self)
            n -= 1
        if n:
            self.count(Count(stage, n))

    @abstractmethod
    def show(self) -> None:
        """Draw everything that is not drawn so already."""

    @property
    def outcome(self) -> Outcome:
        """How things stand after what was done last."""
        return self._outcome

    def tell(self, text: str, *, refused: bool = False) -> None:
        """Say one thing below the stage; a refusal is marked with words, not only colour.

        It stands until something is done, undone or put back, by whomever, or another stage is in
        hand: then it would speak of what is past.
        """
        self._message = f"Not done: {text}" if refused else text
        self._refused = refused
        self._said_at = self._stands_at()
        self.show()

    def _advise(self, text: str) -> None:
        self._advice, self._advised_at = text, self._stands_at()

    def _in_words(self, notice: Notice) -> str:
        if notice.kind != "at risk":
            return notice.text
        return f"{notice.text} {cap_of('measure', self.keys)}: measure, or say that they are right."

    def _stands_at(self) -> tuple[object, ...]:
        """What a message can speak of: the last act, how the quilt stands, the stage in hand."""
        state = self.quilt.state
        return state.last_act, state.last_undone, state.standing, self._outcome.hand.line.stage.id

    def _forget_what_is_past(self) -> None:
        now = self._stands_at()
        if self._said_at != now:
            self._message, self._refused, self._said_at = "", False, now
        if self._advised_at != now:
            self._advise("")

    def take_in(self) -> None:
        """Read what another window wrote, and say so; and that nothing can be read, until it can."""
        try:
            if self.quilt.refresh():
                self._outcome = looked(self.quilt)
                self.tell("Another window recorded something; this is how it stands now.")
            elif self._unread and self._message == self._unread:
                self.tell("")
            self._unread = ""
        except StoreFault as fault:
            self.tell(str(fault), refused=True)
            self._unread = self._message

    def attempt(self, act: Act, *, say: bool = True) -> str | None:
        """Carry out an act and say so; a refusal is said, returned, and changes nothing."""
        return self.carry(lambda: do(self.quilt, act, pause_was_said=True), say=say)

    def carry(
        self, work: Callable[[], Outcome], *, say: bool = True, or_keep: Act | None = None
    ) -> str | None:
        """Have the service do `work` and show what came of it; as `attempt`.

        `or_keep` is what is kept where it cannot be saved, instead of being refused.
        """
        try:
            self._outcome = outcome = work()
        except CautionFirst:
            raise
        except (Refused, StoreFault) as refusal:
            if or_keep is not None and isinstance(refusal, StoreFault):
                return self.carry(partial(self._kept, or_keep, str(refusal)), say=False)
            self._outcome = looked(self.quilt)
            if self.app.screen is self:
                self.tell(str(refusal), refused=True)
            else:
                # The dialog in front says it, and it is past when that is left.
                self.show()
            return str(refusal)
        self._advise(self._in_words(outcome.notice) if outcome.notice else "")
        if say and outcome.words:
            self.tell(outcome.words)
        else:
            self.show()
        return None

    def count(self, act: Count | JoinRows | BeginRows) -> str | None:
        """Carry out a count; where a caution is due it is put up, and read first.

        One that cannot be saved is kept, and said to be so until it is.
        """
        try:
            return self._counted(act)
        except CautionFirst as due:
            if not self._dialog_coming:
                self._dialog_coming = True
                self.ask_in_turn(self._caution_then(due, act))
            return None

    def _counted(self, act: Count | JoinRows | BeginRows) -> str | None:
        if not len(self.unsaved):
            work = partial(do, self.quilt, act, pause_was_said=True)
            refusal = self.carry(work, or_keep=act)
            self._ring()
            return refusal
        refusal = self.carry(partial(self._kept, act, self.unsaved.why), say=False)
        self._save_again()
        return refusal

    def _ring(self) -> None:
        """A sound, if she wants one, when a chain or a stage is done."""
        if self.quilt.preferences.bell and chain_or_stage_done(self.quilt, self._outcome):
            self.app.bell()

    def _kept(self, act: Act, why: str) -> Outcome:
        """Keep what the record does not take; nothing is done by it yet."""
        self.unsaved.keep(act, why)
        self._leaves_without = False
        self._message = ""
        return replace(self._outcome, recorded=(), words="", notice=None)

    def _save_again(self) -> None:
        """Try what waits once more."""
        trouble = self.unsaved.save()
        if len(self.unsaved):
            self.show()
            return
        self._outcome = looked(self.quilt)
        self.tell(trouble or "Saved: all that waited is in the record now.", refused=bool(trouble))

    async def _caution_then(self, due: CautionFirst, act: Count | JoinRows | BeginRows) -> None:
        """Show the caution; once it is read, carry out what was asked."""
        from sewalong.screens.prompts.dialogs import CautionDialog

        stage = self.quilt.state.route.stage(due.stage)
        label = stage.label if stage else due.stage
        was_read = await self.app.push_screen_wait(CautionDialog(due.caution, label))
        self._dialog_coming = False
        if was_read:
            self.count(replace(act, caution_read=True))
            self._ask_on_leaving()
        else:
            self.tell("Nothing was counted.")

    def _ask_on_leaving(self) -> None:
        """Ask about the iron if that is owed; after a caution that is due, not over it."""
        if self._outcome.question is not None and not self._dialog_coming:
            self._dialog_coming = True
            self.ask_in_turn(self._ask_about_the_iron())

    async def _ask_about_the_iron(self) -> None:
        from sewalong.screens.prompts.dialogs import OwnQuestionDialog

        question, stage = self._outcome.question, self._outcome.hand.line.stage
        assert question is not None
        dialog = OwnQuestionDialog(question, stage.label, keys_of("count", self.keys))
        answer = await self.app.push_screen_wait(dialog)
        self._dialog_coming = False
        if answer is not None:
            self.attempt(Answer(question.id, answer), say=False)
        if dialog.kept:
            await self.count_here(dialog.kept)
            if answer is not None:
                self._ask_on_leaving()

    def can_be_left(self) -> bool:
        """Whether nothing would be lost by leaving; else that is said, and next time it may be."""
        if not len(self.unsaved) or self._leaves_without:
            return True
        self._leaves_without = True
        self.tell("What is not saved would be lost. Press again to leave it.", refused=True)
        return False

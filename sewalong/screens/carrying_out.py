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
from sewalong.progress.record.refused import Refused
from sewalong.progress.safety.cautions import CautionFirst
from sewalong.screens.helped import HelpedScreen
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
        self.unsaved = Unsaved(quilt)
        self._outcome = looked(quilt)
        self._message = ""
        self._refused = False
        self._advice = ""
        self._dialog_coming = False
        self._leaves_without = False

    @abstractmethod
    def show(self) -> None:
        """Draw everything that is not drawn so already."""

    @property
    def outcome(self) -> Outcome:
        """How things stand after what was done last."""
        return self._outcome

    def tell(self, text: str, *, refused: bool = False) -> None:
        """Say one thing below the stage; a refusal is marked with words, not only colour."""
        self._message = f"Not done: {text}" if refused else text
        self._refused = refused
        self.show()

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
            self.tell(str(refusal), refused=True)
            return str(refusal)
        self._advice = outcome.notice.text if outcome.notice else ""
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
        from sewalong.screens.prompts.dialogs import QuestionDialog

        question = self._outcome.question
        assert question is not None
        answer = await self.app.push_screen_wait(QuestionDialog(question))
        self._dialog_coming = False
        if answer is not None:
            self.attempt(Answer(question.id, answer), say=False)

    def can_be_left(self) -> bool:
        """Whether nothing would be lost by leaving; else that is said, and next time it may be."""
        if not len(self.unsaved) or self._leaves_without:
            return True
        self._leaves_without = True
        self.tell("What is not saved would be lost. Press again to leave it.", refused=True)
        return False

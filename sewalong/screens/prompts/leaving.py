"""Leaving the app: each session open in it is closed as the key for it would, or asked about later."""

from __future__ import annotations

from contextlib import suppress
from typing import Any

from textual.app import App

from sewalong.progress.acts.act import Act
from sewalong.progress.acts.said import Mention
from sewalong.progress.acts.sessions import CloseSession
from sewalong.progress.record.refused import Refused
from sewalong.progress.record.sessions import is_over
from sewalong.progress.safety.closing_questions import questions
from sewalong.service.acting import do
from sewalong.service.open_quilt import OpenQuilt
from sewalong.store.faults import StoreFault

UNASKED = "left unasked"
"""What is recorded as said where somebody left without an answer; the next return begins with it."""

HINT = "esc: stay   ctrl+c: leave without answering"


class _Leaving:
    """What the closing questions need of whoever asks them, where no screen of the quilt is open."""

    def __init__(self, app: App[Any], quilt: OpenQuilt) -> None:
        self.app = app
        self.quilt = quilt

    def attempt(self, act: Act, *, say: bool = True) -> str | None:
        """Carry out an act; a refusal is returned, and changes nothing."""
        try:
            do(self.quilt, act, quietly=True)
        except (Refused, StoreFault) as refusal:
            return str(refusal)
        return None


async def close_on_leaving(app: App[Any], quilt: OpenQuilt) -> bool:
    """Close the session as the key for it would; False where it stays open and so does the app.

    A session in which nothing was done is not asked about, and goes on at a return.
    """
    from sewalong.screens.prompts.closing_prompts import close

    with suppress(StoreFault):
        quilt.refresh()
    session = quilt.state.session
    return session is None or not session.counts or await close(_Leaving(app, quilt), HINT)


def leave_unasked(quilt: OpenQuilt) -> None:
    """Write down that nobody was asked, where there was something to ask.

    A session that was over long ago is known to be left; the return sheet begins with it.
    """
    with suppress(Refused, StoreFault):
        session = quilt.state.session
        if questions(quilt.state) and session and not is_over(session, quilt.now()):
            do(quilt, Mention(UNASKED), quietly=True)


async def ask_what_was_left(app: App[Any], quilt: OpenQuilt) -> None:
    """Ask first of all what was left unasked at the last leaving, and close that session."""
    from sewalong.screens.prompts.dialogs import QuestionDialog

    session = quilt.state.session
    left = quilt.state.mentioned.get(UNASKED)
    asked = questions(quilt.state)
    if session is None or is_over(session, quilt.now()) or not asked:
        return
    if left is None or left < session.last_at:
        return
    answers: dict[str, str] = {}
    for place, question in enumerate(asked, start=1):
        title = f"You left before this was asked ({place} of {len(asked)})"
        answer = await app.push_screen_wait(QuestionDialog(question, title))
        if answer is None:
            return
        answers[question.id] = answer
    _Leaving(app, quilt).attempt(CloseSession(answers))

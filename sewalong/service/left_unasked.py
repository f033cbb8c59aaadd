"""Leaving without an answer: what was not asked then is the first thing at the next return."""

from __future__ import annotations

from contextlib import suppress

from sewalong.progress.acts.said import Mention
from sewalong.progress.record.events.sessions import is_over
from sewalong.progress.record.refused import Refused
from sewalong.progress.safety.closing_questions import Question, questions
from sewalong.service.acting import do
from sewalong.service.open_quilt import OpenQuilt
from sewalong.store.faults import StoreFault

UNASKED = "left unasked"
"""What is recorded as said where somebody left without an answer."""


def is_asked_about(quilt: OpenQuilt) -> bool:
    """Whether the open session is closed on leaving: one in which nothing was done goes on."""
    with suppress(StoreFault):
        quilt.refresh()
    session = quilt.state.session
    return session is not None and bool(session.counts)


def leave_unasked(quilt: OpenQuilt) -> None:
    """Write down that nobody was asked, where there is something to ask; never refused."""
    with suppress(Refused, StoreFault):
        if _questions_now(quilt):
            do(quilt, Mention(UNASKED), quietly=True)


def questions_left(quilt: OpenQuilt) -> tuple[Question, ...]:
    """What was left unasked at the last leaving and nothing was done since."""
    session = quilt.state.session
    left = quilt.state.mentioned.get(UNASKED)
    if session is None or left is None or left < session.last_at:
        return ()
    return _questions_now(quilt)


def _questions_now(quilt: OpenQuilt) -> tuple[Question, ...]:
    """What closing the session would ask. One that was over long ago is known to be left; the
    return sheet begins with it."""
    session = quilt.state.session
    if session is None or is_over(session, quilt.now()):
        return ()
    return questions(quilt.state)

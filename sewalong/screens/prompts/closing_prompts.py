"""Closing the session: each thing used is asked about, then the next step and the places."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from textual.app import App

from sewalong.progress.acts.sessions import CloseSession
from sewalong.progress.safety.closing_questions import Question, questions
from sewalong.screens.prompts.desk import Asker
from sewalong.screens.prompts.dialogs import Field, FormDialog, QuestionDialog
from sewalong.service.looks import pause


async def close(desk: Asker, hint: str = "") -> bool:
    """Ask about each thing used, then for the next step, then close the session.

    `hint` says at each question what other keys do. False where the session stays open.
    """
    if desk.quilt.state.session is None:
        return True
    answers = await ask_each(desk.app, questions(desk.quilt.state), "Before you go", hint)
    return answers is not None and await _pause(desk, answers)


async def ask_each(
    app: App[Any], asked: Sequence[Question], title: str, hint: str = ""
) -> dict[str, str] | None:
    """Ask one question after another; the answers by question, or None where one was left."""
    answers: dict[str, str] = {}
    for place, question in enumerate(asked, start=1):
        dialog = QuestionDialog(question, f"{title} ({place} of {len(asked)})", hint)
        answer = await app.push_screen_wait(dialog)
        if answer is None:
            return None
        answers[question.id] = answer
    return answers


async def _pause(desk: Asker, answers: dict[str, str]) -> bool:
    """The pause note on one form: the next step, and a place for each pile that was touched."""
    quilt = desk.quilt
    note = pause(quilt)

    def carry_out(values: dict[str, str]) -> str | None:
        put = {
            pile.pile: place
            for pile in note.piles
            if (place := values[pile.pile].strip()) and place != pile.offered
        }
        return desk.attempt(CloseSession(answers, values["next"], put), say=False)

    fields = [
        Field("next", "Next time, first of all", note.next_step, prose=True),
        *(
            Field(pile.pile, f"Where are the {pile.noun.count(pile.n)}?", pile.offered, prose=True)
            for pile in note.piles
        ),
    ]
    hint = f"{note.stop.why} {note.stop.offer}".strip()
    # The letter of the last answer is pressed once too often, from habit.
    answered = next(reversed(answers.values()), "yes")[0]
    dialog = FormDialog("End the session", fields, carry_out, hint, passes_over=answered)
    closed = await desk.app.push_screen_wait(dialog)
    return bool(closed)

"""Leaving the board, and closing the session: what is asked, and what was answered."""

from __future__ import annotations

import argparse
from datetime import datetime

from sewalong.cli.frame.context import Context
from sewalong.cli.frame.errors import CommandError
from sewalong.cli.frame.report import Report
from sewalong.cli.frame.selection import chosen_quilt
from sewalong.cli.sewing.closing_prompts import (
    ask_places,
    ask_to_stop,
    left_data,
    left_lines,
    placed,
)
from sewalong.cli.sewing.outcome import aftermath
from sewalong.progress.acts.said import Answer
from sewalong.progress.acts.sessions import CloseSession
from sewalong.progress.record.events.sessions import session_length
from sewalong.progress.record.state import SessionRecord, State
from sewalong.progress.record.time_words import spoken
from sewalong.progress.safety.closing_questions import ANSWERS, Question, questions
from sewalong.service.acting import do
from sewalong.service.looks import pause

_WAYS = "yes, no or did-not-look"
_SHORT = {"y": "yes", "n": "no", "?": "did not look"}
SEE_TO_IT = "Then see to it before you go on."


def answer(args: argparse.Namespace, context: Context) -> Report:
    """`answer iron ANSWER…`"""
    said = _answer(" ".join(args.text))
    with chosen_quilt(args, context) as quilt:
        outcome = do(quilt, Answer(args.question, said))
        return aftermath(quilt, outcome, first=(SEE_TO_IT,) if said != "yes" else ())


def close(args: argparse.Namespace, context: Context) -> Report:
    """`close [--answer THING=ANSWER]… [--put PILE=PLACE]… [--next TEXT]`

    On a terminal what was not answered is asked; nothing is recorded until all is answered.
    """
    with chosen_quilt(args, context) as quilt:
        state = quilt.state
        asked = questions(state) if state.session else ()
        answers = _answers(args.answer, asked)
        note = pause(quilt)
        places = placed(args.put, state)
        open_questions = [question for question in asked if question.id not in answers]
        next_step = args.next
        if open_questions and not context.interactive:
            raise CommandError("\n".join(["Before you go:", *(_to_add(q) for q in open_questions)]))
        if context.interactive and state.session:
            ask_to_stop(note.stop, context)
        for question in open_questions:
            answers[question.id] = _ask(question, context)
        if context.interactive and state.session:
            places |= ask_places([one for one in note.piles if one.pile not in places], context)
            next_step = next_step or _ask_next(note.next_step, context)
        outcome = do(quilt, CloseSession(answers, next_step, places))
        lines = [*_closed(quilt.state, quilt.now()), *_to_see_to(asked, answers), *left_lines(note)]
        return aftermath(quilt, outcome, first=lines, more=left_data(note))


def _ask_next(next_step: str, context: Context) -> str:
    usual = next_step.rstrip(".") or "nothing"
    return context.ask(f"What to pick up next time? (Enter for: {usual})") or next_step


def _to_add(question: Question) -> str:
    return f"{question.ask} Add --answer {question.id}={_WAYS}"


def _ask(question: Question, context: Context) -> str:
    while True:
        try:
            return _answer(context.ask(f"{question.ask} ({_WAYS})"))
        except _NoAnswer:
            continue


class _NoAnswer(CommandError):
    pass


def _answer(text: str) -> str:
    plain = " ".join(text.casefold().replace("-", " ").split())
    said = _SHORT.get(plain, plain)
    if said not in ANSWERS:
        raise _NoAnswer(f"“{text[:40]}” is not an answer kept here. Answer {_WAYS}.")
    return said


def _answers(pairs: list[str], asked: tuple[Question, ...]) -> dict[str, str]:
    answers = {}
    known = [question.id for question in asked]
    for pair in pairs:
        thing, equals, said = pair.partition("=")
        if not equals:
            raise CommandError(f"“{pair[:40]}” is not an answer. Write it like iron=yes")
        if thing not in known:
            about = f"Asked about: {', '.join(known)}." if known else "Nothing is asked."
            raise CommandError(f"“{thing[:40]}” is not asked about in this session. {about}")
        answers[thing] = _answer(said)
    return answers


def _to_see_to(asked: tuple[Question, ...], answers: dict[str, str]) -> list[str]:
    return [
        f"You said {answers[question.id]}: {question.ask} {SEE_TO_IT}"
        for question in asked
        if answers[question.id] != "yes"
    ]


def _closed(state: State, now: datetime) -> list[str]:
    session: SessionRecord = state.sessions[-1]
    length = spoken(session_length(session, now))
    lines = [f"Session {session.number}: {length}."]
    for stage_id, n in session.counts.items():
        stage = state.route.stage(stage_id)
        if stage is not None and n:
            lines.append(f"{stage.label.capitalize()}: {stage.counts.count(n)} this session.")
    return lines

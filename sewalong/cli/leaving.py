"""Leaving the board, and closing the session: what is asked, and what was answered."""

from __future__ import annotations

import argparse

from sewalong.cli.aftermath import aftermath
from sewalong.cli.choosing import chosen_quilt
from sewalong.cli.here import Here
from sewalong.cli.report import Report
from sewalong.cli.trouble import Trouble
from sewalong.progress.closing import ANSWERS, Question, questions
from sewalong.progress.commands import Answer, CloseSession
from sewalong.progress.spans import spoken
from sewalong.progress.state import SessionRecord, State

_WAYS = "yes, no or did-not-look"
_SHORT = {"y": "yes", "n": "no", "?": "did not look"}
SEE_TO_IT = "Then see to it before you go on."


def answer(args: argparse.Namespace, here: Here) -> Report:
    """`answer iron ANSWER…`"""
    said = _answer(" ".join(args.text))
    with chosen_quilt(args, here) as quilt:
        if quilt.state.session is None or quilt.state.iron_asked:
            raise Trouble("Nothing is asked about the iron just now. Nothing was recorded.")
        recorded = quilt.do(Answer(args.question, said))
        return aftermath(quilt, recorded, first=(SEE_TO_IT,) if said != "yes" else ())


def close(args: argparse.Namespace, here: Here) -> Report:
    """`close [--answer THING=ANSWER]… [--next TEXT]`: asks on a terminal what was not answered."""
    with chosen_quilt(args, here) as quilt:
        asked = questions(quilt.state) if quilt.state.session else ()
        answers = _answers(args.answer, asked)
        open_questions = [question for question in asked if question.id not in answers]
        next_step = args.next
        if open_questions and not here.interactive:
            raise Trouble("\n".join(["Before you go:", *(_to_add(q) for q in open_questions)]))
        for question in open_questions:
            answers[question.id] = _ask(question, here)
        if here.interactive and not next_step and quilt.state.session:
            next_step = here.ask("What to pick up next time? (Enter for nothing)")
        recorded = quilt.do(CloseSession(answers, next_step))
        lines = [*_closed(quilt.state), *_to_see_to(asked, answers)]
        return aftermath(quilt, recorded, first=lines)


def _to_add(question: Question) -> str:
    return f"{question.ask} Add --answer {question.id}={_WAYS}"


def _ask(question: Question, here: Here) -> str:
    while True:
        try:
            return _answer(here.ask(f"{question.ask} ({_WAYS})"))
        except _NoAnswer:
            continue


class _NoAnswer(Trouble):
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
            raise Trouble(f"“{pair[:40]}” is not an answer. Write it like iron=yes")
        if thing not in known:
            about = f"Asked about: {', '.join(known)}." if known else "Nothing is asked."
            raise Trouble(f"“{thing[:40]}” is not asked about in this session. {about}")
        answers[thing] = _answer(said)
    return answers


def _to_see_to(asked: tuple[Question, ...], answers: dict[str, str]) -> list[str]:
    return [
        f"You said {answers[question.id]}: {question.ask} {SEE_TO_IT}"
        for question in asked
        if answers[question.id] != "yes"
    ]


def _closed(state: State) -> list[str]:
    session: SessionRecord = state.sessions[-1]
    length = spoken((session.ended or session.last_at) - session.opened)
    lines = [f"Session {session.number}: {length}."]
    for stage_id, n in session.counts.items():
        stage = state.road.stage(stage_id)
        if stage is not None and n:
            lines.append(f"{stage.label.capitalize()}: {stage.counts.count(n)} this session.")
    return lines

"""Events and leftovers in words: what was just recorded, and what is over."""

from __future__ import annotations

from collections.abc import Sequence

from sewalong.piecing.method import Noun
from sewalong.progress import events as e
from sewalong.progress.plan import Plan
from sewalong.progress.state import State


def told(state: State, event: e.Event, record: Sequence[e.Recorded]) -> str:
    """What an event says, in one short sentence; `record` is looked up for what was undone."""
    match event:
        case e.Undone(of=seq):
            what = next(r.event for r in record if r.seq == seq)
            return f"Undone: {_uncapital(told(state, what, record))}"
        case e.Counted(stage=stage, n=n):
            return f"Counted {_counts(state, stage).count(n)} at {_label(state, stage)}."
        case e.Unpicked(stage=stage, n=n):
            return f"Unpicked {_counts(state, stage).count(n)} from {_label(state, stage)}."
        case e.Spoiled(pile=pile, n=n, reason=reason):
            return f"Spoiled {_noun(state, pile).count(n)}: {_stopped(reason)}"
        case e.Found(pile=pile, n=n, how=how):
            return f"{how.capitalize()} {_noun(state, pile).count(n)}."
        case e.Recounted(pile=pile, recorded=recorded, counted=counted):
            return _recounted(_noun(state, pile), recorded, counted)
        case e.PutAway(pile=pile, place=place):
            return f"Put the {_noun(state, pile).many} in: {_stopped(place)}"
        case e.Noted(text=text):
            return f"Noted: {text}"
        case e.SettingsRecorded():
            return "Wrote down the machine's settings."
        case e.ToolChanged(tool=tool):
            return f"A new {tool} went in."
        case e.TargetChanged(rows=rows, columns=columns):
            return f"The target is now {rows} × {columns}."
        case e.StageChosen(stage=stage):
            return f"Working at {_label(state, stage)}."
        case e.SessionOpened():
            return "Sat down to sew."
        case e.SessionClosed(forgotten=forgotten):
            return (
                "The session had ended without being closed."
                if forgotten
                else "Closed the session."
            )
        case e.CautionRead(hazards=hazards):
            return f"Read the caution: {', '.join(hazards)}."
        case e.Answered(question=question, answer=answer):
            return f"Asked about the {question}: {answer}."
        case e.LaidAside(reason=reason):
            return f"Laid aside: {_stopped(reason)}" if reason else "Laid aside."
        case e.PickedUp():
            return "Picked up again."
        case e.MarkedDone():
            return "Marked done."


def over_in_words(state: State, plan: Plan) -> str:
    """What cannot make a whole one: "1 four-patch, 2 squares"; empty when nothing is over."""
    return ", ".join(_noun(state, pieces.pile).count(pieces.count) for pieces in plan.over)


def _recounted(noun: Noun, recorded: int, counted: int) -> str:
    difference = counted - recorded
    if difference == 0:
        return f"Recounted the {noun.many}: {counted}, as recorded."
    more = f"{abs(difference)} {'more' if difference > 0 else 'fewer'}"
    return f"Recounted the {noun.many}: {counted}, {more} than recorded."


def _noun(state: State, pile: str) -> Noun:
    found = state.road.piles.get(pile)
    return found.noun if found else Noun(pile, pile)


def _counts(state: State, stage: str) -> Noun:
    found = state.road.stage(stage)
    return found.counts if found else Noun("piece", "pieces")


def _label(state: State, stage: str) -> str:
    found = state.road.stage(stage)
    return found.label if found else stage


def _uncapital(text: str) -> str:
    return text[:1].lower() + text[1:]


def _stopped(text: str) -> str:
    """The owner's words with one full stop after them."""
    return text if text.endswith((".", "!", "?")) else f"{text}."

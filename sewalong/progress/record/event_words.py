"""Events and leftovers in words: what was just recorded, and what is over."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from sewalong.lengths import Unit, show
from sewalong.piecing.method import Noun
from sewalong.progress.plan.plan import Plan
from sewalong.progress.record import events as e
from sewalong.progress.record.measurable import Unmeasurable, read_piece
from sewalong.progress.record.state import State


def told(state: State, event: e.Event, record: Sequence[e.Recorded]) -> str:
    """What an event says, in one short sentence; `record` is looked up for what was undone."""
    match event:
        case e.Undone(of=seq):
            what = next(r.event for r in record if r.seq == seq)
            return f"Undone: {_uncapital(told(state, what, record))}"
        case e.Counted(stage=stage, n=n):
            return _counted(state, stage, n)
        case e.Unpicked(stage=stage, n=n):
            return f"Unpicked {_counts(state, stage).count(n)} from {_label(state, stage)}."
        case e.Spoiled(pile=pile, n=n, reason=reason):
            return f"Spoiled {_noun(state, pile).count(n)}: {_stopped(reason)}"
        case e.Found(pile=pile, n=n, how=how):
            return f"{how.capitalize()} {_noun(state, pile).count(n)}."
        case e.Recounted():
            return _recounted(_noun(state, event.pile), event)
        case e.PutAway(pile=pile, place=place, n=n):
            noun = _noun(state, pile)
            pieces = f"the {noun.many}" if n is None else noun.count(n)
            return f"Put {pieces} in: {_stopped(place)}"
        case e.Noted(text=text):
            return f"Noted: {text}"
        case e.SettingsRecorded():
            return "Wrote down the machine's settings."
        case e.ToolChanged(tool=tool):
            return TOOLS[tool]
        case e.Checked():
            return _checked(state, event)
        case e.WentOn(stage=stage, why=why):
            return f"Went on at {_label(state, stage)} without a fresh check: {why}."
        case e.PressNoted(stage=stage, direction=direction):
            return f"Pressing at {_label(state, stage)}: {_stopped(direction)}"
        case e.RowsJoined(first=first, second=second):
            return f"Joined rows {first} and {second}."
        case e.BobbinRanOut(stage=stage, unsewn=unsewn):
            return (
                f"The bobbin was empty: the last {_counts(state, stage).count(unsewn)} "
                f"at {_label(state, stage)} not sewn after all. A full one went in."
            )
        case e.Mentioned():
            return "Said once."
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


TOOLS = {
    "blade": "A new blade went in.",
    "needle": "A new needle went in.",
    "foot": "Another foot went on.",
    "bobbin": "A full bobbin went in.",
    "power": "The machine was switched off and on.",
}
"""What a changed tool is told as."""

_ACCEPTED = {
    "stands": "",
    "made": " made but not counted",
    "found": " found",
    "lost": " lost",
    "spoiled": " spoiled",
    "missing": " made, whereabouts unknown",
}


def _counted(state: State, stage: str, n: int) -> str:
    counts, label = _counts(state, stage), _label(state, stage)
    # "1 pair at pair" says the same word twice.
    at = "" if label == counts.one else f" at {label}"
    return f"Counted {counts.count(n)}{at}."


def _recounted(noun: Noun, event: e.Recounted) -> str:
    difference = event.counted - event.recorded
    where = f" in: {event.place}" if event.place else ""
    counted = f"Recounted the {noun.many}{where}: {event.counted}"
    if difference == 0:
        given_up = "; what was missing is given up" if event.how == "lost" else ""
        return f"{counted}, as recorded{given_up}."
    more = f"{abs(difference)} {'more' if difference > 0 else 'fewer'}"
    if event.how == "made" and difference < 0:
        return f"{counted}, {more} than recorded, never made."
    how = f";{_ACCEPTED[event.how]}" if _ACCEPTED[event.how] else ""
    return f"{counted}, {more} than recorded{how}."


def _checked(state: State, event: e.Checked) -> str:
    unit = state.quilt.unit
    fine = Fraction(1, 16) if unit is Unit.INCH else Fraction(1, 10)
    read = ", ".join(show(Fraction(r), unit, fineness=fine) for r in event.readings)
    should = show(Fraction(event.expected), unit, fineness=fine)
    verdict = "right" if event.passed else "not right"
    return f"Measured {_piece(state, event.piece)}: {read}, should be {should}: {verdict}."


def _piece(state: State, piece: str) -> str:
    try:
        return read_piece(state.quilt, state.target, piece).words
    except Unmeasurable:
        return piece


def _noun(state: State, pile: str) -> Noun:
    found = state.route.piles.get(pile)
    return found.noun if found else Noun(pile, pile)


def _counts(state: State, stage: str) -> Noun:
    found = state.route.stage(stage)
    return found.counts if found else Noun("piece", "pieces")


def _label(state: State, stage: str) -> str:
    found = state.route.stage(stage)
    return found.label if found else stage


def _uncapital(text: str) -> str:
    return text[:1].lower() + text[1:]


def _stopped(text: str) -> str:
    """The owner's words with one full stop after them."""
    return text if text.endswith((".", "!", "?")) else f"{text}."

"""Whether a command may happen: it comes back as events, or is refused in a plain sentence.

Pure: the time comes in with the command. Nothing is written here; the store writes the
events, and only if nobody else wrote in between.
"""

from __future__ import annotations

from datetime import datetime, timedelta
from typing import assert_never

from sewalong.progress.acts import commands as c
from sewalong.progress.acts.commands import Refused
from sewalong.progress.acts.decide_pieces import bobbin_empty, put_away, recount, spoil, unpick
from sewalong.progress.acts.decide_proof import go_on, measure, note_press
from sewalong.progress.acts.decide_rows import join_rows
from sewalong.progress.acts.validation import (
    LONGEST_TEXT,
    MOST_AT_ONCE,
    MOST_ROWS,
    a_number,
    a_pile,
    a_stage,
    maybe_words,
    words,
)
from sewalong.progress.plan.plan import ready
from sewalong.progress.record import events as e
from sewalong.progress.record.fold import later, step
from sewalong.progress.record.on_the_top import joined_rows, last_on_the_top
from sewalong.progress.record.route import JOIN_ROWS, ROW, RouteStage, TopStage
from sewalong.progress.record.state import SessionRecord, Standing, State
from sewalong.progress.safety.cautions import Caution, caution_due
from sewalong.progress.safety.closing_questions import ANSWERS, ON_LEAVING_THE_IRON, questions

__all__ = [
    "LONGEST_TEXT",
    "MOST_AT_ONCE",
    "MOST_ROWS",
    "NO_SESSION",
    "SESSION_GAP",
    "CautionFirst",
    "caution_at",
    "decide",
    "is_over",
]

SESSION_GAP = timedelta(hours=4)
"""A session not heard from for this long was over; nobody said so. From memory of evenings."""


class CautionFirst(Refused):
    """A caution has to be read before this stage is counted."""

    def __init__(self, caution: Caution, stage: str) -> None:
        super().__init__(f"Read the caution first ({caution.title}): {' '.join(caution.lines)}")
        self.caution = caution
        self.stage = stage


def decide(state: State, command: c.Command, at: datetime) -> tuple[e.Event, ...]:
    """The events `command` gives at time `at`, in order; raises Refused and changes nothing.

    Working without an open session opens one; a session that was left open and not heard
    from for `SESSION_GAP` is closed first, as forgotten. `at` must have an offset.
    """
    if at.tzinfo is None:
        raise ValueError("a time needs its offset from UTC")
    if isinstance(command, c.CloseSession) and state.session is None:
        raise Refused("No session is open, so there is none to close.")
    opened = () if isinstance(command, c.CloseSession) else _session_events(state, command, at)
    for event in opened:
        state = step(state, e.Recorded(state.seq + 1, event))
    number = state.session.number if state.session else NO_SESSION
    last = _decide(state, command, at, number)
    return (*opened, last) if last is not None else opened


NO_SESSION = 0
"""The session of what happens outside any, such as laying the quilt aside."""

_OUTSIDE_SESSIONS = (c.Undo, c.LayAside, c.PickUp, c.MarkDone)
"""Commands that do not by themselves mean that somebody sat down to sew."""


def _session_events(state: State, command: c.Command, at: datetime) -> tuple[e.Event, ...]:
    session = state.session
    events: list[e.Event] = []
    if session and is_over(session, at):
        events.append(
            e.SessionClosed(at=at, session=session.number, ended=session.last_at, forgotten=True)
        )
        session = None
    if session is None and _sits_down(state, command):
        number = state.sessions[-1].number + 1 if state.sessions else 1
        events.append(e.SessionOpened(at=at, session=number))
    return tuple(events)


def _sits_down(state: State, command: c.Command) -> bool:
    """Whether the command means sewing: a note on a quilt laid aside or done does not."""
    in_progress = state.standing is Standing.IN_PROGRESS
    return in_progress and not isinstance(command, _OUTSIDE_SESSIONS)


def is_over(session: SessionRecord, at: datetime) -> bool:
    """Whether a session left open was not heard from for so long that it was over."""
    return at - session.last_at >= SESSION_GAP


def _decide(state: State, command: c.Command, at: datetime, session: int) -> e.Event | None:
    if isinstance(command, _NEED_IN_PROGRESS):
        _must_be_in_progress(state)
    match command:
        case c.OpenSession():
            return None
        case c.CloseSession():
            return _close(state, command, at, session)
        case c.ChooseStage():
            return e.StageChosen(at=at, session=session, stage=a_stage(state, command.stage).id)
        case c.Count():
            return _count(state, command, at, session)
        case c.Unpick():
            return unpick(state, command, at, session)
        case c.Spoil():
            return spoil(state, command, at, session)
        case c.Find():
            pile, n = a_pile(state, command.pile), a_number(command.n)
            return e.Found(at=at, session=session, pile=pile, n=n, how=command.how)
        case c.Recount():
            return recount(state, command, at, session)
        case c.PutPileAway():
            return put_away(state, command, at, session)
        case c.WriteNote():
            return e.Noted(at=at, session=session, text=words(command.text, "some words"))
        case c.RecordSettings():
            return _settings(command, at, session)
        case c.ChangeTool():
            return e.ToolChanged(at=at, session=session, tool=command.tool)
        case c.Measure():
            return measure(state, command, at, session)
        case c.GoOn():
            return go_on(state, command, at, session)
        case c.NotePress():
            return note_press(state, command, at, session)
        case c.JoinRows():
            return _join_rows(state, command, at, session)
        case c.BobbinEmpty():
            return bobbin_empty(state, command, at, session)
        case c.Mention():
            return e.Mentioned(at=at, session=session, what=words(command.what, "what was said"))
        case c.ChangeTarget():
            return _retarget(state, command, at, session)
        case c.ReadCaution():
            caution = caution_at(state, a_stage(state, command.stage), at)
            if caution is None:
                return None
            hazards = tuple(hazard.value for hazard in caution.hazards)
            return e.CautionRead(at=at, session=session, hazards=hazards)
        case c.Answer():
            return _answer(command, at, session)
        case c.LayAside():
            _must_be_in_progress(state)
            return e.LaidAside(at=at, session=session, reason=maybe_words(command.reason))
        case c.PickUp():
            if state.standing is Standing.IN_PROGRESS:
                raise Refused("This quilt is in progress already; just count on.")
            return e.PickedUp(at=at, session=session)
        case c.MarkDone():
            if state.standing is Standing.DONE:
                raise Refused("This quilt is marked done already.")
            return e.MarkedDone(at=at, session=session)
        case c.Undo():
            return _undo(state, command, at, session)
        case _:
            assert_never(command)


_NEED_IN_PROGRESS = (
    c.Count,
    c.Unpick,
    c.Spoil,
    c.Find,
    c.Recount,
    c.ChooseStage,
    c.ChangeTarget,
    c.OpenSession,
    c.JoinRows,
    c.BobbinEmpty,
    c.GoOn,
)


def _must_be_in_progress(state: State) -> None:
    if state.standing is not Standing.IN_PROGRESS:
        raise Refused(f"This quilt is {state.standing.value}. Pick it up again first.")


def caution_at(state: State, stage: RouteStage, at: datetime) -> Caution | None:
    """The caution due before a count at `stage`; in a session not yet open, all are due."""
    session = state.session
    if session is None or is_over(session, at):
        return caution_due(stage.hazards, read={}, opened=at, blade_changed=None, now=at)
    return caution_due(
        stage.hazards,
        read=state.cautions_read,
        opened=session.opened,
        blade_changed=state.blade_changed,
        now=at,
    )


def _count(state: State, command: c.Count, at: datetime, session: int) -> e.Event:
    stage, n = a_stage(state, command.stage), a_number(command.n)
    possible = ready(state, stage)
    if n > possible:
        raise Refused(_not_enough(state, stage, n, possible))
    caution = caution_at(state, stage, at)
    if caution is not None:
        raise CautionFirst(caution, stage.id)
    return e.Counted(at=at, session=session, stage=stage.id, n=n)


def _join_rows(state: State, command: c.JoinRows, at: datetime, session: int) -> e.Event:
    """The rows must be neighbours before it matters whether a seam can be sewn."""
    joined = join_rows(state, command, at, session)
    _count(state, c.Count(JOIN_ROWS), at, session)
    return joined


def _not_enough(state: State, stage: RouteStage, n: int, possible: int) -> str:
    if isinstance(stage, TopStage):
        return _top_not_ready(state, stage, n, possible)
    wants = " and ".join(
        state.route.piles[taken.pile].noun.count(taken.count) for taken in stage.takes
    )
    there = " and ".join(
        state.route.piles[taken.pile].noun.count(state.piles[taken.pile]) for taken in stage.takes
    )
    wait = "waits" if len(stage.takes) == 1 and there.startswith("1 ") else "wait"
    enough = f"enough for {possible}" if possible else "not enough for one"
    return (
        f"{stage.counts.count(n).capitalize()} at {stage.label} cannot be: each takes {wants}, "
        f"and {there} {wait}, {enough}. If more lie there, recount that pile first."
    )


def _top_not_ready(state: State, stage: TopStage, n: int, possible: int) -> str:
    left = stage.steps - state.done[stage.id]
    if left == 0:
        return (
            f"{stage.label.capitalize()} is done: {stage.counts.count(stage.steps)} in all. "
            "To go further, change the target."
        )
    if stage.id == JOIN_ROWS:
        rows = ROW.noun.count(state.piles[ROW.id])
        return (
            f"{stage.counts.count(n).capitalize()} cannot be: {rows} sewn so far and "
            f"{stage.counts.count(state.done[stage.id])} joined leave {possible} to join now. "
            "Sew more rows first."
        )
    if possible == 0:
        return f"The top is not ready to {stage.label}: do the stages before it first."
    return f"Only {stage.counts.count(possible)} left at {stage.label}."


def _settings(command: c.RecordSettings, at: datetime, session: int) -> e.Event:
    settings = e.Settings(
        **{
            name: maybe_words(getattr(command.settings, name))
            for name in e.Settings.__struct_fields__
        }
    )
    if settings == e.Settings():
        raise Refused("No setting was given: fill in at least one.")
    return e.SettingsRecorded(at=at, session=session, settings=settings)


def _retarget(state: State, command: c.ChangeTarget, at: datetime, session: int) -> e.Event:
    rows, columns = command.rows, command.columns
    if not (1 <= rows <= MOST_ROWS and 1 <= columns <= MOST_ROWS):
        raise Refused(f"Rows and columns are numbers from 1 to {MOST_ROWS}.")
    if (rows, columns) == (state.target.rows, state.target.columns):
        raise Refused(f"The target is {state.target} already.")
    sewn = state.piles[ROW.id]
    if sewn and columns != state.target.columns:
        raise Refused(
            f"{ROW.noun.count(sewn)} of {state.target.columns} {_are(sewn)} sewn already. "
            f"Unpick {'it' if sewn == 1 else 'them'} first, "
            f"or keep {state.target.columns} across."
        )
    past_joining = last_on_the_top(state, after=state.route.stage(JOIN_ROWS))
    if past_joining is not None:
        raise Refused(
            f"The top has been through {past_joining.label} already. Unpick that first, "
            f"or keep {state.target}."
        )
    last = max((second for _, second in state.joints), default=0)
    if last > rows:
        raise Refused(
            f"Rows {last - 1} and {last} are joined already. Unpick that first, "
            f"or keep {last} rows."
        )
    joined = joined_rows(state)
    if joined > rows:
        raise Refused(
            f"{ROW.noun.count(joined)} are joined already. Unpick {joined - rows} first, "
            f"or keep {joined} rows."
        )
    return e.TargetChanged(at=at, session=session, rows=rows, columns=columns)


def _close(state: State, command: c.CloseSession, at: datetime, session: int) -> e.Event:
    asked = {question.id: question for question in questions(state)}
    for id, question in asked.items():
        if command.answers.get(id) not in ANSWERS:
            raise Refused(f"Before you go: {question.ask} Answer yes, no or did not look.")
    answers = {id: command.answers[id] for id in asked}
    last_at = state.session.last_at if state.session else at
    over = at - last_at >= SESSION_GAP
    return e.SessionClosed(
        at=at,
        session=session,
        ended=last_at if over else later(last_at, at),
        answers=answers,
        next_step=maybe_words(command.next_step),
    )


def _answer(command: c.Answer, at: datetime, session: int) -> e.Event:
    if command.question != ON_LEAVING_THE_IRON.id:
        raise Refused(f"Nothing called “{command.question[:40]}” is asked while sewing.")
    if command.answer not in ANSWERS:
        raise Refused(f"{ON_LEAVING_THE_IRON.ask} Answer yes, no or did not look.")
    return e.Answered(at=at, session=session, question=command.question, answer=command.answer)


def _undo(state: State, command: c.Undo, at: datetime, session: int) -> e.Event:
    if not state.undoable:
        raise Refused("There is nothing to undo.")
    last = state.undoable[-1]
    if command.of is not None and command.of != last.seq:
        raise Refused("The record went on in another window. Look again before undoing.")
    return e.Undone(at=at, session=session, of=last.seq)


def _are(n: int) -> str:
    return "is" if n == 1 else "are"

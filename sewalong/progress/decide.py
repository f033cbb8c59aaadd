"""Whether a command may happen: it comes back as events, or is refused in a plain sentence.

Pure: the time comes in with the command. Nothing is written here; the store writes the
events, and only if nobody else wrote in between.
"""

from __future__ import annotations

from datetime import datetime, timedelta
from difflib import get_close_matches
from typing import assert_never

from sewalong.piecing.method import Stage, Station
from sewalong.progress import commands as c
from sewalong.progress import events as e
from sewalong.progress.cautions import Caution, caution_due
from sewalong.progress.closing import ANSWERS, questions
from sewalong.progress.commands import Refused
from sewalong.progress.fold import step
from sewalong.progress.plan import ready
from sewalong.progress.road import ROW, RoadStage, TopStage
from sewalong.progress.state import SessionRecord, Standing, State

SESSION_GAP = timedelta(hours=4)
"""A session not heard from for this long was over; nobody said so. From memory of evenings."""

MOST_AT_ONCE = 9999
LONGEST_TEXT = 2000
MOST_ROWS = 200


class CautionFirst(Refused):
    """A caution has to be read before this stage is counted."""

    def __init__(self, caution: Caution) -> None:
        super().__init__(f"Read the caution first ({caution.title}): {' '.join(caution.lines)}")
        self.caution = caution


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
    for i, event in enumerate(opened, start=1):
        state = step(state, e.Recorded(state.seq + i, event))
    number = state.session.number if state.session else 0
    event = _decide(state, command, at, number)
    return (*opened, event) if event is not None else opened


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
    if session is None and not isinstance(command, _OUTSIDE_SESSIONS):
        number = state.sessions[-1].number + 1 if state.sessions else 1
        events.append(e.SessionOpened(at=at, session=number))
    return tuple(events)


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
            return e.StageChosen(at=at, session=session, stage=_stage(state, command.stage).id)
        case c.Count():
            return _count(state, command, at, session)
        case c.Unpick():
            return _unpick(state, command, at, session)
        case c.Spoil():
            return _spoil(state, command, at, session)
        case c.Find():
            pile, n = _pile(state, command.pile), _number(command.n)
            return e.Found(at=at, session=session, pile=pile, n=n, how=command.how)
        case c.Recount():
            return _recount(state, command, at, session)
        case c.PutPileAway():
            pile, place = _pile(state, command.pile), _text(command.place, "a place")
            return e.PutAway(at=at, session=session, pile=pile, place=place)
        case c.WriteNote():
            return e.Noted(at=at, session=session, text=_text(command.text, "some words"))
        case c.RecordSettings():
            return _settings(command, at, session)
        case c.ChangeTool():
            return e.ToolChanged(at=at, session=session, tool=command.tool)
        case c.ChangeTarget():
            return _retarget(state, command, at, session)
        case c.ReadCaution():
            caution = caution_at(state, _stage(state, command.stage), at)
            if caution is None:
                return None
            hazards = tuple(hazard.value for hazard in caution.hazards)
            return e.CautionRead(at=at, session=session, hazards=hazards)
        case c.Answer():
            return e.Answered(
                at=at,
                session=session,
                question=command.question,
                answer=_text(command.answer, "an answer"),
            )
        case c.LayAside():
            _must_be_in_progress(state)
            return e.LaidAside(at=at, session=session, reason=command.reason.strip()[:LONGEST_TEXT])
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
)


def _must_be_in_progress(state: State) -> None:
    if state.standing is not Standing.IN_PROGRESS:
        raise Refused(f"This quilt is {state.standing.value}. Pick it up again first.")


def caution_at(state: State, stage: RoadStage, at: datetime) -> Caution | None:
    """The caution due before a count at `stage`; in a session not yet open, all are due."""
    session = state.session
    return caution_due(
        stage.hazards,
        read=state.cautions_read,
        opened=session.opened if session else at,
        blade_changed=state.blade_changed if session else None,
        now=at,
    )


def _count(state: State, command: c.Count, at: datetime, session: int) -> e.Event:
    stage, n = _stage(state, command.stage), _number(command.n)
    possible = ready(state, stage)
    if n > possible:
        raise Refused(_not_enough(state, stage, n, possible))
    caution = caution_at(state, stage, at)
    if caution is not None:
        raise CautionFirst(caution)
    return e.Counted(at=at, session=session, stage=stage.id, n=n)


def _not_enough(state: State, stage: RoadStage, n: int, possible: int) -> str:
    if isinstance(stage, TopStage):
        return _top_not_ready(state, stage, n, possible)
    wants = " and ".join(
        state.road.piles[taken.pile].noun.count(taken.count) for taken in stage.takes
    )
    there = " and ".join(
        state.road.piles[taken.pile].noun.count(state.piles[taken.pile]) for taken in stage.takes
    )
    enough = f"enough for {possible}" if possible else "not enough for one"
    return (
        f"{stage.counts.count(n).capitalize()} at {stage.label} cannot be: each takes {wants}, "
        f"and {there} wait, {enough}. If more lie there, recount that pile first."
    )


def _top_not_ready(state: State, stage: TopStage, n: int, possible: int) -> str:
    left = stage.steps - state.done[stage.id]
    if left == 0:
        return (
            f"{stage.label.capitalize()} is done: {stage.counts.count(stage.steps)} in all. "
            "To go further, change the target."
        )
    if stage.id == "join-rows":
        rows = ROW.noun.count(state.piles[ROW.id])
        return (
            f"{stage.counts.count(n).capitalize()} cannot be: {rows} sewn so far and "
            f"{stage.counts.count(state.done[stage.id])} joined leave {possible} to join now. "
            "Sew more rows first."
        )
    if possible == 0:
        return f"The top is not ready to {stage.label}: do the stages before it first."
    return f"Only {stage.counts.count(possible)} left at {stage.label}."


def _unpick(state: State, command: c.Unpick, at: datetime, session: int) -> e.Event:
    stage, n = _stage(state, command.stage), _number(command.n)
    if isinstance(stage, Stage):
        if stage.station not in (Station.MACHINE, Station.TABLE):
            raise Refused(
                f"What {stage.label} did cannot be taken apart again. "
                "If it was counted by mistake, undo it or recount the pile."
            )
        possible = min(state.piles[stage.makes.pile] // stage.makes.count, state.done[stage.id])
        if stage.makes.pile == ROW.id:
            possible = _loose_rows(state)
    else:
        possible = state.done[stage.id]
    if n > possible:
        raise Refused(
            f"Only {stage.counts.count(possible)} from {stage.label} can be taken apart now."
        )
    return e.Unpicked(at=at, session=session, stage=stage.id, n=n)


def _loose_rows(state: State) -> int:
    joined = state.done.get("join-rows", 0)
    return state.piles[ROW.id] - (joined + 1 if joined else 0)


def _spoil(state: State, command: c.Spoil, at: datetime, session: int) -> e.Event:
    pile, n = _pile(state, command.pile), _number(command.n)
    there = _loose_rows(state) if pile == ROW.id else state.piles[pile]
    if n > there:
        noun = state.road.piles[pile].noun
        raise Refused(
            f"Only {noun.count(there)} lie there, so {n} cannot be spoiled. "
            "If more lie there, recount that pile first."
        )
    reason = _text(command.reason, "a reason, so that it can be seen later what went wrong")
    return e.Spoiled(at=at, session=session, pile=pile, n=n, reason=reason)


def _recount(state: State, command: c.Recount, at: datetime, session: int) -> e.Event:
    pile = _pile(state, command.pile)
    counted = command.counted
    if not 0 <= counted <= MOST_AT_ONCE:
        raise Refused(f"A recount is a number from 0 to {MOST_AT_ONCE}.")
    if pile == ROW.id:
        joined = state.piles[ROW.id] - _loose_rows(state)
        if counted < joined:
            raise Refused(
                f"{ROW.noun.count(joined)} are joined in the top, so there are at least "
                "that many. Count the joined rows too."
            )
    return e.Recounted(
        at=at, session=session, pile=pile, recorded=state.piles[pile], counted=counted
    )


def _settings(command: c.RecordSettings, at: datetime, session: int) -> e.Event:
    settings = e.Settings(
        **{
            name: getattr(command.settings, name).strip()[:LONGEST_TEXT]
            for name in e.Settings.__dataclass_fields__
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
            f"{ROW.noun.count(sewn)} of {state.target.columns} are sewn already. "
            f"Unpick them first, or keep {state.target.columns} across."
        )
    joined = sewn - _loose_rows(state)
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
    open_session = state.session
    over = open_session is not None and is_over(open_session, at)
    return e.SessionClosed(
        at=at,
        session=session,
        ended=open_session.last_at if open_session and over else at,
        answers=answers,
        next_step=command.next_step.strip()[:LONGEST_TEXT],
    )


def _undo(state: State, command: c.Undo, at: datetime, session: int) -> e.Event:
    if not state.undoable:
        raise Refused("There is nothing to undo.")
    last = state.undoable[-1]
    if command.of is not None and command.of != last.seq:
        raise Refused("The record went on in another window. Look again before undoing.")
    return e.Undone(at=at, session=session, of=last.seq)


def _stage(state: State, id: str) -> RoadStage:
    stage = state.road.stage(id)
    if stage is None:
        known = [stage.id for stage in state.road.stages]
        raise Refused(f"This quilt has no stage “{id[:40]}”. {_nearest(id, known)}")
    return stage


def _pile(state: State, id: str) -> str:
    if id not in state.road.piles:
        raise Refused(f"This quilt has no pile “{id[:40]}”. {_nearest(id, list(state.road.piles))}")
    return id


def _nearest(id: str, known: list[str]) -> str:
    near = get_close_matches(id, known, n=1)
    return f"Did you mean {near[0]}?" if near else f"There are: {', '.join(known)}."


def _number(n: int) -> int:
    if not 1 <= n <= MOST_AT_ONCE:
        raise Refused(f"Give a number from 1 to {MOST_AT_ONCE}.")
    return n


def _text(text: str, what: str) -> str:
    text = text.strip()
    if not text:
        raise Refused(f"Give {what}.")
    if len(text) > LONGEST_TEXT:
        raise Refused(f"That is {len(text)} letters; at most {LONGEST_TEXT} are kept.")
    return text

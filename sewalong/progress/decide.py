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
from sewalong.progress.closing import ANSWERS, ON_LEAVING_THE_IRON, questions
from sewalong.progress.commands import Refused
from sewalong.progress.fold import later, step
from sewalong.progress.plan import ready
from sewalong.progress.road import JOIN_ROWS, ROW, RoadStage, TopStage
from sewalong.progress.state import SessionRecord, Standing, State

SESSION_GAP = timedelta(hours=4)
"""A session not heard from for this long was over; nobody said so. From memory of evenings."""

MOST_AT_ONCE = 9999
LONGEST_TEXT = 2000
MOST_ROWS = 200


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
            return _answer(command, at, session)
        case c.LayAside():
            _must_be_in_progress(state)
            return e.LaidAside(at=at, session=session, reason=_short(command.reason))
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
    stage, n = _stage(state, command.stage), _number(command.n)
    possible = ready(state, stage)
    if n > possible:
        raise Refused(_not_enough(state, stage, n, possible))
    caution = caution_at(state, stage, at)
    if caution is not None:
        raise CautionFirst(caution, stage.id)
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


def _unpick(state: State, command: c.Unpick, at: datetime, session: int) -> e.Event:
    stage, n = _stage(state, command.stage), _number(command.n)
    if isinstance(stage, Stage):
        if stage.station not in (Station.MACHINE, Station.TABLE):
            raise Refused(
                f"What {stage.label} did cannot be taken apart again. "
                "If it was counted by mistake, undo it or recount the pile."
            )
        made = stage.makes
        there = _loose_rows(state) if made.pile == ROW.id else state.piles[made.pile] // made.count
        possible = min(there, state.done[stage.id])
    else:
        later_on = _last_on_the_top(state, after=stage)
        if later_on is not None:
            raise Refused(f"What was done at {later_on.label} holds it. Unpick that first.")
        possible = state.done[stage.id]
    if n > possible:
        some = f"Only {stage.counts.count(possible)}" if possible else f"No {stage.counts.one}"
        raise Refused(
            f"{some} from {stage.label} can be taken apart now. "
            "What went further already has to be unpicked there first."
        )
    return e.Unpicked(at=at, session=session, stage=stage.id, n=n)


def _last_on_the_top(state: State, *, after: RoadStage | None = None) -> TopStage | None:
    """The last stage of the top that was counted, of those after `after`; None if none was."""
    for stage in reversed(state.road.of_the_top):
        if stage == after:
            return None
        if state.done[stage.id]:
            return stage
    return None


def _joined_rows(state: State) -> int:
    """Rows that are part of the top: seams join them, or a border holds the only one."""
    if _last_on_the_top(state) is None:
        return 0
    return state.done.get(JOIN_ROWS, 0) + 1


def _loose_rows(state: State) -> int:
    return state.piles[ROW.id] - _joined_rows(state)


def _spoil(state: State, command: c.Spoil, at: datetime, session: int) -> e.Event:
    pile, n = _pile(state, command.pile), _number(command.n)
    there = _loose_rows(state) if pile == ROW.id else state.piles[pile]
    if n > there:
        noun = state.road.piles[pile].noun
        raise Refused(
            f"Only {noun.count(there)} {'lies' if there == 1 else 'lie'} there, "
            f"so {n} cannot be spoiled. "
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
        joined = _joined_rows(state)
        if counted < joined:
            raise Refused(
                f"{ROW.noun.count(joined)} {_are(joined)} in the top already, so there "
                f"{_are(joined)} at least that many. Count the rows in the top too."
            )
    return e.Recounted(
        at=at, session=session, pile=pile, recorded=state.piles[pile], counted=counted
    )


def _settings(command: c.RecordSettings, at: datetime, session: int) -> e.Event:
    settings = e.Settings(
        **{
            name: _short(getattr(command.settings, name))
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
            f"{ROW.noun.count(sewn)} of {state.target.columns} {_are(sewn)} sewn already. "
            f"Unpick {'it' if sewn == 1 else 'them'} first, "
            f"or keep {state.target.columns} across."
        )
    past_joining = _last_on_the_top(state, after=state.road.stage(JOIN_ROWS))
    if past_joining is not None:
        raise Refused(
            f"The top has been through {past_joining.label} already. Unpick that first, "
            f"or keep {state.target}."
        )
    joined = _joined_rows(state)
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
        next_step=_short(command.next_step),
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


def _are(n: int) -> str:
    return "is" if n == 1 else "are"


def _nearest(id: str, known: list[str]) -> str:
    near = get_close_matches(id, known, n=1)
    return f"Did you mean {near[0]}?" if near else f"There are: {', '.join(known)}."


def _number(n: int) -> int:
    if not 1 <= n <= MOST_AT_ONCE:
        raise Refused(f"Give a number from 1 to {MOST_AT_ONCE}.")
    return n


def _text(text: str, what: str) -> str:
    text = _short(text)
    if not text:
        raise Refused(f"Give {what}.")
    return text


def _short(text: str) -> str:
    """Text that may be empty; too much of it is refused, not cut off unseen."""
    text = _plain(text)
    if len(text) > LONGEST_TEXT:
        raise Refused(
            f"That is {len(text)} letters; at most {LONGEST_TEXT} are kept. Say it shorter."
        )
    return text


def _plain(text: str) -> str:
    """Text on one line without control characters, which could drive a terminal."""
    return "".join(ch if ch.isprintable() else " " for ch in text).strip()

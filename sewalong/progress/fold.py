"""The one fold: from a quilt's plan and its events to where it stands.

The fold trusts the record: it never refuses. Whether an event may happen is decided
before it is written (`decide`), and checked again when a record comes from outside
(`replay`).
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace
from datetime import datetime

from sewalong.piecing.method import Hazard, Stage
from sewalong.progress import events as e
from sewalong.progress.road import RoadStage, road_for
from sewalong.progress.state import Note, SessionRecord, Spoilage, Standing, State
from sewalong.quilt.quilt import Quilt, Target


def opening(quilt: Quilt) -> State:
    """The state before anything happened: all start pieces in their piles."""
    road = road_for(quilt, quilt.target)
    piles = dict.fromkeys(road.piles, 0)
    for start in quilt.starts:
        piles[start.pile] += start.count
    return State(
        quilt=quilt,
        target=quilt.target,
        road=road,
        piles=piles,
        done={stage.id: 0 for stage in road.stages},
    )


def fold(quilt: Quilt, record: Sequence[e.Recorded]) -> State:
    """Where the quilt stands after `record`, whose events stand in order of `seq`."""
    undone = {r.event.of for r in record if isinstance(r.event, e.Undone)}
    state = opening(quilt)
    for recorded in record:
        if recorded.seq not in undone:
            state = step(state, recorded)
    return replace(state, seq=record[-1].seq) if record else state


def advance(state: State, record: Sequence[e.Recorded], new: Iterable[e.Recorded]) -> State:
    """`state` (the fold of `record`) after `new`; folds anew only if something was undone."""
    new = tuple(new)
    if any(isinstance(r.event, e.Undone) for r in new):
        return fold(state.quilt, (*record, *new))
    for recorded in new:
        state = step(state, recorded)
    return state


def step(state: State, recorded: e.Recorded) -> State:
    """`state` after one event that still counts."""
    event = recorded.event
    state = _apply(state, event)
    state = replace(state, seq=recorded.seq, sessions=_heard_from(state.sessions, event))
    if isinstance(event, e.UNDOABLE):
        state = replace(state, undoable=(*state.undoable, recorded))
    return state


def _apply(state: State, event: e.Event) -> State:
    match event:
        case e.SessionOpened():
            session = SessionRecord(number=event.session, opened=event.at, last_at=event.at)
            return replace(
                state,
                sessions=(*state.sessions, session),
                cautions_read={},
                iron_asked=True,
            )
        case e.SessionClosed():
            return _close(state, event)
        case e.StageChosen():
            # The change of target that brought this stage may have been undone since.
            if state.road.stage(event.stage) is None:
                return state
            return replace(state, chosen=event.stage, chosen_by_hand=True)
        case e.Counted():
            return _count(state, event.stage, event.n)
        case e.Unpicked():
            return _count(state, event.stage, -event.n)
        case e.Spoiled():
            spoilage = Spoilage(event.at, event.pile, event.n, event.reason)
            return replace(
                state,
                piles=_plus(state.piles, event.pile, -event.n),
                spoiled=_plus(state.spoiled, event.pile, event.n),
                spoilage=(*state.spoilage, spoilage),
            )
        case e.Found():
            return replace(
                state,
                piles=_plus(state.piles, event.pile, event.n),
                found=_plus(state.found, event.pile, event.n),
            )
        case e.Recounted():
            difference = event.counted - event.recorded
            return replace(
                state,
                piles=_plus(state.piles, event.pile, difference),
                recounted=_plus(state.recounted, event.pile, difference),
            )
        case e.PutAway():
            return replace(state, places={**state.places, event.pile: event.place})
        case e.Noted():
            note = Note(event.at, event.session, event.text)
            return replace(state, notes=(*state.notes, note))
        case e.SettingsRecorded():
            return replace(state, settings=event.settings, settings_at=event.at)
        case e.ToolChanged(tool="blade"):
            return replace(state, blade_changed=event.at)
        case e.ToolChanged():
            return replace(state, needle_changed=event.at)
        case e.TargetChanged():
            return _retarget(state, Target(event.rows, event.columns))
        case e.CautionRead():
            read = dict.fromkeys(event.hazards, event.at)
            return replace(state, cautions_read={**state.cautions_read, **read})
        case e.Answered():
            return replace(state, iron_asked=True)
        case e.LaidAside():
            return replace(state, standing=Standing.LAID_ASIDE, aside_reason=event.reason)
        case e.PickedUp():
            return replace(state, standing=Standing.IN_PROGRESS, aside_reason="")
        case e.MarkedDone():
            return replace(state, standing=Standing.DONE)
        case e.Undone():
            return state


def _count(state: State, stage_id: str, n: int) -> State:
    """Count `n` of a stage; a negative `n` puts the pieces back."""
    stage = state.road.stage(stage_id)
    if stage is None:
        return state
    piles = state.piles
    if isinstance(stage, Stage):
        for taken in stage.takes:
            piles = _plus(piles, taken.pile, -n * taken.count)
        piles = _plus(piles, stage.makes.pile, n * stage.makes.count)
    return replace(
        state,
        piles=piles,
        done=_plus(state.done, stage_id, n),
        chosen=stage_id,
        chosen_by_hand=False,
        sessions=_counted_in(state.sessions, stage_id, n),
        iron_asked=state.iron_asked and not _hot(stage),
    )


def _hot(stage: RoadStage) -> bool:
    return Hazard.IRON in stage.hazards


def _retarget(state: State, target: Target) -> State:
    road = road_for(state.quilt, target)
    done = {stage.id: state.done.get(stage.id, 0) for stage in road.stages}
    state = replace(state, target=target, road=road, done=done)
    return state if state.chosen in done else replace(state, chosen=None, chosen_by_hand=False)


def _close(state: State, event: e.SessionClosed) -> State:
    if not state.sessions:
        return state
    closed = replace(
        state.sessions[-1],
        ended=event.ended,
        answers=event.answers,
        next_step=event.next_step,
        forgotten=event.forgotten,
    )
    return replace(
        state, sessions=(*state.sessions[:-1], closed), cautions_read={}, iron_asked=True
    )


def _heard_from(sessions: tuple[SessionRecord, ...], event: e.Event) -> tuple[SessionRecord, ...]:
    """The open session was last heard from when `event` happened."""
    if not sessions or not sessions[-1].is_open or event.session != sessions[-1].number:
        return sessions
    return (*sessions[:-1], replace(sessions[-1], last_at=later(sessions[-1].last_at, event.at)))


def _counted_in(
    sessions: tuple[SessionRecord, ...], stage: str, n: int
) -> tuple[SessionRecord, ...]:
    if not sessions:
        return sessions
    return (*sessions[:-1], replace(sessions[-1], counts=_plus(sessions[-1].counts, stage, n)))


def later(a: datetime, b: datetime) -> datetime:
    """The later of two times; a clock that was set back never moves the record back."""
    return max(a, b)


def _plus(counts: Mapping[str, int], key: str, n: int) -> dict[str, int]:
    return {**counts, key: counts.get(key, 0) + n}

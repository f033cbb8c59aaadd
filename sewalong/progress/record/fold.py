"""The one fold: from a quilt's plan and its events to where it stands.

The fold trusts the record: it never refuses. Whether an event may happen is decided
before it is written (`decide`), and checked again when a record comes from outside
(`replay`).
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from datetime import datetime
from fractions import Fraction

from msgspec.structs import replace

from sewalong.piecing.method import Hazard, Stage
from sewalong.progress.record import events as e
from sewalong.progress.record.places import Places, put_away, settled
from sewalong.progress.record.recount_rules import after, counts_made, maker
from sewalong.progress.record.route import JOIN_ROWS, RouteStage, route_for
from sewalong.progress.record.state import Check, Note, SessionRecord, Spoilage, Standing, State
from sewalong.quilt.quilt import Quilt, Target


def opening(quilt: Quilt) -> State:
    """The state before anything happened: all start pieces in their piles."""
    route = route_for(quilt, quilt.target)
    piles = dict.fromkeys(route.piles, 0)
    for start in quilt.starts:
        piles[start.pile] += start.count
    return State(
        quilt=quilt,
        target=quilt.target,
        route=route,
        piles=piles,
        done={stage.id: 0 for stage in route.stages},
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
    proof_events, undoable, checks = state.proof_events, state.undoable, state.checks
    if isinstance(event, e.Checked):
        checks = (*checks, _check(state, recorded.seq, event))
    if isinstance(event, _BEARS_ON_PROOF):
        proof_events = (*proof_events, recorded)
    if isinstance(event, e.UNDOABLE):
        undoable = (*undoable, recorded)
    # One copy of the state, as a long record is folded event by event.
    return replace(
        state,
        seq=recorded.seq,
        sessions=_heard_from(state.sessions, event),
        places=_settled(state),
        checks=checks,
        proof_events=proof_events,
        undoable=undoable,
    )


_BEARS_ON_PROOF = (e.Checked, e.WentOn, e.SettingsRecorded, e.ToolChanged, e.BobbinRanOut)


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
            if state.route.stage(event.stage) is None:
                return state
            return replace(state, chosen=event.stage, chosen_by_hand=True)
        case e.Counted():
            return _count(state, event.stage, event.n)
        case e.Unpicked():
            return _count(state, event.stage, -event.n)
        case e.Spoiled():
            return _spoil(state, event, event.pile, event.n, event.reason)
        case e.Found():
            if event.how == "found":
                state = _turned_up(state, event.pile, event.n)
            return replace(
                state,
                piles=_plus(state.piles, event.pile, event.n),
                found=_plus(state.found, event.pile, event.n),
            )
        case e.Recounted():
            return _recount(state, event)
        case e.PutAway():
            places = state.places.get(event.pile, {})
            there = state.piles.get(event.pile, 0)
            now = put_away(places, event.place, event.n, there)
            return replace(state, places={**state.places, event.pile: now})
        case e.Noted():
            note = Note(event.at, event.session, event.text)
            return replace(state, notes=(*state.notes, note))
        case e.SettingsRecorded():
            return replace(state, settings=event.settings, settings_at=event.at)
        case e.ToolChanged():
            return replace(state, changed={**state.changed, event.tool: event.at})
        case e.Checked() | e.WentOn():
            # Kept in `step`, with their place in the record.
            return state
        case e.PressNoted():
            return replace(state, press={**state.press, event.stage: event.direction})
        case e.RowsJoined():
            state = _count(state, JOIN_ROWS, 1)
            return replace(state, joints=(*state.joints, (event.first, event.second)))
        case e.BobbinRanOut():
            state = _count(state, event.stage, -event.unsewn)
            return replace(state, changed={**state.changed, "bobbin": event.at})
        case e.Mentioned():
            return replace(state, mentioned={**state.mentioned, event.what: event.at})
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
    stage = state.route.stage(stage_id)
    if stage is None:
        return state
    piles = state.piles
    if isinstance(stage, Stage):
        for taken in stage.takes:
            piles = _plus(piles, taken.pile, -n * taken.count)
        piles = _plus(piles, stage.makes.pile, n * stage.makes.count)
    done = _plus(state.done, stage_id, n)
    return replace(
        state,
        piles=piles,
        done=done,
        # What is unpicked without saying which were the seams sewn last.
        joints=state.joints[: max(0, done.get(JOIN_ROWS, 0))],
        chosen=stage_id,
        chosen_by_hand=False,
        sessions=_counted_in(state.sessions, stage_id, n),
        iron_asked=state.iron_asked and not _hot(stage),
    )


def _spoil(state: State, event: e.Event, pile: str, n: int, reason: str) -> State:
    spoilage = Spoilage(event.at, pile, n, reason)
    return replace(
        state,
        piles=_plus(state.piles, pile, -n),
        spoiled=_plus(state.spoiled, pile, n),
        spoilage=(*state.spoilage, spoilage),
    )


def _turned_up(state: State, pile: str, n: int) -> State:
    """What comes to light is taken to be of what was missing, as far as any was."""
    was = state.missing.get(pile, 0)
    return replace(state, missing=after(state.missing, pile, -min(n, was)))


def _recount(state: State, event: e.Recounted) -> State:
    """The count stands; the difference goes where the person says it belongs."""
    pile, difference = event.pile, event.counted - event.recorded
    if event.place:
        lying = {**state.places.get(pile, {}), event.place: event.counted}
        state = replace(state, places={**state.places, pile: lying})
    if difference > 0 and event.how in ("found", "stands"):
        state = _turned_up(state, pile, difference)
    match event.how:
        case "made":
            return _made_after_all(state, pile, difference)
        case "found":
            return replace(
                state,
                piles=_plus(state.piles, pile, difference),
                found=_plus(state.found, pile, difference),
            )
        case "spoiled" if difference < 0:
            return _spoil(state, event, pile, -difference, FOUND_AT_A_RECOUNT)
        case "missing":
            state = replace(state, missing=after(state.missing, pile, -difference))
        case "lost":
            given_up = state.missing.get(pile, 0)
            state = replace(state, missing=after(state.missing, pile, -given_up))
        case _:
            pass
    return replace(
        state,
        piles=_plus(state.piles, pile, difference),
        recounted=_plus(state.recounted, pile, difference),
    )


FOUND_AT_A_RECOUNT = "found spoiled at a recount"


def _made_after_all(state: State, pile: str, difference: int) -> State:
    """The stage that fills the pile was counted wrongly: its count is put right.

    No one turned to that stage or heated an iron now, and no session made more by it.
    """
    stage = maker(state.route, pile)
    counts = counts_made(stage, difference) if stage else None
    if stage is None or counts is None:
        return replace(
            state,
            piles=_plus(state.piles, pile, difference),
            recounted=_plus(state.recounted, pile, difference),
        )
    piles = _plus(state.piles, pile, difference)
    for taken in stage.takes:
        piles = _plus(piles, taken.pile, -counts * taken.count)
    return replace(state, piles=piles, done=_plus(state.done, stage.id, counts))


def _settled(state: State) -> Mapping[str, Places]:
    """Where the piles lie, no place holding more than there is."""
    now = {pile: settled(places, state.piles.get(pile, 0)) for pile, places in state.places.items()}
    return state.places if now == state.places else now


def _check(state: State, seq: int, event: e.Checked) -> Check:
    return Check(
        seq=seq,
        at=event.at,
        session=event.session,
        piece=event.piece,
        readings=tuple(Fraction(reading) for reading in event.readings),
        expected=Fraction(event.expected),
        passed=event.passed,
        settings=state.settings,
    )


def _hot(stage: RouteStage) -> bool:
    return Hazard.IRON in stage.hazards


def _retarget(state: State, target: Target) -> State:
    route = route_for(state.quilt, target)
    done = {stage.id: state.done.get(stage.id, 0) for stage in route.stages}
    joints = tuple(joint for joint in state.joints if max(joint) <= target.rows)
    state = replace(state, target=target, route=route, done=done, joints=joints)
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

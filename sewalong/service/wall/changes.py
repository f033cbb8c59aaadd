"""What a change of the wall would do, before it is done: the touches it mends, those it makes, and
what becomes of the pressing. Nothing is recorded here."""

from __future__ import annotations

from msgspec.structs import replace

from sewalong.progress.acts.act import Act
from sewalong.progress.acts.decide import decide
from sewalong.progress.acts.wall import LayWall
from sewalong.progress.record.events.event import Recorded
from sewalong.progress.record.history import History
from sewalong.progress.record.state import State
from sewalong.progress.wall.on_wall import on_wall
from sewalong.service.open_quilt import OpenQuilt
from sewalong.wall.laying.laying import Touch, touches
from sewalong.wall.laying.moves import Effect


def would_be(quilt: OpenQuilt, act: Act) -> State:
    """The quilt as it would be after an act. Raises Refused where it would be."""
    history = History(quilt.begun_as, quilt.record)
    events = decide(quilt.state, act, quilt.now())
    history.add([Recorded(n, event) for n, event in enumerate(events, len(quilt.record) + 1)])
    return history.state()


def with_laid(state: State, act: LayWall) -> State:
    """The quilt with this laid, to be looked at, whether or not it could be recorded so."""
    was = state.wall
    kept = frozenset(at for at in was.locked if was.has(at) and act.rows[at[0] - 1][at[1] - 1])
    wall = replace(
        was,
        units=act.units,
        rows=act.rows,
        locked=kept,
        touch=act.touch,
        stacks=act.stacks,
        rim=act.rim,
        pressed=was.pressed or tuple(range(1, len(act.rows) + 1)),
    )
    return replace(state, wall=wall)


def all_touches(state: State) -> tuple[Touch, ...]:
    """Every touch on the wall; none where nothing is laid."""
    now = on_wall(state)
    return () if now is None else touches(now.laying, now.units, now.rules)


def effect_of(before: State, after: State) -> Effect:
    """What a change mends and what it makes."""
    was, now = all_touches(before), all_touches(after)
    gone, come = set(was) - set(now), set(now) - set(was)
    return Effect(
        len(was),
        len(now),
        tuple(touch for touch in was if touch in gone),
        tuple(touch for touch in now if touch in come),
    )

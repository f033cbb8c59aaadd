"""The one fold: from a quilt's plan and its events to where it stands.

The fold trusts the record: it never refuses. Whether an event may happen is checked before
it is written, and again when a record comes from outside (`audit`).
"""

from __future__ import annotations

from collections.abc import Sequence, Set

from sewalong.progress.record.events.event import Recorded
from sewalong.progress.record.events.undoing import undone_in
from sewalong.progress.record.state import State
from sewalong.progress.record.tally import Tally, opening
from sewalong.quilt.quilt import Quilt


def fold(quilt: Quilt, record: Sequence[Recorded]) -> State:
    """Where the quilt stands after `record`, whose events stand in order of `seq`."""
    tally = opening(quilt)
    carry(tally, record)
    return tally.freeze()


def carry(tally: Tally, events: Sequence[Recorded], undone: Set[int] | None = None) -> None:
    """Carry a tally on with the events that follow, but for those `undone` (None: those undone
    among them); none before them is undone or put back among them."""
    if undone is None:
        undone = undone_in(events)
    for recorded in events:
        if recorded.seq not in undone:
            step(tally, recorded)
        elif recorded.event.undoable:
            # It was undone itself since, and yet nothing from before it can be put back over it.
            tally.taken_back.clear()
    if events:
        tally.seq = events[-1].seq


def step(tally: Tally, recorded: Recorded) -> None:
    """Change the tally by one event that still counts."""
    event = recorded.event
    event.apply(tally, recorded.seq)
    sitting = tally.sitting
    # A clock that was set back never moves the record back.
    if sitting is not None and event.session == sitting.number:
        sitting.last_at = max(sitting.last_at, event.at)
    tally.seq, tally.last_at = recorded.seq, event.at

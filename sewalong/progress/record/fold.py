"""The one fold: from a quilt's plan and its events to where it stands.

The fold trusts the record: it never refuses. Whether an event may happen is checked before
it is written, and again when a record comes from outside (`audit`).
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from sewalong.progress.record.event import Recorded
from sewalong.progress.record.state import State
from sewalong.progress.record.tally import Tally, opening
from sewalong.progress.record.undoing import Undone
from sewalong.quilt.quilt import Quilt


def fold(quilt: Quilt, record: Sequence[Recorded]) -> State:
    """Where the quilt stands after `record`, whose events stand in order of `seq`."""
    return tallied(quilt, record).freeze()


def tallied(quilt: Quilt, record: Sequence[Recorded]) -> Tally:
    """The tally after `record`, to be carried on with `carry`."""
    undone = {one.event.of for one in record if isinstance(one.event, Undone)}
    tally = opening(quilt)
    for recorded in record:
        if recorded.seq not in undone:
            step(tally, recorded)
    if record:
        tally.seq = record[-1].seq
    return tally


def carry(tally: Tally, record: Sequence[Recorded], new: Iterable[Recorded]) -> Tally:
    """`tally` (of `record`) carried on with `new`; tallied anew if something was undone.

    `tally` itself is changed, and must not be used any more.
    """
    new = tuple(new)
    if any(isinstance(one.event, Undone) for one in new):
        return tallied(tally.quilt, (*record, *new))
    for recorded in new:
        step(tally, recorded)
    return tally


def step(tally: Tally, recorded: Recorded) -> None:
    """Change the tally by one event that still counts."""
    event = recorded.event
    event.apply(tally, recorded.seq)
    sitting = tally.sitting
    # A clock that was set back never moves the record back.
    if sitting is not None and event.session == sitting.number:
        sitting.last_at = max(sitting.last_at, event.at)
    tally.seq, tally.last_at = recorded.seq, event.at

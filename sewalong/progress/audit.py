"""Whether a record from outside could have happened: read before it is taken in."""

from __future__ import annotations

from collections.abc import Sequence

from sewalong.progress import events as e
from sewalong.progress.fold import opening, step
from sewalong.progress.road import road_for
from sewalong.quilt.quilt import Quilt


def audit(quilt: Quilt, record: Sequence[e.Recorded]) -> str | None:
    """None when the record holds together, else a sentence naming the first event that does not.

    Checked: numbers run from 1 without gaps, stages and piles are the method's, what was
    undone could be undone, amounts are positive, and no pile ever goes below nothing.
    """
    kept: list[int] = []
    for place, recorded in enumerate(record, start=1):
        event = recorded.event
        if recorded.seq != place:
            return f"event {place} carries the number {recorded.seq}"
        if event.at.tzinfo is None:
            return f"event {place} has a time without its offset"
        if isinstance(event, e.Undone):
            if not kept or kept[-1] != event.of:
                return f"event {place} undoes number {event.of}, which was not the last"
            kept.pop()
        elif isinstance(event, e.UNDOABLE):
            kept.append(place)
        trouble = _misfit(quilt, event)
        if trouble:
            return f"event {place} {trouble}"
    return _below_nothing(quilt, record)


def _misfit(quilt: Quilt, event: e.Event) -> str | None:
    road = road_for(quilt, quilt.target)
    match event:
        case e.Counted(stage=stage, n=n) | e.Unpicked(stage=stage, n=n):
            if n < 1:
                return f"counts {n}"
            known = {s.id for s in road.stages} | {"join-rows"}
            return None if stage in known else f"names a stage “{stage}” this method has not"
        case e.Spoiled(pile=pile, n=n) | e.Found(pile=pile, n=n):
            if n < 1:
                return f"moves {n} pieces"
            return None if pile in road.piles else f"names a pile “{pile}” this method has not"
        case e.Recounted(pile=pile) | e.PutAway(pile=pile):
            return None if pile in road.piles else f"names a pile “{pile}” this method has not"
        case e.TargetChanged(rows=rows, columns=columns) if rows < 1 or columns < 1:
            return f"sets a target of {rows} × {columns}"
    return None


def _below_nothing(quilt: Quilt, record: Sequence[e.Recorded]) -> str | None:
    """The effective record is replayed once; each prefix that counts must hold."""
    undone = {r.event.of for r in record if isinstance(r.event, e.Undone)}
    effective = [r for r in record if r.seq not in undone]
    state = opening(quilt)
    for recorded in effective:
        state = step(state, recorded)
        for pile, n in state.piles.items():
            if n < 0:
                noun = state.road.piles[pile].noun.many
                return f"event {recorded.seq} takes more {noun} than there were"
    return None

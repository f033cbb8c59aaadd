"""How long was sewn and how much cut since a needle or a blade went in."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from msgspec import Struct

from sewalong.piecing.method import Station
from sewalong.progress.pace.count_times import Stretch
from sewalong.progress.pace.measured import Measured
from sewalong.progress.pace.stage_lengths import stage_lengths
from sewalong.progress.record.events.every_kind import BobbinRanOut, Event, Recorded, ToolChanged
from sewalong.progress.record.events.undoing import effective
from sewalong.progress.record.state import State


class Use(Struct, frozen=True):
    """Hours measured at the machine, and inches cut; None where a length isn't known.

    `guessed_hours` is what counts at the machine without a time of their own may have taken.
    """

    machine_hours: float
    guessed_hours: float
    cut: float | None


def changes(record: Sequence[Recorded], tool: str) -> tuple[int, ...]:
    """Places in the record where the tool was changed, without what was undone."""
    return tuple(r.seq for r in effective(record) if _goes_in(r.event, tool))


def _goes_in(event: Event, tool: str) -> bool:
    """Whether a new one went in: a bobbin that ran out makes way for a full one."""
    if isinstance(event, BobbinRanOut):
        return tool == "bobbin"
    return isinstance(event, ToolChanged) and str(event.tool) == tool


def use_between(state: State, known: Measured, after: int, upto: int | None = None) -> Use:
    """The use between two places in the record; to its end when `upto` is None."""
    within = [
        one for one in known.stretches if one.seq > after and (upto is None or one.seq <= upto)
    ]
    at_machine = [one for one in within if _at_machine(state, one.stage)]
    return Use(
        machine_hours=sum(one.minutes or 0.0 for one in at_machine) / 60,
        guessed_hours=sum(known.guess(one) for one in at_machine) / 60,
        cut=_cut(state, [one for one in within if one.n > 0]),
    )


def _at_machine(state: State, stage_id: str) -> bool:
    stage = state.route.stage(stage_id)
    return stage is not None and stage.station is Station.MACHINE


def _cut(state: State, made: Iterable[Stretch]) -> float | None:
    lengths = stage_lengths(state.quilt, state.target)
    found = 0.0
    for one in made:
        inches = lengths[one.stage].cut
        if inches is None:
            return None
        found += one.n * inches
    return found

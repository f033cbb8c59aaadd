"""What to leave out tonight, in words a person would say."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from sewalong.piecing.method import Hazard, Station
from sewalong.progress.pace.duration_words import listed
from sewalong.progress.record.refused import Refused
from sewalong.progress.record.route import RouteStage

LeaveOut = frozenset[Station | Hazard]

_CUTTING: LeaveOut = frozenset({Station.MAT, Hazard.CUTTER, Hazard.CROSS_CUT})
_IRONING: LeaveOut = frozenset({Station.IRON, Hazard.IRON})
_MACHINE: LeaveOut = frozenset({Station.MACHINE, Hazard.NEEDLE})

LEAVE_OUT_WORDS: Mapping[str, LeaveOut] = {
    "cutting": _CUTTING,
    "ironing": _IRONING,
    "pressing": _IRONING,
    "machine": _MACHINE,
    "sewing": _MACHINE,
    "pins": frozenset({Hazard.PINS}),
    "hands": _CUTTING | {Hazard.PINS},
    "table": frozenset({Station.TABLE}),
    "wall": frozenset({Station.WALL}),
}
"""By word. Sore hands leave the cutter and the pins alone."""


def leave_out(words: Iterable[str]) -> LeaveOut:
    """The stations and hazards meant; raises Refused, with the words there are, for others."""
    found: set[Station | Hazard] = set()
    for word in words:
        meant = LEAVE_OUT_WORDS.get(word.strip().lower())
        if meant is None:
            raise Refused(
                f"Nothing is called “{word}”. Leave out one of: {', '.join(LEAVE_OUT_WORDS)}."
            )
        found |= meant
    return frozenset(found)


def is_left_out(stage: RouteStage, left_out: LeaveOut) -> bool:
    """Whether a stage is done where, or with what, is left out."""
    return stage.station in left_out or any(hazard in left_out for hazard in stage.hazards)


def labels_left_out(stages: Iterable[RouteStage], left_out: LeaveOut) -> str:
    """The labels of the stages left out, listed."""
    return listed(tuple(stage.label for stage in stages if is_left_out(stage, left_out)))

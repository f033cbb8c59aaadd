"""How much seam one bobbin lasts: learned from the owner's own, or guessed from what it holds.

Learned by the length of seam sewn between two changes, the middle one of the last few: one that
was changed half full, for its colour, says little then. What a bobbin holds depends on the
thread and on who wound it, and no source says it, so a guess is told as one.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise
from statistics import median

from msgspec import Struct

from sewalong.lengths import METRE, Length
from sewalong.piecing.method import Station
from sewalong.progress.pace.count_times import counted
from sewalong.progress.pace.stage_lengths import stage_lengths
from sewalong.progress.pace.supplies.ran_out import ran_out
from sewalong.progress.pace.supplies.use_since_change import changes
from sewalong.progress.record.begun_rows import left_begun, part_sewn, units_across
from sewalong.progress.record.events import every_kind as e
from sewalong.progress.record.events.undoing import effective
from sewalong.progress.record.route import SEW_ROWS, RouteStage
from sewalong.progress.record.state import State
from sewalong.quilt.cloth.thread import LOCKSTITCH_RATIO, WASTE, length_said

LEARNED_FROM = 5
"""Last bobbins that are learned from. From memory."""

USUAL_METRES = 45
"""Thread on a bobbin where the owner says nothing. Common practice, from memory: household bobbins
hold some 30 to 60 m; no source that could be cited says it."""

NEARLY_EMPTY = 0.9
"""Part of a bobbin sewn at which to look. From memory."""

TWO_FIGURES = 20
"""Numbers above this are said in round figures."""


class Bobbin(Struct, frozen=True):
    """`lasts` is the seam one bobbin sews, in inches; `why` says where that is from.

    `is_hers`: it is learned, or reckoned from the metres she gave. `since` is what was sewn since
    a full one went in, None where the record cannot say; `changed` the place of that change in
    the record, 0 for none.
    """

    lasts: float
    why: str
    is_hers: bool
    since: float | None
    changed: int


def bobbin(state: State, record: Sequence[e.Recorded]) -> Bobbin:
    """How long a bobbin lasts and how much of the one in the machine is sewn."""
    when = changes(record, "bobbin")
    sewn = tuple(_sewn(state, record))
    last = when[-1] if when else 0
    lasted = [_between(sewn, after, upto) for after, upto in list(pairwise(when))[-LEARNED_FROM:]]
    known = [inches for inches in lasted if inches]
    since = _between(sewn, last, None) if when else None
    if known:
        n = len(known)
        why = f"learned from your last {n} bobbins" if n > 1 else "learned from your last bobbin"
        return Bobbin(median(known), why, True, since, last)
    hers = state.quilt.choices.bobbin_metres
    metres, whose = (USUAL_METRES, ", common practice") if hers is None else (hers, "")
    why = f"a guess from {metres} m on a bobbin{whose}"
    return Bobbin(float(seam_from(metres * METRE)), why, hers is not None, since, last)


def seam_from(thread: Length) -> Length:
    """The seam that so much bobbin thread sews: half of what a lockstitch takes is the bobbin's,
    and some goes to waste (see `quilt.cloth.thread`)."""
    return thread / (LOCKSTITCH_RATIO / 2 * (1 + WASTE))


def lasts_in_words(state: State, record: Sequence[e.Recorded], stage: RouteStage) -> str:
    """How many of a stage one bobbin sews, and how many more the one in the machine; empty away
    from the machine, and where the length of the stage's seams is not known."""
    each = stage_lengths(state.quilt, state.target)[stage.id].sewn
    if stage.station is not Station.MACHINE or not each:
        return ""
    found, unit = bobbin(state, record), state.quilt.unit
    many = f"about {_about(found.lasts / each)} {stage.counts.many}"
    words = f"One bobbin lasts {many} here, {length_said(found.lasts, unit)} of seam ({found.why})."
    if found.since is None:
        return words
    left = max(0.0, found.lasts - found.since)
    return (
        f"{words} {length_said(found.since, unit)} are sewn since a full one went in: "
        f"{_about(left / each)} more."
    )


def may_run_out(state: State, record: Sequence[e.Recorded]) -> tuple[int, str] | None:
    """The place of the last change and one sentence, when the bobbin may not last the next chain.

    The next chain is taken to be as long as the last lot. None where no change is recorded, or
    only a guess for anybody's bobbin could tell.
    """
    found = bobbin(state, record)
    if found.since is None or not found.is_hers:
        return None
    if found.since + max(_next_chain(state), (1 - NEARLY_EMPTY) * found.lasts) < found.lasts:
        return None
    unit = state.quilt.unit
    return found.changed, (
        f"{length_said(found.since, unit)} of seam on this bobbin; one lasts about "
        f"{length_said(found.lasts, unit)} ({found.why}). It may run out in the next chain."
    )


def likely_unsewn(state: State, record: Sequence[e.Recorded], stage: RouteStage) -> str:
    """Where in the last lot the thread likely ended, by what a bobbin of hers lasts; empty where
    that lot would still have been sewn, or nothing of hers can tell."""
    found = bobbin(state, record)
    each = stage_lengths(state.quilt, state.target)[stage.id].sewn
    if found.since is None or not found.is_hers or not each or stage.id != state.last_counted:
        return ""
    lot, without = state.last_lot[stage.id], found.since - found.lasts
    if without <= 0:
        return ""
    run = lot * each
    return ran_out(lot, run, min(run, without)).sentence(stage.counts)


def _next_chain(state: State) -> float:
    each = stage_lengths(state.quilt, state.target).get(state.last_counted)
    return state.last_lot[state.last_counted] * (each.sewn or 0.0) if each is not None else 0.0


def _sewn(state: State, record: Sequence[e.Recorded]) -> Iterator[tuple[int, float | None]]:
    """What was sewn at each place of the record, in inches; None where the length isn't known.

    What was unpicked was sewn all the same; what a bobbin that ran out did not sew was not.
    """
    each = {id: one.sewn for id, one in stage_lengths(state.quilt, state.target).items()}
    across = units_across(state.route, state.quilt.method.unit)
    begun: tuple[tuple[int, int], ...] = ()
    for one in effective(record):
        event = one.event
        if isinstance(event, e.RowsBegun):
            more = _rows_worth(event.pieces, across) - _rows_worth(begun, across)
            begun = event.pieces
            yield one.seq, _times(max(0.0, more), each.get(SEW_ROWS, 0.0))
        elif (said := counted(event)) is not None:
            stage, n = said
            rows = float(n)
            if stage == SEW_ROWS and n > 0:
                rows -= part_sewn(begun, across, n)
                begun = left_begun(begun, across, n)
            if n > 0 or isinstance(event, e.BobbinRanOut):
                yield one.seq, _times(rows, each.get(stage, 0.0))


def _rows_worth(begun: tuple[tuple[int, int], ...], across: int) -> float:
    fits = tuple((n, units) for n, units in begun if units < across)
    return part_sewn(fits, across, sum(n for n, _ in fits))


def _times(n: float, inches: float | None) -> float | None:
    return None if inches is None else n * inches


def _between(
    sewn: Sequence[tuple[int, float | None]], after: int, upto: int | None
) -> float | None:
    found = 0.0
    for seq, inches in sewn:
        if seq > after and (upto is None or seq <= upto):
            if inches is None:
                return None
            found += inches
    return max(0.0, found)


def _about(n: float) -> str:
    """A number as it is said: whole, and above twenty in two figures, rounded down."""
    whole = int(n + 1e-9)
    step = 10 ** (len(str(whole)) - 2) if whole > TWO_FIGURES else 1
    return f"{whole // step * step:,}"

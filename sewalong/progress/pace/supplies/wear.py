"""Things that wear out, each said once: needle, bobbin, blade, and the sewer's own back and eyes.

Nothing is said in the middle of a chain. Makers' instructions come before all of it.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from collections.abc import Set as AbstractSet
from datetime import datetime, timedelta
from itertools import pairwise

from msgspec import Struct

from sewalong.progress.pace.break_points import at_a_chains_end, at_a_stage_boundary
from sewalong.progress.pace.duration_words import hours
from sewalong.progress.pace.measured import Measured, measured
from sewalong.progress.pace.supplies.bobbin import LEARNED_FROM, may_run_out
from sewalong.progress.pace.supplies.use_since_change import Use, changes, use_between
from sewalong.progress.pace.supplies.wear_choices import WearChoices
from sewalong.progress.plan.plan import plan
from sewalong.progress.record.events.event import Recorded
from sewalong.progress.record.state import State
from sewalong.quilt.cloth.thread import length_said


class Wear(Struct, frozen=True):
    """One thing to say. `id` is the same until the thing is changed or the stop is over, so
    that whoever shows it can keep it from being said twice."""

    id: str
    sentence: str


def worn(
    state: State,
    record: Sequence[Recorded],
    now: datetime,
    choices: WearChoices | None = None,
    said: AbstractSet[str] = frozenset(),
) -> tuple[Wear, ...]:
    """What is due to be said now and is not in `said`; `state` is the fold of `record`.

    Stops and the bobbin come at chain ends, the others at stage boundaries.
    """
    now_plan = plan(state)
    if not at_a_chains_end(state, now_plan):
        return ()
    chosen = choices or WearChoices()
    known = measured(state, record)
    found: list[Wear] = []
    boundary = at_a_stage_boundary(state, now_plan)
    if boundary:
        found += _needle(state, record, known, chosen)
    if (bobbin := may_run_out(state, record)) is not None:
        found.append(Wear(f"bobbin-{bobbin[0]}", bobbin[1]))
    if boundary:
        found += _blade(state, record, known, chosen)
    found += _stop(state, known, now, chosen)
    return tuple(wear for wear in found if wear.id not in said)


def _needle(
    state: State, record: Sequence[Recorded], known: Measured, chosen: WearChoices
) -> Iterator[Wear]:
    when = changes(record, "needle")
    last = when[-1] if when else 0
    use = use_between(state, known, last)
    if chosen.needle_hours and use.machine_hours + use.guessed_hours >= chosen.needle_hours:
        since = "on this needle" if last else "and no new needle is in the record"
        yield Wear(
            f"needle-{last}",
            f"{_at_the_machine(use, since)}; a new one is usual after {hours(chosen.needle_hours)}.",
        )


def _at_the_machine(use: Use, since: str) -> str:
    """What was measured, and apart from it what is guessed."""
    guess, untimed = hours(use.guessed_hours), "for counts without a time"
    if not use.machine_hours:
        return f"A guess of {guess} at the machine {since}, {untimed}"
    more = f", and a guess of {guess} more {untimed}" if use.guessed_hours else ""
    return f"About {hours(use.machine_hours)} at the machine {since}{more}"


def _blade(
    state: State, record: Sequence[Recorded], known: Measured, chosen: WearChoices
) -> Iterator[Wear]:
    when = changes(record, "blade")
    limit, unit = chosen.blade_inches, state.quilt.unit
    if limit is None:
        limit = _shortest(state, known, when)
    now = use_between(state, known, when[-1] if when else 0).cut
    if limit and now is not None and now >= limit:
        yield Wear(
            f"blade-{when[-1] if when else 0}",
            f"{length_said(now, unit)} cut with this blade; you change it after "
            f"{length_said(limit, unit)}. A blunt blade wants pressure, and slips.",
        )


def _shortest(state: State, known: Measured, when: Sequence[int]) -> float | None:
    """The least that was cut between two changes, of the last few; None before two changes.

    Stretches whose length isn't known, or with nothing in them, teach nothing.
    """
    pairs = list(pairwise(when))[-LEARNED_FROM:]
    lengths = [use_between(state, known, after, upto).cut for after, upto in pairs]
    return min((length for length in lengths if length), default=None)


def _stop(state: State, known: Measured, now: datetime, chosen: WearChoices) -> Iterator[Wear]:
    """A stop for each interval since the session began or a gap ended."""
    session = state.session
    if session is None or not chosen.stop_minutes:
        return
    gaps = [one for one in known.stretches if one.idle and one.session == session.number]
    since = gaps[-1].at if gaps else session.opened
    interval = timedelta(minutes=chosen.stop_minutes)
    passed = int((now - since) / interval)
    if passed >= 1:
        rested = gaps[-1].seq if gaps else 0
        yield Wear(
            f"stop-{session.number}-{rested}-{passed}",
            f"{hours((now - since).total_seconds() / 3600)} at it: stand up, look far away, "
            "loosen your hands.",
        )

"""At most one thing is said at a time, the most important first.

A caution comes before all, as a dialog of its own. Then pieces at risk, then a target that
has gone out of reach, then the seam that is not proved, then what wears out, then advice.
What carries a `mention` is said once: record `Mention` when it was shown.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import datetime

from msgspec import Struct

from sewalong.piecing.method import Station
from sewalong.progress.joining.current_stage import in_hand
from sewalong.progress.measuring.at_risk import at_risk
from sewalong.progress.measuring.proof import proof
from sewalong.progress.pace.wear import worn
from sewalong.progress.plan.plan import Plan
from sewalong.progress.record import events as e
from sewalong.progress.record.state import State
from sewalong.progress.resuming.interruption import after_interruption
from sewalong.progress.resuming.resume_facts import shortfall_in_words
from sewalong.progress.resuming.sampling import sampling_line


class OneLine(Struct, frozen=True):
    """What to say now, and of which kind: "at risk", "short", "seam", "wear" or "advice".

    `mention` is empty when it may be said again.
    """

    kind: str
    text: str
    mention: str = ""


def one_line(
    state: State,
    record: Sequence[e.Recorded],
    now_plan: Plan,
    now: datetime,
    *,
    pause: str | None = None,
) -> OneLine | None:
    """The most important thing to say now, or None.

    `pause` is what an interruption before the last count would have called for, where it is
    said after the count (plain commands); None to look at the time that has gone by now.
    """
    said = (*_at_risk(state, record), *_short(state, now_plan))
    if said:
        return said[0]
    return next(_lesser(state, record, now_plan, now, pause), None)


def _at_risk(state: State, record: Sequence[e.Recorded]) -> Iterator[OneLine]:
    risk = at_risk(state, record)
    if risk is not None and not risk.none and not risk.seen_to:
        # Said until the person has seen to them, not only until it was shown.
        yield OneLine("at risk", risk.lines[0])


def _short(state: State, now_plan: Plan) -> Iterator[OneLine]:
    """A shortfall is news when it becomes unavoidable, and again when it grows."""
    short = now_plan.shortfall
    if short is not None:
        mention = f"short-{state.target.rows}x{state.target.columns}-{short.units}"
        if mention not in state.mentioned:
            yield OneLine("short", shortfall_in_words(state, now_plan), mention)


def _lesser(
    state: State,
    record: Sequence[e.Recorded],
    now_plan: Plan,
    now: datetime,
    pause: str | None,
) -> Iterator[OneLine]:
    """What can wait for its turn, worked out only as far as it is asked for."""
    hand = in_hand(state, now_plan)
    seam = proof(state, now)
    if seam.say and hand.line.stage.station is Station.MACHINE and hand.line.to_do:
        yield OneLine("seam", seam.say, seam.mention)
    for wear in worn(state, record, now, said=state.mentioned.keys()):
        yield OneLine("wear", wear.sentence, wear.id)
    interrupted = after_interruption(state, now) if pause is None else pause
    if interrupted:
        yield OneLine("advice", interrupted)
    session = state.session
    if session is not None and not session.counts.get(hand.line.stage.id):
        sampling = sampling_line(hand.line.stage, min(hand.line.to_do, hand.line.ready))
        mention = f"sampling-{session.number}-{hand.line.stage.id}"
        if sampling and mention not in state.mentioned:
            yield OneLine("advice", sampling, mention)
    if now_plan.shortfall is not None:
        yield OneLine("short", shortfall_in_words(state, now_plan))

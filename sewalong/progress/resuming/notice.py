"""At most one thing is said at a time, the most important first.

A caution comes before all, as a dialog of its own. Then pieces at risk, then a target that
has gone out of reach, then the seam that is not proved, then what wears out, then advice, and
last what to look at before a long seam.
What carries a `mention` is said once: record `Mention` when it was shown.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import datetime

from msgspec import Struct

from sewalong.piecing.method import Station
from sewalong.progress.joining.current_stage import InHand
from sewalong.progress.joining.orientation_checks import before_the_next
from sewalong.progress.measuring.proof import proof
from sewalong.progress.pace.break_points import something_may_be_worn
from sewalong.progress.pace.supplies.wear_choices import WearChoices
from sewalong.progress.plan.plan import Plan
from sewalong.progress.record.events.event import Recorded
from sewalong.progress.record.state import Standing, State
from sewalong.progress.resuming.resume_facts import shortfall_in_words
from sewalong.progress.resuming.sampling import sampling_line


class Notice(Struct, frozen=True):
    """What to say now, and of which kind: "at risk", "short", "seam", "wear", "advice" or "look".

    `mention` is empty when it may be said again.
    """

    kind: str
    text: str
    mention: str = ""


def notice(
    state: State,
    record: Sequence[Recorded],
    now_plan: Plan,
    hand: InHand,
    now: datetime,
    *,
    pause: str,
    wear: WearChoices,
) -> Notice | None:
    """The most important thing to say now, or None; outside a session nothing is said.

    `pause` is what an interruption calls for (see `after_interruption`); empty for none. `wear` is
    after how long something is said of what wears out.
    """
    if state.session is None or state.standing is not Standing.IN_PROGRESS:
        return None
    said = (*_at_risk(state, record), *_short(state, now_plan))
    if said:
        return said[0]
    return next(_lesser(state, record, now_plan, hand, now, pause, wear), None)


def _at_risk(state: State, record: Sequence[Recorded]) -> Iterator[Notice]:
    if all(check.passed for check in state.checks):
        return
    from sewalong.progress.measuring.at_risk import still_at_risk

    risk = still_at_risk(state, record)
    if risk is not None:
        # Said until the person has seen to them, not only until it was shown.
        yield Notice("at risk", risk.lines[0])


def _short(state: State, now_plan: Plan) -> Iterator[Notice]:
    """A shortfall is news when it becomes unavoidable, and again whenever so many units were not
    short before."""
    short = now_plan.shortfall
    if short is not None:
        mention = f"short-{state.target.rows}x{state.target.columns}-{short.units}"
        if mention not in state.mentioned:
            yield Notice("short", shortfall_in_words(state, now_plan), mention)


def _lesser(
    state: State,
    record: Sequence[Recorded],
    now_plan: Plan,
    hand: InHand,
    now: datetime,
    pause: str,
    wear: WearChoices,
) -> Iterator[Notice]:
    """What can wait for its turn, worked out only as far as it is asked for."""
    seam = proof(state, now)
    # What to prove is worked out from the geometry, so it is asked last.
    if hand.line.stage.station is Station.MACHINE and hand.line.to_do and seam.say:
        yield Notice("seam", seam.say, seam.mention)
    if something_may_be_worn(state, now_plan, now, wear.stop_minutes):
        # Loaded, and looked for through the whole record, only where a word would fit.
        from sewalong.progress.pace.supplies.wear import worn

        for one in worn(state, record, now, wear, said=state.mentioned.keys()):
            yield Notice("wear", one.sentence, one.id)
    if pause:
        yield Notice("advice", pause)
    session = state.session
    if session is not None and not session.counts.get(hand.line.stage.id):
        sampling = sampling_line(hand.line.stage, min(hand.line.to_do, hand.line.ready))
        mention = f"sampling-{session.number}-{hand.line.stage.id}"
        if sampling and mention not in state.mentioned:
            yield Notice("advice", sampling, mention)
    if now_plan.shortfall is not None:
        yield Notice("short", shortfall_in_words(state, now_plan))
    here = hand.line
    look = before_the_next(state, here.stage.id) if here.to_do and here.ready else ""
    if look:
        # Said before every such seam: each can be pinned the wrong way round.
        yield Notice("look", look)

"""After any history whatever, every view of it can be had and is in sentences."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import timedelta

from hypothesis import given, settings

from sewalong.progress.joining.web import rows_hold
from sewalong.progress.measuring.at_risk import at_risk
from sewalong.progress.measuring.proof import ProofStanding, proof
from sewalong.progress.plan.plan import plan
from sewalong.progress.resuming.coming_back import coming_back, facts
from sewalong.progress.resuming.interruption import after_interruption
from sewalong.progress.resuming.pause_note import pause_note
from sewalong.progress.resuming.recount_advice import offer_in_words, worth_counting
from sewalong.quilt.quilt import Quilt
from tests.progress.building import Record
from tests.progress.wandering import Ask, histories, small_quilt, wander

LATER = (timedelta(minutes=7), timedelta(days=1), timedelta(days=40))


@settings(max_examples=25, deadline=None)
@given(small_quilt, histories)
def test_every_view_can_be_had_after_any_history(quilt: Quilt, history: Sequence[Ask]) -> None:
    record = Record(quilt)
    for step in wander(quilt, history, record):
        state = step.after
    now_plan = plan(state)
    for event in record:
        assert event.event.words(state, record).strip()
    for later in LATER:
        now = step.at + later
        assert all(text for _, text in facts(coming_back(state, record, now)))
        note = pause_note(state, now, now_plan)
        assert note.stop.why.endswith(".")
        assert (note.stop.offer == "") == (note.stop.n == 0)
        # Rows of a web are checked inside a pass; all else is asked back.
        line = after_interruption(state, now)
        assert line == "" or line.endswith("." if rows_hold(state) else "?")
        offered = worth_counting(state, now, now_plan)
        assert bool(offered) == bool(offer_in_words(state, now, now_plan))
        assert all(one.pile in state.route.piles for one in offered)
        proved = proof(state, now)
        assert (proved.standing is ProofStanding.FRESH) == (proved.why == "")
    risk = at_risk(state, record)
    assert risk is None or (risk.lines and not risk.failed.passed)
    for stage in risk.stages if risk else ():
        assert 0 < stage.n == sum(then.n for then in stage.sewn)
        assert stage.n <= state.done[stage.stage]

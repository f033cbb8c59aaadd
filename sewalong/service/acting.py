"""Carrying out what a person asks for, once for both faces: the keys and the plain commands.

Everything that belongs to an act is settled here and written with it: the seam that is not
proved, the one thing worth saying, the question about the iron, the words to say back.
"""

from __future__ import annotations

from collections.abc import Sequence
from datetime import datetime

from msgspec import Struct
from msgspec.structs import replace

from sewalong.progress.acts.act import Act
from sewalong.progress.acts.decide import decide
from sewalong.progress.acts.said import Mention
from sewalong.progress.acts.sessions import OpenSession
from sewalong.progress.joining.current_stage import InHand, in_hand
from sewalong.progress.pace.break_points import at_a_pause
from sewalong.progress.pace.supplies.wear_choices import chosen_by
from sewalong.progress.plan.plan import Plan, plan
from sewalong.progress.record.events.event import Event, Recorded
from sewalong.progress.record.events.said import Mentioned
from sewalong.progress.record.events.sessions import NO_SESSION
from sewalong.progress.record.events.undoing import Undone
from sewalong.progress.record.refused import Refused
from sewalong.progress.record.state import State
from sewalong.progress.resuming.interruption import after_interruption
from sewalong.progress.resuming.notice import Notice, notice
from sewalong.progress.safety.cautions import CautionFirst
from sewalong.progress.safety.closing_questions import Question, leaving_question
from sewalong.service.open_quilt import OpenQuilt
from sewalong.service.summary import to_json
from sewalong.service.summing_up import summary_of


class Outcome(Struct, frozen=True):
    """What came of an act: what was recorded, the words for it, and how things stand now.

    `recorded` is empty where there was nothing to record. `words` says the last thing the
    person did. `notice` is the one thing to say now, `question` what is owed an answer.
    """

    recorded: tuple[Recorded, ...]
    words: str
    plan: Plan
    hand: InHand
    notice: Notice | None
    question: Question | None


def do(
    quilt: OpenQuilt,
    act: Act,
    *,
    at: datetime | None = None,
    pause_was_said: bool = False,
    quietly: bool = False,
) -> Outcome:
    """Carry out an act; raises Refused (CautionFirst where a caution is due) or StoreFault.

    One act is one transaction and is taken back by one undo. `at` is when it was done, where that
    is not now. `pause_was_said`: whoever shows the quilt watches the clock and says after an
    interruption what to look at by itself.
    `quietly`: nobody would show a notice, so none is given and none is taken for said.
    """
    quilt.refresh()
    pause = "" if pause_was_said else after_interruption(quilt.state, quilt.now())
    wear = chosen_by(quilt.preferences)
    found: list[tuple[Plan, InHand, Notice | None]] = []

    def follows(
        state: State, record: Sequence[Recorded], at: datetime
    ) -> tuple[Sequence[Event], str]:
        now = plan(state)
        hand = in_hand(state, now)
        said = None
        if not quietly:
            said = notice(state, record, now, hand, at, pause=pause, wear=wear)
        found[:] = [(now, hand, said)]
        # Where a question is owed it may be all that is shown, so nothing else was said yet.
        told = said if _owed(state, hand) is None else None
        return _mention(state, told, at), to_json(summary_of(state, now))

    try:
        recorded = quilt.do(act, follows, at=at)
    except CautionFirst as due:
        raise due.with_words(quilt.preferences.cautions) from None
    if not found:
        return looked(quilt)
    now, hand, said = found[0]
    return Outcome(recorded, _words(quilt, recorded), now, hand, said, _owed(quilt.state, hand))


def chain_or_stage_done(quilt: OpenQuilt, outcome: Outcome) -> bool:
    """Whether something was counted, and with it a chain or the stage is done."""
    return bool(outcome.recorded) and at_a_pause(quilt.state, outcome.plan)


def why_refused(quilt: OpenQuilt, act: Act) -> str:
    """Why an act would be refused now, in a sentence; empty when it would not. Nothing is recorded."""
    try:
        decide(quilt.state, act, quilt.now())
    except Refused as refused:
        return str(refused)
    return ""


def sit_down(quilt: OpenQuilt) -> Outcome:
    """Sit down to sew, and the one thing to say on doing so, even in a session still open.

    Raises Refused for a quilt that is laid aside or done, and StoreFault.
    """
    outcome = do(quilt, OpenSession(), pause_was_said=True)
    if outcome.recorded:
        return outcome
    state = quilt.state
    wear = chosen_by(quilt.preferences)
    said = notice(state, quilt.record, outcome.plan, outcome.hand, quilt.now(), pause="", wear=wear)
    # Where a question is owed it may be all that is shown, so nothing else was said yet.
    if said is not None and said.mention and outcome.question is None:
        do(quilt, Mention(said.mention), quietly=True)
    return replace(outcome, notice=said)


def looked(quilt: OpenQuilt) -> Outcome:
    """How things stand where nothing was recorded; nothing is said of it."""
    now = plan(quilt.state)
    hand = in_hand(quilt.state, now)
    return Outcome((), "", now, hand, None, _owed(quilt.state, hand))


def _owed(state: State, hand: InHand) -> Question | None:
    return leaving_question(state, hand.line.stage.id)


def _mention(state: State, said: Notice | None, at: datetime) -> tuple[Event, ...]:
    """What is to be said once is recorded with the act it follows."""
    if said is None or not said.mention:
        return ()
    session = state.session.number if state.session else NO_SESSION
    return (Mentioned(at=at, session=session, what=said.mention),)


def _words(quilt: OpenQuilt, recorded: Sequence[Recorded]) -> str:
    """What the person did: of an act of several events the last, of several undone the first."""
    done = [one.event for one in recorded if not isinstance(one.event, Mentioned)]
    if not done:
        return ""
    event = done[0] if isinstance(done[0], Undone) else done[-1]
    return event.words(quilt.state, quilt.record)

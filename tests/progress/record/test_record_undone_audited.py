"""What was undone is audited in the state it happened in, as well as what came in between."""

from __future__ import annotations

from collections.abc import Sequence

from hypothesis import HealthCheck, given, settings
from msgspec.structs import replace

from sewalong.progress.record.auditing.audit import audit
from sewalong.progress.record.events import every_kind as e
from sewalong.progress.record.events.every_kind import Recorded
from sewalong.progress.record.fold import fold
from sewalong.quilt.quilt import Quilt
from tests.progress import every_act as c
from tests.progress.building import a_quilt, everything, play
from tests.progress.wandering import Ask, histories, small_quilt, wander

ONE_ROW = a_quilt(pieces=40, rows=1, columns=5)
"""A quilt of one row has no stage that joins rows; a target of more has."""


def test_a_stage_that_only_an_undone_target_had_may_have_been_chosen() -> None:
    state, record = play(ONE_ROW, c.ChangeTarget(2, 5), c.ChooseStage("join-rows"), c.Undo())
    assert state.route.stage("join-rows") is None
    assert state.chosen is None
    assert audit(ONE_ROW, record) is None


def test_the_same_stage_may_not_be_chosen_once_the_target_is_undone() -> None:
    _, record = play(ONE_ROW, c.ChangeTarget(2, 5), c.ChooseStage("join-rows"), c.Undo())
    chosen = record[2].event
    assert isinstance(chosen, e.StageChosen)
    late = [*record, Recorded(len(record) + 1, chosen)]
    trouble = audit(ONE_ROW, late)
    assert trouble is not None
    assert trouble.startswith(f"event {len(late)} (stage chosen) cannot have happened")


def test_nor_before_it_was_changed() -> None:
    _, record = play(ONE_ROW, c.ChooseStage("pair"), c.ChangeTarget(2, 5), c.Undo())
    chosen = record[1].event
    assert isinstance(chosen, e.StageChosen)
    record[1] = Recorded(2, replace(chosen, stage="join-rows"))
    trouble = audit(ONE_ROW, record)
    assert trouble is not None
    assert "event 2 (stage chosen) cannot have happened" in trouble


def test_work_at_the_other_target_is_undone_before_the_target_is() -> None:
    state, record = play(
        ONE_ROW,
        *everything(ONE_ROW),
        c.ChangeTarget(2, 5),
        c.Count("sew-rows", 2),
        c.Count("join-rows"),
        c.ChooseStage("join-rows"),
        c.Undo(),
        c.Undo(),
        c.Undo(),
        c.Count("sew-rows"),
    )
    assert state.done["sew-rows"] == 1
    assert audit(ONE_ROW, record) is None


def test_a_session_closed_since_stays_closed_when_what_was_before_is_undone() -> None:
    state, record = play(
        ONE_ROW, c.Count("pair", 2), c.CloseSession(), c.Undo(), c.Count("pair", 3), c.Undo()
    )
    assert [session.number for session in state.sessions] == [1, 2]
    assert state.done["pair"] == 0
    assert audit(ONE_ROW, record) is None


def test_what_was_spoiled_and_undone_can_be_spoiled_again() -> None:
    _, record = play(
        ONE_ROW,
        c.Spoil("square", 40, "cut askew"),
        c.WriteNote("all of them"),
        c.Undo(),
        c.Undo(),
        c.Spoil("square", 40, "cut askew after all"),
    )
    assert audit(ONE_ROW, record) is None
    without = [one for one in record if not isinstance(one.event, e.Undone)]
    again = [Recorded(n, one.event) for n, one in enumerate(without, start=1)]
    trouble = audit(ONE_ROW, again)
    assert trouble is not None
    assert "Only 0 squares lie there" in trouble


def test_what_was_undone_before_stays_undone_when_more_is_undone() -> None:
    state, record = play(
        ONE_ROW,
        c.WriteNote("count them"),
        c.Spoil("square", 40, "cut askew"),
        c.Undo(),
        c.Undo(),
        c.Spoil("square", 40, "cut askew after all"),
    )
    assert state.piles["square"] == 0
    assert audit(ONE_ROW, record) is None


def test_an_undone_event_that_could_not_have_happened_is_found_all_the_same() -> None:
    _, record = play(ONE_ROW, c.Count("pair", 2), c.Undo())
    counted = record[1].event
    assert isinstance(counted, e.Counted)
    record[1] = Recorded(2, replace(counted, n=21))
    trouble = audit(ONE_ROW, record)
    assert trouble is not None
    assert trouble.startswith("event 2 (counted) cannot have happened. 21 pairs")


@settings(max_examples=40, deadline=None, suppress_health_check=list(HealthCheck))
@given(small_quilt, histories)
def test_every_history_passes_however_much_of_it_was_undone(
    quilt: Quilt, history: Sequence[Ask]
) -> None:
    record: list[Recorded] = []
    steps = list(wander(quilt, [*history, *[Ask("undo", 0, 0, 1)] * len(history)], record))
    assert audit(quilt, record) is None
    assert steps[-1].after == fold(quilt, record)

"""A tally and its copy go their own ways, and one that is carried on is one that is made anew."""

from __future__ import annotations

from collections.abc import Sequence

import pytest
from hypothesis import HealthCheck, given, settings

from sewalong.progress.record import history as histories_of
from sewalong.progress.record.events.every_kind import Recorded
from sewalong.progress.record.fold import carry, fold, step
from sewalong.progress.record.history import History
from sewalong.progress.record.tally import Tally, opening
from sewalong.quilt.quilt import Quilt
from tests.progress.wandering import Ask, histories, small_quilt, wander

slow = settings(max_examples=40, deadline=None, suppress_health_check=list(HealthCheck))


def recorded(quilt: Quilt, history: Sequence[Ask]) -> list[Recorded]:
    """The record of a random history."""
    record: list[Recorded] = []
    for _ in wander(quilt, history, record):
        pass
    return record


def tallied(quilt: Quilt, record: Sequence[Recorded]) -> Tally:
    """The tally of a record from its beginning."""
    tally = opening(quilt)
    carry(tally, record)
    return tally


BACK_AND_FORTH = [
    Ask(what, 0, 0, 1)
    for what in (*["undo"] * 4, *["redo"] * 2, "mention", "undo", *["redo"] * 2, "note", "undo")
]


def as_it_stands(tally: Tally) -> str:
    """Everything in a tally, in words that no later change can reach."""
    return repr(tally)


@slow
@given(small_quilt, histories)
def test_a_copy_is_the_same_and_then_neither_touches_the_other(
    quilt: Quilt, history: Sequence[Ask]
) -> None:
    record = recorded(quilt, history)
    half = len(record) // 2
    tally = tallied(quilt, record[:half])
    copy = tally.copy()
    assert copy == tally
    before = as_it_stands(tally)
    for one in record[half:]:
        step(copy, one)
    assert as_it_stands(tally) == before
    after = as_it_stands(copy)
    for one in record[half:]:
        step(tally, one)
    assert as_it_stands(copy) == after
    assert tally == copy


@slow
@given(small_quilt, histories)
def test_what_was_frozen_stays_as_it_was(quilt: Quilt, history: Sequence[Ask]) -> None:
    record = recorded(quilt, history)
    half = len(record) // 2
    tally = tallied(quilt, record[:half])
    frozen = tally.freeze()
    before = repr(frozen)
    for one in record[half:]:
        step(tally, one)
    assert repr(frozen) == before


@pytest.mark.parametrize("behind", [0, 1, 3, 200])
@slow
@given(small_quilt, histories)
def test_added_to_event_by_event_it_is_the_fold_of_the_record(
    behind: int, quilt: Quilt, history: Sequence[Ask]
) -> None:
    """Wherever the copy lies behind the end, and however far back an undo or a putting back
    reaches."""
    record = recorded(quilt, [*history, *BACK_AND_FORTH])
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(histories_of, "BEHIND", behind)
        growing = History(quilt, ())
        for n, one in enumerate(record, start=1):
            growing.add([one])
            assert growing.state() == fold(quilt, record[:n])
        assert History(quilt, record).state() == fold(quilt, record)


@slow
@given(small_quilt, histories)
def test_what_did_not_come_to_the_disk_is_forgotten(quilt: Quilt, history: Sequence[Ask]) -> None:
    record = recorded(quilt, history)
    half = len(record) // 2
    growing = History(quilt, record)
    growing.back_to(half)
    assert growing.record == record[:half]
    assert growing.state() == fold(quilt, record[:half])

"""A tally and its copy go their own ways, and one that is carried on is one that is made anew."""

from __future__ import annotations

from collections.abc import Sequence

from hypothesis import HealthCheck, given, settings

from sewalong.progress.record.events import Recorded
from sewalong.progress.record.fold import carry, fold, step, tallied
from sewalong.progress.record.tally import Tally
from sewalong.quilt.quilt import Quilt
from tests.progress.wandering import Ask, histories, small_quilt, wander

slow = settings(max_examples=40, deadline=None, suppress_health_check=list(HealthCheck))


def recorded(quilt: Quilt, history: Sequence[Ask]) -> list[Recorded]:
    """The record of a random history."""
    record: list[Recorded] = []
    for _ in wander(quilt, history, record):
        pass
    return record


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


@slow
@given(small_quilt, histories)
def test_carried_on_event_by_event_it_is_the_fold_of_the_record(
    quilt: Quilt, history: Sequence[Ask]
) -> None:
    record = recorded(quilt, history)
    tally = tallied(quilt, ())
    for n, one in enumerate(record):
        tally = carry(tally, record[:n], [one])
        assert tally.freeze() == fold(quilt, record[: n + 1])

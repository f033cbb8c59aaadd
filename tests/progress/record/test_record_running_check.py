"""What a record is held against while it is audited: the same as the fold says, at no more cost."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from datetime import UTC, datetime, timedelta

import pytest
from hypothesis import HealthCheck, given, settings
from msgspec.structs import asdict

from sewalong.progress.record.auditing import running_check
from sewalong.progress.record.auditing.audit import audit
from sewalong.progress.record.auditing.running_check import BETWEEN_COPIES, RunningCheck
from sewalong.progress.record.events.event import Event, Recorded
from sewalong.progress.record.events.every_kind import (
    Counted,
    Noted,
    Redone,
    SessionClosed,
    SessionOpened,
    StageChosen,
    Undone,
    Unpicked,
)
from sewalong.progress.record.fold import fold, step
from sewalong.progress.record.state import State
from sewalong.quilt.quilt import Quilt
from tests.store.shelf import a_quilt, histories

AT = datetime(2024, 1, 5, 19, 0, tzinfo=UTC)
FORGOTTEN = {
    "notes",
    "spoilage",
    "seam_changes",
    "mentioned",
    "last_act",
    "last_undone",
    "seen_to",
    "seq",
}
"""Fields of a state that no event is checked against."""


def held_against(state: State) -> dict[str, object]:
    """What an event can be checked against, as plain values."""
    kept = {name: value for name, value in asdict(state).items() if name not in FORGOTTEN}
    last = {check.piece: check for check in state.checks}
    session = state.session
    kept["sessions"] = (state.sessions[-1].number, session is None) if state.sessions else None
    kept["checks"] = [check for check in state.checks if last[check.piece] is check]
    return kept


@given(histories(most=60))
@settings(
    max_examples=80, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture]
)
def test_it_stands_as_the_fold_says_after_each_event(
    monkeypatch: pytest.MonkeyPatch, history: tuple[Quilt, tuple[Recorded, ...]]
) -> None:
    # So near to each other that a short record has several.
    monkeypatch.setattr(running_check, "BETWEEN_COPIES", 4)
    quilt, record = history
    so_far = RunningCheck(quilt)
    for place, recorded in enumerate(record, start=1):
        so_far.add(recorded)
        assert held_against(so_far.state()) == held_against(fold(quilt, record[:place]))


def notes(n: int) -> Iterator[Event]:
    for i in range(n):
        yield Noted(at=AT, session=1, text=f"note {i}")


def counts(n: int) -> Iterator[Event]:
    for _ in range(n // 2):
        yield Counted(at=AT, session=1, stage="pair", n=1)
        yield Unpicked(at=AT, session=1, stage="pair", n=1)


def each_undone(n: int) -> Iterator[Event]:
    for i in range(n // 2):
        yield Counted(at=AT, session=1, stage="pair", n=1)
        yield Undone(at=AT, session=1, of=2 * i + 2)


def undone_in_a_row(n: int) -> Iterator[Event]:
    yield from notes(n // 2)
    for i in range(n // 2):
        yield Undone(at=AT, session=1, of=n // 2 + 1 - i)


def undone_deeper_and_deeper(n: int) -> Iterator[Event]:
    """Two back and one on, again and again."""
    kept = list(range(2, n // 4 + 2))
    yield from notes(n // 4)
    for i in range(n // 4):
        for back in range(2 if len(kept) > 1 else 0):
            yield Undone(at=AT, session=1, of=kept.pop())
            del back
        kept.append(n // 4 + 2 + 3 * i + 2)
        yield Counted(at=AT, session=1, stage="pair", n=1)


def undone_and_put_back(n: int) -> Iterator[Event]:
    yield from notes(1)
    for _ in range(n // 2):
        yield Undone(at=AT, session=1, of=2)
        yield Redone(at=AT, session=1, of=2)


def all_undone_and_all_put_back(n: int) -> Iterator[Event]:
    numbers = range(2, n // 3 + 2)
    yield from notes(n // 3)
    yield from (Undone(at=AT, session=1, of=seq) for seq in reversed(numbers))
    yield from (Redone(at=AT, session=1, of=seq) for seq in numbers)
    yield StageChosen(at=AT, session=1, stage="pair")


def sessions(n: int) -> Iterator[Event]:
    for i in range(1, n // 2):
        yield SessionClosed(at=AT + timedelta(minutes=i), session=i, ended=AT)
        yield SessionOpened(at=AT + timedelta(minutes=i), session=i + 1)


LONG: dict[str, Callable[[int], Iterator[Event]]] = {
    "notes": notes,
    "counts": counts,
    "each undone": each_undone,
    "undone in a row": undone_in_a_row,
    "undone deeper and deeper": undone_deeper_and_deeper,
    "undone and put back": undone_and_put_back,
    "all undone and all put back": all_undone_and_all_put_back,
    "sessions": sessions,
}


def of(kind: Callable[[int], Iterator[Event]], n: int) -> tuple[Recorded, ...]:
    events = [SessionOpened(at=AT, session=1), *kind(n)]
    return tuple(Recorded(seq, event) for seq, event in enumerate(events, start=1))


@pytest.mark.parametrize("kind", LONG.values(), ids=LONG.keys())
def test_the_work_grows_with_the_number_of_events(
    monkeypatch: pytest.MonkeyPatch, kind: Callable[[int], Iterator[Event]]
) -> None:
    """Counted in events applied to a tally: at most so many for each there is."""
    steps = 0

    def counted(*arguments: object) -> None:
        nonlocal steps
        steps += 1
        step(*arguments)  # type: ignore[arg-type]

    monkeypatch.setattr(running_check, "step", counted)
    for n in (1_000, 8_000):
        steps, record = 0, of(kind, n)
        assert audit(a_quilt(), record) is None
        assert steps <= 2 * BETWEEN_COPIES * len(record)


@pytest.mark.parametrize("puts_back", [True, False])
def test_what_takes_back_over_ever_more_that_is_no_act_is_given_up(
    monkeypatch: pytest.MonkeyPatch, puts_back: bool
) -> None:
    """Made to do harm: each of many undos has all the stages chosen since behind it."""
    monkeypatch.setattr(running_check, "MOST_AGAIN", 10_000)

    def far_back(n: int) -> Iterator[Event]:
        yield from notes(n)
        for i in range(n):
            yield StageChosen(at=AT, session=1, stage="pair")
            yield Undone(at=AT, session=1, of=n + 1 - (0 if puts_back else i))
            if puts_back:
                yield Redone(at=AT, session=1, of=n + 1)

    assert audit(a_quilt(), of(far_back, 40)) is None
    trouble = audit(a_quilt(), of(far_back, 400))
    assert trouble is not None
    assert trouble.endswith("it takes back, again and again, what is long past")


@pytest.mark.parametrize("kind", LONG.values(), ids=LONG.keys())
def test_what_is_handed_to_a_check_does_not_grow(kind: Callable[[int], Iterator[Event]]) -> None:
    so_far = RunningCheck(a_quilt())
    for recorded in of(kind, 1_000):
        so_far.add(recorded)
        state = so_far.state()
        for name, value in asdict(state).items():
            if isinstance(value, tuple | list | dict):
                assert len(value) <= BETWEEN_COPIES + 1, name

"""Quilts to test with, and histories played through `decide` and the fold, as the store does."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from datetime import datetime, timedelta, timezone
from fractions import Fraction

import pytest
from msgspec.structs import replace

from sewalong.lengths import Unit
from sewalong.piecing.catalogue import method
from sewalong.piecing.definition import definition
from sewalong.piecing.derive import derive
from sewalong.progress.acts.decide import decide
from sewalong.progress.record.events.every_kind import Recorded
from sewalong.progress.record.fold import fold
from sewalong.progress.record.state import State
from sewalong.progress.safety.cautions import CautionFirst
from sewalong.quilt.quilt import Border, Quilt, StartPile, Target
from tests.progress import every_act as c

EVENING = datetime(2023, 11, 4, 19, 0, tzinfo=timezone(timedelta(hours=1)))
MINUTE = timedelta(minutes=1)
HOUR = timedelta(hours=1)


class Record(list[Recorded]):
    """The events of a quilt in order, and the `quilt` as it began."""

    def __init__(self, quilt: Quilt, events: Iterable[Recorded] = ()) -> None:
        super().__init__(events)
        self.quilt = quilt

    def copy(self) -> Record:
        """The same, added to apart from this one."""
        return Record(self.quilt, self)


def opening(quilt: Quilt) -> State:
    """The quilt before anything happened to it."""
    return fold(quilt, ())


def a_quilt(
    method_id: str = "stacked-four-patch",
    pieces: int = 168,
    rows: int = 9,
    columns: int = 9,
    *,
    borders: int = 0,
    finishing: tuple[str, ...] = (),
) -> Quilt:
    """A quilt with `pieces` in each start pile of its method; 4 packs of 42 unless told."""
    starts = tuple(
        StartPile(
            pile=start.pile,
            size=Fraction(5, 2) if start.strip else Fraction(5),
            count=pieces,
            length=Fraction(40) if start.strip else None,
        )
        for start in definition(method_id).starts
    )
    return Quilt(
        name="test quilt",
        method_id=method_id,
        unit=Unit.INCH,
        seam=Fraction(1, 4),
        starts=starts,
        target=Target(rows, columns),
        borders=(Border(Fraction(3), "plain"),) * borders,
        finishing=finishing,
    )


def suited(quilt: Quilt) -> Quilt:
    """The quilt with every pile cut to suit the first, to the eighth."""
    first = quilt.starts[0]
    made = derive(quilt.method_id, first.size, quilt.seam)
    suited = tuple(replace(one, size=made.starts[one.pile].cutting) for one in quilt.starts)
    return replace(quilt, starts=suited)


def do(state: State, record: Record, command: c.Act, at: datetime) -> State:
    """Carry one command out and add its events to `record`; refusals are raised."""
    events = decide(state, command, at)
    record += [Recorded(len(record) + i, event) for i, event in enumerate(events, start=1)]
    return fold(record.quilt, record)


def go_on(
    state: State,
    record: Record,
    *commands: c.Act,
    at: datetime | None = None,
    every: timedelta = MINUTE,
) -> State:
    """Carry the commands out one after another, reading each caution that is due.

    They begin at `at`, or `every` after the last event.
    """
    if at is None:
        at = record[-1].event.at + every if record else EVENING
    for command in commands:
        try:
            state = do(state, record, command, at)
        except CautionFirst as due:
            state = do(state, record, c.ReadCaution(due.stage), at)
            state = do(state, record, command, at)
        at += every
    return state


def play(
    quilt: Quilt, *commands: c.Act, start: datetime = EVENING, every: timedelta = MINUTE
) -> tuple[State, Record]:
    """The state and the record after `commands`, from the first evening on."""
    record = Record(quilt)
    return go_on(opening(quilt), record, *commands, at=start, every=every), record


def everything(
    quilt: Quilt, upto: str = "", *, but: int = 0, make: int | None = None
) -> list[c.Act]:
    """Counts that bring all pieces through the method's stages, as far as stage `upto`.

    At `upto` itself `but` counts are left undone, or only `make` are done. The numbers are
    worked out here from the method alone.
    """
    stock = {pile.id: 0 for pile in quilt.method.piles}
    for start in quilt.starts:
        stock[start.pile] += start.count
    counts: list[c.Act] = []
    for stage in quilt.method.stages:
        n = min(stock[taken.pile] // taken.count for taken in stage.takes)
        if stage.id == upto:
            n = n - but if make is None else make
        for taken in stage.takes:
            stock[taken.pile] -= n * taken.count
        stock[stage.makes.pile] += n * stage.makes.count
        counts.append(c.Count(stage.id, n))
        if stage.id == upto:
            break
    return [count for count in counts if isinstance(count, c.Count) and count.n]


def all_units(quilt: Quilt) -> list[c.Act]:
    """Counts that make every unit there can be."""
    return everything(quilt, method(quilt.method_id).stages[-1].id)


def whole_top(quilt: Quilt) -> list[c.Act]:
    """Counts for every unit and then the whole top, borders included."""
    target = quilt.target
    top: list[c.Act] = [c.Count("sew-rows", target.rows)]
    if target.rows > 1:
        top.append(c.Count("join-rows", target.rows - 1))
    if quilt.borders:
        top.append(c.Count("add-borders", 4 * len(quilt.borders)))
    return all_units(quilt) + top


def refusal(state: State, command: c.Act, at: datetime | None = None) -> str:
    """The sentence `command` is refused with; checks that nothing changed."""
    before = repr(state)
    session = state.session or state.last_session
    if at is None:
        at = session.last_at + MINUTE if session else EVENING
    with pytest.raises(c.Refused) as refused:
        decide(state, command, at)
    assert repr(state) == before
    sentence = str(refused.value)
    assert sentence[0].isupper() or sentence[0].isdigit()
    assert sentence.endswith((".", "?"))
    return sentence


def counts_of(record: Sequence[Recorded]) -> list[str]:
    """The kinds of the events, in order."""
    return [recorded.event.kind for recorded in record]

"""What the store's tests share: a quilt, random records, and a second sewalong process.

Records are made as the program makes them: commands are decided and their events folded.
"""

from __future__ import annotations

import os
import subprocess
import sys
from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager
from datetime import datetime, timedelta, timezone
from fractions import Fraction
from itertools import count
from pathlib import Path
from typing import get_args

from hypothesis import strategies as st
from msgspec.structs import replace

import sewalong
from sewalong.lengths import Unit
from sewalong.piecing.definition import definition
from sewalong.progress.acts.decide import decide
from sewalong.progress.record.events.every_kind import Recorded
from sewalong.progress.record.events.replanning import planned
from sewalong.progress.record.events.seam import Tool
from sewalong.progress.record.fold import fold
from sewalong.progress.record.readiness import ready
from sewalong.progress.record.recount_rules import Accepted
from sewalong.progress.record.settings import Settings
from sewalong.progress.record.state import State
from sewalong.progress.safety.cautions import CautionFirst
from sewalong.quilt.quilt import Border, Quilt, StartPile, Target
from sewalong.service.open_quilt import Clock, OpenQuilt
from sewalong.store.library import Library
from tests.progress import every_act as c
from tests.progress.building import opening
from tests.progress.wandering import another_plan

EVENING = datetime(2023, 11, 4, 19, 0, tzinfo=timezone(timedelta(hours=1)))
FOUR_BY_FIVE = Target(4, 5)
ROOT = Path(sewalong.__file__).parents[1]


def a_quilt(
    name: str = "Hedgerow",
    method_id: str = "paired-squares",
    pieces: int = 400,
    target: Target = FOUR_BY_FIVE,
    *,
    borders: int = 1,
    finishing: tuple[str, ...] = ("layer", "bind"),
    notes: str = "for the bench\nby the window",
) -> Quilt:
    """An invented quilt."""
    return Quilt(
        name=name,
        method_id=method_id,
        unit=Unit.INCH,
        seam=Fraction(1, 4),
        starts=tuple(
            StartPile(start.pile, Fraction(5), pieces) for start in definition(method_id).starts
        ),
        target=target,
        borders=(Border(Fraction(5, 2), "cream linen"),) * borders,
        finishing=finishing,
        notes=notes,
    )


def ticking(start: datetime = EVENING, step: timedelta = timedelta(seconds=20)) -> Clock:
    """A clock that goes on by `step` each time it is read."""
    ticks = count()
    return lambda: start + next(ticks) * step


@contextmanager
def shelf(path: Path) -> Iterator[Library]:
    """The library at `path`, closed in the end."""
    library = Library(path, EVENING)
    try:
        yield library
    finally:
        library.close()


@contextmanager
def opened(path: Path, name: str = "Hedgerow", clock: Clock | None = None) -> Iterator[OpenQuilt]:
    """The quilt called `name` in the library at `path`, as one window has it open."""
    with shelf(path) as library:
        yield OpenQuilt(library, library.find(name), clock or ticking())


def begin(path: Path, quilt: Quilt | None = None) -> None:
    """A new record at `path` with one quilt in it."""
    with shelf(path) as library:
        library.add(quilt or a_quilt(), EVENING)


def counts(record: Sequence[Recorded]) -> int:
    """How many pieces were counted in all, whatever was undone."""
    return sum(getattr(r.event, "n", 0) for r in record if r.event.kind == "counted")


@contextmanager
def worker(script: str, *arguments: object) -> Iterator[subprocess.Popen[str]]:
    """Another process that runs `script` (arguments in `sys.argv[1:]`), its output piped.

    It does not outlive the block.
    """
    process = subprocess.Popen(
        [sys.executable, "-W", "error", "-c", script, *map(str, arguments)],
        cwd=ROOT,
        env={**os.environ, "PYTHONPATH": str(ROOT)},
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        text=True,
    )
    with process:
        try:
            yield process
        finally:
            process.kill()


def ran(process: subprocess.Popen[str]) -> str:
    """What a worker printed; it must have ended well."""
    out, err = process.communicate(timeout=60)
    assert process.returncode == 0, err
    return out


# Random records


QUILTS = (
    a_quilt(),
    a_quilt(method_id="stacked-four-patch", pieces=40, target=Target(2, 3), borders=0),
    a_quilt(pieces=3, target=Target(1, 2), finishing=("layer", "quilt", "bind")),
    replace(a_quilt("Café “Ω” #1", borders=2), unit=Unit.CM, seam=Fraction(95, 381)),
)

TEXTS = st.text(st.characters(codec="utf-8"), min_size=1, max_size=12) | st.sampled_from(
    ("", "\x1b[31mred", "two\nlines", "x" * 2001, "]]>", "\u202egnissip", "ñ")
)
GAPS = st.sampled_from((1, 1, 1, 1, 1, 1, 1, 20, 61, 185, 300, -10)).map(
    lambda n: timedelta(minutes=n)
)
_Maker = Callable[[st.DrawFn, State], c.Act]


def _stage(draw: st.DrawFn, state: State) -> str:
    return draw(st.sampled_from([stage.id for stage in state.route.stages]))


def _count(draw: st.DrawFn, state: State) -> c.Act:
    """A count of what can be counted, where there is anything: one of it or all of it."""
    able = [(stage.id, n) for stage in state.route.stages if (n := ready(state, stage))]
    if not able:
        return c.Find(_pile(draw, state), 20)
    stage, most = draw(st.sampled_from(able))
    return c.Count(stage, draw(st.sampled_from((1, min(most, 9999)))))


def _undone_work(draw: st.DrawFn, state: State) -> c.Act:
    """Some of what was done is taken apart or spoiled."""
    done = [(stage, n) for stage, n in state.done.items() if n > 0]
    if not done or draw(st.booleans()):
        return c.Spoil(_pile(draw, state), 1, draw(TEXTS))
    stage, most = draw(st.sampled_from(done))
    return c.Unpick(stage, draw(st.sampled_from((1, min(most, 9999)))))


def _another_plan(draw: st.DrawFn, state: State) -> c.Act:
    was = planned(state)
    now = another_plan(was, draw(st.integers(0, 14)), draw(st.integers(-9, 9)))
    return c.ChangePlan(was, now, draw(st.booleans()))


def _pile(draw: st.DrawFn, state: State) -> str:
    return draw(st.sampled_from(sorted(state.route.piles)))


def _n(draw: st.DrawFn) -> int:
    return draw(st.sampled_from((1, 1, 2, 3, 5, 20, 9999, 10000, 0, -1)))


_MAKERS: tuple[_Maker, ...] = (
    *(_count,) * 12,
    *(_undone_work,) * 2,
    lambda draw, s: c.Count(_stage(draw, s), _n(draw)),
    lambda draw, s: c.Find(_pile(draw, s), _n(draw), draw(st.sampled_from(("found", "bought")))),
    *(lambda draw, s: c.Undo(),) * 4,
    *(lambda draw, s: c.Redo(),) * 3,
    lambda draw, s: c.SeeTo(_n(draw)),
    lambda draw, s: c.Unpick(_stage(draw, s), _n(draw)),
    lambda draw, s: c.Spoil(_pile(draw, s), _n(draw), draw(TEXTS)),
    lambda draw, s: c.Recount(_pile(draw, s), _n(draw)),
    lambda draw, s: c.PutPileAway(_pile(draw, s), draw(TEXTS)),
    lambda draw, s: c.WriteNote(draw(TEXTS)),
    lambda draw, s: c.RecordSettings(Settings(foot=draw(TEXTS), proof=draw(TEXTS))),
    lambda draw, s: c.Recount(
        _pile(draw, s), _n(draw), draw(st.sampled_from(get_args(Accepted))), draw(TEXTS)
    ),
    lambda draw, s: c.PutPileAway(_pile(draw, s), draw(TEXTS), _n(draw)),
    lambda draw, s: c.ChangeTool(draw(st.sampled_from(get_args(Tool)))),
    lambda draw, s: c.Measure("strips:3:3/2", (Fraction(_n(draw), 2), Fraction(7, 2))),
    lambda draw, s: c.GoOn(_stage(draw, s)),
    lambda draw, s: c.NotePress(_stage(draw, s), draw(TEXTS)),
    lambda draw, s: c.JoinRows(_n(draw), _n(draw)),
    *(lambda draw, s: c.BeginRows(((_n(draw), draw(st.integers(2, 4))),)),) * 2,
    lambda draw, s: c.BobbinEmpty(_stage(draw, s), _n(draw)),
    lambda draw, s: c.Mention(draw(TEXTS)),
    lambda draw, s: c.ChangeTarget(draw(st.integers(0, 6)), draw(st.sampled_from((3, 5, 201)))),
    lambda draw, s: c.ChooseStage(_stage(draw, s)),
    lambda draw, s: c.DecideUnit(*(Fraction(draw(st.integers(0, 40)), 4),) * 2),
    *(_another_plan,) * 2,
    lambda draw, s: c.OpenSession(),
    lambda draw, s: c.CloseSession(
        dict.fromkeys(("iron", "blade", "machine", "pins"), "did not look"), draw(TEXTS)
    ),
    lambda draw, s: c.Answer("iron", "no"),
    lambda draw, s: c.LayAside(draw(TEXTS)),
    lambda draw, s: c.MarkDone(),
    *(lambda draw, s: c.PickUp(),) * 3,
)


@st.composite
def histories(draw: st.DrawFn, most: int = 25) -> tuple[Quilt, tuple[Recorded, ...]]:
    """A quilt and a record that `decide` allowed; every kind of event can be in it."""
    quilt = draw(st.sampled_from(QUILTS))
    state, at = opening(quilt), EVENING
    record: tuple[Recorded, ...] = ()
    for maker in draw(st.lists(st.sampled_from(_MAKERS), min_size=most // 2, max_size=most)):
        at += draw(GAPS)
        command = maker(draw, state)
        for wanted in (command, command):
            try:
                events = decide(state, wanted, at)
            except CautionFirst as caution:
                events = decide(state, c.ReadCaution(caution.stage), at)
            except c.Refused:
                break
            new = tuple(Recorded(len(record) + i, e) for i, e in enumerate(events, start=1))
            record = (*record, *new)
            state = fold(quilt, record)
            if events and events[-1].kind != "caution read":
                break
    return quilt, record

"""Every stage to be gone through on paper: how many are done and to do, how, and with what care."""

from __future__ import annotations

from collections.abc import Mapping

from msgspec import Struct

from sewalong.piecing.method import Noun
from sewalong.progress.joining.stage_words import what_to_do
from sewalong.progress.plan.plan import Plan, StageLine, out_of
from sewalong.progress.record.route import SEW_ROWS
from sewalong.progress.record.state import State
from sewalong.progress.resuming.about_stage import press_plan
from sewalong.progress.resuming.resume_facts import rows_begun_facts
from sewalong.progress.safety.cautions import Caution, caution_of
from sewalong.quilt.web import SEW_WEB, START_WEB


class ListedStage(Struct, frozen=True):
    """`done` says how far it is by the record, `to_do` how many are left, counted in `counts`.

    `begun` is what is sewn of rows that are not whole yet, a sentence each, at the stage that goes on
    with them. `press` are the rules for its seams, `caution` what to read first, None where nothing can hurt.
    """

    label: str
    station: str
    done: str
    to_do: int
    counts: Noun
    do: str
    check: str
    begun: tuple[str, ...]
    press: tuple[str, ...]
    caution: Caution | None


def stage_list(
    state: State, now: Plan, own: Mapping[str, tuple[str, ...]]
) -> tuple[ListedStage, ...]:
    """All stages in working order; `own` are the owner's words of caution by what they are about."""
    goes_on = next((line for line in now.lines if line.to_do and line.stage.id in _OF_ROWS), None)
    begun = rows_begun_facts(state)
    return tuple(_listed(state, line, own, begun if line is goes_on else ()) for line in now.lines)


_OF_ROWS = (SEW_ROWS, START_WEB, SEW_WEB)


def _listed(
    state: State, line: StageLine, own: Mapping[str, tuple[str, ...]], begun: tuple[str, ...]
) -> ListedStage:
    stage = line.stage
    return ListedStage(
        label=stage.label,
        station=stage.station,
        done=out_of(line.done, line.needed, "done"),
        to_do=line.to_do,
        counts=stage.counts,
        do=what_to_do(state.quilt, stage),
        check=stage.check,
        begun=begun,
        press=press_plan(state, stage),
        caution=caution_of(stage, own),
    )

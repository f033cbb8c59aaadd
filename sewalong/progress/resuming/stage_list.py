"""Every stage to be gone through on paper: how many are done and to do, how, and with what care."""

from __future__ import annotations

from collections.abc import Mapping

from msgspec import Struct

from sewalong.piecing.method import Noun
from sewalong.progress.joining.stage_words import what_to_do
from sewalong.progress.plan.plan import Plan, StageLine, out_of
from sewalong.progress.record.state import State
from sewalong.progress.resuming.about_stage import press_plan
from sewalong.progress.safety.cautions import Caution, caution_of


class ListedStage(Struct, frozen=True):
    """`done` says how far it is by the record, `to_do` how many are left, counted in `counts`.

    `press` are the rules for its seams, `caution` what to read first, None where nothing can hurt.
    """

    label: str
    station: str
    done: str
    to_do: int
    counts: Noun
    do: str
    check: str
    press: tuple[str, ...]
    caution: Caution | None


def stage_list(
    state: State, now: Plan, own: Mapping[str, tuple[str, ...]]
) -> tuple[ListedStage, ...]:
    """All stages in working order; `own` are the owner's words of caution by what they are about."""
    return tuple(_listed(state, line, own) for line in now.lines)


def _listed(state: State, line: StageLine, own: Mapping[str, tuple[str, ...]]) -> ListedStage:
    stage = line.stage
    return ListedStage(
        label=stage.label,
        station=stage.station,
        done=out_of(line.done, line.needed, "done"),
        to_do=line.to_do,
        counts=stage.counts,
        do=what_to_do(state.quilt, stage),
        check=stage.check,
        press=press_plan(state, stage),
        caution=caution_of(stage, own),
    )

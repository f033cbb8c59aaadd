"""After a count at most one thing is said, the most important: safety, pieces at risk,
shortfall, wear, advice."""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import datetime

from sewalong.cli.piece_at_risk import in_doubt
from sewalong.cli.report import Report
from sewalong.piecing.method import Station
from sewalong.progress.commands import Mention
from sewalong.progress.pace.wear import worn
from sewalong.progress.plan import plan
from sewalong.progress.proof import Standing, proof
from sewalong.progress.state import State
from sewalong.store.open_quilt import OpenQuilt


@dataclass(frozen=True, slots=True)
class OneThing:
    """What to say and of which kind; `mention` is recorded so that it is said once, if at all."""

    kind: str
    line: str
    mention: str = ""


def with_one_thing(report: Report, quilt: OpenQuilt, now: datetime, pause: str = "") -> Report:
    """The report with its one thing: those already in it count as the first and the third.

    `pause` is what to look at after an interruption before this count; empty for none.
    """
    found = None
    if not report.data["ask"]:
        found = one_thing(quilt, now, short=bool(report.data["short"]), pause=pause)
    lines = report.lines
    if report.data["ask"] or (found and found.kind != "short"):
        lines = tuple(line for line in lines if not line.startswith("Short: "))
    if found is not None and found.kind != "short":
        lines = (*lines, found.line)
    if found is not None and found.mention:
        quilt.do(Mention(found.mention))
    said = {"kind": found.kind, "line": found.line} if found and found.line else None
    return replace(report, lines=lines, data={**report.data, "also": said})


def one_thing(quilt: OpenQuilt, now: datetime, *, short: bool, pause: str = "") -> OneThing | None:
    """What is most worth saying now, or None. `short`: the target is out of reach."""
    state = quilt.state
    doubtful = in_doubt(quilt)
    if doubtful is not None:
        return OneThing("at risk", f"{doubtful.lines[0]} See: sewalong proof")
    if short:
        return OneThing("short", "")
    said = frozenset(state.mentioned)
    wear = next(iter(worn(state, quilt.record, now, said=said)), None)
    if wear is not None:
        return OneThing("wear", wear.sentence, wear.id)
    if pause:
        return OneThing("advice", pause)
    return _advice(state, now)


def _advice(state: State, now: datetime) -> OneThing | None:
    """Whether the seam is proved, where the machine was used or comes next."""
    suggestion = plan(state).suggestion
    near = {state.chosen, suggestion.stage if suggestion else None}
    if not any(one.station is Station.MACHINE for one in state.road.stages if one.id in near):
        return None
    seam = proof(state, now)
    if seam.say and seam.standing is not Standing.FRESH:
        return OneThing("advice", seam.say, seam.mention)
    return None

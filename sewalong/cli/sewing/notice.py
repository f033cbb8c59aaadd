"""After a count at most one thing is said, the most important: safety, pieces at risk,
shortfall, wear, advice."""

from __future__ import annotations

from datetime import datetime

from msgspec import Struct
from msgspec.structs import replace

from sewalong.cli.frame.report import Report
from sewalong.progress.acts.said import Mention
from sewalong.progress.plan.plan import plan
from sewalong.progress.resuming.notice import one_line
from sewalong.service.open_quilt import OpenQuilt


class OneThing(Struct, frozen=True):
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
    """What is most worth saying now, or None. `short`: the report says already what is short."""
    line = one_line(quilt.state, quilt.record, plan(quilt.state), now, pause=pause)
    if line is None:
        return None
    if line.kind == "short" or (short and line.kind != "at risk"):
        return OneThing("short", "")
    text = f"{line.text} See: sewalong proof" if line.kind == "at risk" else line.text
    return OneThing(line.kind, text, line.mention)

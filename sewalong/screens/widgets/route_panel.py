"""The whole route of stages: done, needed and waiting, one line each."""

from __future__ import annotations

from textual.content import Content

from sewalong.progress.plan.plan import Plan, StageLine
from sewalong.screens.widgets.literal_text import Words

LABEL_WIDTH = 13
COUNT_WIDTH = 9
STITCHES = 16
MOST_WITH_A_GAP = 15
"""Stages up to which a line is left empty below the route on a screen of 24 lines."""


class RoutePanel(Words):
    """Shows the route of a plan with the stage in hand marked."""

    def show(self, plan: Plan, current: str, footer: tuple[str, ...]) -> None:
        """Draw the route of `plan`; `footer` lines (spare, over) stand below the work done."""
        parts: list[Content] = [
            Content.styled(f"  {'':<{LABEL_WIDTH}}{'done':>{COUNT_WIDTH}}   waiting\n", "$quiet")
        ]
        for line in plan.lines:
            parts.append(_stage_line(line, line.stage.id == current))
        if len(plan.lines) <= MOST_WITH_A_GAP:
            parts.append(Content("\n"))
        parts.append(_stitches(plan.work_done))
        parts += [Content(f"\n{text}") for text in footer]
        self.say(Content("").join(parts))


def _stage_line(line: StageLine, current: bool) -> Content:
    mark = "> " if current else "  "
    counted = f"{line.done}/{line.needed}"
    text = f"{mark}{line.stage.label:<{LABEL_WIDTH}}{counted:>{COUNT_WIDTH}}   {_waiting(line)}"
    if current:
        return Content.assemble((f"{text:<34}", "bold $number on $panel"), "\n")
    return Content.styled(text + "\n", "$quiet" if line.to_do == 0 else "")


def _waiting(line: StageLine) -> str:
    if line.waiting:
        return str(line.waiting)
    return "done" if line.to_do == 0 and line.done else "-"


def _stitches(part: float) -> Content:
    """Work done as a seam: sewn, then still basted."""
    sewn = round(part * STITCHES)
    return Content.assemble(
        ("━" * sewn, "$good"), ("╌" * (STITCHES - sewn), "$chalk"), f"  {part:.0%} of the work"
    )

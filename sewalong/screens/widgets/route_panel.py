"""The whole route of stages: done, needed and waiting, one line each."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from textual.content import Content
from textual.events import Click
from textual.geometry import Region, Size
from textual.message import Message
from textual.strip import Strip
from textual.visual import Visual
from textual.widget import Widget

from sewalong.progress.plan.plan import Plan, StageLine

LABEL_AND_COUNT = 22
"""Columns a label and its count share; a longer label leaves its count less."""
STITCHES = 16
PANEL_WIDTH = 36
BESIDES = 8
"""Lines of the screen that the stages don't have: title, headings, work done, footer and keys."""

FEWEST_STAGES = 4
"""Lines the stages take however low the screen is: one to go by and what says of the others."""


class RoutePanel(Widget):
    """Shows the route of a plan with the stage in hand marked; draws only what has changed."""

    class StageClicked(Message):
        """A stage was clicked, by its id."""

        def __init__(self, stage: str) -> None:
            super().__init__()
            self.stage = stage

    def __init__(
        self, plan: Plan, current: str, footer: tuple[str, ...], *, id: str | None = None
    ) -> None:
        super().__init__(id=id)
        self._lines = self._drawn(plan, current, footer)

    def on_click(self, event: Click) -> None:
        """Say which stage stands there."""
        stage = self._stage_at.get(event.y)
        if stage is not None:
            self.post_message(self.StageClicked(stage))

    def _drawn(self, plan: Plan, current: str, footer: tuple[str, ...]) -> list[Content]:
        lines = [Content.styled(f"  {'done':>{LABEL_AND_COUNT}}   waiting", "$quiet")]
        room = max(FEWEST_STAGES, self.app.size.height - BESIDES)
        drawn = list(_stages(plan.lines, current, room))
        self._stage_at = {len(lines) + y: stage for y, (stage, _) in enumerate(drawn) if stage}
        lines += [line for _, line in drawn]
        if len(plan.lines) < room:
            lines.append(Content(""))
        lines.append(_stitches(plan.work_done))
        for text in footer:
            lines += Content(text).wrap(self.size.width or PANEL_WIDTH)
        return lines

    def show(self, plan: Plan, current: str, footer: tuple[str, ...]) -> None:
        """Draw the route of `plan`; `footer` lines (spare, over) stand below the work done."""
        lines = self._drawn(plan, current, footer)
        before, self._lines = self._lines, lines
        if len(before) != len(lines):
            self.refresh(layout=True)
            return
        changed = [
            Region(0, y, self.size.width, 1)
            for y, (old, new) in enumerate(zip(before, lines, strict=True))
            if old.plain != new.plain or old.spans != new.spans
        ]
        if changed:
            self.refresh(*changed)

    def get_content_height(self, container: Size, viewport: Size, width: int) -> int:
        return len(self._lines)

    def render_line(self, y: int) -> Strip:
        width = self.size.width
        if y >= len(self._lines):
            return Strip.blank(width, self.rich_style)
        (strip, *_) = Visual.to_strips(self, self._lines[y], width, 1, self.visual_style)
        return strip.adjust_cell_length(width, self.rich_style)


def _stages(lines: Sequence[StageLine], current: str, room: int) -> Iterator[tuple[str, Content]]:
    """Each stage's id and line: all of them where there is room, else those around the one in
    hand, and with no id how many are not."""
    if len(lines) <= room:
        yield from (_stage_line(line, current) for line in lines)
        return
    shown = room - 2
    here = next(place for place, line in enumerate(lines) if line.stage.id == current)
    first = min(max(0, here - shown // 2), len(lines) - shown)
    before, after = first, len(lines) - first - shown
    yield "", _not_shown(before, "before")
    yield from (_stage_line(line, current) for line in lines[first : first + shown])
    yield "", _not_shown(after, "after")


def _not_shown(stages: int, where: str) -> Content:
    if not stages:
        return Content("")
    noun = "stage" if stages == 1 else "stages"
    return Content.styled(f"  {stages} more {noun} {where}", "$quiet")


def _stage_line(line: StageLine, current: str) -> tuple[str, Content]:
    stage = line.stage.id
    mark = "> " if stage == current else "  "
    counted = f"{min(line.done, line.needed)}/{line.needed}"
    label = _fitted(line.stage.label, LABEL_AND_COUNT - len(counted) - 1)
    room = LABEL_AND_COUNT - len(label)
    text = f"{mark}{label}{counted:>{room}}   {_waiting(line)}"
    if stage == current:
        return stage, Content.styled(f"{text:<34}", "bold $number on $panel")
    return stage, Content.styled(text, "$quiet" if line.to_do == 0 else "")


def _fitted(label: str, room: int) -> str:
    """A label as far as there is room: no column moves because one is long."""
    return label if len(label) <= room else f"{label[: room - 1].rstrip()}…"


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

"""The whole route of stages: done, needed and waiting, one line each."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from textual.content import Content
from textual.events import Click
from textual.geometry import Size
from textual.message import Message

from sewalong.progress.plan.plan import Plan, StageLine
from sewalong.screens.widgets.lines_view import LinesView
from sewalong.screens.widgets.sewing_layout import MESSAGE_LINES, ROUTE

LABEL_AND_COUNT = 22
"""Columns a label and its count share at the least; a longer label leaves its count less."""
BESIDE_LABEL = ROUTE - LABEL_AND_COUNT
"""Columns of a line that label and count don't have: the mark, and what waits."""
STITCHES = 16
BESIDES = 7 + MESSAGE_LINES
"""Lines of the screen that the stages don't have: title, headings, work done, footer, what is said
and keys."""

FEWEST_STAGES = 4
"""Lines the stages take however low the screen is: one to go by and what says of the others."""


class RoutePanel(LinesView):
    """Shows the route of a plan with the stage in hand marked."""

    class StageClicked(Message):
        """A stage was clicked, by its id."""

        def __init__(self, stage: str) -> None:
            super().__init__()
            self.stage = stage

    def __init__(
        self,
        plan: Plan,
        current: str,
        footer: tuple[str, ...],
        width: int,
        *,
        id: str | None = None,
    ) -> None:
        super().__init__(id=id)
        height = self.app.size.height
        self._kept = route_height(len(plan.lines), height)
        self._lines, self._stage_at = route_lines(plan, current, footer, height, width)

    def on_click(self, event: Click) -> None:
        """Say which stage stands there."""
        stage = self._stage_at.get(event.y)
        if stage is not None:
            self.post_message(self.StageClicked(stage))

    def show(self, plan: Plan, current: str, footer: tuple[str, ...], width: int) -> None:
        """Draw the route of `plan` in `width` columns; `footer` lines (spare, over) stand below the
        work done."""
        height, before = self.app.size.height, (len(self._lines), self._kept)
        self._kept = route_height(len(plan.lines), height)
        lines, self._stage_at = route_lines(plan, current, footer, height, width)
        self.show_lines(lines)
        if before != (len(lines), self._kept):
            self.refresh(layout=True)

    def get_content_height(self, container: Size, viewport: Size, width: int) -> int:
        return max(len(self._lines), self._kept)


FOOTER_LINES = 3
"""Lines kept for what is spare and over, so that nothing below moves when it grows."""


def route_height(stages: int, height: int) -> int:
    """Lines the route of so many stages takes on a screen of `height` lines, footer and all."""
    room = _room(height)
    return 2 + min(stages, room) + (stages < room) + FOOTER_LINES


def _room(height: int) -> int:
    return max(FEWEST_STAGES, height - BESIDES)


def route_lines(
    plan: Plan, current: str, footer: tuple[str, ...], height: int, width: int = ROUTE
) -> tuple[list[Content], dict[int, str]]:
    """The lines of the route in `width` columns of a screen of `height` lines, and by line the
    stage that stands in it."""
    room, shared = _room(height), _shared(plan.lines, width)
    drawn = list(_stages(plan.lines, current, room, shared))
    lines = [Content.styled(f"  {'done':>{shared}}   waiting", "$quiet")]
    stage_at = {len(lines) + y: stage for y, (stage, _) in enumerate(drawn) if stage}
    lines += [line for _, line in drawn]
    if len(plan.lines) < room:
        lines.append(Content(""))
    lines.append(_stitches(plan.work_done))
    for text in footer:
        lines += Content(text).wrap(max(ROUTE, width))
    return lines, stage_at


def _shared(lines: Sequence[StageLine], width: int) -> int:
    """Columns for a label and its count: as many as the longest take, where there is room."""
    longest = max(len(one.stage.label) + 2 * len(str(one.needed)) + 2 for one in lines)
    return max(LABEL_AND_COUNT, min(longest, width - BESIDE_LABEL))


def _stages(
    lines: Sequence[StageLine], current: str, room: int, shared: int
) -> Iterator[tuple[str, Content]]:
    """Each stage's id and line: all of them where there is room, else those around the one in
    hand, and with no id how many are not."""
    if len(lines) <= room:
        yield from (_stage_line(line, current, shared) for line in lines)
        return
    shown = room - 2
    here = next(place for place, line in enumerate(lines) if line.stage.id == current)
    first = min(max(0, here - shown // 2), len(lines) - shown)
    before, after = first, len(lines) - first - shown
    yield "", _not_shown(before, "before")
    yield from (_stage_line(line, current, shared) for line in lines[first : first + shown])
    yield "", _not_shown(after, "after")


def _not_shown(stages: int, where: str) -> Content:
    if not stages:
        return Content("")
    noun = "stage" if stages == 1 else "stages"
    return Content.styled(f"  {stages} more {noun} {where}", "$quiet")


def _stage_line(line: StageLine, current: str, shared: int) -> tuple[str, Content]:
    stage = line.stage.id
    mark = "> " if stage == current else "  "
    # Where more was done than is needed the need is no measure any more.
    counted = f"{line.done}/{line.needed}" if line.done <= line.needed else str(line.done)
    label = _fitted(line.stage.label, shared - len(counted) - 1)
    room = shared - len(label)
    text = f"{mark}{label}{counted:>{room}}   {_waiting(line)}"
    if stage == current:
        marked = shared + BESIDE_LABEL - 2
        return stage, Content.styled(f"{text:<{marked}}", "bold $number on $panel")
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

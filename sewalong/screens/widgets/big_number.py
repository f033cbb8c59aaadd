"""The number to go, drawn as large as the room allows: readable from a metre away."""

from __future__ import annotations

from rich.segment import Segment
from rich.style import Style as RichStyle
from textual.geometry import Size
from textual.reactive import reactive
from textual.strip import Strip
from textual.widget import Widget

_DOTS = {
    "0": ("###", "# #", "# #", "# #", "###"),
    "1": (" # ", "## ", " # ", " # ", "###"),
    "2": ("###", "  #", "###", "#  ", "###"),
    "3": ("###", "  #", "###", "  #", "###"),
    "4": ("# #", "# #", "###", "  #", "  #"),
    "5": ("###", "#  ", "###", "  #", "###"),
    "6": ("###", "#  ", "###", "# #", "###"),
    "7": ("###", "  #", "  #", "  #", "  #"),
    "8": ("###", "# #", "###", "# #", "###"),
    "9": ("###", "# #", "###", "  #", "###"),
}
NUMBER_LINES = 5
"""Lines the number takes at scale 1."""


def drawn(number: int, scale: int = 1) -> list[str]:
    """`number` in solid blocks: 5 × `scale` lines, each digit 6 × `scale` columns wide."""
    lines = []
    gap = " " * (2 * scale)
    for row in range(NUMBER_LINES):
        digits = (_DOTS[digit][row] for digit in str(max(0, number)))
        line = gap.join(
            "".join(("█" if dot == "#" else " ") * 2 * scale for dot in d) for d in digits
        )
        lines += [line] * scale
    return lines


class BigNumber(Widget):
    """Shows `number`; at `scale` 2 it is ten lines high."""

    def __init__(self, number: int = 0, scale: int = 1, *, id: str | None = None) -> None:
        super().__init__(id=id)
        self.set_reactive(BigNumber.number, number)
        self.set_reactive(BigNumber.scale, scale)

    number: reactive[int] = reactive(0)
    scale: reactive[int] = reactive(1, layout=True)

    def watch_number(self, before: int, now: int) -> None:
        """Only a number of more or fewer digits moves what stands beside it."""
        if len(str(before)) != len(str(now)):
            self.refresh(layout=True)

    def get_content_width(self, container: Size, viewport: Size) -> int:
        return len(drawn(self.number, self.scale)[0])

    def get_content_height(self, container: Size, viewport: Size, width: int) -> int:
        return NUMBER_LINES * self.scale

    def render_line(self, y: int) -> Strip:
        lines = drawn(self.number, self.scale)
        style: RichStyle = self.rich_style
        text = lines[y] if y < len(lines) else ""
        return Strip([Segment(text, style)]).adjust_cell_length(self.size.width, style)

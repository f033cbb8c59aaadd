"""Everything the app draws, in plain ASCII, whatever drew it."""

from __future__ import annotations

from rich.segment import Segment
from textual.color import Color
from textual.filter import LineFilter

from sewalong.owner.ascii_only import ascii_only


class AsciiFilter(LineFilter):
    """The last thing done to a line before it goes to the terminal."""

    def apply(self, segments: list[Segment], background: Color) -> list[Segment]:
        return [
            segment
            if segment.control or segment.text.isascii()
            else Segment(ascii_only(segment.text), segment.style)
            for segment in segments
        ]

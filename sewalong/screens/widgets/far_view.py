"""The far view: the number, its stage and one thing said, as large as the window.

It is a way of showing the sewing screen, so every key counts and asks as it does there.
"""

from __future__ import annotations

from itertools import product

from msgspec import Struct
from textual.app import ComposeResult
from textual.containers import Vertical

from sewalong.screens.widgets.big_number import BigText
from sewalong.screens.widgets.block_letters import (
    LINES,
    Dot,
    can_be_drawn,
    width_of,
    wrapped,
)
from sewalong.screens.widgets.literal_text import Words

SHARE = 0.5
"""How much of the height the number has at the least, while it is not as wide as the window."""

LARGEST_LETTERS = 3

PARTS = ("noun", "stage", "said")
"""What stands below the number, in order."""

SAID_LINES = 2
"""Large lines for what is said: most sentences take no more, read from as far as the rest."""
MOST_LINES = SAID_LINES * (LINES * LARGEST_LETTERS + 1) // (LINES + 1)
"""Lines of the smallest large letters in the room of those of the largest."""


class FarLayout(Struct, frozen=True):
    """The dots of the number and of what stands below it, None for what is printed plainly. What is
    said has the room of SAID_LINES large lines."""

    number: Dot
    noun: Dot | None = None
    stage: Dot | None = None
    said: Dot | None = None


def far_layout(width: int, height: int, digits: int, stage: str, noun: str) -> FarLayout:
    """The layout for `width` × `height` cells, by what does not change from count to count.

    As much as can be is in large letters while the number has its share, the stage before what is
    said and that before the noun. What is said then has the room of large lines, whether it is
    short enough for them or not.
    """
    for large, size, wide in product((3, 2, 1), range(LARGEST_LETTERS, 0, -1), (2, 1)):
        dot = Dot(wide * size, size)
        texts = (stage, noun) if large > 2 else (stage,)
        if any(not can_be_drawn(text) or width_of(text, dot) > width for text in texts):
            continue
        lines = large + (SAID_LINES - 1 if large > 1 else 0)
        left = height - lines * (LINES * size + 1) - (len(PARTS) - large)
        scale = _scale(width, left, digits)
        if LINES * scale >= SHARE * height or 0 < scale < left // LINES:
            return FarLayout(
                Dot(2 * scale, scale),
                noun=dot if large > 2 else None,
                stage=dot,
                said=dot if large > 1 else None,
            )
    scale = _scale(width, height - len(PARTS), digits)
    return FarLayout(Dot(2 * scale, scale) if scale else Dot(1, 1))


def large_lines(text: str, dot: Dot | None, width: int, most: int) -> tuple[list[str], Dot]:
    """The text in large lines and their dots: as large as so many lines with `dot` have room for,
    smaller where it is longer. No lines where it is to be printed plainly."""
    if dot is not None:
        room = most * (LINES * dot.down + 1)
        for size, wide in product(range(dot.down, 0, -1), (2, 1)):
            smaller = Dot(wide * size, size)
            lines = wrapped(text, smaller, width)
            if smaller <= dot and lines and len(lines) * (LINES * size + 1) <= room:
                return lines, smaller
    return [], Dot(1, 1)


def _scale(width: int, height: int, digits: int) -> int:
    """The largest number of so many digits; 0 where not even the smallest fits."""
    scale = max(0, height // LINES)
    while scale and width_of("8" * digits, Dot(2 * scale, scale)) > width:
        scale -= 1
    return scale


class Far(Struct, frozen=True):
    """What the far view shows; `digits` is how many the number can have."""

    number: int
    digits: int
    stage: str
    noun: str
    said: str


class FarView(Vertical):
    """Shows the number and what it is told to say."""

    def compose(self) -> ComposeResult:
        yield BigText("0", Dot(1, 1), id="far-number")
        for name in PARTS:
            for _ in range(MOST_LINES if name == "said" else 1):
                yield BigText("", Dot(1, 1), classes=f"far-{name}")
            yield Words(id=f"far-{name}")

    def show(self, far: Far) -> None:
        """Draw it as large as this widget is."""
        width, height = self.size
        layout = far_layout(width, height, far.digits, far.stage, far.noun)
        self.query_one("#far-number", BigText).show(str(far.number), layout.number)
        for name in PARTS:
            text, dot = getattr(far, name), getattr(layout, name)
            lines, size = large_lines(text, dot, width, SAID_LINES if name == "said" else 1)
            for place, large in enumerate(self.query(f".far-{name}").results(BigText)):
                large.display = place < len(lines)
                if large.display:
                    large.show(lines[place], size)
            small = self.query_one(f"#far-{name}", Words)
            small.display = not lines
            small.say(text)

"""How large what stands on the sewing screen is, by the size of the window alone.

Nothing that is said and no count moves a column: only another window, another stage or a number
of more digits does.
"""

from __future__ import annotations

from msgspec import Struct

from sewalong.screens.widgets.block_letters import LINES, Dot, width_of
from sewalong.screens.widgets.breakpoints import NARROW_BELOW, ROOMY, SHORT_BELOW

ROUTE = 36
"""Columns of the route of stages."""
ROUTE_FROM = 78
"""Columns of a window from which on it stands beside the stage in hand."""
WIDEST_ROUTE = 60
MESSAGE_LINES = 2
"""Lines at the foot that are kept for what is said."""
LEAST_TOP = 7
"""Lines below which a top tells nothing beside the stages."""


DONE_LINES = 9
"""Lines for what a quilt that is done came to, below its picture."""


class SewingLayout(Struct, frozen=True):
    """Columns and lines: the `dot` of the number and the columns its digits take; the room for
    the picture beside it; the column of the route, 0 where there is none, and in it the room for
    the top as it stands, (0, 0) where there is none; the room for the texts while what is said at the
    foot takes no more than its lines."""

    dot: Dot
    number: int
    gap: int
    picture: tuple[int, int]
    route: int
    top: tuple[int, int]
    texts: tuple[int, int]

    @property
    def caption_at(self) -> int:
        """The column from which the picture stands, and what is said of it."""
        return self.number + self.gap

    @property
    def whole_picture(self) -> tuple[int, int]:
        """The room for the top of a quilt that is done: all but a line or two, and where there is no
        route to give its room to them the lines of its facts."""
        kept = 2 if self.route else DONE_LINES
        return self.texts[0], max(LINES, self.picture[1] + self.texts[1] - kept)


def sewing_layout(width: int, height: int, digits: int, route_lines: int = 0) -> SewingLayout:
    """The layout in a window of `width` × `height` cells for a number of so many digits.

    `route_lines` is how many lines the route takes with what stands below it.
    """
    narrow, short = width < NARROW_BELOW, height < SHORT_BELOW
    sides = 2 if narrow else 4
    # The title, the keys, what is said; above the stage a line where there is room.
    body = height - 2 - MESSAGE_LINES - (0 if short else 1)
    route = ROUTE if width >= ROUTE_FROM else 0
    top = (0, 0)
    if width >= ROOMY[0] and height >= ROOMY[1]:
        route = max(ROUTE, min(WIDEST_ROUTE, width * 3 // 10))
        below = body - route_lines - 2
        top = (route, below) if below >= LEAST_TOP else top
    across = width - sides - (route + 2 if route else 0)
    gap = 2 if narrow else 4
    # What is said of a stage takes about three hundred and fifty letters in five paragraphs.
    letters = 5 + -(-350 // max(1, across)) + (0 if not route or height <= SHORT_BELOW else 3)
    # The stage's name, and a blank line above the head and below it.
    besides = 1 if narrow or short else 3
    room = max(LINES, body - besides - letters)
    dot = _dot(across - gap, room, digits)
    number = width_of("8" * digits, dot)
    head = LINES * dot.down
    if room >= 2 * LINES:
        # A square picture takes twice as many columns as lines.
        head = max(head, min(room, (across - number - gap) // 2))
    picture = (max(0, across - number - gap), head)
    texts = (across, body - besides - head)
    return SewingLayout(dot, number, gap, picture, route, top, texts)


def _dot(across: int, room: int, digits: int) -> Dot:
    """The largest dots that leave as much beside the number as a square of its height takes; the
    smallest are half as wide where else there would be none."""
    for scale in range(room // LINES, 0, -1):
        dot = Dot(2 * scale, scale)
        if width_of("8" * digits, dot) + 2 * LINES * scale <= across:
            return dot
    return Dot(1, 1)

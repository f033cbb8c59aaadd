"""A drawing laid out on a page: its title above it, the names of its fabrics below."""

from __future__ import annotations

from collections.abc import Iterator

from msgspec import Struct

from sewalong.piecing.geometry import Point, Polygon, centre, line_through, shift
from sewalong.wall.drawing.drawn import Drawing
from sewalong.wall.drawing.top_polygons import Part, rectangle
from sewalong.wall.keys import Key

LINES_ACROSS = 64
"""The page is as wide as so many of its lines of text are high (own choice)."""

SMALLEST = 0.12
"""Inches: lower letters than that tell nothing and are left out (own choice)."""

COLUMNS = 3
"""Of names below the drawing (own choice)."""

WIDE = 0.55
"""How wide a letter is, as a share of the height of its line: for cutting what is too long
(own choice: most texts in most sans serifs are narrower)."""


class Writing(Struct, frozen=True):
    """A text whose middle is `at`, or which begins there; `high` is the size of its type. It is
    written on the colour of the key `on`, None for the page."""

    text: str
    at: Point
    high: float
    on: Key | None = None
    is_centred: bool = True


class Page(Struct, frozen=True):
    """All in inches, from a corner at (0, 0): the drawing, the swatches of its legend, and texts."""

    size: tuple[float, float]
    parts: tuple[Part, ...]
    swatches: tuple[Part, ...]
    texts: tuple[Writing, ...]


def page_of(drawing: Drawing) -> Page:
    """The page for a drawing; as wide as that and a margin, as high as it must be."""
    margin = drawing.size[0] / 40
    wide = drawing.size[0] + 2 * margin
    line = wide / LINES_ACROSS
    top = margin + 3 * line
    move = shift(margin, top)
    parts = tuple((move.polygon(polygon), key) for polygon, key in drawing.parts)
    letters = [one for polygon, key in parts for one in _letter(drawing, polygon, key)]
    title = _cut(drawing.title, (wide - 2 * margin) / (1.5 * line))
    texts = [Writing(title, (margin, margin + line), 1.5 * line, is_centred=False), *letters]
    swatches: list[Part] = []
    below = top + drawing.size[1] + 1.5 * line
    column = (wide - 2 * margin) / COLUMNS
    rows = -(-len(drawing.names) // COLUMNS)
    for n, (key, name) in enumerate(drawing.names.items()):
        x, y = margin + column * (n // rows), below + 1.6 * line * (n % rows)
        swatches.append((rectangle(x, y, 1.2 * line, 1.2 * line), key))
        text = _cut(name, (column - 2 * line) / line)
        texts.append(Writing(text, (x + 1.7 * line, y + 0.6 * line), line, is_centred=False))
    return Page((wide, below + 1.6 * line * rows + margin), parts, tuple(swatches), tuple(texts))


def bare_page(drawing: Drawing) -> Page:
    """The drawing alone and the letters on it, with nothing around it: for a page that says the rest."""
    letters = tuple(one for polygon, key in drawing.parts for one in _letter(drawing, polygon, key))
    return Page(drawing.size, drawing.parts, (), letters)


def _letter(drawing: Drawing, polygon: Polygon, key: Key) -> Iterator[Writing]:
    letter = drawing.letters.get(key)
    if letter is None:
        return
    at = centre(polygon)
    high = _room_in(polygon, at) / (1 if len(letter) == 1 else 1.4)
    if high >= SMALLEST:
        yield Writing(letter, at, high, on=key)


def _room_in(polygon: Polygon, at: Point) -> float:
    """Inches from a point within a convex polygon to the nearest of its sides."""
    sides = zip((polygon[-1], *polygon), polygon, strict=False)
    return min(abs(line_through(a, b).depth(at)) for a, b in sides)


def _cut(text: str, most: float) -> str:
    """The text, shortened to so many of its own heights; it then says that it goes on."""
    letters = int(most / WIDE)
    return text if len(text) <= letters else f"{text[: letters - 1]}…"

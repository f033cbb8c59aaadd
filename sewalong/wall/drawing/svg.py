"""A drawing as SVG 1.1 (W3C): one file that needs no other, in inches."""

from __future__ import annotations

import re
from collections.abc import Iterator
from html import escape

from sewalong.fabrics.colours import Colour
from sewalong.wall.drawing.drawn import Drawing
from sewalong.wall.drawing.ink import DARK, PALE, ink_on
from sewalong.wall.drawing.page import Page, Writing, bare_page, page_of
from sewalong.wall.drawing.top_polygons import Part
from sewalong.wall.keys import UNKNOWN, Key

_NOT_XML = re.compile("[^\t\n\r\u0020-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]")
"""What no XML document may hold, however it is escaped. Source: W3C, XML 1.0, "Char"."""

_SEAM = 0.002
"""How thick a seam is drawn, as a share of the page's width (own choice)."""


def as_svg(drawing: Drawing) -> str:
    """The drawing as a document: title and description, every patch with its fabric's colour and
    letter, and the fabrics by name. All text of hers is escaped."""
    return f'<?xml version="1.0" encoding="UTF-8"?>\n{_element(drawing, page_of(drawing))}\n'


def bare_svg(drawing: Drawing) -> str:
    """The drawing without title and names below it, as an element that stands within a page of HTML.
    It has no ids, so that several can."""
    return _element(drawing, bare_page(drawing))


def _element(drawing: Drawing, page: Page) -> str:
    return "\n".join(_lines(drawing, page))


def _lines(drawing: Drawing, page: Page) -> Iterator[str]:
    wide, high = page.size
    seam = _number(wide * _SEAM)
    yield (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {_number(wide)} {_number(high)}" '
        f'width="{_number(wide)}in" height="{_number(high)}in" role="img" '
        'font-family="sans-serif">'
    )
    yield f"<title>{_text(drawing.title)}</title>"
    yield f"<desc>{_text(drawing.about)}</desc>"
    yield f'<rect width="{_number(wide)}" height="{_number(high)}" fill="{PALE}"/>'
    yield f'<g class="cloth" stroke="{DARK}" stroke-width="{seam}" stroke-linejoin="round">'
    yield from (_polygon(drawing, part, seam) for part in page.parts)
    yield "</g>"
    yield f'<g class="legend" stroke="{DARK}" stroke-width="{seam}">'
    yield from (_polygon(drawing, part, seam) for part in page.swatches)
    yield "</g>"
    yield f'<g class="words" fill="{DARK}">'
    yield from (_written(drawing, one) for one in page.texts)
    yield "</g>"
    yield "</svg>"


def _polygon(drawing: Drawing, part: Part, seam: str) -> str:
    polygon, key = part
    points = " ".join(f"{_number(x)},{_number(y)}" for x, y in polygon)
    if key == UNKNOWN:
        return f'<polygon points="{points}" fill="{PALE}" stroke-dasharray="{seam} {seam}"/>'
    return f'<polygon points="{points}" fill="{_colour(drawing, key)}"/>'


def _written(drawing: Drawing, one: Writing) -> str:
    # Not every reader has dominant-baseline: a capital is about 0.7 of its type high.
    x, y = one.at[0], one.at[1] + 0.35 * one.high
    anchor = ' text-anchor="middle"' if one.is_centred else ""
    fill = "" if one.on is None else f' fill="{ink_on(_colour(drawing, one.on))}"'
    return (
        f'<text x="{_number(x)}" y="{_number(y)}" font-size="{_number(one.high)}"{anchor}{fill}>'
        f"{_text(one.text)}</text>"
    )


def _colour(drawing: Drawing, key: Key) -> Colour:
    return drawing.colours[key]


def _text(text: str) -> str:
    return escape(_NOT_XML.sub("", text), quote=False)


def _number(inches: float) -> str:
    return f"{inches:.4f}".rstrip("0").rstrip(".")

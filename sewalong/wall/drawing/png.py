"""A drawing as PNG, where there is a library that paints: the extra `photo`."""

from __future__ import annotations

from io import BytesIO
from typing import TYPE_CHECKING

from sewalong.fabrics.colours import Colour
from sewalong.piecing.geometry import Polygon
from sewalong.wall.drawing.drawn import Drawing
from sewalong.wall.drawing.ink import DARK, PALE, ink_on
from sewalong.wall.drawing.page import Writing, page_of
from sewalong.wall.keys import UNKNOWN

if TYPE_CHECKING:
    from PIL.ImageDraw import ImageDraw

LONGEST = 2000
"""Pixels of the longer side (own choice)."""


class CannotPaint(ValueError):
    """A PNG cannot be made here; the message is a sentence for whoever asked."""


def as_png(drawing: Drawing, longest: int = LONGEST) -> bytes:
    """The drawing as a PNG file, its longer side so many pixels.

    Raises CannotPaint where the library for it is not installed.
    """
    try:
        from PIL import Image
        from PIL import ImageDraw as drawing_on
    except ImportError:
        raise CannotPaint(
            "A PNG needs the extra for photographs, which is not installed here: "
            'pip install "sewalong[photo]". An SVG can be written without it.'
        ) from None
    page = page_of(drawing)
    scale = longest / max(page.size)
    size = (max(1, round(page.size[0] * scale)), max(1, round(page.size[1] * scale)))
    image = Image.new("RGB", size, str(PALE))
    draw = drawing_on.Draw(image)
    for polygon, key in (*page.parts, *page.swatches):
        fill = PALE if key == UNKNOWN else drawing.colours[key]
        _paint(draw, polygon, fill, scale)
    for one in page.texts:
        _write(draw, one, drawing, scale)
    file = BytesIO()
    image.save(file, "PNG")
    return file.getvalue()


def _paint(draw: ImageDraw, polygon: Polygon, fill: Colour, scale: float) -> None:
    points = [(x * scale, y * scale) for x, y in polygon]
    draw.polygon(points, fill=str(fill), outline=str(DARK))


def _write(draw: ImageDraw, one: Writing, drawing: Drawing, scale: float) -> None:
    from PIL import ImageFont

    font = ImageFont.load_default(max(1.0, one.high * scale))
    ink = DARK if one.on is None else ink_on(drawing.colours[one.on])
    at = (one.at[0] * scale, one.at[1] * scale)
    draw.text(at, one.text, str(ink), font, anchor="mm" if one.is_centred else "lm")

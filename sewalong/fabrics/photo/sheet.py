"""The contact sheet: every square as it was seen, with its letter, as one small picture."""

from __future__ import annotations

from io import BytesIO

from PIL import Image, ImageDraw, ImageFont

from sewalong.fabrics.photo.result import THUMB, Reading

_SHOWN = 2 * THUMB
_LABEL = 22
_GAP = 8


def contact_sheet(reading: Reading) -> bytes:
    """A PNG of the squares in their places, light evened; below each its place and its letter,
    black on white, so that no square hides them."""
    photo = reading.photo
    size = (
        _GAP + photo.columns * (_SHOWN + _GAP),
        _GAP + photo.rows * (_SHOWN + _LABEL + _GAP),
    )
    sheet = Image.new("RGB", size, "white")
    draw = ImageDraw.Draw(sheet)
    font = ImageFont.load_default(_LABEL - 6)
    for place, thumb in zip(photo.places, reading.thumbs, strict=True):
        left = _GAP + (place.column - 1) * (_SHOWN + _GAP)
        top = _GAP + (place.row - 1) * (_SHOWN + _LABEL + _GAP)
        square = Image.frombytes("RGB", (THUMB, THUMB), thumb)
        sheet.paste(square.resize((_SHOWN, _SHOWN), Image.Resampling.NEAREST), (left, top))
        draw.text((left, top + _SHOWN), f"{place.letter}  {place.address}", "black", font)
    file = BytesIO()
    sheet.save(file, "PNG")
    return file.getvalue()

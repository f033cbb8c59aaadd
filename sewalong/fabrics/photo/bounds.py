"""What a stranger's file may cost, decided before its pixels are decoded."""

from __future__ import annotations

import re
import warnings
from collections.abc import Iterator
from contextlib import contextmanager
from io import BytesIO
from typing import BinaryIO

from PIL import Image, UnidentifiedImageError

from sewalong.fabrics.photo.refused import PhotoRefused

FORMATS = ("JPEG", "PNG", "WEBP")

MOST_BYTES = 50_000_000
"""Of a file: four times a large photograph of a telephone (own choice)."""

MOST_DECODED = 170_000_000
"""Bytes that decoding may take: with the file, the libraries and the reckoning under 300 MB."""

MOST_SCANS = 40
"""Scans of a JPEG: ordinary progressive ones have about ten, and each costs a pass over all
pixels (own choice)."""

LEAST_SIDE = 64
"""Pixels: under this no grid of squares can be told (own choice)."""

_HALVINGS = (1, 2, 4, 8)
"""By how much a JPEG can be made smaller while it is decoded."""

_SMALLER = "Save it smaller, about 4000 pixels on its long side, and try again."


_MARKER = re.compile(rb"\xff[^\x00\x01\xd0-\xd8\xff]")
_END, _SCAN = 0xD9, 0xDA


def opened(source: bytes | BinaryIO) -> tuple[Image.Image, int]:
    """The picture in this file, not yet decoded, within what it may cost; and how many of its
    pixels will be one each way: a JPEG that is too large is decoded at a half, a quarter or an
    eighth.

    Raises PhotoRefused for what is no picture of a kind that is read, or costs too much.
    """
    data = source if isinstance(source, bytes) else source.read(MOST_BYTES + 1)
    if len(data) > MOST_BYTES:
        raise PhotoRefused(f"The file is larger than {MOST_BYTES // 1_000_000} MB. {_SMALLER}")
    with decoding():
        image = Image.open(BytesIO(data), formats=FORMATS)
    wide, high = image.size
    if min(wide, high) < LEAST_SIDE:
        raise PhotoRefused(
            f"The picture has only {wide} by {high} pixels, too few to tell squares apart. "
            "Use the photograph as the camera took it."
        )
    jpeg = image.format in ("JPEG", "MPO")
    if jpeg and _scans(data) > MOST_SCANS:
        raise PhotoRefused("The JPEG is stored in far too many scans. Save it anew and try again.")
    for by in _HALVINGS if jpeg else (1,):
        if _cost(image, by) <= MOST_DECODED:
            if by > 1:
                image.draft(None, (wide // by, high // by))
            return image, by
    raise PhotoRefused(f"The picture has {wide} by {high} pixels, too many to decode. {_SMALLER}")


def _scans(data: bytes) -> int:
    """Scans of the first picture in a JPEG, at most one more than are decoded. What telephones
    hang on behind it, as a second picture or a film, does not count. Source: ITU-T T.81, annex B.
    """
    count, at = 0, 2
    while count <= MOST_SCANS and (found := _MARKER.search(data, at)) is not None:
        marker, at = data[found.start() + 1], found.end()
        if marker == _END:
            break
        if marker == _SCAN:
            count += 1
        at += int.from_bytes(data[at : at + 2])
    return count


def _cost(image: Image.Image, by: int) -> int:
    """Bytes that decoding takes, with `by` pixels made one each way.

    What the decoders of progressive JPEG and of WebP hold beside the pixels was measured
    (Pillow 13): the first keeps two bytes for each part of each pixel, the second two canvases.
    """
    pixels = image.width * image.height
    beside = 0
    if image.format == "WEBP":
        beside = 12
    elif image.info.get("progressive"):
        beside = 2 * len(image.getbands())
    return pixels * beside + 4 * pixels // by**2


@contextmanager
def decoding() -> Iterator[None]:
    """Whatever a decoder trips over is a file that cannot be read; raises PhotoRefused then.

    A decoder fed by a stranger fails in many ways (OSError, SyntaxError, struct.error ...), and
    nothing but decoding is done under this.
    """
    try:
        with warnings.catch_warnings():
            warnings.simplefilter("ignore")
            yield
    except UnidentifiedImageError:
        raise PhotoRefused(
            "This is no picture that can be read here. Give a JPEG, PNG or WebP file; most "
            "telephones can save their photographs as JPEG."
        ) from None
    except Image.DecompressionBombError:
        raise PhotoRefused(f"The picture has far too many pixels. {_SMALLER}") from None
    except MemoryError:
        raise PhotoRefused(
            f"There is not memory enough to decode the picture. {_SMALLER}"
        ) from None
    except Exception:
        raise PhotoRefused(
            "The picture is damaged or not complete. Copy it from the camera again."
        ) from None

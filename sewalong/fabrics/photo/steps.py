"""Steps that a photograph of squares and one of units go alike."""

from __future__ import annotations

from typing import BinaryIO

from sewalong.fabrics.photo.blur import must_be_sharp
from sewalong.fabrics.photo.finding.grid import FOR_BLOBS, must_leave_room
from sewalong.fabrics.photo.ground import Ground
from sewalong.fabrics.photo.picture import Picture, read_picture
from sewalong.fabrics.photo.refused import PhotoRefused


def with_small(source: bytes | BinaryIO, rows: int, columns: int) -> tuple[Picture, Picture]:
    """The picture in this file, and as small as is enough to find `rows` × `columns` squares in.
    Raises PhotoRefused as `read_picture` does, and where so many have too few pixels."""
    picture = read_picture(source)
    must_leave_room(picture, rows, columns)
    return picture, picture.smaller(FOR_BLOBS)


def must_be_seen_well(picture: Picture, ground: Ground, side: float) -> None:
    """Raises PhotoRefused for what hides squares of this side, in pixels of the stored picture, so
    that no grid of them is found: blur, or another light on the cloth beneath."""
    must_be_sharp(picture, side)
    if ground.in_other_light:
        raise PhotoRefused(
            "An edge of shadow or a strong light lies over the cloth beneath. Move the lamp, step "
            "out of the light, or photograph by daylight."
        )

"""What of a wall is shown, in words."""

from __future__ import annotations

from sewalong.wall.cells.picture import WallPicture


def part_words(picture: WallPicture) -> str:
    """ "rows 1 to 6 of 30, columns 1 to 9 of 30", as they show; empty where all of it is shown."""
    ways = (
        ("row", picture.part.rows, picture.room.rows),
        ("column", picture.part.columns, picture.room.columns),
    )
    said = []
    for name, shown, whole in ways:
        if len(shown) < whole:
            named = (
                f"{name} {shown.stop}"
                if len(shown) == 1
                else f"{name}s {shown.start + 1} to {shown.stop}"
            )
            said.append(f"{named} of {whole}")
    return ", ".join(said)

"""What a photograph of the floor costs to read, beside decoding it."""

from __future__ import annotations

from collections.abc import Iterator
from functools import partial
from io import BytesIO

from PIL import Image

from sewalong.fabrics.floor.known import shapes_of
from sewalong.fabrics.floor.mending import said
from sewalong.fabrics.floor.read import read_floor
from tests.benchmarks.effort import Effort
from tests.benchmarks.row import Goal, Row, milliseconds
from tests.benchmarks.timing import Work, seconds, turn_about
from tests.fabrics.floor.made_floors import Floor, anyhow, made

METHOD, ROWS = "stacked-four-patch", 9


def floor_rows(effort: Effort) -> Iterator[Row]:
    """81 units of 42 fabrics in 12 megapixels: known by their sets, not known, and one said."""
    floor = anyhow(METHOD, ROWS, ROWS, fabrics=42)
    photo, units, colours = _photographed(floor), floor.units, floor.colours
    known = partial(read_floor, photo, ROWS, ROWS, units=units, colours=colours)
    shapes = shapes_of(made(METHOD))
    patches = partial(read_floor, photo, ROWS, ROWS, shapes=shapes, colours=colours)
    reading = known()
    first = reading.places[0].candidates[0]
    mended = partial(said, reading, 1, 1, first.unit, first.turn)
    # So much as is promised beyond the decoding; what is said is answered while she kneels.
    yield _row("a photograph of 81 units of known sets", photo, known, Goal(more=4000), effort)
    yield _row("the same, patches named by colour", photo, patches, Goal(more=4000), effort)
    yield _row("one unit said, the others matched anew", photo, mended, Goal(more=500), effort)


def _photographed(floor: Floor) -> bytes:
    scene = floor.scene(side=0.98, turned=2.0, askew=0.1, fall_off=0.2, size=(1040, 780))
    file = BytesIO()
    scene.image().resize((4000, 3000), Image.Resampling.BILINEAR).save(file, "JPEG", quality=85)
    return file.getvalue()


def _row(what: str, photo: bytes, ours: Work, goal: Goal, effort: Effort) -> Row:
    decoding = partial(seconds, partial(_decoded, photo))
    taken = turn_about(decoding, partial(seconds, ours), effort.rounds)
    return milliseconds(what, "decoding 12 megapixels", taken, goal)


def _decoded(photo: bytes) -> None:
    Image.open(BytesIO(photo)).load()

"""How long a photograph of the floor takes to read, against decoding it.

Prints rows with ratios measured in one run (`pytest -s`); it asserts no times.
"""

from __future__ import annotations

from collections.abc import Callable
from functools import partial
from io import BytesIO

from PIL import Image

from sewalong.fabrics.floor.known import shapes_of
from sewalong.fabrics.floor.mending import said
from sewalong.fabrics.floor.read import read_floor
from tests.benchmarks.row import Goal, Row, heading, line, milliseconds
from tests.benchmarks.timing import seconds, turn_about
from tests.fabrics.floor.made_floors import anyhow, made

_MOST = Goal(more=4000)
"""Four seconds beyond decoding, as is promised for 9 x 9 units."""


def test_print_the_time_to_read_a_floor_of_81_units_against_decoding_it() -> None:
    print(f"\n{heading()}")
    for method in ("stacked-four-patch", "half-square-eight", "nine-patch"):
        for row in _rows(method):
            print(line(row.cells()))
            assert row.ours > 0


def _rows(method: str) -> list[Row]:
    floor = anyhow(method, 9, 9, fabrics=42)
    scene = floor.scene(side=0.98, turned=2.0, askew=0.1, fall_off=0.2, size=(1040, 780))
    file = BytesIO()
    scene.image().resize((4000, 3000), Image.Resampling.BILINEAR).save(file, "JPEG", quality=85)
    photo, units, colours = file.getvalue(), floor.units, floor.colours
    known = partial(read_floor, photo, 9, 9, units=units, colours=colours)
    unknown = partial(read_floor, photo, 9, 9, shapes=shapes_of(made(method)), colours=colours)
    reading = known()
    first = reading.places[0].candidates[0]
    mended = partial(said, reading, 1, 1, first.unit, first.turn)

    def row(what: str, ours: Callable[[], object]) -> Row:
        taken = turn_about(partial(seconds, partial(_decoded, photo)), partial(seconds, ours), 3)
        return milliseconds(f"{what}, {method}", "decoding 12 megapixels", taken, _MOST)

    return [row("81 known", known), row("81 not known", unknown), row("one said", mended)]


def _decoded(photo: bytes) -> None:
    Image.open(BytesIO(photo)).load()

"""A photograph of many units is read in little room, and the parts it is read with are sound."""

from __future__ import annotations

import subprocess
import sys
from io import BytesIO

import msgspec
import numpy as np
import pytest
from PIL import Image

from sewalong.fabrics.floor.outline import outer_corners
from sewalong.fabrics.floor.read import read_floor
from sewalong.fabrics.floor.regions import cores, narrowest
from sewalong.fabrics.floor.result import FloorReading
from tests.fabrics.floor.made_floors import anyhow
from tests.fabrics.floor.test_floor_units import must_be_true

_BOUNDED = """
import resource, sys
from tests.fabrics.floor.made_floors import anyhow
from sewalong.fabrics.floor.read import read_floor
resource.setrlimit(resource.RLIMIT_CPU, (60, 60))
rows = int(sys.argv[1])
floor = anyhow("stacked-four-patch", rows, rows, fabrics=40)
reading = read_floor(
    sys.stdin.buffer.read(), rows, rows, units=floor.units, colours=floor.colours
)
print(sum(place.sure.value == "sure" for place in reading.places))
print(next(line.split()[1] for line in open("/proc/self/status") if line.startswith("VmHWM")))
"""
"""The highest of this process alone: what rusage has is at least what its parent held."""


@pytest.mark.skipif(sys.platform != "linux", reason="memory is read from /proc")
@pytest.mark.parametrize(
    ("rows", "size"), [(9, (1040, 780)), pytest.param(30, (1300, 1280), marks=pytest.mark.long)]
)
def test_twelve_megapixels_of_units_are_read_within_300_megabytes(
    rows: int, size: tuple[int, int]
) -> None:
    floor = anyhow("stacked-four-patch", rows, rows, fabrics=40)
    image = floor.scene(side=0.98, margin=0.7, fall_off=0.2, size=size).image()
    file = BytesIO()
    large = image.resize((4000, 4000 * size[1] // size[0]), Image.Resampling.BILINEAR)
    large.save(file, "JPEG", quality=80)
    command = [sys.executable, "-c", _BOUNDED, str(rows)]
    run = subprocess.run(command, input=file.getvalue(), capture_output=True)
    assert run.returncode == 0, run.stderr.decode()
    sure, peak = map(int, run.stdout.split())
    assert sure == rows * rows
    assert peak < 300 * 1024


def test_nothing_of_the_metadata_is_kept_and_a_reading_goes_through_a_file_unchanged() -> None:
    floor = anyhow("nine-patch", 2, 3)
    exif = Image.Exif()
    exif[0x010E] = "a secret place"
    file = floor.scene().file("JPEG", quality=90, exif=exif)
    reading = read_floor(BytesIO(file), 2, 3, units=floor.units, colours=floor.colours)
    must_be_true(floor, reading)
    stored = msgspec.json.encode(reading)
    assert b"secret" not in stored
    assert msgspec.json.decode(stored, type=FloorReading) == reading


def test_the_points_looked_at_lie_well_inside_their_patch() -> None:
    left = ((0.0, 0.0), (0.5, 0.0), (0.5, 1.0), (0.0, 1.0))
    thin = ((0.0, 0.0), (1.0, 0.0), (1.0, 0.01), (0.0, 0.01))
    half, line = cores((left, thin), 40)
    row, column = np.nonzero(half)
    # 35 in a hundred of the way to the middle, which is a quarter of the unit from the edge.
    inset = 0.35 * 0.25
    assert (column.min() + 0.5) / 40 == pytest.approx(inset, abs=0.026)
    assert (column.max() + 0.5) / 40 == pytest.approx(0.5 - inset, abs=0.026)
    assert (row.min() + 0.5) / 40 == pytest.approx(inset, abs=0.026)
    assert line.any()
    assert narrowest((left,)) == pytest.approx(0.5, abs=0.02)


def test_corners_are_found_though_patches_like_the_cloth_and_a_foot_lie_at_the_edge() -> None:
    mask = np.zeros((240, 320), dtype=bool)
    mask[40:200, 60:260] = True
    mask[40:80, 60:100] = mask[120:160, 220:260] = False
    mask[200:240, 150:170] = True
    corners = outer_corners(mask, 2.0, 40)
    assert corners is not None
    wanted = [(120, 80), (520, 80), (520, 400), (120, 400)]
    assert np.array(corners) == pytest.approx(np.array(wanted), abs=3)


def test_where_nothing_has_straight_sides_no_corners_are_found() -> None:
    y, x = np.indices((240, 320))
    assert outer_corners(np.hypot(x - 160, y - 120) < 90, 1.0, 40) is None
    assert outer_corners(np.zeros((240, 320), dtype=bool), 1.0, 40) is None

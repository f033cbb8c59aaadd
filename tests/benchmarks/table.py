"""All rows of the table, in the order they are printed in."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

from tests.benchmarks.cloth import cloth_rows
from tests.benchmarks.commands import command_rows
from tests.benchmarks.effort import Effort
from tests.benchmarks.floor import floor_rows
from tests.benchmarks.growth import growth_rows
from tests.benchmarks.laying import laying_rows
from tests.benchmarks.row import Row
from tests.benchmarks.sewing import sewing_rows
from tests.benchmarks.wall import wall_rows


def rows(home: Path, effort: Effort) -> Iterator[Row]:
    """Each row as soon as it is measured; the records for it are made in `home`."""
    yield from command_rows(home / "commands", effort)
    yield from sewing_rows(home / "sewing", effort)
    yield from growth_rows(home / "growth", effort)
    yield from laying_rows(effort)
    yield from wall_rows(home / "wall", effort)
    yield from cloth_rows(effort)
    yield from floor_rows(effort)

"""What a move on a large wall costs in a real terminal, beside the barest app that saves and draws."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from statistics import median

from msgspec.structs import replace

from sewalong.progress.acts.sets import AcceptSets
from sewalong.progress.acts.wall import LayWall
from sewalong.progress.wall.units import units_to_lay
from sewalong.quilt.choices import Fabric
from sewalong.quilt.letters import letter
from sewalong.quilt.quilt import Quilt, StartPile, Target
from sewalong.service.acting import do, sit_down
from sewalong.service.open_quilt import OpenQuilt, local_now
from tests.benchmarks.effort import Effort
from tests.benchmarks.processes import hello
from tests.benchmarks.records import a_quilt, shelf
from tests.benchmarks.row import Goal, Row, milliseconds
from tests.benchmarks.sewing import OURS, READY, TO_GO
from tests.benchmarks.terminal import terminal

SIDE, FABRICS = 30, 42


def wall_rows(home: Path, effort: Effort) -> Iterator[Row]:
    """A unit turned on a wall of 900, saved, and all drawn that this changes."""
    home.mkdir()
    _laid(home)
    with terminal(hello(home), home) as floor, terminal(OURS, home) as ours:
        floor.sees(READY)
        ours.sees(TO_GO)
        ours.settles(0.8)
        ours.answers(b"-")
        ours.sees(b"touches")
        ours.settles(0.8)
        # The first loads what the others have.
        ours.answers(b"t")
        taken = [(floor.answers(b" "), ours.answers(b"t")) for _ in range(effort.keys)]
    middle = (median(bare for bare, _ in taken), median(full for _, full in taken))
    beside = "one row saved, one line drawn"
    yield milliseconds("a move at 30 × 30, saved, repainted", beside, middle, Goal(more=50))


def _laid(home: Path) -> None:
    """An invented quilt of stacked units, all of them laid one after the other."""
    fabrics = tuple(
        Fabric(letter(n), f"cloth {n}", f"#{40 + 5 * n:02x}8060", squares=48)
        for n in range(FABRICS)
    )
    sets = tuple(
        tuple(letter((8 * n + place) % FABRICS) for place in range(8))
        for n in range(SIDE * SIDE // 4)
    )
    with shelf(home) as library:
        quilt = OpenQuilt(library, library.add(_quilt(fabrics), local_now()))
        sit_down(quilt)
        do(quilt, AcceptSets(sets))
        rows = tuple(tuple((SIDE * row + n, 0) for n in range(SIDE)) for row in range(SIDE))
        do(quilt, LayWall(units_to_lay(quilt.state), rows))


def _quilt(fabrics: tuple[Fabric, ...]) -> Quilt:
    squares = StartPile("square", a_quilt().starts[0].size, 2 * SIDE * SIDE)
    return replace(a_quilt(), starts=(squares,), target=Target(SIDE, SIDE), fabrics=fabrics)

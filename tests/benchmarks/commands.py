"""What a plain command costs beside the start of Python with what it cannot do without."""

from __future__ import annotations

from collections.abc import Iterator
from functools import partial
from pathlib import Path

from tests.benchmarks.effort import Effort
from tests.benchmarks.processes import PLAIN, SEWALONG, WITH_PYDANTIC, run
from tests.benchmarks.records import STAGE, sewing_now
from tests.benchmarks.row import Goal, Row, milliseconds
from tests.benchmarks.timing import turn_about

QUILT_FILE = Path(__file__).parents[2] / "demo_projects" / "cornflower-field.toml"

_GOALS = (
    (("--version",), Goal(times=1.5)),
    (("list",), Goal(times=2)),
    (("status",), Goal(times=2)),
    (("count", STAGE, "1", "--caution-read"), Goal(times=2.2)),
)


def command_rows(home: Path, effort: Effort) -> Iterator[Row]:
    """A row for each command that is used every day, and one for `plan FILE`."""
    sewing_now(home)
    for words, goal in _GOALS:
        taken = turn_about(
            partial(run, PLAIN, home), partial(run, (SEWALONG, *words), home), effort.rounds
        )
        yield milliseconds(f"`{words[0]}`", "Python, argparse, sqlite3", taken, goal)
    taken = turn_about(
        partial(run, WITH_PYDANTIC, home),
        partial(run, (SEWALONG, "plan", str(QUILT_FILE)), home),
        effort.rounds,
    )
    yield milliseconds("`plan FILE`", "the same and pydantic", taken, Goal(times=1.5))

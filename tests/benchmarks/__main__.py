"""The whole table: what the program costs, beside a floor measured in the same run; then how
often the forecast's ranges hold the truth of invented quilts.

    .venv/bin/python -m tests.benchmarks

It takes some minutes on a machine that is left alone; `--quick` takes little and means little.
"""

from __future__ import annotations

import argparse
import os
import platform
import tempfile
from pathlib import Path

from tests.benchmarks.calibration import figures
from tests.benchmarks.effort import FULL, QUICK
from tests.benchmarks.row import heading, line
from tests.benchmarks.table import rows


def main() -> None:
    """Print each row as soon as it is measured; what is printed is Markdown."""
    parser = argparse.ArgumentParser(prog="python -m tests.benchmarks", description=__doc__)
    parser.add_argument("--quick", action="store_true", help="few rounds, small records")
    effort = QUICK if parser.parse_args().quick else FULL
    machine = f"{platform.system()} {platform.machine()}, {os.cpu_count()} processors"
    print(f"Python {platform.python_version()}, {machine}; medians of {effort.rounds} rounds.\n")
    print(heading(), flush=True)
    with tempfile.TemporaryDirectory() as home:
        for row in rows(Path(home), effort):
            print(line(row.cells()), flush=True)
    print()
    for figure in figures():
        print(figure, flush=True)


if __name__ == "__main__":
    main()

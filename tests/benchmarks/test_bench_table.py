"""The table of the README can be measured: each row is, quickly and with small records.

Prints it (`pytest -s`); it asserts no times. The whole, with the records it speaks of:
`python -m tests.benchmarks`.
"""

from __future__ import annotations

import sys
from pathlib import Path

from tests.benchmarks.effort import QUICK
from tests.benchmarks.row import HEADINGS, Goal, Row, heading, line
from tests.benchmarks.table import rows

README = (Path(__file__).parents[2] / "README.md").read_text(encoding="utf-8")
ROWS = 26
ONLY_ON_LINUX = 2


def test_every_row_is_measured_beside_its_floor(tmp_path: Path) -> None:
    print(f"\n{heading()}")
    measured = []
    for row in rows(tmp_path, QUICK):
        print(line(row.cells()))
        measured.append(row)
    assert all(row.floor > 0 and row.ours > 0 for row in measured)
    expected = ROWS if sys.platform == "linux" else ROWS - ONLY_ON_LINUX
    assert len({row.what for row in measured}) == expected


def test_the_readme_holds_every_figure_and_the_command() -> None:
    section = README.split("## How fast")[1].split("\n## ")[0]
    assert "python -m tests.benchmarks\n" in section
    assert f"\n{heading()}\n" in section
    lines = [one for one in section.splitlines() if one.startswith("|")]
    assert len(lines) == len(heading().splitlines()) + ROWS


def test_a_row_says_when_its_goal_is_missed() -> None:
    row = Row("a thing", "its floor", 20, 31, "ms", Goal(times=1.5))
    assert row.cells() == ("a thing", "its floor: 20 ms", "31 ms", "1.55", "≤ 1.5, missed")
    assert Row("a thing", "its floor", 20, 30, "ms", Goal(times=1.5)).cells()[-1] == "≤ 1.5"


def test_a_goal_can_be_so_much_more_than_the_floor() -> None:
    row = Row("a thing", "its floor", 20, 69, "ms", Goal(more=50))
    assert row.cells()[-1] == "≤ + 50 ms"
    assert Row("a thing", "its floor", 20, 71, "ms", Goal(more=50)).cells()[-1].endswith("missed")


def test_the_lines_stand_below_each_other() -> None:
    row = Row("a thing", "its floor", 20, 30, "ms", Goal())
    assert len({len(one) for one in (*heading().splitlines(), line(row.cells()))}) == 1
    assert line(row.cells()).count("|") == len(HEADINGS) + 1

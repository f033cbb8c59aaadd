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


def test_every_row_is_measured_beside_its_floor(tmp_path: Path) -> None:
    print(f"\n{heading()}")
    measured = []
    for row in rows(tmp_path, QUICK):
        print(line(row.cells()))
        measured.append(row)
    assert all(row.floor > 0 and row.ours > 0 for row in measured)
    assert len({row.what for row in measured}) == (16 if sys.platform == "linux" else 14)


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

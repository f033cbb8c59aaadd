"""The course of a quilt drawn in cells: hours upwards over the dates, as rows of runs.

What was measured is a filled shape with steps of an eighth of a cell. What is left fans out from
today: its lower edge goes to the least there will be, its upper edge to the most. The day it is
wanted by is a line from top to bottom.
"""

from __future__ import annotations

from datetime import date, timedelta
from enum import StrEnum
from itertools import groupby
from typing import NamedTuple

from sewalong.progress.pace.course import Course
from sewalong.progress.pace.duration_words import each_short
from sewalong.progress.record.time_words import day_said

EIGHTHS = " ▁▂▃▄▅▆▇█"
PERHAPS, WANTED = "░", "│"

AXIS = 8
"""Columns for the hours at the edge, with the space behind them."""


WHOLE_HOURS_FROM = 8
"""Hours in all from which on half hours at the edge say too much."""


class Part(StrEnum):
    """What a run of cells shows."""

    MEASURED = "measured"
    AHEAD = "ahead"
    WANTED = "wanted"
    WORDS = "words"


class Run(NamedTuple):
    """Like cells in a row."""

    text: str
    part: Part


def plotted(found: Course, across: int, down: int) -> list[list[Run]]:
    """Rows of runs, `across` cells wide in all: `down` rows of the plot, and the dates below it.

    At least AXIS + 20 cells across and 3 down are taken. In plain ASCII (`owner.ascii_only`) the parts
    can still be told apart.
    """
    wide, high = max(20, across - AXIS), max(3, down)
    columns = [_column(found, x, wide, high) for x in range(wide)]
    rows = []
    for y in range(high):
        cells = [column[high - 1 - y] for column in columns]
        runs = [Run(f"{_hours_at(found, y, high):>{AXIS - 1}} ", Part.WORDS)]
        for part, group in groupby(cells, key=lambda cell: cell[1]):
            text = "".join(sign for sign, _ in group)
            runs.append(Run(text, part))
        rows.append(runs)
    rows.append([Run(" " * AXIS + _dates(found, wide), Part.WORDS)])
    return rows


def day_of(found: Course, x: int, wide: int) -> date:
    """The day column `x` of `wide` stands for: the first and the last are those of the course."""
    days = (found.end - found.first).days
    return found.first + timedelta(days=round(x * days / (wide - 1)))


def column_of(found: Course, day: date, wide: int) -> int:
    """The column that stands nearest to a day."""
    days = max(1, (found.end - found.first).days)
    return round((day - found.first).days / days * (wide - 1))


def fan_on(found: Course, day: date) -> tuple[float, float]:
    """The least and the most hours measured on a day ahead, were the rest sewn steadily up to the
    last day shown of it: the end by her habit, else the day it is wanted by, else the last."""
    end = found.late or found.wanted or found.end
    part = min(1.0, (day - found.today).days / max(1, (end - found.today).days))
    spent = found.spent
    return spent + part * (found.low - spent), spent + part * (found.high - spent)


def _column(found: Course, x: int, wide: int, high: int) -> list[tuple[str, Part]]:
    """The cells of one column from the bottom up."""
    day, most = day_of(found, x, wide), found.high or 1.0
    if found.wanted is not None and x == column_of(found, found.wanted, wide):
        return [(WANTED, Part.WANTED)] * high
    if day <= found.today:
        eighths = round(found.hours_on(day) / most * high * 8)
        signs = [EIGHTHS[min(8, max(0, eighths - 8 * y))] for y in range(high)]
        return [(sign, Part.MEASURED) for sign in signs]
    low, top = (hours / most * high for hours in fan_on(found, day))
    first, last = min(high - 1, int(low)), min(high - 1, int(top))
    ends = found.late or found.wanted or found.end
    shown = day <= ends and found.high > found.spent
    return [(PERHAPS if shown and first <= y <= last else " ", Part.AHEAD) for y in range(high)]


def _hours_at(found: Course, y: int, high: int) -> str:
    """What stands beside row `y` from the top: the most hours, half of them, and none."""
    marks = {0: found.high, high // 2: found.high * (1 - high // 2 / high), high - 1: 0.0}
    if y not in marks:
        return ""
    if y == high - 1:
        return "0"
    return f"{marks[y]:.0f} h" if found.high >= WHOLE_HOURS_FROM else each_short(marks[y] * 60)


def _dates(found: Course, wide: int) -> str:
    """The days below, each under its column where there is room: the first, today, the end, and the
    day it is wanted by before all."""
    line = [" "] * wide
    days = [found.wanted, found.first, found.end, found.today]
    for day in (day for day in days if day is not None):
        text = day_said(day)
        start = min(wide - len(text), max(0, column_of(found, day, wide) - len(text) // 2))
        room = line[max(0, start - 1) : start + len(text) + 1]
        if not "".join(room).strip():
            line[start : start + len(text)] = text
    return "".join(line)

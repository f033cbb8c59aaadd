"""One row of the table: what was measured, its floor, ours, and the goal."""

from __future__ import annotations

from msgspec import Struct

HEADINGS = ("what", "floor", "ours", "ratio", "goal")
WIDTHS = (38, 37, 10, 7, 17)
"""Characters of each column, so that a row can be printed as soon as it is measured."""


class Goal(Struct, frozen=True):
    """At most `times` the floor, and `more` beyond that, in the unit of the row."""

    times: float = 1
    more: float = 0

    def met(self, floor: float, ours: float) -> bool:
        """Whether `ours` is small enough beside `floor`."""
        return ours <= floor * self.times + self.more


class Row(Struct, frozen=True):
    """`floor` and `ours` in `unit`, measured turn about in one run; `beside` says what the floor is."""

    what: str
    beside: str
    floor: float
    ours: float
    unit: str
    goal: Goal

    def cells(self) -> tuple[str, ...]:
        """What stands in each column."""
        at_most = f"≤ {self.goal.times:g}"
        if self.goal.more:
            at_most = f"≤ + {self.goal.more:g} {self.unit}"
        met = self.goal.met(self.floor, self.ours)
        return (
            self.what,
            f"{self.beside}: {_figure(self.floor)} {self.unit}",
            f"{_figure(self.ours)} {self.unit}",
            f"{self.ours / self.floor:.2f}",
            at_most if met else f"{at_most}, missed",
        )


def milliseconds(what: str, beside: str, seconds: tuple[float, float], goal: Goal) -> Row:
    """A row of times, measured in seconds: the floor's first, then ours."""
    floor, ours = seconds
    return Row(what, beside, floor * 1000, ours * 1000, "ms", goal)


def line(cells: tuple[str, ...]) -> str:
    """A line of the table; the whole is a table in Markdown too."""
    return "| " + " | ".join(map(str.ljust, cells, WIDTHS)) + " |"


def heading() -> str:
    """The line of headings and the rule below it."""
    return f"{line(HEADINGS)}\n{line(tuple('-' * width for width in WIDTHS))}"


def _figure(value: float) -> str:
    places = 2 if value < 1 else 1 if value < 10 else 0
    return f"{value:,.{places}f}"

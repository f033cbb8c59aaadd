"""How long a batch takes one person and two, and which days of the week bring it to an end."""

from __future__ import annotations

from math import ceil

from msgspec import Struct

DAYS_OF_A_WEEK, WEEKEND = 7, 2

PROVE_FIRST = "each sews one pair and measures it: rows of two hands must come out alike"
"""What two who sew one top do before anything else. Common practice."""


class Shared(Struct, frozen=True):
    """Minutes for a batch: one person alone; one at the machine and one at the iron, each piece
    handed on; two who both do everything, each on a machine of her own. `slower` is where the
    pace is set when it is handed on."""

    alone: float
    handed_on: float
    half_each: float
    slower: str


def shared(pieces: int, machine: float, iron: float) -> Shared:
    """A batch of `pieces`, at least 1, of so many minutes each at the machine and at the iron.

    Handed on, the slower of the two never waits after the first piece (the length of a flow shop
    of two machines whose pieces are alike: a + b + (n − 1) · max(a, b)).
    """
    alone = pieces * (machine + iron)
    handed_on = machine + iron + (pieces - 1) * max(machine, iron)
    return Shared(alone, handed_on, alone / 2, "machine" if machine >= iron else "iron")


class Weeks(Struct, frozen=True):
    """`a_week` pieces in a week; `takes` whole weeks for all of them, of the `there_are`."""

    a_week: float
    takes: int
    there_are: int

    @property
    def left(self) -> int:
        """Weeks that stay for what comes after; below 0 where they are too few."""
        return self.there_are - self.takes


def weeks_for(pieces: int, days: int, weekday: float, weekend_day: float, off: int) -> Weeks:
    """How many weeks `pieces` take by the days of the week, of the `days` there are.

    `weekday` and `weekend_day` are pieces made on such a day, one of them above 0; `off` are days
    that cannot be used, which are taken from those there are.
    """
    a_week = weekday * (DAYS_OF_A_WEEK - WEEKEND) + weekend_day * WEEKEND
    return Weeks(a_week, ceil(pieces / a_week), (days - off) // DAYS_OF_A_WEEK)

"""`reckon together`: a batch for two. `reckon weeks`: a batch by the days of the week."""

from __future__ import annotations

import argparse
from collections.abc import Iterator
from math import isfinite

from sewalong.cli.frame.context import Context
from sewalong.cli.frame.errors import CommandError
from sewalong.cli.frame.line_report import told
from sewalong.cli.frame.report import Report
from sewalong.progress.pace.shared_work import PROVE_FIRST, shared, weeks_for
from sewalong.quilt.rules import MOST_PIECES
from sewalong.quilt.worksheet.line import Line, plural

SECONDS = 60


def together(args: argparse.Namespace, context: Context) -> Report:
    """`reckon together --pieces 60 --machine 90 --iron 45`"""
    pieces = _at_least_one(args.pieces, "--pieces")
    machine, iron = (
        _at_least_one(n, name) for n, name in ((args.machine, "--machine"), (args.iron, "--iron"))
    )
    found = shared(pieces, machine / SECONDS, iron / SECONDS)
    return told([
        Line("alone", _minutes(found.alone)),
        Line("one sews, one presses", _minutes(found.handed_on), f"the {found.slower} sets the pace"),
        Line("two who both do everything", _minutes(found.half_each), "two machines, two irons"),
        Line("first", PROVE_FIRST),
    ])  # fmt: skip


def weeks(args: argparse.Namespace, context: Context) -> Report:
    """`reckon weeks --pieces 48 --days 56 --weekday 1 --weekend-day 3.5`"""
    pieces = _at_least_one(args.pieces, "--pieces")
    days = _at_least_one(args.days, "--days")
    weekday, weekend = (_rate(args.weekday, "--weekday"), _rate(args.weekend_day, "--weekend-day"))
    if not weekday + weekend:
        raise CommandError("Give --weekday or --weekend-day: pieces made on such a day.")
    if not 0 <= (args.off or 0) < days:
        raise CommandError("--off takes a whole number of days below --days.")
    found = weeks_for(pieces, days, weekday, weekend, args.off or 0)
    return told(_weeks(found.a_week, found.takes, found.there_are, found.left))


def _weeks(a_week: float, takes: int, there_are: int, left: int) -> Iterator[Line]:
    yield Line("in a week", f"{a_week:g}")
    yield Line("these take", plural(takes, "week"), f"of the {there_are} there are")
    if left < 0:
        yield Line("short by", plural(-left, "week"))
    else:
        yield Line("for what comes after them", plural(left, "week"))


def _minutes(minutes: float) -> str:
    return f"{round(minutes * 4) / 4:g} minutes"


def _at_least_one(number: int | None, name: str) -> int:
    if number is None or not 1 <= number <= MOST_PIECES:
        raise CommandError(f"Give {name}, a whole number from 1 to {MOST_PIECES:,}.")
    return number


def _rate(typed: str | None, name: str) -> float:
    try:
        rate = float((typed or "0").replace(",", "."))
    except ValueError:
        rate = -1.0
    if not (isfinite(rate) and 0 <= rate <= MOST_PIECES):
        raise CommandError(f"{name} takes a number of pieces, such as 3 or 3.5.")
    return rate

"""`forecast` and `pace`: what is left as a range, and what took the time so far."""

from __future__ import annotations

import argparse
from datetime import date

from sewalong.cli.frame.context import Context
from sewalong.cli.frame.errors import CommandError
from sewalong.cli.frame.report import Report
from sewalong.cli.frame.selection import chosen_quilt
from sewalong.progress.pace.by_date import at_this_habit, by_date
from sewalong.progress.pace.duration_words import each_takes, hours
from sewalong.progress.pace.forecast import Forecast
from sewalong.progress.pace.sessions import (
    SessionFacts,
    minutes_per_unit,
    usual_hours,
    what_took_the_time,
    work_over_time,
)
from sewalong.progress.record.route import Route
from sewalong.progress.record.time_words import day
from sewalong.service.looks import how_it_goes

_LONGEST_SESSION = 24 * 60
_MOST_TIMES = 100


def forecast(args: argparse.Namespace, context: Context) -> Report:
    """`forecast [QUILT] [--by DATE] [--session MINUTES [--times N]]`"""
    wanted = None if args.by is None else _date(args.by)
    _session(args)
    with chosen_quilt(args, context) as quilt:
        now = quilt.now()
        found = how_it_goes(quilt, args.session).left
    lines = [found.sentence]
    lines += [f"{line[:1].upper()}{line[1:]}" for line in found.lines]
    data = {"quilt": quilt.entry.name, **_forecast_data(found)}
    if not found.nothing_left:
        lines.append(f"So far: {hours(found.spent)} of sewing." if found.spent else "Not begun.")
    if args.times is not None and not found.nothing_left:
        habit = at_this_habit(found, args.session, args.times)
        lines.append(habit.sentence)
        data["weeks"] = list(habit.weeks)
        data["hours_a_week"] = habit.hours
    if wanted is not None:
        asked = by_date(found, now.date(), wanted)
        lines.append(asked.sentence)
        data["by"] = {
            "date": wanted.isoformat(),
            "days": asked.days,
            "hours_a_week": [round(asked.low, 2), round(asked.high, 2)],
            "verdict": asked.verdict.value,
        }
    return Report(tuple(lines), data)


def _session(args: argparse.Namespace) -> None:
    if args.session is not None and not 1 <= args.session <= _LONGEST_SESSION:
        raise CommandError(f"--session takes minutes from 1 to {_LONGEST_SESSION}.")
    if args.times is not None and args.session is None:
        raise CommandError(
            "--times goes with --session: so many sessions of so many minutes a week."
        )
    if args.times is not None and not 1 <= args.times <= _MOST_TIMES:
        raise CommandError(f"--times takes a number from 1 to {_MOST_TIMES}.")


def _date(text: str) -> date:
    try:
        return date.fromisoformat(text.strip())
    except ValueError:
        raise CommandError(
            f"“{text[:40]}” is not a day. Write year, month and day: 2026-12-24"
        ) from None


def _forecast_data(found: Forecast) -> dict[str, object]:
    return {
        "hours": {
            "low": round(found.low, 2),
            "middle": round(found.middle, 2),
            "high": round(found.high, 2),
        },
        "sessions": list(found.sessions),
        "session_hours": round(found.session_hours, 2),
        "sessions_like_yours": found.own_sessions,
        "stages": [
            {
                "stage": one.stage,
                "to_do": one.to_do,
                "begun": one.begun,
                "low": round(one.low, 2),
                "middle": round(one.middle, 2),
                "high": round(one.high, 2),
                "reason": one.reason,
            }
            for one in found.stages
        ],
        "not_begun": list(found.not_begun),
        "spent": round(found.spent, 2),
    }


def pace(args: argparse.Namespace, context: Context) -> Report:
    """`pace [QUILT]`"""
    with chosen_quilt(args, context) as quilt:
        state, going = quilt.state, how_it_goes(quilt)
        facts = going.sessions
    if not facts:
        return Report(
            ("Nothing has been counted yet, so there is no pace. Guesses: sewalong forecast",),
            {"quilt": quilt.entry.name, "sessions": [], "stages": []},
        )
    took = what_took_the_time(going.pace)
    each = minutes_per_unit(facts)
    usual = usual_hours(facts)
    lines = [_session_line(one, state.route) for one in facts]
    lines += [f"{one.sentence[:1].upper()}{one.sentence[1:]}." for one in took]
    if usual is not None:
        lines.append(f"A session of yours: {hours(usual)} of sewing.")
    if each is not None:
        lines.append(f"For each unit so far: {each_takes(each)}, all stages together.")
    lines.append("Idle gaps are left out.")
    points = work_over_time(facts)
    data = {
        "quilt": quilt.entry.name,
        "sessions": [
            {
                "number": one.number,
                "opened": one.opened.isoformat(),
                "hours": round(one.hours, 2),
                "counts": dict(one.counts),
                "pieces": one.pieces,
                "units": one.units,
                "hours_so_far": round(point.hours, 2),
                "open": one.is_open,
            }
            for one, point in zip(facts, points, strict=True)
        ],
        "stages": [
            {
                "stage": one.stage,
                "n": one.n,
                "hours": round(one.hours, 2),
                "share": round(one.share, 4),
                "minutes_each": round(one.each, 2),
            }
            for one in took
        ],
        "usual_session_hours": None if usual is None else round(usual, 2),
        "minutes_for_each_unit": None if each is None else round(each, 2),
    }
    return Report(tuple(lines), data)


def _session_line(one: SessionFacts, route: Route) -> str:
    did = [
        f"{stage.counts.count(abs(n))} {'at' if n > 0 else 'unpicked at'} {stage.label}"
        for stage_id, n in one.counts.items()
        if n and (stage := route.stage(stage_id)) is not None
    ]
    still = ", still open" if one.is_open else ""
    return (
        f"Session {one.number} ({day(one.opened)}{still}): {hours(one.hours)}, "
        f"{', '.join(did) or 'nothing in the end'}."
    )

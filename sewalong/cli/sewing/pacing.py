"""`forecast` and `pace`: what is left as a range, and what took the time so far."""

from __future__ import annotations

import argparse
from collections.abc import Sequence
from datetime import date

from sewalong.cli.frame.context import Context
from sewalong.cli.frame.errors import CommandError
from sewalong.cli.frame.facts import each, sentences
from sewalong.cli.frame.report import Report
from sewalong.cli.frame.selection import chosen_quilt
from sewalong.progress.pace.by_date import (
    LONGEST_SESSION,
    MOST_A_WEEK,
    at_this_habit,
    by_date,
    read_day,
)
from sewalong.progress.pace.course import course, end_in_words
from sewalong.progress.pace.duration_words import each_takes, hours
from sewalong.progress.pace.forecast import Forecast
from sewalong.progress.pace.forecast_words import by_stage, summary
from sewalong.progress.pace.hours_ahead import Hours
from sewalong.progress.pace.session_words import session_lines
from sewalong.progress.pace.sessions import (
    SessionFacts,
    StageTime,
    hours_so_far,
    minutes_per_unit,
    usual_hours,
)
from sewalong.progress.record.route import Route
from sewalong.service.looks import how_it_goes


def forecast(args: argparse.Namespace, context: Context) -> Report:
    """`forecast [QUILT] [--by DATE] [--session MINUTES [--times N]]`"""
    wanted = None if args.by is None else _date(args.by)
    _session(args)
    with chosen_quilt(args, context) as quilt:
        now, minutes = quilt.now(), args.session or quilt.preferences.session_minutes
        if args.times is not None and minutes is None:
            raise CommandError(
                "--times goes with --session: so many sessions of so many minutes a week."
            )
        going = how_it_goes(quilt, minutes)
        found = going.left
    lines = [*summary(found), *by_stage(found)]
    data = {"quilt": quilt.entry.name, **_forecast_data(found)}
    if found.in_all is not None:
        lines.append(_so_far(found))
    a_week = None
    if args.times is not None and minutes is not None:
        habit = at_this_habit(found, minutes, args.times)
        a_week = habit.hours
        if found.in_all is not None:
            lines += sentences(habit.sentence)
        data["weeks"] = list(habit.weeks)
        data["hours_a_week"] = habit.hours
    if wanted is not None:
        asked = by_date(found, now.date(), wanted, a_week)
        seen = course(going.sessions, found, now.date(), wanted)
        lines += [one for line in asked.lines for one in sentences(line)]
        if seen.a_week is not None:
            lines += end_in_words(seen)
        data["by"] = {
            "date": wanted.isoformat(),
            "days": asked.days,
            "hours_a_week": [round(asked.low, 2), round(asked.high, 2)],
            "verdict": asked.verdict.value,
            "said": list(asked.lines),
            "done_between": seen.early and seen.late and [str(seen.early), str(seen.late)],
        }
    return Report(tuple(lines), data)


def _so_far(found: Forecast) -> str:
    if not found.evenings:
        return "Not begun."
    return f"So far: {hours(found.spent)} measured." if found.spent else "So far: nothing measured."


def _session(args: argparse.Namespace) -> None:
    if args.session is not None and not 1 <= args.session <= LONGEST_SESSION:
        raise CommandError(f"--session takes minutes from 1 to {LONGEST_SESSION}.")
    if args.times is not None and not 1 <= args.times <= MOST_A_WEEK:
        raise CommandError(f"--times takes a number from 1 to {MOST_A_WEEK}.")


def _date(text: str) -> date:
    try:
        return read_day(text)
    except ValueError as error:
        raise CommandError(str(error)) from None


def _forecast_data(found: Forecast) -> dict[str, object]:
    return {
        "hours": _range(found.in_all or Hours(0.0, 0.0, 0.0)),
        "measured": found.measured and _range(found.measured),
        "guessed": found.guessed and _range(found.guessed),
        "after_units": found.after_units and _range(found.after_units),
        "sessions": list(found.sessions),
        "session_hours": round(found.session_hours, 2),
        "sessions_like_yours": found.own_sessions,
        "stages": [
            {
                "stage": one.pace.stage.id,
                "to_do": one.to_do,
                "begun": one.begun,
                "measured": one.pace.measured,
                **_range(one.hours),
                "reason": one.pace.reason,
            }
            for one in found.stages
        ],
        "not_begun": list(found.not_begun),
        "spent": round(found.spent, 2),
    }


def _range(found: Hours) -> dict[str, float]:
    return {
        "low": round(found.low, 2),
        "middle": round(found.middle, 2),
        "high": round(found.high, 2),
    }


def pace(args: argparse.Namespace, context: Context) -> Report:
    """`pace [QUILT]`"""
    with chosen_quilt(args, context) as quilt:
        state, going = quilt.state, how_it_goes(quilt)
    facts, took = going.sessions, going.spent
    if not facts:
        return Report(
            ("Nothing has been counted yet, so there is no pace.", "Guesses: sewalong forecast"),
            {"quilt": quilt.entry.name, "sessions": [], "stages": []},
        )
    a_unit = minutes_per_unit(facts)
    usual = usual_hours(facts)
    lines = [line for one in facts for line in session_lines(one, state.route)]
    for one in took:
        lines += _stage_lines(one, state.route)
    if usual is not None:
        lines.append(f"A session of yours: {hours(usual)}.")
    if a_unit is not None:
        lines.append(f"For each unit so far: {each_takes(a_unit)} measured, all stages together.")
    lines.append("Idle gaps and counts without a time are in no measured hour.")
    data = {
        "quilt": quilt.entry.name,
        "sessions": _sessions_data(facts),
        "stages": [_stage_data(one) for one in took],
        "usual_session_hours": None if usual is None else round(usual, 2),
        "minutes_for_each_unit": None if a_unit is None else round(a_unit, 2),
    }
    return Report(tuple(lines), data)


def _sessions_data(facts: Sequence[SessionFacts]) -> list[dict[str, object]]:
    return [
        {
            "number": one.number,
            "opened": one.opened.isoformat(),
            "hours": round(one.length.total_seconds() / 3600, 2),
            "measured_hours": round(one.hours, 2),
            "untimed": one.untimed,
            "gaps": one.gaps,
            "counts": dict(one.counts),
            "pieces": one.pieces,
            "units": one.units,
            "measured_hours_so_far": round(so_far, 2),
            "open": one.is_open,
        }
        for one, so_far in zip(facts, hours_so_far(facts), strict=True)
    ]


def _stage_lines(one: StageTime, route: Route) -> list[str]:
    label, stage = one.label.capitalize(), route.stage(one.stage)
    pieces = stage.counts.count(one.n) if stage else str(one.n)
    if one.each is None:
        return [f"{label}: {pieces} counted without a time."]
    facts = [f"{hours(one.hours)}.", f"{one.share:.0%} of the time measured.", f"{pieces}."]
    if one.untimed:
        facts.append(f"{one.untimed} of them without a time.")
    return each(label, [*facts, f"{each_takes(one.each)} each."])


def _stage_data(one: StageTime) -> dict[str, object]:
    return {
        "stage": one.stage,
        "n": one.n,
        "untimed": one.untimed,
        "hours": round(one.hours, 2),
        "share": round(one.share, 4),
        "minutes_each": None if one.each is None else round(one.each, 2),
    }

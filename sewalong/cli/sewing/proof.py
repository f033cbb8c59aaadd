"""What proved the machine, whether it still holds, and going on without it."""

from __future__ import annotations

import argparse

from msgspec.structs import asdict

from sewalong.cli.frame.context import Context
from sewalong.cli.frame.facts import each
from sewalong.cli.frame.report import Report
from sewalong.cli.frame.selection import chosen_quilt, stage_id
from sewalong.cli.sewing.at_risk import at_risk_data, at_risk_lines
from sewalong.cli.sewing.outcome import aftermath, said_besides
from sewalong.progress.acts.seam import GoOn
from sewalong.progress.measuring.at_risk import at_risk
from sewalong.progress.measuring.by_others import by_others, others_in_doubt, others_in_words
from sewalong.progress.measuring.length_words import plainly
from sewalong.progress.measuring.proof import Proof, ProofStanding
from sewalong.progress.measuring.proof import proof as proved
from sewalong.progress.record.measurable import read_piece
from sewalong.progress.record.state import Check, State
from sewalong.progress.record.time_words import day_and_time
from sewalong.progress.resuming.resume_facts import settings_in_words, shortfall_in_words
from sewalong.service.acting import do
from sewalong.service.machine import ALL_SEEN_TO, in_doubt, saw_to_them


def proof(args: argparse.Namespace, context: Context) -> Report:
    """`proof [QUILT] [--seen-to]`"""
    with chosen_quilt(args, context) as quilt:
        besides: list[str] = []
        if args.seen_to:
            outcome = saw_to_them(quilt)
            also = said_besides(outcome, shortfall_in_words(quilt.state, outcome.plan))
            besides = [*([also[1]] if also else []), ALL_SEEN_TO]
        state = quilt.state
        found = proved(state, context.clock())
        lines = [*_lines(state, found), *at_risk_lines(in_doubt(quilt)), *besides]
        now = context.clock()
        lines += [f"{label}: {said}" for label, said in others_in_words(state, now)]
        for check, facts in others_in_doubt(state, quilt.record, now):
            lines += each(f"Seam of {check.by}", facts)
        return Report(
            tuple(lines),
            {
                "quilt": quilt.entry.name,
                "standing": found.standing.value,
                "why": found.why or None,
                "measure": found.piece,
                "should_be": float(read_piece(state.quilt, state.target, found.piece).expected),
                "went_on": found.went_on,
                "last_passed": _check_data(found.last),
                "failed": _check_data(found.failed),
                **_others(state),
                "at_risk": at_risk_data(at_risk(state, quilt.record)),
            },
        )


def go_on(args: argparse.Namespace, context: Context) -> Report:
    """`go-on STAGE`"""
    with chosen_quilt(args, context) as quilt:
        stage = stage_id(quilt.state.route, args.stage)
        return aftermath(quilt, do(quilt, GoOn(stage)), more={"stage": stage})


def _lines(state: State, found: Proof) -> list[str]:
    piece = read_piece(state.quilt, state.target, found.piece)
    lines = [found.standing.words]
    if found.standing is not ProofStanding.NEVER and found.why:
        lines.append(f"Why: {found.why}.")
    if found.went_on:
        lines.append("You chose to go on without measuring again.")
    if found.last is not None:
        lines.append(f"Tested by: {_check_words(state, found.last)}")
        if found.last.settings is not None:
            with_settings = settings_in_words(found.last.settings)
            if with_settings:
                lines.append(f"With: {with_settings}.")
    if found.failed is not None:
        lines.append(f"Failed: {_check_words(state, found.failed)}")
    if found.standing is not ProofStanding.FRESH:
        should = plainly(piece.expected, state.quilt.unit)
        lines.append(f"To test it, measure: {piece.words}, which should be {should}.")
    return lines


def _check_words(state: State, check: Check) -> str:
    unit = state.quilt.unit
    piece = read_piece(state.quilt, state.target, check.piece)
    read = ", ".join(plainly(reading, unit) for reading in check.readings)
    should = plainly(check.expected, unit)
    return f"{piece.words} read {read}, should be {should} ({day_and_time(check.at)})."


def _others(state: State) -> dict[str, object]:
    """The last measurement of each other person's seam, by name; where nobody else sews the data are
    what they were before this could be said."""
    last = {one.by: {"passed": one.passed, **(_check_data(one) or {})} for one in by_others(state)}
    return {"others": last} if last else {}


def _check_data(check: Check | None) -> dict[str, object] | None:
    if check is None:
        return None
    return {
        "seq": check.seq,
        "at": check.at.isoformat(),
        "session": check.session,
        "piece": check.piece,
        "readings": [float(reading) for reading in check.readings],
        "expected": float(check.expected),
        "settings": asdict(check.settings) if check.settings else None,
    }

"""Piles that change other than by work: spoiled, found, recounted, put away."""

from __future__ import annotations

import argparse
from collections.abc import Mapping

from sewalong.cli.frame.context import Context
from sewalong.cli.frame.report import Report
from sewalong.cli.frame.selection import chosen_quilt, pile_id
from sewalong.cli.sewing.outcome import aftermath
from sewalong.progress.acts.piles import Find, PutPileAway, Spoil
from sewalong.progress.acts.recounting import Recount
from sewalong.progress.record.events.piles import HowFound, beside_the_pile
from sewalong.progress.record.events.recounting import Recounted
from sewalong.progress.record.recount_rules import ways
from sewalong.progress.record.state import State
from sewalong.service.acting import Outcome, do
from sewalong.service.open_quilt import OpenQuilt


def spoil(args: argparse.Namespace, context: Context) -> Report:
    """`spoil PILE N --reason TEXT [--set N] [--fabric FABRIC]`"""
    with chosen_quilt(args, context) as quilt:
        pile = pile_id(quilt.state.route, args.pile)
        fabric = _letter(quilt, args.fabric) if args.fabric else ""
        act = Spoil(pile, args.n, args.reason, args.set or 0, fabric)
        return _report(quilt, do(quilt, act), pile)


def _letter(quilt: OpenQuilt, typed: str) -> str:
    """The letter of the fabric meant."""
    from sewalong.progress.sets.read_squares import fabric_typed  # colours take long to load

    return fabric_typed(quilt.state.quilt, typed)


def find(args: argparse.Namespace, context: Context) -> Report:
    """`find PILE N [--bought]`"""
    with chosen_quilt(args, context) as quilt:
        pile = pile_id(quilt.state.route, args.pile)
        how: HowFound = "bought" if args.bought else "found"
        return _report(quilt, do(quilt, Find(pile, args.n, how)), pile)


def put_away(args: argparse.Namespace, context: Context) -> Report:
    """`put-away PILE PLACE… [--part N]`"""
    with chosen_quilt(args, context) as quilt:
        pile = pile_id(quilt.state.route, args.pile)
        return _report(quilt, do(quilt, PutPileAway(pile, " ".join(args.text), args.part)), pile)


def recount(args: argparse.Namespace, context: Context) -> Report:
    """`recount PILE N [--place PLACE] [--as WHAT]`: the count stands; what it may be is said."""
    with chosen_quilt(args, context) as quilt:
        pile = pile_id(quilt.state.route, args.pile)
        quilt.refresh()
        before = quilt.state
        outcome = do(quilt, Recount(pile, args.n, args.how or "stands", args.place or ""))
        event = next(one.event for one in outcome.recorded if isinstance(one.event, Recounted))
        may_be = [way for way in ways(before, pile, event.difference) if way != "stands"]
        lines = [*_missing(quilt.state, pile)]
        if beside := beside_the_pile(quilt.state, pile).strip():
            lines.append(beside)
        if event.difference and args.how is None and may_be:
            lines.append(f"The difference may be: {', '.join(may_be)}.")
            lines.append(f"To say so: sewalong undo, then recount again with --as {may_be[0]}")
        more = {
            "recorded_before": event.recorded,
            "difference": event.difference,
            "how": event.how,
            "may_be": may_be,
            "missing": quilt.state.missing.get(pile, 0),
            "places": dict(quilt.state.places.get(pile, {})),
        }
        return _report(quilt, outcome, pile, lines, more)


def _missing(state: State, pile: str) -> list[str]:
    missing = state.missing.get(pile, 0)
    noun = state.route.piles[pile].noun
    return [f"Missing: {noun.count(missing)} made, but not found."] if missing else []


def _report(
    quilt: OpenQuilt,
    outcome: Outcome,
    pile: str,
    lines: list[str] | None = None,
    more: Mapping[str, object] | None = None,
) -> Report:
    there = quilt.state.piles[pile]
    noun = quilt.state.route.piles[pile].noun
    verb = "lies" if there == 1 else "lie"
    return aftermath(
        quilt,
        outcome,
        first=(f"{noun.count(there).capitalize()} {verb} there now.", *(lines or ())),
        more={"pile": pile, "there": there, **(more or {})},
    )

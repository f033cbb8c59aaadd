"""`sets`: which squares make a set: proposed, accepted, laid otherwise, and found again."""

from __future__ import annotations

import argparse
from collections.abc import Callable

from sewalong.cli.cloth.set_report import (
    accepted_report,
    in_hand_report,
    proposal_report,
    sets_with_report,
)
from sewalong.cli.cloth.typed_numbers import set_and_fabrics, two_places
from sewalong.cli.frame.context import Context
from sewalong.cli.frame.errors import CommandError
from sewalong.cli.frame.report import Report
from sewalong.cli.frame.selection import chosen_quilt, stage_id
from sewalong.cli.sewing.outcome import aftermath
from sewalong.fabrics.sets.proposing import Proposal
from sewalong.fabrics.sets.rules import Rule, SetsRefused
from sewalong.progress.acts.act import Act
from sewalong.progress.acts.sets import LayOwn, MarkSet, SwapSquares, TakeUp
from sewalong.progress.record.limits import a_stage
from sewalong.progress.record.squares_left import shape_of_sets
from sewalong.progress.sets.read_squares import squares_typed
from sewalong.progress.sets.what_to_propose import what_to_propose
from sewalong.service.acting import do, looked
from sewalong.service.contrast_looks import facts_of
from sewalong.service.open_quilt import OpenQuilt
from sewalong.service.set_drawings import refuse_drawing, set_drawn, top_drawn, write_drawing
from sewalong.service.set_proposals import accepting, best_of

MOST_SECONDS = 600
"""Seconds to look for better ones at the most: own choice, far more than brings anything."""

Acted = tuple[Act, *tuple[int, ...]]
"""An act, and the numbers of the sets that it changes."""

_PROPOSING = ("rule", "background", "seed", "seconds", "without", "accept")
_LOOKING = ("next", "with_fabrics")


def sets(args: argparse.Namespace, context: Context) -> Report:
    """`sets`, `sets --next`, `sets --with A,F`, `sets --swap "7:2 9:5"` and so on."""
    wanted = [name for name in (*_LOOKING, *_ACTS) if _given(args, name)]
    proposing = [name for name in _PROPOSING if _given(args, name)]
    if len(wanted) > 1 or (wanted and (proposing or args.anew)):
        raise CommandError("One thing at a time. See: sewalong sets --help")
    if args.at is not None and wanted not in (["next"], ["take_up"]):
        raise CommandError("--at goes with --next or --take-up.")
    if args.picture is None and (args.of is not None or args.replace):
        raise CommandError("--of and --replace go with --picture.")
    if args.picture is not None:
        if wanted or args.accept:
            raise CommandError("One thing at a time. See: sewalong sets --help")
        refuse_drawing(args.picture, replace=args.replace)
    with chosen_quilt(args, context) as quilt:
        if wanted == ["next"]:
            return in_hand_report(quilt, _stage(args, quilt))
        if wanted == ["with_fabrics"]:
            return sets_with_report(quilt, squares_typed(quilt.state.quilt, args.with_fabrics))
        if wanted:
            quilt.refresh()
            return _done(quilt, *_ACTS[wanted[0]](args, quilt))
        if quilt.state.sets.sets and not args.anew:
            if proposing:
                raise CommandError(
                    "Sets are accepted already. Add --anew to choose those again that are not begun."
                )
            return _with_picture(accepted_report(quilt), args, quilt)
        return _proposed(args, quilt)


def _given(args: argparse.Namespace, name: str) -> bool:
    # A number typed as 0 is given, though 0 equals False.
    value = getattr(args, name)
    return value is not None and value is not False


def _proposed(args: argparse.Namespace, quilt: OpenQuilt) -> Report:
    if args.seconds is not None and not 1 <= args.seconds <= MOST_SECONDS:
        raise CommandError(f"--seconds takes a whole number from 1 to {MOST_SECONDS}.")
    quilt.refresh()
    shape_of_sets(quilt.state.quilt)
    if not quilt.state.quilt.counted_fabrics:
        raise CommandError(
            "There are no fabrics to choose from yet. Say them: sewalong fabrics --say “lights 60, "
            "mediums 70, darks 38”"
        )
    rule, background = _rule(args.rule), args.background or ""
    if (rule is Rule.ONE_BACKGROUND) != bool(background.strip()):
        raise CommandError(
            "--rule “one background” and --background go together: a fabric, or a colour family."
        )
    asked = what_to_propose(
        quilt.state,
        rule,
        background=background,
        seed=1 if args.seed is None else args.seed,
        without=squares_typed(quilt.state.quilt, args.without) if args.without else (),
    )
    try:
        found = best_of(asked, args.seconds)
    except SetsRefused as refused:
        raise CommandError(str(refused)) from refused
    report = proposal_report(quilt, asked, found)
    if not args.accept:
        return _with_picture(report, args, quilt, found)
    outcome = do(quilt, accepting(asked, found))
    return aftermath(
        quilt, outcome, first=report.lines[:-1], more={**report.data, "accepted": True}
    )


def _with_picture(
    report: Report, args: argparse.Namespace, quilt: OpenQuilt, found: Proposal | None = None
) -> Report:
    """The report, with the picture written that was asked for."""
    if args.picture is None:
        return report
    state = quilt.state
    drawing = top_drawn(state, found) if args.of is None else set_drawn(state, args.of, found)
    write_drawing(args.picture, drawing, replace=args.replace)
    return Report(
        (f"The picture is in {args.picture}",),
        {**report.data, "picture": args.picture},
        recorded=True,
    )


def _rule(typed: str | None) -> Rule:
    wanted = " ".join((typed or Rule.BY_VALUE).casefold().replace("-", " ").split())
    if wanted not in tuple(Rule):
        raise CommandError(f"--rule takes one of: {', '.join(Rule)}.")
    return Rule(wanted)


def _stage(args: argparse.Namespace, quilt: OpenQuilt) -> str:
    """The stage named, else the one in hand."""
    if args.at is not None:
        id = stage_id(quilt.state.route, args.at)
        return a_stage(quilt.state, id).id
    return looked(quilt).hand.line.stage.id


def _done(quilt: OpenQuilt, act: Act, *numbers: int) -> Report:
    """Carry out an act on these sets; of what is laid otherwise the weakest seam is said."""
    outcome = do(quilt, act)
    laid = [quilt.state.sets.sets[number] for number in numbers]
    weakest = []
    for one in laid if isinstance(act, SwapSquares | LayOwn) else ():
        met = facts_of(quilt.state.quilt, one).met
        weakest += [f"Weakest in set {one.number}: {met[0].words}"] if met else []
    more = {"sets": [{"number": one.number, "squares": list(one.squares)} for one in laid]}
    return aftermath(quilt, outcome, first=weakest, more=more)


def _swap(args: argparse.Namespace, quilt: OpenQuilt) -> Acted:
    number, place, other, other_place = two_places(args.swap)
    return SwapSquares(number, place, other, other_place), *dict.fromkeys((number, other))


def _own(args: argparse.Namespace, quilt: OpenQuilt) -> Acted:
    number, fabrics = set_and_fabrics(args.own)
    return LayOwn(number, squares_typed(quilt.state.quilt, fabrics)), number


def _take_up(args: argparse.Namespace, quilt: OpenQuilt) -> Acted:
    return TakeUp(_stage(args, quilt), args.take_up), args.take_up


_ACTS: dict[str, Callable[[argparse.Namespace, OpenQuilt], Acted]] = {
    "swap": _swap,
    "own": _own,
    "take_up": _take_up,
    "skip": lambda args, quilt: (MarkSet(args.skip, "skipped"), args.skip),
    "hold_back": lambda args, quilt: (MarkSet(args.hold_back, "held back"), args.hold_back),
    "let_in": lambda args, quilt: (MarkSet(args.let_in, "back in"), args.let_in),
    "lock": lambda args, quilt: (MarkSet(args.lock, "locked"), args.lock),
    "unlock": lambda args, quilt: (MarkSet(args.unlock, "unlocked"), args.unlock),
}

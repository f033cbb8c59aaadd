"""Piles that change other than by work: spoiled, found, recounted, put away."""

from __future__ import annotations

import argparse

from sewalong.cli.frame.context import Context
from sewalong.cli.frame.report import Report
from sewalong.cli.frame.selection import chosen_quilt, pile_id
from sewalong.cli.sewing.outcome import aftermath
from sewalong.cli.sewing.recounting import recounted
from sewalong.progress.acts.piles import Find, PutPileAway, Spoil
from sewalong.progress.acts.recounting import Recount
from sewalong.service.open_quilt import OpenQuilt


def spoil(args: argparse.Namespace, context: Context) -> Report:
    """`spoil PILE N --reason TEXT`"""
    with chosen_quilt(args, context) as quilt:
        pile = pile_id(quilt.state.road, args.pile)
        return _do(quilt, pile, Spoil(pile, args.n, args.reason))


def find(args: argparse.Namespace, context: Context) -> Report:
    """`find PILE N [--bought]`"""
    with chosen_quilt(args, context) as quilt:
        pile = pile_id(quilt.state.road, args.pile)
        return _do(quilt, pile, Find(pile, args.n, "bought" if args.bought else "found"))


def recount(args: argparse.Namespace, context: Context) -> Report:
    """`recount PILE N [--place PLACE] [--as WHAT]`: the count stands; what it may be is said."""
    with chosen_quilt(args, context) as quilt:
        pile = pile_id(quilt.state.road, args.pile)
        before = quilt.state
        command = Recount(pile, args.n, args.how or "stands", args.place or "")
        report = _do(quilt, pile, command)
        return recounted(report, before, quilt, pile, said=args.how is not None)


def put_away(args: argparse.Namespace, context: Context) -> Report:
    """`put-away PILE PLACE… [--part N]`"""
    with chosen_quilt(args, context) as quilt:
        pile = pile_id(quilt.state.road, args.pile)
        return _do(quilt, pile, PutPileAway(pile, " ".join(args.text), args.part))


def _do(quilt: OpenQuilt, pile: str, command: Command) -> Report:
    recorded = quilt.do(command)
    there = quilt.state.piles[pile]
    noun = quilt.state.route.piles[pile].noun
    verb = "lies" if there == 1 else "lie"
    return aftermath(
        quilt,
        recorded,
        first=(f"{noun.count(there).capitalize()} {verb} there now.",),
        more={"pile": pile, "there": there},
    )

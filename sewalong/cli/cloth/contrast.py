"""`contrast`: how fabrics read beside each other, and what meets what."""

from __future__ import annotations

import argparse
from collections.abc import Sequence

from sewalong.cli.cloth.set_report import named_squares
from sewalong.cli.cloth.typed_numbers import several
from sewalong.cli.frame.context import Context
from sewalong.cli.frame.errors import CommandError
from sewalong.cli.frame.report import Report
from sewalong.cli.frame.selection import any_library, chosen_quilt
from sewalong.fabrics.advice import Met
from sewalong.fabrics.contrast_words import TwoFabrics
from sewalong.progress.sets.set_words import called
from sewalong.quilt.choices import Fabric
from sewalong.service.contrast_looks import (
    MethodMeets,
    beside_each_other,
    method_meets,
    set_meets,
)


def contrast(args: argparse.Namespace, context: Context) -> Report:
    """`contrast A F …`, `contrast --set 7`, or alone: what meets what in the method."""
    fabrics = [part.strip() for word in args.fabric for part in word.split(",") if part.strip()]
    if args.fabric and (args.set is not None or args.turned):
        raise CommandError("Name fabrics, or a set; one at a time.")
    if args.fabric:
        if len(fabrics) < 2:
            raise CommandError("Name two fabrics or more, by letter or name, or two colours.")
        return _fabrics(fabrics, args, context)
    with chosen_quilt(args, context) as quilt:
        state, turned = quilt.state, several(args.turned or "", "--turned")
        if args.set is None:
            return _method(quilt.entry.name, method_meets(state.quilt, turned))
        laid, facts = set_meets(state, args.set, turned)
        squares = named_squares(called(state.quilt), laid.known)
        data = {
            "quilt": quilt.entry.name,
            "set": laid.number,
            "squares": [letter or None for letter in laid.known],
            "seams": [_met(one) for one in facts.met],
            "more": list(facts.more),
        }
        return Report((f"Set {laid.number}: {squares}.", *facts.facts), data)


MOST_FABRICS = 40
"""Fabrics held against each other at a time: 780 pairs."""


def _fabrics(texts: Sequence[str], args: argparse.Namespace, context: Context) -> Report:
    if len(texts) > MOST_FABRICS:
        raise CommandError(f"Name {MOST_FABRICS} fabrics at most.")
    found = beside_each_other(texts, _counted(args, context))
    return Report(
        tuple(fact for two in found for fact in two.facts),
        {"pairs": [_two(two) for two in found]},
    )


def _counted(args: argparse.Namespace, context: Context) -> tuple[Fabric, ...]:
    """Her fabrics; none where no quilt was named and none was ever begun, for colours need none."""
    if args.quilt is None and not args.demo:
        with any_library(args, context) as library:
            if library is None or not library.entries():
                return ()
    with chosen_quilt(args, context) as quilt:
        return quilt.state.quilt.counted_fabrics


def _method(name: str, found: MethodMeets) -> Report:
    places = {letter: number for number, letter in enumerate(found.made.letters, start=1)}
    data = {
        "quilt": name,
        "places": len(places),
        "units": found.made.unit_count,
        "meet": [
            {
                "places": [places[letter] for letter in one.letters],
                "letters": list(one.letters),
                "units": list(one.units),
                "inches": round(one.length, 4),
            }
            for one in found.seams.seams
        ],
        "edges": [
            {
                "unit": one.unit,
                "side": one.side.value,
                "places": [places[letter] for letter in one.letters],
            }
            for one in found.seams.edges
        ],
        "one_way": [
            {"place": places[one.letter], "unit": one.unit, "degrees": list(one.degrees)}
            for one in found.seams.stands
        ],
    }
    return Report(found.words, data)


def _two(two: TwoFabrics) -> dict[str, object]:
    return {
        **_met(two.met),
        "difference": None if two.difference is None else round(two.difference, 2),
        "ratio": None if two.ratio is None else round(two.ratio, 2),
    }


def _met(met: Met) -> dict[str, object]:
    return {
        "fabrics": [met.one.letter, met.other.letter],
        "names": [met.one.name, met.other.name],
        "values": [met.one.word, met.other.word],
        "apart": None if met.apart is None else round(met.apart, 1),
        "reads": met.reads.value,
        "words": met.words,
    }

"""Sets told one fact a line, and as data: proposed, accepted, in hand, found again."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence

from msgspec.structs import replace

from sewalong.cli.frame.report import Report
from sewalong.fabrics.sets.proposing import Asked, Proposal
from sewalong.progress.record.events.event import label_of
from sewalong.progress.record.events.sets import numbered
from sewalong.progress.record.sets.laid import LaidSet
from sewalong.progress.record.squares_left import shape_of_sets
from sewalong.progress.record.state import State
from sewalong.progress.sets.finding import WhereASetIs, sets_with, where_is
from sewalong.progress.sets.in_hand import set_in_hand
from sewalong.progress.sets.set_words import NOT_KNOWN, called, in_hand_words
from sewalong.progress.sets.where_words import standing_words, where_facts
from sewalong.service.contrast_looks import facts_of, units_of
from sewalong.service.open_quilt import OpenQuilt


def proposal_report(quilt: OpenQuilt, asked: Asked, found: Proposal) -> Report:
    """What is said of a proposal, then its sets, then how to keep them."""
    names = called(quilt.state.quilt)
    laid = numbered(quilt.state, found.sets)
    lines = (
        *found.words,
        *(f"Set {number}: {named_squares(names, squares)}." for number, squares in laid),
        "To accept these sets: the same with --accept",
    )
    data = {
        "quilt": quilt.entry.name,
        "accepted": False,
        "rule": asked.rule.value,
        "seed": asked.seed,
        "weakest": _rounded(found.weakest),
        "bound": _rounded(found.bound),
        "doubles": found.doubles,
        "over": dict(found.over),
        "words": list(found.words),
        "sets": [{"number": number, "squares": list(squares)} for number, squares in laid],
    }
    return Report(lines, data)


def accepted_report(quilt: OpenQuilt) -> Report:
    """Every set she accepted by number, and how it stands."""
    state = quilt.state
    names = called(state.quilt)
    every = [one for _, one in sorted(state.sets.sets.items())]
    lines = [f"{len(every)} set{'' if len(every) == 1 else 's'} accepted."]
    for one in every:
        lines.append(f"Set {one.number}, {_stands(state, one)}: {named_squares(names, one.known)}.")
    return Report(
        tuple(lines),
        {
            "quilt": quilt.entry.name,
            "accepted": True,
            "next": list(state.sets.order(shape_of_sets(state.quilt).pile)),
            "sets": [_set_data(state, where_is(state, one)) for one in every],
        },
    )


def in_hand_report(quilt: OpenQuilt, stage: str) -> Report:
    """The set in hand at a stage, with the seams that will show least."""
    state = quilt.state
    found = set_in_hand(state, stage)
    if found is None:
        why = (
            f"No set is known to be in hand at {label_of(state, stage)}."
            if state.sets.sets
            else "No sets are accepted yet."
        )
        return Report((why,), {"quilt": quilt.entry.name, "stage": stage, "set": None})
    names = called(state.quilt)
    squares = found.laid.known
    places = (
        f"Place {place}: {names.get(letter, letter) or NOT_KNOWN}"
        for place, letter in enumerate(squares, start=1)
    )
    facts = facts_of(state.quilt, found.laid)
    weakest = [f"Weakest: {facts.met[0].words}"] if facts.met else []
    units = units_of(state.quilt, found.laid)
    shown = (
        f"Unit {number} shows {named_squares(names, unit)}."
        for number, unit in enumerate(units, start=1)
    )
    data = {
        "quilt": quilt.entry.name,
        "stage": stage,
        "set": found.number,
        "pieces": [[letter or None for letter in piece] for piece in found.pieces],
        "count": found.count,
        "counts": found.counts,
        "sure": found.sure,
        "squares": [letter or None for letter in squares],
        "units": [[letter or None for letter in unit] for unit in units],
    }
    return Report((in_hand_words(state, found), *places, *shown, *weakest, *facts.more), data)


def sets_with_report(quilt: OpenQuilt, letters: Sequence[str]) -> Report:
    """The sets that have all of these fabrics, and where their pieces lie."""
    state = quilt.state
    names = called(state.quilt)
    found = sets_with(state, letters)
    asked = " and ".join(names[letter] for letter in letters)
    lines = [] if found else [f"No set has {asked}."]
    for one in found:
        lines.append(f"Set {one.laid.number} has {asked}.")
        lines += where_facts(state, one)
        if one.together:
            lines.append("They are in one piece there.")
    data = {
        "quilt": quilt.entry.name,
        "fabrics": list(letters),
        "sets": [{**_set_data(state, one), "together": one.together} for one in found],
    }
    return Report(tuple(lines), data)


def _stands(state: State, one: LaidSet) -> str:
    return standing_words(state, one) or "not begun"


def _set_data(state: State, where: WhereASetIs) -> dict[str, object]:
    one = where.laid
    return {
        "number": one.number,
        "squares": [letter or None for letter in one.known],
        "state": _stands(state, replace(one, locked=False)),
        "locked": one.locked,
        "piles": dict(where.piles),
        "sure": where.sure,
    }


def named_squares(names: Mapping[str, str], squares: Iterable[str]) -> str:
    """ "A rust dots, D navy, one not known"."""
    return ", ".join(names.get(one, one) or NOT_KNOWN for one in squares)


def _rounded(apart: float | None) -> float | None:
    return None if apart is None else round(apart, 1)

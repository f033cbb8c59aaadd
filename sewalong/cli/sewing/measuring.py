"""`measure`: a measurement beside what it should be, what it means, and what is at risk."""

from __future__ import annotations

import argparse
from fractions import Fraction

from sewalong.cli.frame.context import Context
from sewalong.cli.frame.errors import CommandError
from sewalong.cli.frame.facts import sentences
from sewalong.cli.frame.length_arguments import read_text
from sewalong.cli.frame.report import Report
from sewalong.cli.frame.selection import chosen_quilt, pile_id
from sewalong.cli.sewing.at_risk import ALL_RIGHT, at_risk_data, at_risk_lines
from sewalong.cli.sewing.outcome import done, event_data, said_besides
from sewalong.lengths import Length
from sewalong.progress.measuring.causes.cause import Cause
from sewalong.progress.measuring.diagnosis import Diagnosis
from sewalong.progress.record.measurable import (
    ALLOWANCE,
    BORDER,
    ENDS,
    SIDES,
    Unmeasurable,
    measurable,
    read_piece,
)
from sewalong.progress.record.rows_sewn import rows_of
from sewalong.progress.record.state import State
from sewalong.progress.resuming.resume_facts import shortfall_in_words
from sewalong.service.machine import measure as measure_piece
from sewalong.service.machine import still_in_doubt

_TESTS = ("strip-test", "strip-tests", "strips")
_MIDDLE = ("middle-strip", "middle")
_LONG = ("centre", "top")
_NO_DOWN = (*_TESTS, *_MIDDLE, "row", "column", ALLOWANCE)
_MOST_ALIKE = 9999


def measure(args: argparse.Namespace, context: Context) -> Report:
    """`measure PIECE READING… [--look]`"""
    if args.alike is not None and not 1 <= args.alike <= _MOST_ALIKE:
        raise CommandError(f"--alike takes a whole number from 1 to {_MOST_ALIKE}.")
    with chosen_quilt(args, context) as quilt:
        state = quilt.state
        piece = _piece(args, state)
        by = (args.by or "").strip()
        took = measure_piece(
            quilt, piece, " ".join(args.readings), alike=args.alike, record=not args.look, by=by
        )
        lines = [fact for line in took.found.lines for fact in sentences(line)]
        data: dict[str, object] = {"quilt": quilt.entry.name, **_data(took.found)}
        recorded = done(took.outcome) if took.outcome else []
        if by:
            lines += [
                f"It tells of the seam of {by}.",
                "Yours is neither tested nor in doubt by it.",
            ]
        if args.look:
            lines.append("Nothing was recorded.")
        data["recorded"] = [event_data(one, quilt.state, quilt.record) for one in recorded]
        if took.risk is not None:
            lines += at_risk_lines(took.risk)
            data["at_risk"] = at_risk_data(took.risk)
        if took.may_clear is not None:
            lines.append(f"{still_in_doubt(took.may_clear)} {ALL_RIGHT}")
        if took.outcome is not None:
            short = shortfall_in_words(quilt.state, took.outcome.plan)
            also = said_besides(took.outcome, short)
            # Pieces at risk are told at length already.
            lines += sentences(also[1]) if also and also[0] != "at risk" else []
        return Report(tuple(lines), data)


def _piece(args: argparse.Namespace, state: State) -> str:
    """The piece meant, as `read_piece` reads it. Raises CommandError when there is none."""
    word = "-".join(args.piece.casefold().split())
    if word in _TESTS or word in _MIDDLE:
        piece = _strip_test(args, state, middle=word in _MIDDLE)
    elif word in ("row", "column"):
        rows = rows_of(state)
        whole = max(row.units for row in rows) if word == "row" else len(rows)
        piece = f"{word}:{whole if args.of is None else args.of}"
    elif word == BORDER:
        piece = f"{BORDER}:{args.of or 1}:{SIDES if args.down else ENDS}"
    else:
        if args.of is not None:
            raise CommandError("--of is for a row, a column, a border or a strip test.")
        pile = word if word in (*_LONG, ALLOWANCE) else pile_id(state.route, args.piece)
        way = ":down" if args.down else ":across" if word in _LONG else ""
        piece = f"{pile}{way}"
    if args.cut is not None and word not in (*_TESTS, *_MIDDLE):
        raise CommandError("--cut is how wide the strips of a strip-test were cut.")
    if args.down and word in _NO_DOWN:
        raise CommandError(
            "--down is for pieces, the centre and the top. A column is measured down."
        )
    try:
        return read_piece(state.quilt, state.target, piece).id
    except Unmeasurable as error:
        raise CommandError(str(error)) from error


def _strip_test(args: argparse.Namespace, state: State, *, middle: bool) -> str:
    cut = _usual_cut(state) if args.cut is None else _cut(args, state)
    return f"middle:{cut}" if middle else f"strips:{3 if args.of is None else args.of}:{cut}"


def _cut(args: argparse.Namespace, state: State) -> Length:
    return read_text(" ".join(args.cut), state.quilt.unit)


def _usual_cut(state: State) -> Length:
    """The width the quilt's own test is sewn with."""
    tests = (one.id for one in measurable(state.quilt, state.target) if one.is_test)
    return Fraction(next(tests).rpartition(":")[2])


def _data(found: Diagnosis) -> dict[str, object]:
    """Lengths as numbers of inches."""
    piece, spread = found.piece, found.spread
    first = found.causes[0] if found.causes else None
    return {
        "piece": piece.id,
        "words": piece.words,
        "expected": float(piece.expected),
        "readings": [float(reading) for reading in found.readings],
        "passed": found.passed,
        "outcomes": [one.value for one in found.outcomes],
        "do": found.decision.do.value,
        "cause": found.why.value,
        "short": float(found.short),
        "pieces_missing": first.pieces if first else 0,
        "per_seam": _number(first.off_a_seam) if first else None,
        "seam": _number(first.seam) if first else None,
        "causes": [_cause_data(cause) for cause in found.causes],
        "further": found.further.what.value if found.further else None,
        "smallest": float(spread.smallest),
        "largest": float(spread.largest),
        "trim_all_to": float(found.trim_to),
        "set_aside": [place + 1 for place in spread.set_aside],
        "row": _number(found.later_right.row) if found.later_right else None,
        "row_if_every_seam": _number(found.later_same.row) if found.later_same else None,
        "top": _top(found),
        "looks_like": found.looks_like or None,
        "choices": [choice.words for choice in found.choices],
    }


def _cause_data(cause: Cause) -> dict[str, object]:
    return {
        "cause": cause.why.value,
        "likely": round(cause.likely, 3),
        "readings": [place + 1 for place in cause.places],
        "seam": _number(cause.named_seam),
        "seam_from": _number(cause.least),
        "seam_to": _number(cause.most),
        "pieces": cause.pieces,
        "cut_short": _number(cause.cut_short),
        "like": cause.like or None,
    }


def _top(found: Diagnosis) -> dict[str, float] | None:
    if found.later_right is None:
        return None
    top = found.later_right.top
    return {"across": float(top.width), "down": float(top.length)}


def _number(length: Length | None) -> float | None:
    return None if length is None else float(length)

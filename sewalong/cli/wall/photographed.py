"""`wall --photo`: the units laid out, read from a photograph; what is not sure, and what mends it."""

from __future__ import annotations

import argparse

from sewalong.cli.frame.errors import CommandError
from sewalong.cli.frame.report import Report
from sewalong.cli.wall.floor_answers import answered
from sewalong.cli.wall.laid import by_typed_rules, laid_report
from sewalong.cli.wall.mended import mended_data, mended_lines
from sewalong.fabrics.floor.floor_words import floor_lines, question_lines
from sewalong.fabrics.floor.result import Candidate, FloorPlace, FloorReading
from sewalong.fabrics.photo.refused import PhotoRefused
from sewalong.service.open_quilt import OpenQuilt
from sewalong.service.wall.changes import with_laid
from sewalong.service.wall.floor_photographs import floor_asked, lay_as_read, read_on_the_floor
from sewalong.service.wall.mending import mended

OF_UNITS = "To answer: --said 2.3=7/2 for unit 2 of set 7, or --said 2.3=7/2/1 a quarter turned, or nothing."
OF_PATCHES = "To answer: --said “2.3/1=A” for patch 1 of row 2 place 3."


def photographed(quilt: OpenQuilt, args: argparse.Namespace) -> Report:
    """How sure it is, what is to be answered, the moves that mend the touches, and how it all lies."""
    quilt.refresh()
    state = quilt.state
    asked = floor_asked(state, args.photo, " ".join(args.corners or ()))
    try:
        reading = answered(state, read_on_the_floor(state, asked), args.said)
    except PhotoRefused as refused:
        raise CommandError(str(refused)) from refused
    names = {one.letter: one.name for one in state.quilt.fabrics}
    questions = question_lines(reading, names)
    how = (OF_UNITS if reading.known else OF_PATCHES,) if questions else ()
    act = by_typed_rules(state, lay_as_read(state, reading), args)
    after = with_laid(state, act)
    found = mended(after)
    first = (*floor_lines(reading), *questions, *how, *mended_lines(after, found))
    return laid_report(quilt, act, args, first, {**_data(reading), **mended_data(found)})


def _data(reading: FloorReading) -> dict[str, object]:
    return {
        "read": [_place_data(reading, place) for place in reading.places],
        "notes": list(reading.notes),
    }


def _place_data(reading: FloorReading, place: FloorPlace) -> dict[str, object]:
    return {
        "row": place.row,
        "place": place.column,
        "sure": place.sure.value,
        "said": place.said,
        "candidates": [_candidate_data(reading, one) for one in place.candidates],
        "patches": [patch.fabric for patch in place.patches],
    }


def _candidate_data(reading: FloorReading, one: Candidate) -> dict[str, object]:
    unit = None if one.unit is None else reading.units[one.unit]
    return {
        "set": unit.set if unit else None,
        "unit": unit.number if unit else None,
        "turns": one.turn,
    }

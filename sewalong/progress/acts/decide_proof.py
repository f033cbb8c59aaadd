"""Whether a measurement, going on without a proof, or a press direction may be recorded."""

from __future__ import annotations

from datetime import datetime

from sewalong.lengths import LONGEST
from sewalong.progress.acts import commands as c
from sewalong.progress.acts.commands import Refused
from sewalong.progress.acts.validation import a_stage, words
from sewalong.progress.measuring.proof import NOT_STALE, proof
from sewalong.progress.measuring.verdict import passes
from sewalong.progress.record import events as e
from sewalong.progress.record.measurable import Unmeasurable, read_piece
from sewalong.progress.record.state import State

MOST_READINGS = 50


def measure(state: State, command: c.Measure, at: datetime, session: int) -> e.Checked:
    """A measurement beside what it should come to; raises Refused for what cannot be measured."""
    try:
        piece = read_piece(state.quilt, state.target, command.piece)
    except Unmeasurable as error:
        raise Refused(str(error)) from error
    if not 1 <= len(command.readings) <= MOST_READINGS:
        raise Refused(f"Give from 1 to {MOST_READINGS} readings of the tape.")
    for reading in command.readings:
        if not 0 < reading <= LONGEST or reading.denominator > 10**9:
            raise Refused("A reading is a length above zero. Measure again.")
    return e.Checked(
        at=at,
        session=session,
        piece=piece.id,
        readings=tuple(str(reading) for reading in command.readings),
        expected=str(piece.expected),
        passed=passes(piece, command.readings),
    )


def go_on(state: State, command: c.GoOn, at: datetime, session: int) -> e.WentOn:
    """Going on as it is; the reason it is worth a word is kept with it."""
    stage = a_stage(state, command.stage)
    why = proof(state, at).why or NOT_STALE
    return e.WentOn(at=at, session=session, stage=stage.id, why=why)


def note_press(state: State, command: c.NotePress, at: datetime, session: int) -> e.PressNoted:
    """Which way a stage's seams are pressed; raises Refused without words."""
    stage = a_stage(state, command.stage)
    direction = words(command.direction, "the direction, such as “towards the dark cloth”")
    return e.PressNoted(at=at, session=session, stage=stage.id, direction=direction)

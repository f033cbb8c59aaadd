"""The lines a stage works along, on the piece they are on: what is marked, and where it is cut."""

from __future__ import annotations

from msgspec import Struct

from sewalong.piecing import operation_words as words
from sewalong.piecing.cloth import Flat, Layered, Piece, Segment
from sewalong.piecing.definition import Definition
from sewalong.piecing.derive import Derivation
from sewalong.piecing.faults import MethodFault, SizeRefused
from sewalong.piecing.flow import MOST_WORK
from sewalong.piecing.geometry import Line
from sewalong.piecing.method import Station
from sewalong.piecing.method_tables import StageDefinition
from sewalong.piecing.operations import across_corner, diagonal, through

_DIAGONALS = {"sew both sides of diagonal": False, "sew both sides of other diagonal": True}
_ACROSS = "sew across corners"
_ON_CORNER = "lay on corner"


class StageLines(Struct, frozen=True):
    """A piece, and on it the lines that are marked and those it is cut along, in its inches."""

    piece: Piece
    marks: tuple[Segment, ...] = ()
    cuts: tuple[Segment, ...] = ()


def stage_lines(written: Definition, derivation: Derivation, stage_id: str) -> StageLines | None:
    """The lines of a stage of the method.

    Where it cuts, they are on what is cut. Where its seams go by a marked line, or the pieces that
    it lays or marks at the table are sewn so next, they are on what it makes. None where there are
    no lines, or its pieces cannot be had.
    """
    stage = next(one for one in written.stages if one.id == stage_id)
    cut = _cut_into(stage, derivation)
    if cut is not None:
        piece, cuts = cut
        return StageLines(piece, cuts=cuts)
    made = derivation.piles[stage.makes].pieces[0]
    marks = _along(_marked(written, stage), made)
    return StageLines(made, marks) if marks else None


def _cut_into(
    stage: StageDefinition, derivation: Derivation
) -> tuple[Piece, tuple[Segment, ...]] | None:
    taken: list[Piece] = []
    for number, pile in enumerate(words.taken(stage.operations)):
        there = derivation.piles[pile].pieces
        taken.append(there[number % len(there)])
    try:
        table = words.run(stage.operations, taken, derivation.seam, MOST_WORK)
    except (MethodFault, SizeRefused, ValueError, ArithmeticError):
        # Pieces that never met in a batch need not go together.
        return None
    return table.cut_into


def _marked(written: Definition, stage: StageDefinition) -> set[str]:
    """By which seams the lines go that are on what a stage makes."""
    own = {word for word in stage.operations if word in _DIAGONALS}
    if own or stage.station is not Station.TABLE:
        return own
    found: set[str] = set()
    for taker in _takers(written, stage.makes):
        found |= {word for word in taker.operations if word in _DIAGONALS or word == _ACROSS}
        if any(word.startswith(_ON_CORNER) for word in taker.operations) and any(
            _ACROSS in after.operations for after in _takers(written, taker.makes)
        ):
            found.add("sew both sides of diagonal")
    return found


def _takers(written: Definition, pile: str) -> list[StageDefinition]:
    return [stage for stage in written.stages if pile in words.taken(stage.operations)]


def _along(seams: set[str], piece: Piece) -> tuple[Segment, ...]:
    base = piece.patches if isinstance(piece, Flat) else piece.base
    lines: list[Line] = [diagonal(base, _DIAGONALS[word]) for word in sorted(seams - {_ACROSS})]
    if _ACROSS in seams and isinstance(piece, Layered):
        lines += [across_corner(piece, top) for top in piece.tops]
    return through(base, lines)

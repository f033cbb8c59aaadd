"""Runs a method's stages from piles of cut cloth to the unit, whole batch by whole batch.

Pieces are drawn from behind: a unit is asked for, its stage draws what it takes, and so
on back to the cut pieces. What a stage makes beyond what was asked waits in its pile for
the next draw, as on a real table, so both halves of one cut meet in the next stage.
"""

from __future__ import annotations

from collections import Counter, deque
from collections.abc import Mapping
from fractions import Fraction

from msgspec import Struct, field

from sewalong.piecing import operation_words as steps
from sewalong.piecing.cloth import UPRIGHT, Flat, Piece, rectangle
from sewalong.piecing.definition import Definition
from sewalong.piecing.faults import MethodFault, SizeRefused
from sewalong.piecing.method import FINAL_PILE
from sewalong.piecing.method_tables import StageDefinition

STRIP_GRAIN = (1.0, 0.0)
"""Strips are cut across the cloth, so the lengthwise threads run across the strip."""

_LETTERS = "ABCDEFGHIJKLMNOPQRSTUVWXYZ"
_MOST_UNITS = 600
MOST_PIECES = 20_000
"""Pieces taken up for one batch: strips as long and narrow as can be give some 2,000."""
MOST_WORK = 5_000
"""Patches moved, sewn or cut for one batch, one by one. The program's own methods come to
88 at most, and so many are done in a twentieth of a second."""


class StageRun(Struct, frozen=True):
    """One count of a stage: pieces taken by pile, pieces made, inches sewn and cut,
    and the longest cut through a whole piece."""

    takes: Mapping[str, int]
    makes: int
    sewn: float
    cut: float
    longest_cut: float


PieceAt = tuple[str, int]
"""A piece of one batch: its pile, and its number in order of making there, from 0 on."""


class Drawn(Struct, frozen=True):
    """One count of a stage in a batch: which pieces it took, in the order it took them, which came
    of them, and the fabric letters in each of these."""

    stage: str
    takes: tuple[PieceAt, ...]
    makes: tuple[PieceAt, ...]
    letters: tuple[tuple[str, ...], ...]


class Batch(Struct):
    """The smallest lot of units that leaves nothing over in between.

    `seen` has every different piece that lay in each pile, in order of making;
    `letters` says which start pile each fabric letter was cut for. `drawn` has every count in
    order, but for those of strips, whose pieces are one like the other.
    """

    units: list[Flat] = field(default_factory=list)
    seen: dict[str, list[Piece]] = field(default_factory=dict)
    runs: dict[str, StageRun] = field(default_factory=dict)
    letters: dict[str, str] = field(default_factory=dict)
    drawn: list[Drawn] = field(default_factory=list)

    def different_units(self) -> tuple[Flat, ...]:
        """The units without repeats, in order of making."""
        # Strips give the very same piece many times, so sort those out before comparing.
        once = {id(unit): unit for unit in self.units}
        return tuple(dict.fromkeys(once.values()))


class Draw:
    """The piles while a batch is made."""

    def __init__(
        self, written: Definition, sizes: Mapping[str, tuple[float, float]], seam: Fraction
    ) -> None:
        self.written = written
        self.sizes = sizes
        self.seam = seam
        self.piles: dict[str, deque[Piece]] = {}
        self.makers = {stage.makes: stage for stage in written.stages}
        self.batch = Batch()
        self.shared: dict[str, Flat] = {}
        # A stage run on the very same pieces gives the same result: strips give many.
        # What was taken is held on to as well, or another piece might come to its id.
        self.memo: dict[tuple[str, tuple[int, ...]], tuple[list[Piece], list[Piece]]] = {}
        self.places: dict[int, PieceAt] = {}
        self.made: Counter[str] = Counter()
        self.pulled = 0
        self.work = 0
        self.at: StageDefinition | None = None
        """The stage last begun, so that a refusal of sizes can be told where it arose."""
        fixed = {start.letter for start in written.starts if start.letter}
        self.free = deque(letter for letter in _LETTERS if letter not in fixed)

    def pull(self, pile: str) -> Piece:
        self.pulled += 1
        if self.pulled > MOST_PIECES:
            raise self.fault(f"more than {MOST_PIECES:,} pieces go into one batch")
        waiting = self.piles.setdefault(pile, deque())
        if not waiting:
            waiting.extend([self.cut(pile)] if pile in self.sizes else self.make(pile))
        return waiting.popleft()

    def cut(self, pile: str) -> Flat:
        if pile in self.shared:
            return self.shared[pile]
        start = self.written.start(pile)
        assert start is not None
        if start.letter is None and not self.free:
            raise self.fault("more than 26 fabrics meet in one batch; give a pile a letter")
        letter = start.letter or self.free.popleft()
        self.batch.letters[letter] = pile
        grain = STRIP_GRAIN if start.strip else UPRIGHT
        piece = rectangle(*self.sizes[pile], letter, grain)
        if start.letter:
            self.shared[pile] = piece
        self.batch.seen.setdefault(pile, []).append(piece)
        self.number(pile, piece)
        return piece

    def make(self, pile: str) -> list[Piece]:
        stage = self.makers[pile]
        taken = [self.pull(source) for source in steps.taken(stage.operations)]
        key = (stage.id, tuple(id(piece) for piece in taken))
        if key not in self.memo:
            table = self.run(stage, taken)
            self.memo[key] = taken, table
            takes = tuple(self.places[id(piece)] for piece in taken)
            makes = tuple(self.number(stage.makes, piece) for piece in table)
            letters = tuple(_letters_in(piece) for piece in table)
            self.batch.drawn.append(Drawn(stage.id, takes, makes, letters))
        return self.memo[key][1]

    def number(self, pile: str, piece: Piece) -> PieceAt:
        """Number a piece that comes to a pile. It is held on to, so that its id stays its own."""
        place = (pile, self.made[pile])
        self.made[pile] += 1
        self.places[id(piece)] = place
        return place

    def run(self, stage: StageDefinition, taken: list[Piece]) -> list[Piece]:
        self.at = stage
        try:
            table = steps.run(stage.operations, taken, self.seam, MOST_WORK - self.work)
        except MethodFault as fault:
            raise self.fault(str(fault), stage) from fault
        except SizeRefused:
            raise
        except (ValueError, ArithmeticError) as error:
            # Geometry of what is left of a piece when nothing is, or only a line.
            raise self.fault("nothing is left of a piece", stage) from error
        self.work += table.work
        takes = Counter(steps.taken(stage.operations))
        run = StageRun(dict(takes), len(table.pieces), table.sewn, table.cut, table.longest_cut)
        known = self.batch.runs.setdefault(stage.id, run)
        if known.makes != run.makes:
            raise self.fault(f"makes {known.makes} pieces once and {run.makes} later", stage)
        seen = self.batch.seen.setdefault(stage.makes, [])
        seen.extend(piece for piece in dict.fromkeys(table.pieces) if piece not in seen)
        return table.pieces

    def fault(self, why: str, stage: StageDefinition | None = None) -> MethodFault:
        """What to raise because of a stage, or of the method as a whole."""
        if stage is None:
            return MethodFault(f"{self.written.file}: {why}.", f"{why}.")
        path = ("stages", self.written.stages.index(stage), "operations")
        return MethodFault(f"{self.written.file}, stage '{stage.id}': {why}.", f"{why}.", path)


def _letters_in(piece: Piece) -> tuple[str, ...]:
    return tuple(dict.fromkeys(patch.letter for patch in piece.patches))


def make_batch(
    written: Definition,
    sizes: Mapping[str, tuple[float, float]],
    seam: Fraction,
    *,
    whole: bool,
) -> Batch:
    """Makes units from start pieces of the given (width, height) inches.

    With `whole`, as many as leave nothing over in between (strips of odd counts stop at
    a cap); otherwise one unit, which already takes every stage once. Raises MethodFault
    if operations don't fit together, SizeRefused if sizes don't.
    """
    draw = Draw(written, sizes, seam)
    while True:
        unit = draw.pull(FINAL_PILE)
        if not isinstance(unit, Flat):
            raise draw.fault("the unit is not opened out at the end", written.stages[-1])
        draw.batch.units.append(unit)
        over = any(draw.piles.values())
        if not whole or not over or len(draw.batch.units) >= _MOST_UNITS:
            return draw.batch

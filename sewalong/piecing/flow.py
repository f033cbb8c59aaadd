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
from sewalong.piecing.definition import FINAL_PILE, Definition, StageDefinition
from sewalong.piecing.faults import MethodFault

STRIP_GRAIN = (1.0, 0.0)
"""Strips are cut across the cloth, so the lengthwise threads run across the strip."""

_LETTERS = "ABCDEFGHIJKLMNOPQRSTUVWXYZ"
_MOST_UNITS = 600


class StageRun(Struct, frozen=True):
    """One count of a stage: pieces taken by pile, pieces made, inches sewn and cut,
    and the longest cut through a whole piece."""

    takes: Mapping[str, int]
    makes: int
    sewn: float
    cut: float
    longest_cut: float


class Batch(Struct):
    """The smallest lot of units that leaves nothing over in between.

    `seen` has every different piece that lay in each pile, in order of making;
    `letters` says which start pile each fabric letter was cut for.
    """

    units: list[Flat] = field(default_factory=list)
    seen: dict[str, list[Piece]] = field(default_factory=dict)
    runs: dict[str, StageRun] = field(default_factory=dict)
    letters: dict[str, str] = field(default_factory=dict)

    def different_units(self) -> tuple[Flat, ...]:
        """The units without repeats, in order of making."""
        # Strips give the very same piece many times, so sort those out before comparing.
        once = {id(unit): unit for unit in self.units}
        return tuple(dict.fromkeys(once.values()))


def check_flow(written: Definition) -> None:
    """Raises MethodFault unless every stage takes what is cut or made before it.

    Also refuses a pile made twice, a cut pile that a stage makes, and any pile that
    nothing takes (save the unit).
    """
    ready = {start.pile for start in written.starts}
    used: set[str] = set()
    for stage in written.stages:
        place = f"{written.file}, stage {stage.id!r}"
        takes = steps.taken(stage.operations)
        if not takes:
            raise MethodFault(f"{place}: the stage takes nothing; begin with `take PILE`.")
        for pile in takes:
            if pile not in ready:
                raise MethodFault(f"{place}: takes {pile!r}, which nothing before it makes.")
        if stage.makes in ready:
            raise MethodFault(f"{place}: the pile {stage.makes!r} is cut or made already.")
        used.update(takes)
        ready.add(stage.makes)
    idle = [pile.id for pile in written.piles if pile.id not in used | {FINAL_PILE}]
    if idle:
        raise MethodFault(f"{written.file}: nothing takes from the pile {idle[0]!r}.")


class _Draw:
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
        self.memo: dict[tuple[str, tuple[int, ...]], list[Piece]] = {}
        fixed = {start.letter for start in written.starts if start.letter}
        self.free = deque(letter for letter in _LETTERS if letter not in fixed)

    def pull(self, pile: str) -> Piece:
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
            raise MethodFault(f"{self.written.file}: more than 26 fabrics meet in one batch.")
        letter = start.letter or self.free.popleft()
        self.batch.letters[letter] = pile
        grain = STRIP_GRAIN if start.strip else UPRIGHT
        piece = rectangle(*self.sizes[pile], letter, grain)
        if start.letter:
            self.shared[pile] = piece
        self.batch.seen.setdefault(pile, []).append(piece)
        return piece

    def make(self, pile: str) -> list[Piece]:
        stage = self.makers[pile]
        taken = [self.pull(source) for source in steps.taken(stage.operations)]
        key = (stage.id, tuple(id(piece) for piece in taken))
        if key not in self.memo:
            self.memo[key] = self.run(stage, taken)
        return self.memo[key]

    def run(self, stage: StageDefinition, taken: list[Piece]) -> list[Piece]:
        place = f"{self.written.file}, stage {stage.id!r}"
        try:
            table = steps.run(stage.operations, taken, self.seam)
        except MethodFault as fault:
            raise MethodFault(f"{place}: {fault}.") from fault
        takes = Counter(steps.taken(stage.operations))
        run = StageRun(dict(takes), len(table.pieces), table.sewn, table.cut, table.longest_cut)
        known = self.batch.runs.setdefault(stage.id, run)
        if known.makes != run.makes:
            raise MethodFault(f"{place}: makes {known.makes} pieces once and {run.makes} later.")
        seen = self.batch.seen.setdefault(stage.makes, [])
        seen.extend(piece for piece in dict.fromkeys(table.pieces) if piece not in seen)
        return table.pieces


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
    draw = _Draw(written, sizes, seam)
    while True:
        unit = draw.pull(FINAL_PILE)
        if not isinstance(unit, Flat):
            raise MethodFault(f"{written.file}: the unit is not opened out at the end.")
        draw.batch.units.append(unit)
        over = any(draw.piles.values())
        if not whole or not over or len(draw.batch.units) >= _MOST_UNITS:
            return draw.batch

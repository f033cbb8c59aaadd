"""A method: how units are made, as a list of stages between piles.

A method is data (one TOML file in `methods/`). What each stage takes and makes
is derived by the engine from the stage's operations; see `catalogue`.
"""

# Annotations are not postponed here: msgspec would compile each of them when it first reads.

from enum import StrEnum
from fractions import Fraction

from msgspec import Struct

FINAL_PILE = "unit"
"""The id of the last pile of every method."""


class Station(StrEnum):
    """Where the hands are during a stage."""

    TABLE = "table"
    MACHINE = "machine"
    IRON = "iron"
    MAT = "cutting mat"
    WALL = "wall"


class Hazard(StrEnum):
    """What can hurt at a stage. The words of the caution live in `progress.cautions`."""

    IRON = "iron"
    CUTTER = "cutter"
    CROSS_CUT = "cross cut"
    """Two cuts across each other through several layers: turn the mat, don't reach across."""
    NEEDLE = "needle"
    PINS = "pins"


class Either(StrEnum):
    """Where two ways of doing a stage are both right. The words, with what each costs, live in
    `progress.joining.either_way`."""

    CORNERS = "corners"
    """Sewing all round: pivot at the corners, or sew off the edge."""
    CROSSINGS = "crossings"
    """Where seams meet: their allowances opposed, or both the same way."""


class Noun(Struct, frozen=True, array_like=True, forbid_unknown_fields=True):
    """One thing and several of it, written as a pair: ["four-patch", "four-patches"]."""

    one: str
    many: str

    def of(self, n: int) -> str:
        """The word alone, for `n` of them."""
        return self.one if n == 1 else self.many

    def count(self, n: int) -> str:
        """The number and the word: "1 stack", "21 stacks"."""
        return f"{n} {self.of(n)}"


class Pile(Struct, frozen=True):
    """Pieces of one kind waiting for their next stage."""

    id: str
    noun: Noun


class Pieces(Struct, frozen=True):
    """So many pieces of one pile; `count` is at least 1."""

    pile: str
    count: int


class Stage(Struct, frozen=True):
    """One step of a method.

    One *count* of the stage uses `takes` and gives `makes`; `counts` is the noun
    the person counts in ("stack" at the cutting mat, although four units come of it).
    `minutes` is a first guess of the work in one count, common practice, used only
    to weigh progress until the record knows better.
    """

    id: str
    label: str
    station: Station
    takes: tuple[Pieces, ...]
    makes: Pieces
    counts: Noun
    hazards: tuple[Hazard, ...]
    do: str
    check: str
    minutes: float
    either: tuple[Either, ...] = ()


class MethodKey(Struct, frozen=True):
    """What the counts of a method follow from.

    Only those of methods from strips depend on more than the method's `id`: `start` is the
    strip's cut width (2 1/2 in if None), `strip_length` its usable length, `seam` the seam
    allowance, all in inches. `text` is the method file that came with the quilt, whole; without
    it the method is the program's own of this `id`.
    """

    id: str
    start: Fraction | None = None
    strip_length: Fraction = Fraction(40)
    seam: Fraction = Fraction(1, 4)
    text: str | None = None


class Method(Struct, frozen=True):
    """How units are made: from the piles in `starts`, through `stages`, to the pile `unit`.

    Stage ids and pile ids are unique within a method and never change once released,
    because the record of every quilt names them. Stages stand in working order: a
    stage takes only start piles and what earlier stages make.
    """

    id: str
    name: str
    about: str
    piles: tuple[Pile, ...]
    starts: tuple[str, ...]
    unit: str
    stages: tuple[Stage, ...]

    def pile(self, id: str) -> Pile:
        """The pile called `id`; raises KeyError if the method has none."""
        for pile in self.piles:
            if pile.id == id:
                return pile
        raise KeyError(id)

    def stage(self, id: str) -> Stage:
        """The stage called `id`; raises KeyError if the method has none."""
        for stage in self.stages:
            if stage.id == id:
                return stage
        raise KeyError(id)

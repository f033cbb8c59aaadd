"""400 wrong pieces: sewn, cut, mixed up or pulled on paper, then read off a tape.

Sizes come from plane geometry written here, not from the program: what is asked of it is only
which piece it is to diagnose and, for trimmed units, the size it says to trim to. Every seam is
off by up to a 64th of an inch besides, and so is every cut: a careful hand, from memory.

Eight kinds of error, fifty of each; the methods take turns, then small and large squares; the rest
is drawn at random. A draw that the tape cannot tell from a right piece is drawn again. What is
read is what a person would have: of a seam one to five readings of units or rows; of a miscounted
row its neighbours too, of a top three places; of a mis-cut piece those made beside it; of
stretched cloth both ways.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from fractions import Fraction
from math import sqrt
from random import Random
from typing import NamedTuple

from sewalong.progress.measuring.verdict import passes
from sewalong.progress.record.measurable import decided, read_piece
from sewalong.quilt.quilt import Quilt
from tests.progress.measuring.measuring_quilts import of_size

ROOT = sqrt(2)
QUARTER = 0.25
HAND = 1 / 64

WIDE_FEET = (5 / 16, 3 / 8, 1 / 2, 7 / 25.4, 10 / 25.4)
NARROW_FEET = (1 / 8, 3 / 16, 5 / 25.4)
LEAST = 1 / 2
"""Inches a unit finishes at, the lesser way: nobody sews smaller ones."""
SMALL, LARGE = ("3/2", "2", "5/2"), ("5", "10")


class Unit(NamedTuple):
    """How wide what is measured of a method is, by the cut size and the seam, both ways, and how
    many seams and cuts that takes."""

    measured: str
    across: Callable[[float, float], float]
    down: Callable[[float, float], float]
    seams: int
    cuts: int


UNITS = {
    "four-patch": Unit("unit", lambda c, s: 2 * c - 2 * s, lambda c, s: 2 * c - 2 * s, 1, 2),
    "nine-patch": Unit("unit", lambda c, s: 3 * c - 4 * s, lambda c, s: 3 * c - 4 * s, 2, 3),
    "stacked-four-patch": Unit(
        "unit", lambda c, s: (2 * c - 4 * s) / ROOT, lambda c, s: (2 * c - 4 * s) / ROOT, 2, 2
    ),
    "half-square-two": Unit(
        "open-unit", lambda c, s: c - ROOT * s, lambda c, s: c - ROOT * s, 1, 1
    ),
    "hourglass": Unit(
        "open-unit", lambda c, s: c - 2 * ROOT * s, lambda c, s: c - 2 * ROOT * s, 2, 1
    ),
    "flying-geese-four": Unit(
        "open-unit", lambda c, s: c - 2 * ROOT * s, lambda c, s: c / 2 + s * (1 - ROOT), 2, 1
    ),
}

# Kinds that lie side by side and can be taken for one another: what is meant, what it is, and how
# wide that is. A turned piece lies the other way.
MIXED_UP: dict[str, list[tuple[str, str, Callable[[float], float]]]] = {
    "four-patch": [
        ("two-patch", "two-patch lying the other way", lambda c: c),
        ("unit", "square", lambda c: c),
        ("square", "unit", lambda c: 2 * c - 0.5),
    ],
    "nine-patch": [
        ("three", "square", lambda c: c),
        ("unit", "square", lambda c: c),
        ("unit", "row of three lying the other way", lambda c: c),
    ],
    "stacked-four-patch": [
        ("unit", "four-patch", lambda c: 2 * c - 0.5),
        ("unit", "square", lambda c: c),
        ("four-patch", "unit", lambda c: (2 * c - 1) / ROOT),
    ],
    "half-square-two": [
        ("open-unit", "square", lambda c: c),
        ("square", "untrimmed unit", lambda c: c - ROOT / 4),
    ],
    "hourglass": [
        ("open-unit", "square", lambda c: c),
        ("open-unit", "half-square", lambda c: c - ROOT / 4),
        ("square", "half-square", lambda c: c - ROOT / 4),
    ],
    "flying-geese-four": [
        ("open-unit", "untrimmed unit lying the other way", lambda c: c / 2 + (1 - ROOT) / 4),
        ("large-square", "small square", lambda c: c / 2 + 0.25 * (1 - ROOT) ),
        ("open-unit", "large square", lambda c: c),
    ],
}  # fmt: skip


class Wrong(NamedTuple):
    """One wrong piece: `truth` is the cause with its number, readings are inches."""

    kind: str
    method: str
    size: str
    quilt: Quilt
    piece: str
    readings: tuple[Fraction, ...]
    other_way: tuple[Fraction, ...]
    truth: float


KINDS = ("wide foot", "narrow foot", "drift", "too few", "too many", "mis-cut", "swapped",
         "stretched")  # fmt: skip


def wrong_pieces(seed: int, of_each: int = 50) -> Iterator[Wrong]:
    """`of_each` of every kind."""
    draw = Random(seed)
    for kind in KINDS:
        for i in range(of_each):
            method = list(UNITS)[i % len(UNITS)]
            sizes = SMALL if i // len(UNITS) % 2 == 0 else LARGE
            yield _one(draw, kind, method, sizes)


def _one(draw: Random, kind: str, method: str, sizes: tuple[str, ...]) -> Wrong:
    while True:
        size = draw.choice(sizes)
        unit, cut = UNITS[method], float(Fraction(size))
        if min(unit.across(cut, QUARTER), unit.down(cut, QUARTER)) < 2 * QUARTER + LEAST:
            continue
        quilt = of_size(method, size, draw.randint(4, 12), draw.randint(4, 12))
        made = _MAKE[kind](draw, quilt, method, cut)
        if made is None:
            continue
        piece, readings, other_way, truth = made
        measured = read_piece(quilt, quilt.target, piece)
        if not passes(measured, readings) and _shows(measured.expected, readings, truth, kind):
            return Wrong(kind, method, size, quilt, piece, readings, other_way, truth)


def _shows(expected: Fraction, readings: tuple[Fraction, ...], truth: float, kind: str) -> bool:
    """Whether the readings are off the way the error is, and by more than a tape is read to."""
    off = max((reading - expected for reading in readings), key=abs)
    over = (kind in ("narrow foot", "too many", "stretched")
            or (kind == "drift" and truth < QUARTER)
            or (kind == "mis-cut" and truth > 0))  # fmt: skip
    mean = sum(readings, Fraction(0)) / len(readings) - expected
    least = Fraction(1, 32) if kind in ("wide foot", "narrow foot", "drift", "stretched") else 0
    return kind == "swapped" or ((off > 0) == over and (mean > 0) == over and abs(mean) >= least)


Made = tuple[str, tuple[Fraction, ...], tuple[Fraction, ...], float] | None


def tape(length: float) -> Fraction:
    """Read to a sixteenth of an inch up to a yard, to an eighth beyond."""
    marks = 16 if length <= 36 else 8
    return Fraction(round(length * marks), marks)


def _hand(draw: Random, allowances: int, cuts: int) -> float:
    return sum(draw.uniform(-HAND, HAND) for _ in range(allowances + cuts))


def _unit(draw: Random, method: str, cut: float, seam: float, *, down: bool = False) -> float:
    unit = UNITS[method]
    size = (unit.down if down else unit.across)(cut, seam)
    return size + _hand(draw, 2 * unit.seams, unit.cuts)


def _row(draw: Random, quilt: Quilt, method: str, cut: float, seam: float, n: int) -> float:
    """A row of n units; trimmed ones are of the size the quilt says."""
    unit = UNITS[method]
    if unit.measured == "unit":
        units = sum(_unit(draw, method, cut, seam) for _ in range(n))
    else:
        units = sum(float(decided(quilt).width) + _hand(draw, 0, 1) for _ in range(n))
    return units - 2 * seam * (n - 1) + _hand(draw, 2 * (n - 1), 0)


def _seam(draw: Random, quilt: Quilt, method: str, cut: float, seam: float) -> Made:
    """Every seam of units or of rows is this one."""
    unit = UNITS[method]
    if min(unit.across(cut, seam), unit.down(cut, seam)) < 2 * seam + 0.25:
        return None
    if draw.random() < 0.6:
        n = draw.randint(1, 5)
        readings = tuple(tape(_unit(draw, method, cut, seam)) for _ in range(n))
        return unit.measured, readings, (), seam
    many, n = quilt.target.columns, draw.randint(1, 3)
    readings = tuple(tape(_row(draw, quilt, method, cut, seam, many)) for _ in range(n))
    return "row", readings, (), seam


def _wide(draw: Random, quilt: Quilt, method: str, cut: float) -> Made:
    return _seam(draw, quilt, method, cut, draw.choice(WIDE_FEET))


def _narrow(draw: Random, quilt: Quilt, method: str, cut: float) -> Made:
    return _seam(draw, quilt, method, cut, draw.choice(NARROW_FEET))


def _drift(draw: Random, quilt: Quilt, method: str, cut: float) -> Made:
    seam = QUARTER + draw.choice((-1, 1)) * draw.uniform(0.02, 0.1)
    if min(abs(seam - foot) for foot in (*WIDE_FEET, *NARROW_FEET)) < 0.01:
        return None
    return _seam(draw, quilt, method, cut, seam)


def _miscount(draw: Random, quilt: Quilt, method: str, cut: float, more: int) -> Made:
    """One of several rows has a unit too many or too few, or the whole top a column."""
    many = quilt.target.columns
    if draw.random() < 0.25:
        centre = _row(draw, quilt, method, cut, QUARTER, many + more)
        places = tuple(tape(centre + _hand(draw, 1, 0)) for _ in range(3))
        return "centre:across", places, (), more
    rows = [many] * draw.randint(1, 3)
    rows.insert(draw.randint(0, len(rows)), many + more)
    return "row", tuple(tape(_row(draw, quilt, method, cut, QUARTER, n)) for n in rows), (), more


def _too_few(draw: Random, quilt: Quilt, method: str, cut: float) -> Made:
    return _miscount(draw, quilt, method, cut, -1)


def _too_many(draw: Random, quilt: Quilt, method: str, cut: float) -> Made:
    return _miscount(draw, quilt, method, cut, 1)


def _mis_cut(draw: Random, quilt: Quilt, method: str, cut: float) -> Made:
    """One piece of one of several units is misread on the ruler."""
    off = draw.choice((-1, 1)) * draw.choice((1 / 8, 3 / 16, 1 / 4, 3 / 8, 1 / 2))
    if abs(off) > cut / 4:
        return None
    units = [_unit(draw, method, cut, QUARTER) for _ in range(draw.randint(3, 5))]
    share = 1 / ROOT if method == "stacked-four-patch" else 1
    units[draw.randrange(len(units))] += off * share
    return UNITS[method].measured, tuple(map(tape, units)), (), off * share


def _swapped(draw: Random, quilt: Quilt, method: str, cut: float) -> Made:
    """One piece, or one of several, is of another kind."""
    meant, is_one, width = draw.choice(MIXED_UP[method])
    expected = float(read_piece(quilt, quilt.target, meant).expected)
    others = draw.choice((0, 0, 2, 3))
    readings = [tape(expected + _hand(draw, 2, 2)) for _ in range(others)]
    other = width(cut)
    if is_one == "small square":
        other = next(float(s.size) for s in quilt.starts if s.pile == "small-square")
    if abs(other - expected) < 1 / 8:
        return None
    readings.insert(draw.randint(0, others), tape(other + _hand(draw, 2, 2)))
    return meant, tuple(readings), (), other


def _stretched(draw: Random, quilt: Quilt, method: str, cut: float) -> Made:
    """Pulled one way, and drawn in a little the other way, or not at all."""
    pull = draw.uniform(0.01, 0.035)
    draws_in = 1 - pull * draw.uniform(0, 0.3)
    n, unit = draw.randint(1, 3), UNITS[method]
    if draw.random() < 0.7:
        across = tuple(tape(_unit(draw, method, cut, QUARTER) * (1 + pull)) for _ in range(n))
        down = tuple(
            tape(_unit(draw, method, cut, QUARTER, down=True) * draws_in) for _ in range(n)
        )
        return unit.measured, across, down, pull
    whole = float(read_piece(quilt, quilt.target, "centre:across").expected) * (1 + pull)
    high = float(read_piece(quilt, quilt.target, "centre:down").expected) * draws_in
    return (
        "centre:across",
        tuple(tape(whole + _hand(draw, 4, 4)) for _ in range(n)),
        tuple(tape(high + _hand(draw, 4, 4)) for _ in range(n)),
        pull,
    )


_MAKE: dict[str, Callable[[Random, Quilt, str, float], Made]] = {
    "wide foot": _wide,
    "narrow foot": _narrow,
    "drift": _drift,
    "too few": _too_few,
    "too many": _too_many,
    "mis-cut": _mis_cut,
    "swapped": _swapped,
    "stretched": _stretched,
}

"""What can be measured, what it should come to, and how much of it the seams decide."""

from __future__ import annotations

import re
from fractions import Fraction
from functools import lru_cache

from msgspec import Struct

from sewalong.lengths import LONGEST, Length, show
from sewalong.piecing.cloth import Piece
from sewalong.piecing.derive import Derivation
from sewalong.piecing.faults import MethodFault, SizeRefused
from sewalong.piecing.start_sizes import run_sizes
from sewalong.progress.record.limits import quoted
from sewalong.quilt.as_fraction import ROOT_TWO, as_fraction
from sewalong.quilt.cloth.row import row_length
from sewalong.quilt.cloth.to_cut import to_cut
from sewalong.quilt.derived import derived
from sewalong.quilt.layouts.centre import centre, in_a_line, sashes_in_a_line
from sewalong.quilt.quilt import Quilt, Target
from sewalong.quilt.refusal import NumbersFault
from sewalong.quilt.size import Size
from sewalong.quilt.unit_size import decided_unit, is_trimmed

ACROSS, DOWN = "across", "down"
SIDES, ENDS = "sides", "ends"
BORDER = "border"
ALLOWANCE = "allowance"
"""One seam allowance, measured at the back."""

MOST_SIDE_BY_SIDE = 200
RATE_NOISE = 1e-4
"""Sizes of pieces are rounded to a millionth of an inch, so a rate is no nearer than this."""


class Unmeasurable(ValueError):
    """There is no such piece in this quilt; `str()` is one plain sentence."""


class Measured(Struct, frozen=True):
    """A length that can be measured, in inches, from where to where `edges` says.

    `id` is how the record names it. `allowances` is how many inches it loses for an inch more
    of seam allowance: two for every seam it crosses straight, other numbers for slanting
    seams, 0 where no seam decides it, below 0 where it grows (an allowance itself). `of` is how
    many alike lie side by side in it and `each` what one of them adds (None where they are not
    alike). `at_least` is the size it is trimmed to later, where it is.
    """

    id: str
    words: str
    expected: Length
    allowances: float
    of: int = 1
    each: Length | None = None
    at_least: Length | None = None

    @property
    def noun(self) -> str:
        """What it is called without its direction."""
        return self.words.removesuffix(f" {DOWN}")

    @property
    def kind(self) -> str:
        """What its id begins with: the pile it is of, else "row", "column", "centre" and so on."""
        return self.id.partition(":")[0]

    @property
    def is_long(self) -> bool:
        """Whether it is a row, a centre, a top or a border: eased, not steamed to shape."""
        return self.kind in ("row", "column", "centre", "top", BORDER)

    @property
    def is_border(self) -> bool:
        """Whether it is a strip for a border, before it is sewn on."""
        return self.kind == BORDER

    @property
    def is_test(self) -> bool:
        """Whether it is measured for the seam alone: a strip test, or an allowance."""
        return self.kind in ("strips", "middle", ALLOWANCE)

    @property
    def edges(self) -> str:
        """From where to where the tape is laid."""
        return {"middle": "seam to seam", ALLOWANCE: "stitches to raw edge"}.get(
            self.kind, "raw edge to raw edge"
        )

    @property
    def seams(self) -> int | None:
        """Seams it crosses straight, or None where seams slant."""
        whole = round(self.allowances / 2)
        return whole if abs(self.allowances - 2 * whole) < RATE_NOISE else None


def other_way_of(piece: str) -> str:
    """The id of the same piece measured the other way; "" for what has only one way."""
    head, _, way = piece.partition(":")
    if head in ("row", "column", "strips", "middle", ALLOWANCE, BORDER):
        return ""
    if head in ("centre", "top"):
        return f"{head}:{ACROSS if way == DOWN else DOWN}"
    return head if way == DOWN else f"{head}:{DOWN}"


def read_piece(quilt: Quilt, target: Target, piece: str) -> Measured:
    """The piece called `piece`; raises Unmeasurable, saying what there is.

    A pile's id, with ":down" for its other side; "row", "row:4" (a row of four units),
    "column:4" (four rows joined, measured down); "centre:across", "centre:down" and the same
    of "top"; "strips:3:3/2" (three strips cut at 3/2 in, sewn side by side) and
    "middle:3/2" (the middle one of them, seam to seam); "allowance" (one seam allowance at the back);
    "border:1:sides" and "border:1:ends" (a strip cut for the sides, or for top and bottom).
    """
    return _read(quilt, target, piece)


@lru_cache(maxsize=256)
def _read(quilt: Quilt, target: Target, piece: str) -> Measured:
    head, _, rest = piece.partition(":")
    if head == "strips":
        return _strips(quilt, rest)
    if head == "middle":
        return _middle(quilt, rest)
    if head == BORDER:
        return _border(quilt, target, rest)
    if piece == ALLOWANCE:
        words = "seam allowance at the back, stitches to raw edge"
        return Measured(ALLOWANCE, words, quilt.seam, -1.0)
    if head == "row" and rest != DOWN:
        return _side_by_side(
            quilt, target, _number(rest, _longest_row(quilt, target), "units"), ACROSS
        )
    if head == "column":
        return _side_by_side(quilt, target, _number(rest, _rows(quilt, target), "rows"), DOWN)
    if head in ("centre", "top") and rest in (ACROSS, DOWN):
        return _top(quilt, target, rest, bordered=head == "top")
    if head in {pile.id for pile in quilt.method.piles} and rest in ("", DOWN):
        return _of_pile(quilt, head, rest or ACROSS)
    known = ", ".join(one.id for one in measurable(quilt, target))
    raise Unmeasurable(f"Nothing called {quoted(piece)} can be measured here. There are: {known}.")


@lru_cache(maxsize=64)
def measurable(quilt: Quilt, target: Target) -> tuple[Measured, ...]:
    """What a person can choose to measure, in the order of making."""
    ids = [pile.id for pile in quilt.method.piles]
    unit = _of_pile(quilt, quilt.method.unit, ACROSS)
    if _of_pile(quilt, quilt.method.unit, DOWN).expected != unit.expected:
        ids.append(f"{quilt.method.unit}:{DOWN}")
    # Both ways of a sewn unit tell a seam from stretched cloth.
    pile = f"{proof_pile(quilt)}:{DOWN}"
    if pile not in ids and _of_pile(quilt, proof_pile(quilt), DOWN).allowances:
        ids.append(pile)
    ids += ["row", "centre:across", "centre:down"]
    if quilt.borders:
        numbers = range(1, len(quilt.borders) + 1)
        ids += [f"{BORDER}:{n}:{strip}" for n in numbers for strip in (SIDES, ENDS)]
        ids += ["top:across", "top:down"]
    ids += [_three_strips(quilt), f"middle:{_test_strip(quilt)}", ALLOWANCE]
    return tuple(_read(quilt, target, id) for id in ids)


def proof_pile(quilt: Quilt) -> str:
    """The pile to prove on one: pressed units, before they are trimmed.

    Where the owner trims units that the method does not, it is that of the units themselves.
    """
    trim = quilt.written_method.trim_stage
    if trim is None:
        return quilt.method.unit
    return quilt.method.stage(trim).takes[0].pile


@lru_cache(maxsize=64)
def proof_piece(quilt: Quilt) -> str:
    """The id of the piece that proves the seam: the proof pile where seams decide its size,
    else a strip test."""
    pile = proof_pile(quilt)
    try:
        if _of_pile(quilt, pile, ACROSS).allowances:
            return pile
    except Unmeasurable:
        pass
    return _three_strips(quilt)


def _test_strip(quilt: Quilt) -> Length:
    """The width of strip for a test: the quilt's own strips, else 1 1/2 in as is common."""
    first = quilt.starts[0]
    return quilt.cut_at(first) if first.length is not None else max(Fraction(3, 2), 3 * quilt.seam)


def _three_strips(quilt: Quilt) -> str:
    return f"strips:3:{_test_strip(quilt)}"


@lru_cache(maxsize=64)
def _sewn_with(quilt: Quilt, seam: Length) -> dict[str, list[Piece]]:
    """By pile: what the quilt's own pieces come to when sewn with this allowance."""
    cut = {start.pile: float(quilt.cut_at(start)) for start in quilt.starts}
    length = quilt.starts[0].length
    long = {} if length is None else {"strip_length": float(length)}
    return run_sizes(quilt.written_method, cut, seam, whole=False, **long).seen


def _of_pile(quilt: Quilt, pile: str, way: str) -> Measured:
    noun = quilt.method.pile(pile).noun
    words = f"{noun.one} down" if way == DOWN else noun.one
    id = pile if way == ACROSS else f"{pile}:{DOWN}"
    if pile == quilt.method.unit and pile != proof_pile(quilt):
        return Measured(id, words, _side(decided(quilt), way), 0.0)
    return _as_sewn(quilt, pile, way, id, words)


def _as_joined(quilt: Quilt, way: str) -> Measured:
    """The unit as it goes into its row: once trimmed, no seam decides its size."""
    if not is_trimmed(quilt):
        return _of_pile(quilt, quilt.method.unit, way)
    noun = quilt.method.pile(quilt.method.unit).noun
    return Measured(quilt.method.unit, noun.one, _side(decided(quilt), way), 0.0)


def untrimmed(quilt: Quilt, way: str) -> Measured:
    """The unit as it comes from its seams, before any trimming; raises Unmeasurable."""
    noun = quilt.method.pile(quilt.method.unit).noun
    pile = proof_pile(quilt)
    return _as_sewn(quilt, pile, way, pile if way == ACROSS else f"{pile}:{DOWN}", noun.one)


def _as_sewn(quilt: Quilt, pile: str, way: str, id: str, words: str) -> Measured:
    here = 0 if way == ACROSS else 1
    exact, rate = _size_and_rate(quilt, pile, here)
    size = as_fraction(exact)
    trims = is_trimmed(quilt) and pile == proof_pile(quilt)
    at_least = _side(decided(quilt), way) if trims else None
    whole = round(rate / 2)
    if whole < 1 or abs(rate - 2 * whole) > RATE_NOISE:
        return Measured(id, words, size, rate, at_least=at_least)
    each = (size - 2 * quilt.seam) / (whole + 1)
    return Measured(id, words, size, 2.0 * whole, whole + 1, each, at_least)


def _size_and_rate(quilt: Quilt, pile: str, here: int) -> tuple[float, float]:
    """A pile's first piece across (0) or down (1), and what it loses for an inch of allowance."""
    # All sizes are in proportion to seam and pieces, so a second seam gives the whole line.
    less = quilt.seam * Fraction(15, 16)
    try:
        size = _sewn_with(quilt, quilt.seam)[pile][0].size[here]
        rate = (_sewn_with(quilt, less)[pile][0].size[here] - size) / float(quilt.seam - less)
    except (SizeRefused, MethodFault) as error:
        raise Unmeasurable(f"What this quilt comes to cannot be worked out. {error}") from error
    return size, 0.0 if abs(rate) < RATE_NOISE else rate


def decided(quilt: Quilt) -> Size:
    """The size units are joined at; raises Unmeasurable."""
    return decided_unit(quilt, made_of(quilt))


def made_of(quilt: Quilt) -> Derivation:
    """What the quilt's method comes to; raises Unmeasurable."""
    try:
        return derived(quilt)
    except (SizeRefused, MethodFault) as error:
        raise Unmeasurable(f"What this quilt comes to cannot be worked out. {error}") from error


def _side(size: Size, way: str) -> Length:
    return size.width if way == ACROSS else size.length


def _longest_row(quilt: Quilt, target: Target) -> int:
    return max(row.units for row in quilt.rows_for(target))


def _rows(quilt: Quilt, target: Target) -> int:
    return len(quilt.rows_for(target))


def _on_point(quilt: Quilt, target: Target, way: str) -> Measured:
    """The centre on point: a diagonal of a unit, finished, for each that stands along the edge."""
    unit = _as_joined(quilt, way)
    many = target.columns if way == ACROSS else target.rows
    try:
        size = centre(quilt, target, Size.square(unit.expected))
    except NumbersFault as fault:
        raise Unmeasurable(str(fault)) from fault
    return Measured(
        "", "", _side(size, way), many * ROOT_TWO * (unit.allowances + 2) - 2, many, None
    )


def _side_by_side(quilt: Quilt, target: Target, n: int, way: str) -> Measured:
    unit = _as_joined(quilt, way)
    whole = n == (_longest_row if way == ACROSS else _rows)(quilt, target)
    sashes = sashes_in_a_line(quilt, n, whole=whole)
    length = in_a_line(quilt, unit.expected, n, whole=whole)
    many = quilt.method.pile(quilt.method.unit).noun
    if way == ACROSS:
        id = "row" if whole else f"row:{n}"
        words = f"row of {many.count(n)}"
    else:
        id, words = f"column:{n}", f"{n} rows joined, down"
    return Measured(
        id,
        words,
        length,
        n * unit.allowances + 2 * (n + sashes - 1),
        n,
        None if sashes else unit.expected - 2 * quilt.seam,
    )


def _top(quilt: Quilt, target: Target, way: str, *, bordered: bool) -> Measured:
    if quilt.is_on_point:
        inner = _on_point(quilt, target, way)
    else:
        inner = _side_by_side(quilt, target, target.columns if way == ACROSS else target.rows, way)
    borders = quilt.borders if bordered else ()
    added = sum(
        (2 * (to_cut(border.cut, quilt.unit).length - 2 * quilt.seam) for border in borders),
        Fraction(0),
    )
    name = "top" if bordered else "centre"
    return Measured(
        f"{name}:{way}",
        f"{'top with its borders' if bordered else 'centre'} {way}",
        inner.expected + added,
        inner.allowances + 4 * len(borders),
        inner.of,
        inner.each,
    )


def _border(quilt: Quilt, target: Target, rest: str) -> Measured:
    # The numbers of the borders are loaded only where one is measured.
    from sewalong.quilt.worksheet.basis import basis

    number, _, strip = rest.partition(":")
    n = _number(number, 1, "the border")
    if n > len(quilt.borders) or strip not in (SIDES, ENDS):
        raise Unmeasurable(
            f"Name a strip of a border, as in {BORDER}:1:{SIDES} or {BORDER}:1:{ENDS}; how many "
            f"borders this quilt has: {len(quilt.borders)}."
        )
    try:
        cut = basis(quilt, target).bordered()[n - 1]
    except (SizeRefused, MethodFault, NumbersFault) as error:
        raise Unmeasurable(f"What this quilt comes to cannot be worked out. {error}") from error
    length = cut.each_side if strip == SIDES else cut.each_end
    where = "a side" if strip == SIDES else "top or bottom"
    return Measured(f"{BORDER}:{n}:{strip}", f"strip for {where} of border {n}", length, 0.0)


def _strips(quilt: Quilt, rest: str) -> Measured:
    many, _, width = rest.partition(":")
    n, cut = _number(many, 3, "strips"), _width(quilt, width)
    if n < 2:
        raise Unmeasurable("A strip test takes at least two strips; three are best.")
    words = f"{n} strips of {show(cut, quilt.unit)} side by side"
    length = row_length(n, cut, quilt.seam)
    return Measured(f"strips:{n}:{cut}", words, length, 2.0 * (n - 1), n, cut - 2 * quilt.seam)


def _middle(quilt: Quilt, rest: str) -> Measured:
    cut = _width(quilt, rest)
    words = f"middle strip of three cut at {show(cut, quilt.unit)}, seam to seam"
    return Measured(f"middle:{cut}", words, cut - 2 * quilt.seam, 2.0)


def _width(quilt: Quilt, text: str) -> Length:
    width = read_fraction(text)
    if width is None or not 2 * quilt.seam < width <= LONGEST:
        raise Unmeasurable(
            "Say how wide the strips were cut, more than both their seams, as in strips:3:3/2."
        )
    return width


def _number(text: str, usual: int, what: str) -> int:
    if not text:
        return usual
    if not re.fullmatch(r"[1-9][0-9]{0,3}", text) or int(text) > MOST_SIDE_BY_SIDE:
        raise Unmeasurable(f"Give the number of {what} as a number up to {MOST_SIDE_BY_SIDE}.")
    return int(text)


def read_fraction(text: str) -> Fraction | None:
    """An exact length as the record keeps it ("7/2", "3"), or None when it is not one."""
    if not re.fullmatch(r"[0-9]{1,12}(/[1-9][0-9]{0,11})?", text):
        return None
    return Fraction(text)

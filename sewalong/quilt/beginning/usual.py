"""What holds where she answers nothing: an answer to each question, and a layout that suits.

The numbers are common practice or from memory, as each says; they are there to be changed.
"""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction
from functools import lru_cache
from math import isqrt

from sewalong.lengths import Unit
from sewalong.piecing.definition import Definition
from sewalong.piecing.derive import SEAM, STRIP_LENGTH
from sewalong.piecing.method import MethodKey
from sewalong.piecing.method_counts import count_out
from sewalong.quilt.beginning.wording import (
    EDGE_TO_EDGE,
    NONE_YET,
    NOT_TRIMMED,
    finishing_text,
    length_text,
    packs_text,
)
from sewalong.quilt.layouts.layout import Layout, LayoutChoice, layouts, usual_reach
from sewalong.quilt.layouts.yield_of_method import units_from
from sewalong.quilt.quilt import Target
from sewalong.quilt.rules import FINISHING_STAGES, LONGEST_NAME, MOST_PIECES, MOST_ROWS
from sewalong.quilt.set_rows import units_in

USUAL_METHOD = "stacked-four-patch"

_SQUARE, _STRIP = Fraction(5), Fraction(5, 2)
"""Precut squares and strips are sold at 5 in and 2 1/2 in: common practice."""

_STRIPS = "20"
"""Half of what strips are sold in, dark and light: from memory."""

_IN_A_PACK = 42
"""Squares in many packs of 5 in, common practice; others hold from 22 to 56."""
_MOST_PACKS = 4
_UNITS_OF_A_THROW = 64
"""From memory: 8 × 8 blocks make one."""

_BORDERS = {Unit.INCH: "2 1/2 in, 5 in", Unit.CM: "6.5 cm, 12.5 cm"}
"""A narrow border within a wide one. From memory."""

NOT_LONGER = Fraction(5, 4)
"""Longer side by shorter that a layout is chosen up to, unasked. From memory: a throw."""


def usual_answer(id: str, written: Definition, unit: Unit, is_taken: Callable[[str], bool]) -> str:
    """The usual answer to a question that follows from no other but the method."""
    strips = written.starts[0].strip
    match id:
        case "method":
            return USUAL_METHOD
        case "size":
            return length_text(_STRIP if strips else _SQUARE, unit)
        case "length":
            return length_text(STRIP_LENGTH, unit)
        case "count":
            return _STRIPS if strips else _packs(written)
        case "seam":
            return length_text(SEAM, unit)
        case "trim":
            return NOT_TRIMMED
        case "setting":
            return EDGE_TO_EDGE
        case "borders":
            return _BORDERS[unit]
        case "fabrics":
            return NONE_YET
        case "finishing":
            return finishing_text(FINISHING_STAGES)
        case _:
            return _free_name(written.name, is_taken)


@lru_cache(maxsize=32)
def _packs(written: Definition) -> str:
    """The fewest packs that make a throw, and no more than a person buys unasked."""
    method = count_out(written, MethodKey(written.id))
    plenty = {start.pile: MOST_PIECES for start in written.starts}
    for packs in range(1, _MOST_PACKS):
        pieces = plenty | {written.starts[0].pile: packs * _IN_A_PACK}
        if units_from(method, pieces) >= _UNITS_OF_A_THROW:
            return packs_text(packs, _IN_A_PACK)
    return packs_text(_MOST_PACKS, _IN_A_PACK)


def _free_name(name: str, is_taken: Callable[[str], bool]) -> str:
    """The method's name, with a number behind it where a quilt is called so already."""
    name, n, free = name[: LONGEST_NAME - 6], 1, name[: LONGEST_NAME - 6]
    while is_taken(free):
        n += 1
        free = f"{name} {n}"
    return free


def usual_layout(choice: LayoutChoice) -> Target:
    """Of the layouts within reach of the units there are, the one that leaves fewest over among
    those not much longer than wide; never one that takes more than there are, if one can."""
    found = layouts(choice, usual_reach(choice.have))
    even = [one for one in found if one.stretch <= NOT_LONGER]
    if found:
        best: Layout = (even or list(found))[0]
        return Target(best.rows, best.columns)
    # So few units, or so many, that none is worth showing: as square as they make.
    side = min(MOST_ROWS, max(1, isqrt(choice.have)))
    while side > 1 and units_in(choice.setting, side, side) > choice.have:
        side -= 1
    return Target(side, side)

"""What is offered for a question that is answered from a list; anything else can be typed."""

from __future__ import annotations

from itertools import product

from msgspec import Struct

from sewalong.lengths import Unit
from sewalong.piecing.catalogue import method_ids, written_method
from sewalong.piecing.faults import SizeRefused
from sewalong.quilt.beginning.filled_in import FilledIn
from sewalong.quilt.beginning.questions import FINISHING, LAYOUT, METHOD, SETTING, TRIM
from sewalong.quilt.beginning.wording import (
    EDGE_TO_EDGE,
    NONE,
    NOT_TRIMMED,
    ON_POINT,
    ON_THE_MARKS,
    finishing_text,
    layout_text,
    length_text,
    sashes_text,
)
from sewalong.quilt.derived import derived
from sewalong.quilt.quilt import Quilt
from sewalong.quilt.rules import FINISHING_STAGES
from sewalong.quilt.setting import USUAL_SASH
from sewalong.quilt.worksheet.layout_lines import LayoutLine

MOST_LAYOUTS = 30
"""Layouts that are offered: those that leave fewest over come first."""


class Offered(Struct, frozen=True):
    """One answer to choose: `text` is the answer, `about` what is to be known of it."""

    text: str
    about: str = ""


def offered(filled: FilledIn, id: str) -> tuple[Offered, ...]:
    """The answers to choose from; none where a question is answered by typing.

    Layouts and trims hang on the other answers, and there are none where these make no quilt.
    """
    quilt = filled.quilt
    unit = filled.answers.unit if quilt is None else quilt.unit
    match id:
        case "method":
            methods = map(written_method, method_ids())
            return tuple(Offered(one.name, one.about) for one in methods)
        case "setting":
            return _settings(unit)
        case "finishing":
            return _finishing()
        case "layout":
            as_web = quilt is not None and quilt.is_web
            return tuple(_layout(one, unit, as_web) for one in filled.layouts[:MOST_LAYOUTS])
        case "trim":
            return () if quilt is None else _trims(quilt)
        case _:
            return ()


FROM_A_LIST = (METHOD, SETTING, FINISHING, LAYOUT, TRIM)
"""The questions that have something to choose from."""


def _settings(unit: Unit) -> tuple[Offered, ...]:
    sashes = (
        Offered(sashes_text(USUAL_SASH[unit], unit, frame=frame, cornerstones=stones))
        for stones, frame in product((False, True), repeat=2)
    )
    return (Offered(EDGE_TO_EDGE), *sashes, Offered(ON_POINT))


def _finishing() -> tuple[Offered, ...]:
    layer, quilt, bind = FINISHING_STAGES
    some = ((layer, quilt, bind), (layer, quilt), (layer, bind))
    none = Offered(NONE, "it ends with the top")
    return (*(Offered(finishing_text(stages)) for stages in some), none)


def _layout(one: LayoutLine, unit: Unit, as_web: bool) -> Offered:
    left = f"{one.short:,} short" if one.short else f"{one.spare:,} spare"
    return Offered(layout_text(one.target, as_web=as_web), f"{one.size.show(unit)}, {left}")


def _trims(quilt: Quilt) -> tuple[Offered, ...]:
    trims = quilt.written_method.trim_stage is not None
    usual = Offered(ON_THE_MARKS if trims else NOT_TRIMMED)
    try:
        width, length = derived(quilt).unit.trim_to(quilt.unit.trim_step)
    except SizeRefused:
        return (usual,)
    sides = dict.fromkeys(length_text(side, quilt.unit) for side in (width, length))
    return (usual, Offered(" x ".join(sides), "the largest on whole marks"))

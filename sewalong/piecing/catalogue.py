"""The methods the program knows, each with its counts worked out from its operations."""

from __future__ import annotations

import difflib
from functools import cache

from sewalong.piecing.definition import (
    FINAL_PILE,
    Definition,
    StageDefinition,
    definition,
    definition_ids,
)
from sewalong.piecing.faults import UnknownMethod
from sewalong.piecing.method import Method, Pieces, Stage

__all__ = ["UnknownMethod", "method", "method_ids"]

_CUT = {"cut diagonal": 2, "cut both diagonals": 4}


def method_ids() -> tuple[str, ...]:
    """The ids of all methods, in alphabetical order."""
    return definition_ids()


@cache
def method(id: str) -> Method:
    """The method called `id`; raises UnknownMethod, naming the nearest one."""
    if id not in definition_ids():
        near = difflib.get_close_matches(id, definition_ids(), n=1, cutoff=0.0)
        raise UnknownMethod(f"No method is called {id!r}. The nearest is {near[0]!r}.")
    written = definition(id)
    return Method(
        id=written.id,
        name=written.name,
        about=written.about,
        piles=written.piles,
        starts=tuple(start.pile for start in written.starts),
        unit=FINAL_PILE,
        stages=tuple(_stage(written, stage) for stage in written.stages),
    )


def _stage(written: Definition, stage: StageDefinition) -> Stage:
    taken: dict[str, int] = {}
    made = 0
    for step in stage.operations:
        if step.startswith("take "):
            pile = step.removeprefix("take ")
            taken[pile] = taken.get(pile, 0) + 1
            made += 1
        elif step == "lay" or step.startswith("join"):
            made = 1
        else:
            made *= _CUT.get(step, 1)
    noun = next(pile.noun for pile in written.piles if pile.id == stage.counts)
    return Stage(
        id=stage.id,
        label=stage.label,
        station=stage.station,
        takes=tuple(Pieces(pile, count) for pile, count in taken.items()),
        makes=Pieces(stage.makes, made),
        counts=noun,
        hazards=stage.hazards,
        do=stage.do,
        check=stage.check,
        minutes=stage.minutes,
    )

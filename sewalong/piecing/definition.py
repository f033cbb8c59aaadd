"""One method file, read and checked: its piles, its stages and their operations.

Nothing is computed here. Counts and sizes come from running the operations.
"""

from __future__ import annotations

import tomllib
from collections.abc import Sequence
from fractions import Fraction
from functools import cache
from typing import Annotated, Any

import msgspec
from msgspec import Meta, Struct

from sewalong.misfit import Path, misfit
from sewalong.piecing.faults import MethodFault
from sewalong.piecing.method import Either, Hazard, Noun, Pile, Station
from sewalong.piecing.method_files import read_method_file

FINAL_PILE = "unit"
"""The id of the last pile of every method."""

LATER_STAGES = frozenset({"sew-rows", "join-rows", "add-borders", "layer", "quilt", "bind"})
"""Ids of the stages that follow the units in every quilt, which a method can't use too."""

LATER_PILES = frozenset({"row"})
"""Ids of the piles that follow the units in every quilt."""

_Text = Annotated[str, Meta(pattern=r"\S")]


class StartDefinition(Struct, frozen=True):
    """A pile that is cut from cloth, and how its size follows from the main one.

    `letter` is the fabric shared by all its pieces; without it every piece has its own.
    `strip` says that the piece is a strip of the usable length. A start with neither
    `share` nor `shape` is cut as wide as the main start (the first in the file).
    With `share` its patch finishes at this part of the unit's width; with `shape` the
    unit finishes at this part of its width in height.
    """

    pile: str
    letter: str | None
    strip: bool
    share: Fraction | None
    shape: Fraction | None


class StageDefinition(Struct, frozen=True, forbid_unknown_fields=True):
    """A stage as written: its words, and its operations not yet run.

    `counts` is the pile whose noun is counted in, if not that of `makes`.
    """

    id: _Text
    label: _Text
    station: Station
    makes: _Text
    minutes: Annotated[float, Meta(gt=0)]
    do: _Text
    check: _Text
    operations: Annotated[tuple[str, ...], Meta(min_length=1)]
    hazards: tuple[Hazard, ...] = ()
    counts: _Text | None = None
    either: tuple[Either, ...] = ()


class Definition(Struct, frozen=True):
    """A method file. `file` is its name, for sentences about faults."""

    file: str
    id: str
    name: str
    about: str
    piles: tuple[Pile, ...]
    starts: tuple[StartDefinition, ...]
    stages: tuple[StageDefinition, ...]

    def start(self, pile: str) -> StartDefinition | None:
        """How `pile` is cut, or None if it is made by a stage."""
        for start in self.starts:
            if start.pile == pile:
                return start
        return None

    def noun(self, pile: str) -> Noun:
        """What a piece of `pile` is called; raises KeyError if there is no such pile."""
        for entry in self.piles:
            if entry.id == pile:
                return entry.noun
        raise KeyError(pile)


class _PileTable(Struct, frozen=True, forbid_unknown_fields=True):
    id: _Text
    noun: Noun
    start: bool = False
    letter: Annotated[str, Meta(pattern=r"\A[A-Z]\Z")] | None = None
    strip: bool = False
    share: Fraction | None = None
    shape: Fraction | None = None


class _MethodTable(Struct, frozen=True, forbid_unknown_fields=True):
    id: _Text
    name: _Text
    about: _Text
    piles: Annotated[tuple[_PileTable, ...], Meta(min_length=1)]
    stages: Annotated[tuple[StageDefinition, ...], Meta(min_length=1)]


_RIGHT = {
    "piles": "at least one [[piles]] is needed",
    "stages": "at least one [[stages]] is needed",
    "noun": 'write the noun as ["one", "many"]',
    "start": "'start' must be true or false",
    "strip": "'strip' must be true or false",
    "letter": "the letter must be one capital, A to Z",
    "hazards": "'hazards' must be a list of texts",
    "either": "'either' must be a list of texts",
    "minutes": "'minutes' must be a number over zero",
    "operations": "'operations' must be a list of texts, at least one; say what is done",
}
"""What would be right under a key; all others hold text."""


def read_definition(file: str, text: str) -> Definition:
    """The method in `text`, the contents of the file named `file`.

    Raises MethodFault for anything misspelt, missing, unknown or repeated.
    """
    try:
        document = tomllib.loads(text)
    except tomllib.TOMLDecodeError as error:
        raise MethodFault(f"{file}: this is not a TOML file: {error}.") from error
    try:
        table = msgspec.convert(document, _MethodTable, dec_hook=_part)
    except msgspec.ValidationError as error:
        raise MethodFault(_fault(file, document, error)) from error
    definition = Definition(
        file=file,
        id=table.id,
        name=table.name,
        about=table.about,
        piles=tuple(Pile(pile.id, pile.noun) for pile in table.piles),
        starts=tuple(
            StartDefinition(pile.id, pile.letter, pile.strip, pile.share, pile.shape)
            for pile in table.piles
            if pile.start
        ),
        stages=table.stages,
    )
    _check(definition)
    return definition


def _part(kind: type, value: object) -> Fraction:
    """A part of the unit's width; raises ValueError, its sentence without the key."""
    try:
        part = Fraction(value) if isinstance(value, str) else None
    except (ValueError, ZeroDivisionError):
        part = None
    if part is None:
        raise ValueError('must be a part such as "1/2"')
    if not 0 < part <= 1:
        raise ValueError("must be over 0 and at most 1")
    return part


def _fault(file: str, document: dict[str, Any], error: msgspec.ValidationError) -> str:
    """The sentence for what msgspec found, naming file, place and key."""
    found = misfit(error)
    path = found.path if found.missing is None else (*found.path, found.missing)
    place = _place(file, document, path)
    if found.unknown is not None:
        return f"{place}: the key {found.unknown!r} is not known; take it out."
    if len(path) == 2:
        return f"{place}: a table was expected here."
    key = str(path[2] if len(path) > 2 else path[0])
    if key in ("share", "shape"):
        return f"{place}: {key!r} {found.why}."
    if found.why.startswith("Invalid enum value"):
        value = found.why.removeprefix("Invalid enum value ")
        kind = _LISTS.get(key, Hazard)
        return f"{place}: {value} is not a valid {kind.__name__}; there are {', '.join(kind)}."
    return f"{place}: {_RIGHT.get(key, f'{key!r} must be written as text')}."


_LISTS: dict[str, type[Station | Hazard | Either]] = {"station": Station, "either": Either}
"""What may stand under a key that takes a word of a list; all others take hazards."""


def _place(file: str, document: dict[str, Any], path: Path) -> str:
    """The file and, where the fault is in one of them, the pile or the stage."""
    if len(path) < 2:
        return file
    what = "pile" if path[0] == "piles" else "stage"
    table = document[str(path[0])][path[1]]
    id = table.get("id") if isinstance(table, dict) else None
    return f"{file}, {what} {id!r}" if isinstance(id, str) and id.strip() else f"{file}, a {what}"


def _check(definition: Definition) -> None:
    """Raises MethodFault unless ids are unique, piles are there, and the end is the unit."""
    file = definition.file
    piles = [pile.id for pile in definition.piles]
    stages = [stage.id for stage in definition.stages]
    for stage in definition.stages:
        for pile in (stage.makes, stage.counts or stage.makes):
            if pile not in piles:
                raise MethodFault(f"{file}, stage {stage.id!r}: no pile is called {pile!r}.")
    _check_unique(file, "pile", piles)
    _check_unique(file, "stage", stages)
    for id in [*LATER_STAGES.intersection(stages), *LATER_PILES.intersection(piles)]:
        raise MethodFault(f"{file}: {id!r} comes later in every quilt; choose another id.")
    if not definition.starts:
        raise MethodFault(f"{file}: no pile has `start = true`, so there is nothing to cut.")
    for start in definition.starts:
        if start.share is not None and start.shape is not None:
            raise MethodFault(f"{file}, pile {start.pile!r}: give `share` or `shape`, not both.")
    if definition.stages[-1].makes != FINAL_PILE:
        raise MethodFault(f"{file}: the last stage must make the pile {FINAL_PILE!r}.")


def _check_unique(file: str, what: str, ids: Sequence[str]) -> None:
    seen: set[str] = set()
    for id in ids:
        if id in seen:
            raise MethodFault(f"{file}: two {what}s are called {id!r}.")
        seen.add(id)


@cache
def definition(id: str) -> Definition:
    """The method file called `id`; raises KeyError if there is none, MethodFault if bad."""
    data = read_method_file(id)
    if data is None:
        raise KeyError(id)
    file = f"{id}.toml"
    read = read_definition(file, data.decode("utf-8"))
    if read.id != id:
        raise MethodFault(f"{file}: its id is {read.id!r}; file and id must agree.")
    return read

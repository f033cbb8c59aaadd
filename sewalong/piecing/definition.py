"""One method file, read and checked: its piles, its stages and their operations.

Nothing is computed here. Counts and sizes come from running the operations.
"""

from __future__ import annotations

import tomllib
from collections.abc import Sequence
from fractions import Fraction
from functools import cache
from itertools import islice
from typing import Any

import msgspec
from msgspec import Struct

from sewalong.lengths.fault import quoted
from sewalong.misfit import Path
from sewalong.piecing.faults import MethodFault
from sewalong.piecing.method import Noun, Pile
from sewalong.piecing.method_files import text_of
from sewalong.piecing.method_rules import broken_rules
from sewalong.piecing.method_tables import (
    MethodTable,
    StageDefinition,
    Wrong,
    read_part,
    wrong_keys,
)
from sewalong.piecing.operation_words import TRIM

MOST_FAULTS = 50
"""A file with more is no method file, and to find what was meant takes a while for each."""


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


class Definition(Struct, frozen=True):
    """A method file. `file` is its name, for sentences about faults."""

    file: str
    id: str
    name: str
    about: str
    piles: tuple[Pile, ...]
    starts: tuple[StartDefinition, ...]
    stages: tuple[StageDefinition, ...]

    @property
    def trim_stage(self) -> str | None:
        """The stage at which units are trimmed, which is the last, or None."""
        last = self.stages[-1]
        return last.id if TRIM in last.operations else None

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


def read_definition(file: str, text: str) -> Definition:
    """The method in `text`, the contents of the file named `file`.

    Raises MethodFault for the first thing that is misspelt, missing, unknown or repeated, or
    does not go together.
    """
    try:
        document = tomllib.loads(text)
    except (ValueError, RecursionError) as error:
        raise MethodFault(f"{file}: this is not a TOML file: {error}.") from error
    found, wrong = understood(file, document)
    if found is None:
        path, sentence = wrong[0]
        raise MethodFault(f"{_place(file, document, path)}: {sentence}")
    return found


def understood(file: str, document: dict[str, Any]) -> tuple[Definition | None, Sequence[Wrong]]:
    """The method in the tables of a method file, or everything that is wrong with them.

    Of more than MOST_FAULTS only so many are looked for. Whether its operations can be done is
    for `method_trial`. What is wrong becomes None in `document`.
    """
    try:
        table = msgspec.convert(document, MethodTable, dec_hook=read_part)
    except msgspec.ValidationError:
        wrong = list(islice(wrong_keys(document), MOST_FAULTS))
        if len(wrong) < MOST_FAULTS:
            wrong += islice(broken_rules(document), MOST_FAULTS - len(wrong))
        return None, wrong
    wrong = list(islice(broken_rules(document), MOST_FAULTS))
    if wrong:
        return None, wrong
    found = Definition(
        file=file,
        id=table.id,
        name=table.name,
        about=table.about,
        piles=tuple(Pile(pile.id, Noun(*pile.noun)) for pile in table.piles),
        starts=tuple(
            StartDefinition(pile.id, pile.letter, pile.strip, pile.share, pile.shape)
            for pile in table.piles
            if pile.start
        ),
        stages=table.stages,
    )
    return found, ()


def _place(file: str, document: dict[str, Any], path: Path) -> str:
    """The file and, where the fault is in one of them, the pile or the stage."""
    if len(path) < 2:
        return file
    what = "pile" if path[0] == "piles" else "stage"
    id = document[str(path[0])][path[1]].get("id")
    return (
        f"{file}, {what} {quoted(id)}"
        if isinstance(id, str) and id.strip()
        else f"{file}, a {what}"
    )


@cache
def definition(id: str) -> Definition:
    """The method file called `id`; raises KeyError if there is none, MethodFault if bad."""
    text = text_of(id)
    if text is None:
        raise KeyError(id)
    file = f"{id}.toml"
    read = read_definition(file, text)
    if read.id != id:
        raise MethodFault(f"{file}: its id is {read.id!r}; file and id must agree.")
    return read

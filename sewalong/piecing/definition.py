"""One method file, read and checked: its piles, its stages and their operations.

Nothing is computed here. Counts and sizes come from running the operations.
"""

from __future__ import annotations

import pkgutil
import re
import tomllib
from collections.abc import Mapping
from fractions import Fraction
from functools import cache

from msgspec import Struct

from sewalong.piecing.faults import MethodFault
from sewalong.piecing.method import Hazard, Noun, Pile, Station

_ID = re.compile(r"[a-z0-9]+(?:-[a-z0-9]+)*")

FINAL_PILE = "unit"
"""The id of the last pile of every method."""

LATER_STAGES = frozenset({"sew-rows", "join-rows", "add-borders", "layer", "quilt", "bind"})
"""Ids of the stages that follow the units in every quilt, which a method can't use too."""

LATER_PILES = frozenset({"row"})
"""Ids of the piles that follow the units in every quilt."""

_METHOD_KEYS = {"id", "name", "about", "piles", "stages"}
_PILE_KEYS = {"id", "noun", "start", "letter", "strip", "share", "shape"}
_STAGE_KEYS = {
    "id", "label", "station", "hazards", "makes", "counts", "minutes", "do", "check", "operations",
}  # fmt: skip


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


class StageDefinition(Struct, frozen=True):
    """A stage as written: its words, and its operations not yet run."""

    id: str
    label: str
    station: Station
    hazards: tuple[Hazard, ...]
    makes: str
    counts: str
    minutes: float
    do: str
    check: str
    operations: tuple[str, ...]


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


class _Reader:
    """Reads one table, naming file and place in every fault."""

    def __init__(self, place: str, table: object, known: set[str]) -> None:
        if not isinstance(table, Mapping):
            raise MethodFault(f"{place}: a table was expected here.")
        self.place = place
        self.table: Mapping[str, object] = table
        unknown = sorted(set(self.table) - known)
        if unknown:
            raise MethodFault(f"{place}: the key {unknown[0]!r} is not known; take it out.")

    def text(self, key: str, default: str | None = None) -> str:
        value = self.table.get(key, default)
        if not isinstance(value, str) or not value.strip():
            raise MethodFault(f"{self.place}: {key!r} must be written as text.")
        return value

    def tables(self, key: str) -> list[object]:
        value = self.table.get(key)
        if not isinstance(value, list) or not value:
            raise MethodFault(f"{self.place}: at least one [[{key}]] is needed.")
        return value

    def texts(self, key: str) -> tuple[str, ...]:
        value = self.table.get(key, [])
        if not isinstance(value, list) or not all(isinstance(item, str) for item in value):
            raise MethodFault(f"{self.place}: {key!r} must be a list of texts.")
        return tuple(value)

    def flag(self, key: str) -> bool:
        value = self.table.get(key, False)
        if not isinstance(value, bool):
            raise MethodFault(f"{self.place}: {key!r} must be true or false.")
        return value

    def positive(self, key: str) -> float:
        value = self.table.get(key)
        if isinstance(value, bool) or not isinstance(value, int | float) or value <= 0:
            raise MethodFault(f"{self.place}: {key!r} must be a number over zero.")
        return float(value)

    def part(self, key: str) -> Fraction | None:
        if key not in self.table:
            return None
        try:
            part = Fraction(self.text(key))
        except (ValueError, ZeroDivisionError):
            raise MethodFault(f'{self.place}: {key!r} must be a part such as "1/2".') from None
        if not 0 < part <= 1:
            raise MethodFault(f"{self.place}: {key!r} must be over 0 and at most 1.")
        return part


def read_definition(file: str, text: str) -> Definition:
    """The method in `text`, the contents of the file named `file`.

    Raises MethodFault for anything misspelt, missing, unknown or repeated.
    """
    try:
        document = tomllib.loads(text)
    except tomllib.TOMLDecodeError as error:
        raise MethodFault(f"{file}: this is not a TOML file: {error}.") from error
    reader = _Reader(file, document, _METHOD_KEYS)
    piles: list[Pile] = []
    starts: list[StartDefinition] = []
    for table in reader.tables("piles"):
        pile, start = _read_pile(file, table)
        piles.append(pile)
        if start is not None:
            starts.append(start)
    ids = [pile.id for pile in piles]
    stages = tuple(_read_stage(file, table, ids) for table in reader.tables("stages"))
    _check_unique(file, "pile", ids)
    _check_unique(file, "stage", [stage.id for stage in stages])
    for id in [
        *LATER_STAGES.intersection(stage.id for stage in stages),
        *LATER_PILES.intersection(ids),
    ]:
        raise MethodFault(f"{file}: {id!r} comes later in every quilt; choose another id.")
    if not starts:
        raise MethodFault(f"{file}: no pile has `start = true`, so there is nothing to cut.")
    if stages[-1].makes != FINAL_PILE:
        raise MethodFault(f"{file}: the last stage must make the pile {FINAL_PILE!r}.")
    return Definition(
        file=file,
        id=reader.text("id"),
        name=reader.text("name"),
        about=reader.text("about"),
        piles=tuple(piles),
        starts=tuple(starts),
        stages=stages,
    )


def _read_pile(file: str, table: object) -> tuple[Pile, StartDefinition | None]:
    reader = _Reader(f"{file}, a pile", table, _PILE_KEYS)
    id = reader.text("id")
    reader.place = f"{file}, pile {id!r}"
    noun = reader.texts("noun")
    if len(noun) != 2:
        raise MethodFault(f'{reader.place}: write the noun as ["one", "many"].')
    pile = Pile(id, Noun(noun[0], noun[1]))
    if not reader.flag("start"):
        return pile, None
    letter = reader.text("letter") if "letter" in reader.table else None
    if letter is not None and not (len(letter) == 1 and "A" <= letter <= "Z"):
        raise MethodFault(f"{reader.place}: the letter must be one capital, A to Z.")
    share, shape = reader.part("share"), reader.part("shape")
    if share is not None and shape is not None:
        raise MethodFault(f"{reader.place}: give `share` or `shape`, not both.")
    return pile, StartDefinition(id, letter, reader.flag("strip"), share, shape)


def _read_stage(file: str, table: object, piles: list[str]) -> StageDefinition:
    reader = _Reader(f"{file}, a stage", table, _STAGE_KEYS)
    id = reader.text("id")
    reader.place = f"{file}, stage {id!r}"
    makes = reader.text("makes")
    counts = reader.text("counts", makes)
    for pile in (makes, counts):
        if pile not in piles:
            raise MethodFault(f"{reader.place}: no pile is called {pile!r}.")
    operations = reader.texts("operations")
    if not operations:
        raise MethodFault(f"{reader.place}: `operations` is empty; say what is done.")
    try:
        station = Station(reader.text("station"))
        hazards = tuple(Hazard(word) for word in reader.texts("hazards"))
    except ValueError as error:
        raise MethodFault(f"{reader.place}: {error}.") from error
    return StageDefinition(
        id=id,
        label=reader.text("label"),
        station=station,
        hazards=hazards,
        makes=makes,
        counts=counts,
        minutes=reader.positive("minutes"),
        do=reader.text("do"),
        check=reader.text("check"),
        operations=operations,
    )


def _check_unique(file: str, what: str, ids: list[str]) -> None:
    seen: set[str] = set()
    for id in ids:
        if id in seen:
            raise MethodFault(f"{file}: two {what}s are called {id!r}.")
        seen.add(id)


@cache
def definition_ids() -> tuple[str, ...]:
    """The ids of all method files, in alphabetical order."""
    # Loaded here: it takes longer to load than a method does to read, and few need the list.
    from importlib import resources

    folder = resources.files("sewalong.piecing") / "methods"
    names = [entry.name for entry in folder.iterdir() if entry.name.endswith(".toml")]
    return tuple(sorted(name.removesuffix(".toml") for name in names))


@cache
def definition(id: str) -> Definition:
    """The method file called `id`; raises KeyError if there is none, MethodFault if bad."""
    file = f"{id}.toml"
    if _ID.fullmatch(id) is None:
        raise KeyError(id)
    try:
        data = pkgutil.get_data("sewalong.piecing", f"methods/{file}")
    except OSError:
        data = None
    if data is None:
        raise KeyError(id)
    read = read_definition(file, data.decode("utf-8"))
    if read.id != id:
        raise MethodFault(f"{file}: its id is {read.id!r}; file and id must agree.")
    return read

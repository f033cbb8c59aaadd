"""A method file as it is written: its tables, their keys, and what each may hold.

What one key holds is looked at here; what the parts must be to each other is in `method_rules`.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from fractions import Fraction
from typing import Annotated, Any

import msgspec
from msgspec import Meta, Struct
from msgspec.structs import FieldInfo, fields

from sewalong.lengths.fault import quoted
from sewalong.misfit import Path
from sewalong.piecing.method import Either, Hazard, Station
from sewalong.piecing.method_files import ID

LONGEST_ID = 40
"""Characters: twice the longest of the program's own."""
LONGEST_NAME = 80
"""Characters in the name of a method, as in the names of quilts."""
LONGEST_WORD, LONGEST_DO, LONGEST_CHECK = 24, 110, 60
"""Characters in a label or a noun, in what is done at a stage, and in how it is checked: somewhat more
than the program's own methods have, and what a stage is on the smallest screen still fits."""
LONGEST_LINE = 160
"""Characters in what is said about a method, or in an operation."""
MOST_PILES = MOST_STAGES = MOST_OPERATIONS = 40
"""Some four times what any of the program's own methods has."""
MOST_MINUTES = 600
"""Minutes for one count: a whole day at the machine."""

# One line with something on it, without codes that steer a terminal or turn writing round.
_LINE = r"\A(?=\s*\S)[^\x00-\x1f\x7f-\x9f\u2028-\u202e\u2066-\u2069]*\Z"
_PART = r"[1-9]\d{0,2}(?:/[1-9]\d{0,2})?"

_Id = Annotated[str, Meta(pattern=rf"\A{ID}\Z", max_length=LONGEST_ID)]
_Name = Annotated[str, Meta(pattern=_LINE, max_length=LONGEST_NAME)]
_Word = Annotated[str, Meta(pattern=_LINE, max_length=LONGEST_WORD)]
_Do = Annotated[str, Meta(pattern=_LINE, max_length=LONGEST_DO)]
_Check = Annotated[str, Meta(pattern=_LINE, max_length=LONGEST_CHECK)]
_Line = Annotated[str, Meta(pattern=_LINE, max_length=LONGEST_LINE)]

Wrong = tuple[Path, str]
"""One thing wrong with a method file: where, and in a sentence what, and what would be right."""


class StageDefinition(Struct, frozen=True, forbid_unknown_fields=True):
    """A stage as written: its words, and its operations not yet run.

    `counts` is the pile whose noun is counted in, if not that of `makes`.
    """

    id: _Id
    label: _Word
    station: Station
    makes: _Id
    minutes: Annotated[float, Meta(gt=0, le=MOST_MINUTES)]
    do: _Do
    check: _Check
    operations: Annotated[tuple[_Line, ...], Meta(min_length=1, max_length=MOST_OPERATIONS)]
    hazards: Annotated[tuple[Hazard, ...], Meta(max_length=len(Hazard))] = ()
    counts: _Id | None = None
    either: Annotated[tuple[Either, ...], Meta(max_length=len(Either))] = ()


class PileTable(Struct, frozen=True, forbid_unknown_fields=True):
    """A pile as written."""

    id: _Id
    noun: tuple[_Word, _Word]
    start: bool = False
    letter: Annotated[str, Meta(pattern=r"\A[A-Z]\Z")] | None = None
    strip: bool = False
    share: Fraction | None = None
    shape: Fraction | None = None


class MethodTable(Struct, frozen=True, forbid_unknown_fields=True):
    """A whole method file."""

    id: _Id
    name: _Name
    about: _Line
    piles: Annotated[tuple[PileTable, ...], Meta(min_length=1, max_length=MOST_PILES)]
    stages: Annotated[tuple[StageDefinition, ...], Meta(min_length=1, max_length=MOST_STAGES)]


def _text(longest: int) -> str:
    return f"must be written as text on one line, of 1 to {longest} characters"


_IS_ID = (
    f"must be 1 to {LONGEST_ID} small letters and digits, its words joined by -, "
    'such as "pressed-pair"'
)
_PART_OF_WIDTH = 'must be a part of the unit\'s width as text, such as "1/2", over 0 and at most 1'
_RIGHT = {
    "id": _IS_ID,
    "makes": f"names a pile by its id, and {_IS_ID}",
    "counts": f"names a pile by its id, and {_IS_ID}",
    "name": _text(LONGEST_NAME),
    "do": _text(LONGEST_DO),
    "check": _text(LONGEST_CHECK),
    "label": _text(LONGEST_WORD),
    "noun": 'must be two texts, ["one", "many"], such as ["pair", "pairs"], each on one line and '
    f"of 1 to {LONGEST_WORD} characters",
    "start": "must be true or false",
    "strip": "must be true or false",
    "letter": "must be one capital, A to Z",
    "minutes": f"must be a number over zero, and at most {MOST_MINUTES}",
    "operations": f"must be a list of 1 to {MOST_OPERATIONS} texts that say what is done, such as "
    '["take pair", "open"]',
    "station": f"must be one of {', '.join(Station)}",
    "hazards": f"must be a list of any of {', '.join(Hazard)}",
    "either": f"must be a list of any of {', '.join(Either)}",
    "share": _PART_OF_WIDTH,
    "shape": _PART_OF_WIDTH,
}
"""What would be right under a key; the others hold a line of text."""

_A_LINE = _text(LONGEST_LINE)


def read_part(kind: type, value: object) -> Fraction:
    """The hook by which msgspec reads a part of the unit's width; raises ValueError."""
    if isinstance(value, str) and re.fullmatch(_PART, value):
        part = Fraction(value)
        if part <= 1:
            return part
    raise ValueError(_PART_OF_WIDTH)


def wrong_keys(document: dict[str, Any]) -> Iterator[Wrong]:
    """Every key that is missing, unknown, or holds what it can't, one after the other.

    What is wrong becomes None in `document`, so that the rest can be held against each other; an
    id that is text stays, for others name it.
    """
    yield from _wrong_in(document, MethodTable, ())
    for name, model in (("piles", PileTable), ("stages", StageDefinition)):
        tables: list[Any] = document.get(name) or []
        for index, table in enumerate(tables):
            if isinstance(table, dict):
                yield from _wrong_in(table, model, (name, index))
            else:
                yield (name, index), f"a table is expected here: the heading [[{name}]]."
                tables[index] = {}


def _wrong_in(table: dict[str, Any], model: type[Struct], path: Path) -> Iterator[Wrong]:
    known = {field.name: field for field in fields(model)}
    missing = [name for name, field in known.items() if field.required and name not in table]
    for key in list(table):
        if key not in known:
            yield (*path, key), _unknown(key, [*known])
        elif not _fits(table[key], known[key]):
            yield (*path, key), _sentence(key, table[key])
            if key != "id" or not isinstance(table[key], str):
                table[key] = None
    for key in missing:
        if key in ("piles", "stages"):
            yield (key,), f"at least one [[{key}]] is needed."
        else:
            yield (*path, key), f"'{key}' is missing. It {_RIGHT.get(key, _A_LINE)}."


def _fits(value: object, field: FieldInfo) -> bool:
    if field.name in ("piles", "stages"):
        # Each table has its own turn.
        return isinstance(value, list) and 1 <= len(value) <= MOST_PILES
    try:
        msgspec.convert(value, field.type, dec_hook=read_part)
    except msgspec.ValidationError:
        return False
    return True


def _unknown(key: str, known: list[str]) -> str:
    from difflib import get_close_matches

    nearest = get_close_matches(key[:LONGEST_ID], known, n=1, cutoff=0.0)[0]
    return (
        f"the key {quoted(key)} is not known; take it out, or write what is meant. The nearest "
        f"is '{nearest}'; known are {', '.join(known)}."
    )


def _sentence(key: str, value: object) -> str:
    if key in ("piles", "stages"):
        if isinstance(value, list) and value:
            return f"there are {len(value)} [[{key}]], and at most {MOST_PILES} can be read."
        return f"at least one [[{key}]] is needed."
    said = ""
    if key == "hazards" and isinstance(value, list):
        strange = [one for one in value if isinstance(one, str) and one not in tuple(Hazard)]
        said = f"{quoted(strange[0])} is no hazard. " if strange else ""
    elif isinstance(value, str) and key == "station":
        said = f"{quoted(value)} is no station. "
    return f"{said}'{key}' {_RIGHT.get(key, _A_LINE)}."

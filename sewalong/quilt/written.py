"""A quilt file as it is written: its tables, its keys and what each may hold.

The one module that imports pydantic, which takes a while to load; only `quilt.file` imports it.

Every key may be missing here, and nothing is held against anything else: so what is good in a
file can be understood although something in it is bad, and all faults come out together.
"""

from __future__ import annotations

import difflib
import re
from collections.abc import Mapping
from fractions import Fraction
from typing import Annotated, Any

from pydantic import BaseModel, ConfigDict, PlainValidator, ValidationError, ValidationInfo

from sewalong.lengths import LengthFault, Unit, parse
from sewalong.lengths.fault import quoted
from sewalong.quilt import rules
from sewalong.quilt.faults import FAULTS_AT_MOST, FaultList
from sewalong.quilt.lines import Path
from sewalong.quilt.syntax import Decimals

_NOTHING = re.compile(r"\s*0(?:\.0*)?\s*(?:in|cm|mm)?\s*")


def _length(value: object, info: ValidationInfo) -> Fraction:
    """A length in inches; a bare number, and text with no unit, is in the owner's unit."""
    if isinstance(value, Decimals):
        value = value.written.replace("_", "").removeprefix("+")
    elif isinstance(value, int) and not isinstance(value, bool):
        value = str(value)
    if not isinstance(value, str):
        raise ValueError('This must be a length, such as "2 1/2", "6.35 cm" or 2.5.')
    try:
        return parse(value, info.context["unit"] if info.context else Unit.INCH)
    except LengthFault as fault:
        raise ValueError(fault.sentence) from None


def _length_or_none(value: object, info: ValidationInfo) -> Fraction:
    """As `_length`, for what may also be left out altogether: "0", "0 in" or a bare 0."""
    said = value.written if isinstance(value, Decimals) else value
    if not isinstance(said, bool) and _NOTHING.fullmatch(str(said)):
        return Fraction(0)
    return _length(value, info)


def _name(value: object) -> str:
    return rules.a_name(value.strip() if isinstance(value, str) else value)


def _notes(value: object) -> str:
    return rules.notes(value.strip() if isinstance(value, str) else value)


def _method(value: object) -> str:
    return rules.a_name(value)


def _pieces(value: object) -> int:
    return rules.whole(value, rules.MOST_PIECES)


def _rows(value: object) -> int:
    return rules.whole(value, rules.MOST_ROWS)


_Length = Annotated[Fraction | None, PlainValidator(_length)]
_Name = Annotated[str | None, PlainValidator(_name)]
_Pieces = Annotated[int | None, PlainValidator(_pieces)]
_Rows = Annotated[int | None, PlainValidator(_rows)]
_Allowance = Annotated[Fraction | None, PlainValidator(_length_or_none)]
_Metres = Annotated[int | None, PlainValidator(rules.metres)]
_Colour = Annotated[str | None, PlainValidator(rules.colour)]


class _Table(BaseModel):
    model_config = ConfigDict(extra="forbid", strict=True, frozen=True)


class Counted(_Table):
    """How many pieces there are: `count`, or `packs` of `in_a_pack`."""

    count: _Pieces = None
    packs: _Pieces = None
    in_a_pack: _Pieces = None


class Squares(Counted):
    """[squares]: squares of one `size`."""

    size: _Length = None


class Strips(Counted):
    """[strips]: strips of one `width`, and the `length` of each that can be used."""

    width: _Length = None
    length: _Length = None


class More(Counted):
    """One [[more]]: another pile to begin with, of squares or of strips."""

    pile: _Name = None
    size: _Length = None
    width: _Length = None
    length: _Length = None


class Layout(_Table):
    """[layout]: rows down and columns across."""

    rows: _Rows = None
    columns: _Rows = None


class WrittenBorder(_Table):
    """One [[border]], the inner ones first."""

    cut: _Length = None
    cloth: _Name = None
    colour: _Colour = None


class WrittenFabric(_Table):
    """One [[fabric]] of the units."""

    letter: Annotated[str | None, PlainValidator(rules.letter)] = None
    name: _Name = None
    colour: _Colour = None


class WrittenCloth(_Table):
    """[cloth]: what she chooses about cloth, joins and thread. The keys are those of Choices."""

    usable: _Length = None
    margin: _Allowance = None
    binding: _Length = None
    binding_ends: _Allowance = None
    joins: Annotated[str | None, PlainValidator(rules.joins)] = None
    corners: Annotated[str | None, PlainValidator(rules.corners)] = None
    spool_metres: _Metres = None
    bobbin_metres: _Metres = None
    own_seam: _Length = None


class Finishing(_Table):
    """[finishing]: the stages wanted after the top."""

    stages: Annotated[tuple[str, ...], PlainValidator(rules.finishing)] = ()


class WrittenQuilt(_Table):
    """A whole quilt file."""

    name: _Name = None
    method: Annotated[str | None, PlainValidator(_method)] = None
    unit: Annotated[Unit, PlainValidator(rules.owner_unit)] = Unit.INCH
    seam: _Length = None
    notes: Annotated[str, PlainValidator(_notes)] = ""
    squares: Squares | None = None
    strips: Strips | None = None
    more: list[More] | None = None
    layout: Layout | None = None
    border: list[WrittenBorder] | None = None
    finishing: Finishing | None = None
    fabric: list[WrittenFabric] | None = None
    cloth: WrittenCloth | None = None


_TABLES: dict[str, type[_Table]] = {
    "squares": Squares,
    "strips": Strips,
    "more": More,
    "layout": Layout,
    "border": WrittenBorder,
    "finishing": Finishing,
    "fabric": WrittenFabric,
    "cloth": WrittenCloth,
}
_SEVERAL = ("more", "border", "fabric")


def understood(document: dict[str, Any], faults: FaultList) -> WrittenQuilt:
    """What `document` says as far as it makes sense; what does not is added to `faults`.

    A bad value is taken out of `document` and the rest is read again, so that what hangs
    together with the good values can still be checked.
    """
    try:
        unit = rules.owner_unit(document.get("unit", "inch"))
    except ValueError:
        unit = Unit.INCH
    try:
        return WrittenQuilt.model_validate(document, context={"unit": unit})
    except ValidationError as error:
        wrong = error.errors(include_url=False, include_input=False)
    for one in wrong[:FAULTS_AT_MOST]:
        faults.add(one["loc"], _sentence(one["loc"], one["type"], one.get("ctx", {})))
    faults.leave_unlisted(len(wrong[FAULTS_AT_MOST:]))
    for one in wrong:
        _take_out(document, one["loc"])
    return WrittenQuilt.model_validate(document, context={"unit": unit})


def _take_out(document: dict[str, Any], path: Path) -> None:
    """Take away what stands at `path`; something in a list takes the whole list with it."""
    holder: Any = document
    for part in path[:-1]:
        if isinstance(holder, dict) and part not in holder:
            return
        holder = holder[part]
    if isinstance(holder, list):
        _take_out(document, path[:-1])
    else:
        holder.pop(path[-1], None)


def _sentence(path: Path, kind: str, context: Mapping[str, Any]) -> str:
    match kind:
        case "value_error":
            return str(context["error"])
        case "extra_forbidden":
            return _unknown_key(path)
        case _:  # "model_type" or "list_type": something else where tables should be.
            name = str(path[0])
            which = "double brackets for each" if name in _SEVERAL else "brackets"
            return (
                f"This must be a table: the heading {_heading(name)}, with {which}, and below it "
                f"its keys ({', '.join(_TABLES[name].model_fields)})."
            )


def _unknown_key(path: Path) -> str:
    key = str(path[-1])
    table = str(path[0]) if len(path) > 1 else None
    known = tuple((_TABLES[table] if table else WrittenQuilt).model_fields)
    where = f"under {_heading(table)}" if table else "at the top of the file"
    return f"{quoted(key)} is not known {where}. {_what_is_meant(key, known)}"


def _what_is_meant(key: str, known: tuple[str, ...]) -> str:
    if key in _TABLES:
        return f"Write it as a heading of its own, {_heading(key)}."
    if key in WrittenQuilt.model_fields:
        return "It belongs at the top of the file, above the first heading."
    homes = [_heading(name) for name, model in _TABLES.items() if key in model.model_fields]
    if homes:
        return f"It belongs under {' or '.join(homes)}."
    nearest = difflib.get_close_matches(key[:40], known, n=1, cutoff=0.0)[0]
    return f'The nearest known key is "{nearest}"; known are {", ".join(known)}.'


def _heading(table: str) -> str:
    return f"[[{table}]]" if table in _SEVERAL else f"[{table}]"

"""What a quilt file says, as far as it makes sense; what does not becomes a fault.

The one module that loads pydantic, or rather its core, which reads a file as well and loads in a
fifth of the time of its models; only `quilt.file` imports this one.
"""

from __future__ import annotations

import difflib
import re
from collections.abc import Callable, Mapping
from fractions import Fraction
from functools import cache
from typing import Any

from pydantic_core import SchemaValidator, ValidationError, core_schema

from sewalong.lengths import LengthFault, Unit, parse
from sewalong.lengths.fault import quoted
from sewalong.quilt.file import rules
from sewalong.quilt.file.faults import FAULTS_AT_MOST, FaultList
from sewalong.quilt.file.tables import SEVERAL, TABLES, WrittenQuilt, keys_of
from sewalong.quilt.file.toml_errors import Decimals
from sewalong.quilt.file.toml_lines import Path

_NOTHING = re.compile(r"\s*0(?:\.0*)?\s*(?:in|cm|mm)?\s*")


def _length(value: object, info: core_schema.ValidationInfo[Any]) -> Fraction:
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


def _length_or_none(value: object, info: core_schema.ValidationInfo[Any]) -> Fraction:
    """As `_length`, for what may also be left out altogether: "0", "0 in" or a bare 0."""
    said = value.written if isinstance(value, Decimals) else value
    if not isinstance(said, bool) and _NOTHING.fullmatch(str(said)):
        return Fraction(0)
    return _length(value, info)


def _name(value: object) -> str:
    return rules.a_name(value.strip() if isinstance(value, str) else value)


def _notes(value: object) -> str:
    return rules.notes(value.strip() if isinstance(value, str) else value)


def _pieces(value: object) -> int:
    return rules.whole(value, rules.MOST_PIECES)


def _rows(value: object) -> int:
    return rules.whole(value, rules.MOST_ROWS)


_RULES: dict[str, Callable[[object], object]] = {
    "name": _name,
    "method": rules.a_name,
    "unit": rules.owner_unit,
    "notes": _notes,
    "count": _pieces,
    "packs": _pieces,
    "in_a_pack": _pieces,
    "pile": _name,
    "rows": _rows,
    "columns": _rows,
    "cloth": _name,
    "colour": rules.colour,
    "stages": rules.finishing,
    "letter": rules.letter,
    "joins": rules.joins,
    "corners": rules.corners,
    "spool_metres": rules.metres,
    "bobbin_metres": rules.metres,
}
"""What each key may hold, in whichever table it stands; the others hold lengths."""


_MAY_BE_NOTHING = ("margin", "binding_ends")


@cache
def _validator() -> SchemaValidator:
    return SchemaValidator(_table(WrittenQuilt))


def _table(table: type[Any]) -> core_schema.CoreSchema:
    """`table` as the validator wants it told: its keys, each with its rule, and no others."""
    keys = [
        core_schema.dataclass_field(key, _may_be_missing(_value(key, table), table, key))
        for key in keys_of(table)
    ]
    arguments = core_schema.dataclass_args_schema(table.__name__, keys, extra_behavior="forbid")
    return core_schema.dataclass_schema(table, arguments, list(keys_of(table)))


def _may_be_missing(
    value: core_schema.CoreSchema, table: type[Any], key: str
) -> core_schema.CoreSchema:
    return core_schema.with_default_schema(value, default=getattr(table, key))


def _value(key: str, table: type[Any]) -> core_schema.CoreSchema:
    """What may stand behind `key`: a table, several, or what its rule makes of a value."""
    if table is WrittenQuilt and key in TABLES:
        one = _table(TABLES[key])
        return core_schema.list_schema(one, strict=True) if key in SEVERAL else one
    if key in _RULES:
        return core_schema.no_info_plain_validator_function(_RULES[key])
    length = _length_or_none if key in _MAY_BE_NOTHING else _length
    return core_schema.with_info_plain_validator_function(length)


def _validated(document: dict[str, Any], unit: Unit) -> WrittenQuilt:
    """Raises ValidationError with everything that is wrong with the document."""
    found: WrittenQuilt = _validator().validate_python(document, context={"unit": unit})
    return found


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
        return _validated(document, unit)
    except ValidationError as error:
        wrong = error.errors(include_url=False, include_input=False)
    for one in wrong[:FAULTS_AT_MOST]:
        faults.add(one["loc"], _sentence(one["loc"], one["type"], one.get("ctx", {})))
    faults.leave_unlisted(len(wrong[FAULTS_AT_MOST:]))
    for one in wrong:
        _take_out(document, one["loc"])
    return _validated(document, unit)


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
        case "unexpected_keyword_argument":
            return _unknown_key(path)
        case _:  # "dataclass_type" or "list_type": something else where tables should be.
            name = str(path[0])
            which = "double brackets for each" if name in SEVERAL else "brackets"
            return (
                f"This must be a table: the heading {_heading(name)}, with {which}, and below it "
                f"its keys ({', '.join(keys_of(TABLES[name]))})."
            )


def _unknown_key(path: Path) -> str:
    key = str(path[-1])
    table = str(path[0]) if len(path) > 1 else None
    known = keys_of(TABLES[table] if table else WrittenQuilt)
    where = f"under {_heading(table)}" if table else "at the top of the file"
    return f"{quoted(key)} is not known {where}. {_what_is_meant(key, known)}"


def _what_is_meant(key: str, known: tuple[str, ...]) -> str:
    if key in TABLES:
        return f"Write it as a heading of its own, {_heading(key)}."
    if key in keys_of(WrittenQuilt):
        return "It belongs at the top of the file, above the first heading."
    homes = [_heading(name) for name, model in TABLES.items() if key in keys_of(model)]
    if homes:
        return f"It belongs under {' or '.join(homes)}."
    nearest = difflib.get_close_matches(key[:40], known, n=1, cutoff=0.0)[0]
    return f'The nearest known key is "{nearest}"; known are {", ".join(known)}.'


def _heading(table: str) -> str:
    return f"[[{table}]]" if table in SEVERAL else f"[{table}]"

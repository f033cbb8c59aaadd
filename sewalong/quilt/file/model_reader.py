"""What a quilt file says, as far as it makes sense; what does not becomes a fault.

The one module that loads pydantic, or rather its core; only the reader imports this one.
"""

from __future__ import annotations

from functools import cache
from typing import TYPE_CHECKING, Any, TypeVar, get_origin

from msgspec import Struct
from msgspec.structs import fields
from pydantic_core import SchemaValidator, ValidationError, core_schema

from sewalong.lengths import Unit
from sewalong.quilt import rules
from sewalong.quilt.file import values
from sewalong.quilt.file.faults import FAULTS_AT_MOST, FaultList
from sewalong.quilt.file.models import QuiltFile, table_in

if TYPE_CHECKING:
    from sewalong.quilt.file.toml_lines import Path

Model = TypeVar("Model", bound=Struct)


def understood(document: dict[str, Any], faults: FaultList) -> QuiltFile:
    """What `document` says of a quilt; as `read_as`."""
    return read_as(QuiltFile, document, faults)


def read_as(model: type[Model], document: dict[str, Any], faults: FaultList) -> Model:
    """What `document` says as far as it makes sense; what does not is added to `faults`.

    A bad value is taken out of `document` and the rest is read again, so that what hangs
    together with the good values can still be checked.
    """
    try:
        unit = rules.owner_unit(document.get("unit", "inch"))
    except ValueError:
        unit = Unit.INCH
    try:
        return _validated(model, document, unit)
    except ValidationError as error:
        wrong = error.errors(include_url=False, include_input=False)
    from sewalong.quilt.file.fault_sentences import fault_sentence

    for one in wrong[:FAULTS_AT_MOST]:
        said = fault_sentence(one["loc"], one["type"], one.get("ctx", {}), model)
        faults.add(one["loc"], said)
    faults.leave_unlisted(len(wrong[FAULTS_AT_MOST:]))
    for one in wrong:
        _take_out(document, one["loc"])
    return _validated(model, document, unit)


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


def _validated(model: type[Model], document: dict[str, Any], unit: Unit) -> Model:
    """Raises ValidationError with everything that is wrong with the document."""
    found: Model = _validator(model).validate_python(document, context=unit)
    return found


@cache
def _validator(model: type[Struct]) -> SchemaValidator:
    return SchemaValidator(_table(model))


def _table(table: type[Struct]) -> core_schema.CoreSchema:
    """A table with the keys of its model and no others, any of which may be missing."""
    keys = {
        key.name: core_schema.typed_dict_field(_value(key.type), required=False)
        for key in fields(table)
    }
    said = core_schema.typed_dict_schema(keys, strict=True, extra_behavior="forbid")
    return core_schema.no_info_after_validator_function(lambda keys: table(**keys), said)


def _value(kind: Any) -> core_schema.CoreSchema:
    """What may stand behind a key: several tables, one, or what the function of its type takes."""
    table = table_in(kind)
    if table is not None:
        one = _table(table)
        return core_schema.list_schema(one, strict=True) if get_origin(kind) is list else one
    function = kind.__metadata__[0]
    if function in (values.length, values.length_or_nothing, values.across_and_down):
        return core_schema.with_info_plain_validator_function(function)
    return core_schema.no_info_plain_validator_function(function)

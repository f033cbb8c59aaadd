"""What to say of a value, a key or a table that the models of a quilt file do not allow."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from msgspec import Struct

from sewalong.lengths.fault import quoted
from sewalong.quilt.file.models import QuiltFile, heading, keys_of, several_of, tables_of
from sewalong.quilt.file.toml_lines import Path


def fault_sentence(
    path: Path, kind: str, context: Mapping[str, Any], model: type[Struct] = QuiltFile
) -> str:
    """What is wrong at `path` of a file of `model` and what would be right; `kind` and `context`
    are pydantic's."""
    match kind:
        case "value_error":
            return str(context["error"])
        case "extra_forbidden":
            return _unknown_key(path, model)
        case _:  # "dict_type" or "list_type": something else where tables should be.
            return _no_table(str(path[0]), model)


def _no_table(name: str, model: type[Struct]) -> str:
    which = "double brackets for each" if name in several_of(model) else "brackets"
    return (
        f"This must be a table: the heading {heading(name, model)}, with {which}, and below it "
        f"its keys ({', '.join(keys_of(tables_of(model)[name]))})."
    )


def _unknown_key(path: Path, model: type[Struct]) -> str:
    key = str(path[-1])
    table = str(path[0]) if len(path) > 1 else None
    known = keys_of(tables_of(model)[table] if table else model)
    where = f"under {heading(table, model)}" if table else "at the top of the file"
    return f"{quoted(key)} is not known {where}. {_what_is_meant(key, known, model)}"


def _what_is_meant(key: str, known: tuple[str, ...], model: type[Struct]) -> str:
    tables = tables_of(model)
    if key in tables:
        return f"Write it as a heading of its own, {heading(key, model)}."
    if key in keys_of(model):
        return "It belongs at the top of the file, above the first heading."
    homes = [heading(name, model) for name, table in tables.items() if key in keys_of(table)]
    if homes:
        return f"It belongs under {' or '.join(homes)}."
    from difflib import get_close_matches

    nearest = get_close_matches(key[:40], known, n=1, cutoff=0.0)[0]
    return f'The nearest known key is "{nearest}"; known are {", ".join(known)}.'

"""Answers put into the tables of a quilt file, where the one reader of those reads them.

Each function changes the tables and raises ValueError, in a plain sentence, for an answer that
cannot be put there. Whether what is put there makes a quilt is for the reader to say.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from sewalong.lengths import Unit
from sewalong.piecing.catalogue import method_ids, written_method
from sewalong.piecing.definition import Definition
from sewalong.quilt.beginning.questions import (
    BORDERS,
    COUNT,
    COUNT_OF,
    FABRICS,
    FINISHING,
    LAYOUT,
    LENGTH,
    METHOD,
    NAME,
    SEAM,
    SETTING,
    SIZE,
    TRIM,
)
from sewalong.quilt.beginning.wording import (
    AS_THEY_ARE,
    is_nothing,
    length_text,
    read_borders,
    read_count,
    read_fabrics,
    read_finishing,
    read_put_together,
    read_setting,
    usual_cloths,
)
from sewalong.quilt.choices import Fabric
from sewalong.quilt.quilt import StartPile
from sewalong.quilt.setting import USUAL_SASH

Tables = dict[str, Any]
"""A quilt file as TOML gives it."""

_CLOTHS = {"sashed": "sash cloth", "on point": "triangle cloth"}
"""What the cloth of a setting is called until it is named."""


def put(tables: Tables, id: str, text: str, written: Definition, unit: Unit) -> None:
    """Put the answer to question `id` into `tables` of a quilt by the method `written`."""
    if id.startswith(COUNT_OF):
        _count(pile_table(tables, id.removeprefix(COUNT_OF)), text)
    elif id == COUNT:
        _count(main_pile(tables, written), text)
    elif id == SIZE:
        main_pile(tables, written)["width" if written.starts[0].strip else "size"] = text
    elif id == LENGTH:
        main_pile(tables, written)["length"] = text
    elif id == TRIM:
        tables.pop(TRIM, None)
        if not is_nothing(text):
            tables[TRIM] = text
    else:
        _PUT[id](tables, text, unit)


def main_pile(tables: Tables, written: Definition) -> Tables:
    """The table of the pile the method names first."""
    table: Tables = tables.setdefault("strips" if written.starts[0].strip else "squares", {})
    return table


def put_pile(tables: Tables, start: StartPile, unit: Unit) -> None:
    """Put a pile beside the main one, its size and count."""
    side = "size" if start.length is None else "width"
    table = pile_table(tables, start.pile)
    table[side] = length_text(start.size, unit)
    _count(table, str(start.count))


def pile_table(tables: Tables, pile: str) -> Tables:
    """The table of a pile beside the main one."""
    for table in tables.setdefault("more", []):
        if table["pile"] == pile:
            found: Tables = table
            return found
    tables["more"].append({"pile": pile})
    return pile_table(tables, pile)


def _count(table: Tables, text: str) -> None:
    count = read_count(text)
    for key in ("count", "packs", "in_a_pack"):
        table.pop(key, None)
    table.update(count)


def method_in(text: str) -> tuple[str, str]:
    """The key of a quilt file that the answer belongs under, and what is written there."""
    if text.endswith(".toml") or "/" in text:
        return "method_file", text
    said = " ".join(text.casefold().split())
    if said not in method_ids():
        named = {written_method(id).name.casefold(): id for id in method_ids()}
        return METHOD, named.get(said, text)
    return METHOD, said


def _method(tables: Tables, text: str, unit: Unit) -> None:
    key, said = method_in(text)
    tables[key] = said


def _seam(tables: Tables, text: str, unit: Unit) -> None:
    tables[SEAM] = text


def _setting(tables: Tables, text: str, unit: Unit) -> None:
    keys = read_setting(text)
    before = tables.pop(SETTING, {})
    if not keys:
        return
    kind = keys["kind"]
    named = before if before.get("kind") == kind else {}
    if kind == "sashed":
        keys.setdefault("sash", length_text(USUAL_SASH[unit], unit))
    kept = ("cloth", "colour", "larger") if kind == "on point" else ("cloth", "colour")
    keys |= {key: named[key] for key in kept if key in named}
    keys.setdefault("cloth", _CLOTHS[str(kind)])
    if keys.get("cornerstones"):
        stones = ("cornerstone_cloth", "cornerstone_colour")
        keys |= {key: named[key] for key in stones if key in named}
        keys.setdefault("cornerstone_cloth", "cornerstone cloth")
    tables[SETTING] = keys


def _layout(tables: Tables, text: str, unit: Unit) -> None:
    """How units are put together stays as it was where only rows and columns are said."""
    was = {key: said for key, said in tables.get(LAYOUT, {}).items() if key == "joined"}
    tables[LAYOUT] = {**was, **read_put_together(text)}


def _borders(tables: Tables, text: str, unit: Unit) -> None:
    """A border that is not named anew keeps the name and colour it had."""
    said, before = read_borders(text, unit), tables.pop("border", [])
    usual = usual_cloths(len(said))
    for place, border in enumerate(said):
        had = before[place] if place < len(before) else {"cloth": usual[place]}
        if "cloth" not in border:
            border.update({key: had[key] for key in ("cloth", "colour") if key in had})
    if said:
        tables["border"] = said


def _finishing(tables: Tables, text: str, unit: Unit) -> None:
    tables.pop(FINISHING, None)
    if stages := read_finishing(text):
        tables[FINISHING] = {"stages": stages}


def _fabrics(tables: Tables, text: str, unit: Unit) -> None:
    """What she has squares of is what she says; names for what the method calls so stay."""
    before = tables.pop("fabric", [])
    named = [table for table in before if "squares" not in table]
    if before != named and text.endswith(AS_THEY_ARE):
        tables["fabric"] = before
        return
    others = [Fabric(**table) for table in named]
    if found := [*named, *read_fabrics(text, others)]:
        tables["fabric"] = found


def _name(tables: Tables, text: str, unit: Unit) -> None:
    tables[NAME] = text


_PUT: dict[str, Callable[[Tables, str, Unit], None]] = {
    METHOD: _method,
    SEAM: _seam,
    SETTING: _setting,
    LAYOUT: _layout,
    BORDERS: _borders,
    FINISHING: _finishing,
    FABRICS: _fabrics,
    NAME: _name,
}

_QUESTION_OF = {
    "method": METHOD,
    "method_file": METHOD,
    "seam": SEAM,
    "trim": TRIM,
    "setting": SETTING,
    "layout": LAYOUT,
    "border": BORDERS,
    "finishing": FINISHING,
    "fabric": FABRICS,
    "name": NAME,
}


def question_of(key: str, tables: Tables) -> str:
    """The question to which the key of a fault belongs, such as `squares.size` or `border[2].cut`."""
    table, _, part = key.partition(".")
    name, _, number = table.rstrip("]").partition("[")
    if name in _QUESTION_OF:
        return _QUESTION_OF[name]
    if part in ("size", "width"):
        return SIZE
    if part == "length":
        return LENGTH
    if name == "more" and number:
        return f"{COUNT_OF}{tables['more'][int(number) - 1]['pile']}"
    return COUNT

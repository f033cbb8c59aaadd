"""A quilt as a quilt file: what `reader` reads back as the same quilt, to be edited by hand."""

from __future__ import annotations

import json
from collections.abc import Iterator

from msgspec.structs import asdict

from sewalong.lengths import Length, Unit
from sewalong.lengths.printing import decimal, mixed
from sewalong.piecing.method_files import text_of
from sewalong.quilt.choices import Choices
from sewalong.quilt.quilt import Lot, Quilt, StartPile
from sewalong.quilt.setting import SetOnPoint


def quilt_file(quilt: Quilt) -> str:
    """The file: every key that says something else than holds without it, lengths exactly."""
    return "\n\n".join("\n".join(table) for table in tables_of(quilt)) + "\n"


def tables_of(quilt: Quilt) -> list[list[str]]:
    """The lines of each of its tables; those above the first heading are the first."""
    tables = [_top(quilt), *_starts(quilt), _layout(quilt), *_setting(quilt), *_borders(quilt)]
    return [*tables, *_fabrics(quilt), *_cloth(quilt), *_finishing(quilt)]


def _top(quilt: Quilt) -> list[str]:
    lines = [
        _said("name", quilt.name),
        *_method(quilt),
        _said("unit", quilt.unit.value),
        _long("seam", quilt.seam, quilt.unit),
    ]
    if quilt.trim is not None:
        width, length = (
            written_length(side, quilt.unit) for side in (quilt.trim.width, quilt.trim.length)
        )
        lines.append(_said("trim", f"{width} x {length} {quilt.unit.symbol}"))
    if quilt.notes:
        lines.append(_said("notes", quilt.notes))
    return lines


def _method(quilt: Quilt) -> list[str]:
    line = _said("method", quilt.method_id)
    if quilt.method_text in (None, text_of(quilt.method_id)):
        return [line]
    return ["# As it was when the quilt began: it is kept with the quilt.", line]


def _starts(quilt: Quilt) -> Iterator[list[str]]:
    """The first pile under the heading of its kind, every other and every further lot as one more."""
    first, *others = quilt.starts
    strips = first.length is not None
    lots = [(first, lot) for lot in first.in_lots[1:]]
    lots += [(start, lot) for start in others for lot in start.in_lots]
    yield ["[strips]" if strips else "[squares]", *_lot(first, first.in_lots[0], quilt)]
    for start, lot in lots:
        yield ["[[more]]", _said("pile", start.pile), *_lot(start, lot, quilt)]


def _lot(start: StartPile, lot: Lot, quilt: Quilt) -> Iterator[str]:
    yield _long("size" if start.length is None else "width", lot.size, quilt.unit)
    if start.length is not None:
        yield _long("length", start.length, quilt.unit)
    if lot.packs is None or lot.count % lot.packs:
        yield f"count = {lot.count}"
    else:
        yield f"packs = {lot.packs}"
        yield f"in_a_pack = {lot.count // lot.packs}"


def _layout(quilt: Quilt) -> list[str]:
    lines = ["[layout]", f"rows = {quilt.target.rows}", f"columns = {quilt.target.columns}"]
    return [*lines, _said("joined", quilt.joined)] if quilt.is_web else lines


def _setting(quilt: Quilt) -> Iterator[list[str]]:
    if isinstance(quilt.setting, SetOnPoint):
        on_point = quilt.setting
        lines = [_said("kind", "on point"), _said("cloth", on_point.cloth)]
        lines += _colour(on_point.colour)
        if on_point.larger:
            lines.append(_long("larger", on_point.larger, quilt.unit))
        yield ["[setting]", *lines]
    sashing = quilt.sashing
    if sashing is None:
        return
    lines = [_said("kind", "sashed"), _long("sash", sashing.cut, quilt.unit)]
    lines += [_said("cloth", sashing.cloth), *_colour(sashing.colour)]
    if sashing.frame:
        lines.append("frame = true")
    stones = sashing.cornerstones
    if stones is not None:
        lines += ["cornerstones = true", _said("cornerstone_cloth", stones.cloth)]
        lines += [f"cornerstone_{line}" for line in _colour(stones.colour)]
    yield ["[setting]", *lines]


def _borders(quilt: Quilt) -> Iterator[list[str]]:
    for border in quilt.borders:
        width = _long("cut", border.cut, quilt.unit)
        yield ["[[border]]", width, _said("cloth", border.cloth), *_colour(border.colour)]


def _fabrics(quilt: Quilt) -> Iterator[list[str]]:
    for fabric in quilt.fabrics:
        said = {key: value for key, value in asdict(fabric).items() if value is not None}
        yield [
            "[[fabric]]",
            *(
                f"{key} = {value}" if isinstance(value, int) else _said(key, value)
                for key, value in said.items()
            ),
        ]


def _colour(colour: str | None) -> list[str]:
    return [] if colour is None else [_said("colour", colour)]


def _cloth(quilt: Quilt) -> Iterator[list[str]]:
    usual = asdict(Choices())
    own = {key: said for key, said in asdict(quilt.choices).items() if said != usual[key]}
    if own:
        yield ["[cloth]", *(_choice(key, said, quilt.unit) for key, said in own.items())]


def _choice(key: str, said: object, unit: Unit) -> str:
    if isinstance(said, Length):
        return _long(key, said, unit)
    return f"{key} = {said}" if isinstance(said, int) else _said(key, str(said))


def _finishing(quilt: Quilt) -> Iterator[list[str]]:
    if quilt.finishing:
        stages = ", ".join(map(_quoted, quilt.finishing))
        yield ["[finishing]", f"stages = [{stages}]"]


def _said(key: str, text: str) -> str:
    return f"{key} = {_quoted(text)}"


def _quoted(text: str) -> str:
    """Text as TOML 1.0 writes it between quotes: it escapes as JSON does, but for U+007F, which
    no text of a quilt holds."""
    return json.dumps(text, ensure_ascii=False)


def _long(key: str, length: Length, unit: Unit) -> str:
    return _said(key, f"{written_length(length, unit)} {unit.symbol}" if length else "0")


def written_length(length: Length, unit: Unit) -> str:
    """A length exactly, as a person writes it in the unit, which is left off: `6 1/4`, `12.5`."""
    number = length / unit.length
    return decimal(number) if unit is Unit.CM and 1000 % number.denominator == 0 else mixed(number)

"""A quilt as a quilt file to begin from: a remark at each key, and every other key left out.

A line that is left out begins with `# ` and its key or heading. With that taken away, alone or
with all the others under its heading, the file is still right.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence

from sewalong.lengths import Length
from sewalong.piecing.faults import SizeRefused
from sewalong.quilt.choices import Choices
from sewalong.quilt.derived import derived
from sewalong.quilt.file.writer import tables_of, written_length
from sewalong.quilt.quilt import Quilt
from sewalong.quilt.rules import MOST_PIECES
from sewalong.quilt.setting import USUAL_SASH

_FIRST = (
    "# A quilt file. Change what you like, and take the # away in front of what you want besides.",
    "# Then: sewalong check FILE tells every fault with its line, sewalong start FILE begins it.",
)

_REMARKS = {
    "method": "sewalong methods lists them; or one of yours: method_file = \"my-method.toml\"",
    "method_file": "a method of your own, found from the folder of this file",
    "unit": "or \"cm\"; a length with no unit of its own is in this",
    "seam": "the allowance",
    "trim": "what units are trimmed to; all sizes follow it",
    "notes": "for yourself; several lines go between three quotes",
    "count": "or packs = 4 and in_a_pack = 42 in its place",
    "packs": "or simply count = 168 in place of this and the next",
    "in_a_pack": "count one: packs of one name hold from 22 to 56",
    "length": "as much of a strip as can be used",
    "rows": "on point, rows and columns count whole units along the edges",
    "columns": "joined = \"web\" below it: column by column, threads uncut, if edge to edge",
    "joined": "column by column, threads uncut between the rows; or \"rows\"",
    "kind": "or \"straight\", or \"on point\" with cloth, the triangles', and no other key",
    "sash": "the width sashes are cut at",
    "frame": "sashes around the outside too",
    "cornerstones": "squares where sashes meet",
    "larger": "what the triangles' squares are cut larger, to be trimmed later",
    "cut": "the width its strips are cut at; the inner border stands first",
    "letter": "what sewalong methods show METHOD calls it",
    "colour": "for pictures",
    "stages": "any of these, after the top",
    "usable": "width between the selvedges",
    "margin": "of back and batting, each side",
    "binding": "the width its strips are cut at",
    "binding_ends": "for corners and the last join",
    "joins": "or \"straight\": how strips are joined",
    "corners": "or \"ends first\", \"mitred\"",
    "spool_metres": "off the label",
    "own_seam": "the allowance your own seams measure",
}  # fmt: skip

_ABOUT = {
    "more": "Squares that came in another size: all units follow the smallest.",
    "setting": "Sashes between the units; without this they are set edge to edge.",
    "fabric": "A name for a fabric of the units, one heading for each.",
    "cloth": "What holds for cloth, joins and thread.",
}

_ABOUT_HERS = "Or one of the fabrics you have squares of, to make sets from."
_OF_HERS = {
    "letter": "your own",
    "squares": "so many of it",
    "colour": "or value = \"medium\", and no second colour, where that is all there is to say",
    "share": "of the second colour, in a hundred",
    "kind": "or \"solid\", \"large print\", \"one-way\"",
}  # fmt: skip


def commented_file(quilt: Quilt, method_file: str = "") -> str:
    """The file; with `method_file` it names that file, of the method `quilt` goes by."""
    there = list(tables_of(quilt))
    if method_file:
        there[0] = _naming(there[0], method_file)
    headings = {re.sub(r"[][]", "", table[0]) for table in there[1:]}
    blocks = ["\n".join(_FIRST), *("\n".join(_remarked(table, quilt)) for table in there)]
    blocks += ["\n".join(lines) for name, lines in _left_out(quilt) if name not in headings]
    return "\n\n".join(blocks) + "\n"


def _naming(top: Sequence[str], file: str) -> list[str]:
    said = file.replace("\\", "\\\\").replace('"', '\\"')
    kept = [line for line in top if not line.startswith(("method = ", "# As it was"))]
    return [kept[0], f'method_file = "{said}"', *kept[1:]]


def _remarked(table: Sequence[str], quilt: Quilt) -> Iterator[str]:
    """The lines of a table with their remarks, and behind them the keys that are left out."""
    yield from (_with_remark(line) for line in table)
    keys = {line.partition(" = ")[0] for line in table}
    heading = table[0] if table[0].startswith("[") else ""
    for key, value in _further(heading, keys, quilt).items():
        if key not in keys:
            yield _with_remark(f"# {key} = {value}")


def _with_remark(line: str, remarks: Mapping[str, str] = _REMARKS) -> str:
    remark = remarks.get(line.removeprefix("# ").partition(" = ")[0])
    return f"{line:<34} # {remark}" if remark and " = " in line else line


def _further(heading: str, keys: set[str], quilt: Quilt) -> Mapping[str, str]:
    """What else may stand under a heading of this quilt, each with a value it can have."""
    match heading:
        case "":
            return {**_trim(quilt), "notes": '"For the blue room."'}
        case "[[border]]":
            return {"colour": '"#f3ead8"'}
        case "[[fabric]]":
            return {"colour": '"#243b6b"'}
        case "[setting]" if quilt.is_on_point:
            return {"colour": '"#e3d9c3"', "larger": _long(Length(1, 2), quilt)}
        case "[setting]":
            stones = {"cornerstone_colour": '"#e2725b"'} if "cornerstones" in keys else {}
            return {"colour": '"#e3d9c3"', "frame": "true", **stones}
        case "[cloth]":
            return _choices(quilt)
        case _:
            return {}


def _trim(quilt: Quilt) -> Mapping[str, str]:
    made = derived(quilt).unit
    try:
        width, length = (_long(side, quilt) for side in made.trim_to(quilt.unit.trim_step))
    except SizeRefused:
        return {}
    return {"trim": width if width == length else f"{width[:-1]} x {length[1:]}"}


def _choices(quilt: Quilt) -> Mapping[str, str]:
    usual = Choices()
    lengths = {
        key: _long(getattr(usual, key), quilt)
        for key in ("usable", "margin", "binding", "binding_ends")
    }
    words = {"joins": '"diagonal"', "corners": '"sides first"'}
    thread = {"spool_metres": "500", "bobbin_metres": "50"}
    return {**lengths, **words, **thread, "own_seam": _long(quilt.seam, quilt)}


def _left_out(quilt: Quilt) -> Iterator[tuple[str, list[str]]]:
    """The headings that may stand besides, each left out with its keys, in the file's order."""
    first = quilt.starts[0]
    larger = first.size + Length(1, 2)
    if first.length is None and first.count < MOST_PIECES - 12 and not first.lots:
        more = {"pile": f'"{first.pile}"', "size": _long(larger, quilt), "count": "12"}
        yield _block("more", "[[more]]", more)
    sash = {"kind": '"sashed"', "sash": _long(_sash(quilt), quilt), "cloth": '"oat linen"'}
    stones = {"cornerstones": "true", "cornerstone_cloth": '"coral dots"'}
    colours = {"cornerstone_colour": '"#e2725b"', "colour": '"#e3d9c3"'}
    yield _block("setting", "[setting]", {**sash, "frame": "true", **stones, **colours})
    border = {"cut": _long(_sash(quilt), quilt), "cloth": '"cream linen"', "colour": '"#f3ead8"'}
    yield _block("border", "[[border]]", border)
    fabric = {"letter": '"A"', "name": '"indigo print"', "colour": '"#243b6b"'}
    yield _block("fabric", "[[fabric]]", fabric)
    hers = {"letter": '"H"', "name": '"rust dots"', "squares": "16", "colour": '"#a5532f"'}
    hers |= {"second": '"#f3ead8"', "share": "30", "kind": '"small print"'}
    yield _block("fabric", "[[fabric]]", hers, _ABOUT_HERS, _OF_HERS)
    yield _block("cloth", "[cloth]", _choices(quilt))
    yield _block("finishing", "[finishing]", {"stages": '["layer", "quilt", "bind"]'})


def _block(
    name: str,
    heading: str,
    keys: Mapping[str, str],
    about: str = "",
    remarks: Mapping[str, str] = _REMARKS,
) -> tuple[str, list[str]]:
    about = about or _ABOUT.get(name, "")
    lines = [_with_remark(f"# {key} = {value}", remarks) for key, value in keys.items()]
    return name, [*([f"# ({about})"] if about else []), f"# {heading}", *lines]


def _sash(quilt: Quilt) -> Length:
    """A width for sashes and borders that no seam of this quilt uses up."""
    return max(USUAL_SASH[quilt.unit], 4 * quilt.seam)


def _long(length: Length, quilt: Quilt) -> str:
    return f'"{written_length(length, quilt.unit)} {quilt.unit.symbol}"'

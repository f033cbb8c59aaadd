'''The quilt file: what a quilter writes down before she begins, in TOML.

    name = "Harbour lights"
    method = "stacked-four-patch"
    # method_file = "mine.toml"   # instead of method: one of your own, found from this file
    unit = "inch"             # or "cm"; "inch" unless given
    seam = "1/4"              # allowance; 1/4 in unless given, also where the unit is cm
    trim = "6 1/4"            # what units are trimmed to, if they are; or "4 1/2 x 2 1/2"
    notes = """
    May have several lines."""

    [squares]                 # for a method that begins with squares
    size = "5"
    packs = 4                 # packs and what was counted in one ...
    in_a_pack = 42
    # count = 168             # ... or simply a count

    [strips]                  # instead of [squares], for a method that begins with strips
    width = "2 1/2"
    length = "40"             # as much of it as can be used
    count = 40                # or packs and in_a_pack

    [[more]]                  # for each other pile the method begins with, and for squares of a
    pile = "small-square"     # pile that came in another size: units follow the smallest
    size = "2 7/8"            # or width, and length unless it is that of [strips]
    count = 96                # or packs and in_a_pack

    [layout]
    rows = 9
    columns = 9
    joined = "web"            # column by column, threads uncut; "rows" unless given

    [setting]                 # units set edge to edge unless given
    kind = "sashed"           # strips between them; or "straight", or "on point" as below
    sash = "2"                # the width sashes are cut at
    cloth = "oat linen"
    colour = "#e3d9c3"        # if pictures should have it
    frame = true              # sashes around the outside too; false unless given
    cornerstones = true       # squares where sashes meet; false unless given
    cornerstone_cloth = "coral dots"
    # cornerstone_colour = "#e2725b"
    # kind = "on point"       # units on a corner; rows and columns then count along the edges,
    # cloth = "oat linen"     # and triangles of this cloth fill them
    # larger = "1/2"          # what their squares are cut larger, to be trimmed later

    [[border]]                # the inner one first; none, or up to 12
    cut = "2 1/2"
    cloth = "cream linen"
    colour = "#f3ead8"        # if pictures should have it

    [[fabric]]                # a name for a fabric of the units; none need have one
    letter = "A"              # what `methods show METHOD` calls it
    name = "indigo print"
    colour = "#243b6b"        # or a name CSS has; if pictures should have it

    [[fabric]]                # with `squares`: one of those there are, to make sets from
    letter = "AB"             # her own letter then
    name = "rust dots"
    squares = 16              # so many of it
    # colour = "#a5532f"      # or value = "medium", where that is all there is to say
    # second = "#f3ead8"      # of a print: its second colour
    # share = 30              # and how much of it, in a hundred
    # kind = "small print"    # or "solid", "large print", "one-way"

    [cloth]                   # every key may be left out; these hold then
    usable = "40"             # width between the selvedges that can be used
    margin = "4"              # of back and batting around the top, each side
    binding = "2 1/2"         # width its strips are cut at
    binding_ends = "12"       # added for corners and the last join
    joins = "diagonal"        # or "straight": how strips are joined
    corners = "sides first"   # or "ends first", "mitred": how borders turn the corner
    # spool_metres = 500      # thread, off the label; no usual value
    # bobbin_metres = 50
    # own_seam = "17/64"      # the allowance her own seams measure

    [finishing]               # what is wanted after the top; none unless given
    stages = ["layer", "quilt", "bind"]

A length is text as people write it ("2 1/2", "2½", "6.35 cm") or a bare number (2.5); with no
unit of its own it is in `unit`. Names have 1 to 80 characters and notes at most 2,000; a layout
has at most 200 rows and columns, and a pile at most 9,999 pieces.
'''

from __future__ import annotations

from typing import TYPE_CHECKING

from msgspec.structs import asdict

from sewalong.lengths import Length
from sewalong.piecing.catalogue import UnknownMethod, method_ids, written_for
from sewalong.piecing.definition import Definition
from sewalong.piecing.derive import SEAM
from sewalong.piecing.method import MethodKey
from sewalong.piecing.method_files import text_of
from sewalong.quilt.choices import Choices, Fabric
from sewalong.quilt.file.faults import Fault, FaultList, QuiltFileFaults
from sewalong.quilt.file.model_reader import understood
from sewalong.quilt.file.models import Cloth, QuiltFile
from sewalong.quilt.file.models import Fabric as WrittenFabric
from sewalong.quilt.file.setting import setting_of
from sewalong.quilt.file.size_check import (
    why_border_fails,
    why_setting_fails,
    why_sizes_fail,
    why_trim_fails,
    why_web_fails,
)
from sewalong.quilt.file.starting_piles import starting_piles
from sewalong.quilt.file.toml_errors import decode, read_toml
from sewalong.quilt.quilt import Border, Quilt, Target
from sewalong.quilt.rules import FINISHING_STAGES, MOST_BORDERS, by_letter
from sewalong.quilt.size import Size
from sewalong.quilt.web import ROWS

if TYPE_CHECKING:
    from sewalong.quilt.file.method_file import LoadMethod
    from sewalong.quilt.file.toml_lines import Path

__all__ = [
    "FINISHING_STAGES",
    "Fault",
    "QuiltFileFaults",
    "read_quilt",
    "read_quilt_bytes",
    "read_tables",
]


def read_quilt_bytes(
    data: bytes, load: LoadMethod | None = None, kept: MethodKey | None = None
) -> Quilt:
    """The quilt in the bytes of a file, which must be UTF-8; else as `read_quilt`."""
    return read_quilt(decode(data), load, kept)


def read_quilt(text: str, load: LoadMethod | None = None, kept: MethodKey | None = None) -> Quilt:
    """The quilt a quilt file describes; `load` gives the method file it names, if it names one.

    With `kept`, the file is of a quilt under way by that method: it goes by it, and whatever
    became of its method file is not looked at.

    Raises QuiltFileFaults with everything that is wrong with it, each with its key and line.
    What is not TOML at all is one fault, as nothing behind it can be understood. Whether
    the sizes go together, and what units can be trimmed to, is tried only when nothing else is
    wrong.
    """
    text = text.removeprefix("\ufeff")
    return _quilt(read_toml(text), FaultList(text), load, kept)


def read_tables(
    tables: dict[str, object], load: LoadMethod | None = None, kept: MethodKey | None = None
) -> Quilt:
    """The same of the tables of a quilt file that was never written: its faults have no lines.

    What is wrong is taken out of `tables`.
    """
    return _quilt(tables, FaultList(""), load, kept)


def _quilt(
    document: dict[str, object],
    faults: FaultList,
    load: LoadMethod | None,
    kept: MethodKey | None,
) -> Quilt:
    written = understood(document, faults)
    seam = SEAM if written.seam is None else written.seam
    if written.name is None:
        faults.missing(("name",), 'The name is missing. Add it, such as name = "Harbour lights".')
    method_text, method = _method(written, load, kept, faults)
    starts = starting_piles(written, method, seam, faults)
    target = _target(written, faults)
    setting = setting_of(written, seam, target, faults)
    borders = _borders(written, seam, faults)
    fabrics = _fabrics(written, faults)
    faults.refuse_if_any()
    assert written.name is not None
    assert method is not None
    assert target is not None
    quilt = Quilt(
        name=written.name,
        method_id=method.id,
        unit=written.unit,
        seam=seam,
        starts=starts,
        target=target,
        borders=borders,
        finishing=written.finishing.stages,
        notes=written.notes,
        fabrics=fabrics,
        choices=_choices(written.cloth),
        trim=None if written.trim is None else Size(*written.trim),
        setting=setting,
        method_text=method_text,
        joined=_joined(written),
    )
    for pile, sentence in why_sizes_fail(quilt).items():
        faults.add(_size_of(pile, quilt, written), sentence)
    faults.refuse_if_any()
    if setting_refused := why_setting_fails(quilt):
        faults.add(("setting", "kind"), setting_refused)
    if web_refused := why_web_fails(quilt):
        faults.add(("layout", "joined"), web_refused)
    if trim_refused := why_trim_fails(quilt):
        faults.add(("trim",), trim_refused)
    faults.refuse_if_any()
    return quilt


def _method(
    written: QuiltFile, load: LoadMethod | None, kept: MethodKey | None, faults: FaultList
) -> tuple[str | None, Definition | None]:
    """The text of the method's file, and the method."""
    if kept is not None and (written.method_file is not None or written.method == kept.id):
        return kept.text, written_for(kept)
    if written.method_file is not None:
        if written.method is not None:
            faults.add(("method_file",), "The method is given twice. Keep method or method_file.")
        return _own_method(written.method_file, load, faults)
    if faults.is_faulty(("method_file",)):
        return None, None
    if written.method is None:
        known = ", ".join(f'"{id}"' for id in method_ids())
        faults.missing(("method",), f"The method is missing. Add method = and one of {known}.")
        return None, None
    text = text_of(written.method)
    try:
        return text, written_for(MethodKey(written.method, text=text))
    except UnknownMethod as fault:
        faults.add(("method",), str(fault))
        return None, None


def _own_method(
    file: str, load: LoadMethod | None, faults: FaultList
) -> tuple[str | None, Definition | None]:
    """The same of the maker's own `file`; its faults come out with the quilt's."""
    # Only a quilt with a method of its own needs what reads one.
    from sewalong.quilt.file.faults import MethodFileFaults
    from sewalong.quilt.file.method_file import method_text, read_method

    if load is None:
        faults.add(("method_file",), "No method file can be read here. Give a method instead.")
        return None, None
    try:
        text = method_text(load(file))
        return text, read_method(file, text)
    except MethodFileFaults as found:
        for fault in found.faults:
            place = ", " if fault.line or fault.key else ": "
            faults.add(("method_file",), f"In {file}{place}{fault}")
    except ValueError as refusal:
        faults.add(("method_file",), str(refusal))
    return None, None


def _target(written: QuiltFile, faults: FaultList) -> Target | None:
    layout = written.layout
    if layout is None:
        faults.missing(
            ("layout",),
            "The layout is missing. Add the heading [layout], and below it rows and columns.",
        )
        return None
    for key, number in (("rows", layout.rows), ("columns", layout.columns)):
        if number is None:
            faults.missing(
                ("layout", key), f"The number of {key} is missing. Add it, such as {key} = 9."
            )
    if layout.rows is None or layout.columns is None:
        return None
    return Target(layout.rows, layout.columns)


def _joined(written: QuiltFile) -> str:
    return (written.layout.joined if written.layout else None) or ROWS


def _borders(written: QuiltFile, seam: Length, faults: FaultList) -> tuple[Border, ...]:
    """The borders without a fault."""
    read: list[Border] = []
    for index, border in enumerate(written.border):
        if border.cut is None:
            faults.missing(
                ("border", index, "cut"),
                'The width this border is cut at is missing. Add it, such as cut = "2 1/2 in".',
            )
        elif why := why_border_fails(border.cut, seam, written.unit):
            faults.add(("border", index, "cut"), why)
        if border.cloth is None:
            faults.missing(
                ("border", index, "cloth"),
                'The cloth of this border is missing. Name it, such as cloth = "cream linen".',
            )
        if border.cut is not None and border.cloth is not None:
            read.append(Border(border.cut, border.cloth, border.colour))
    if len(written.border) > MOST_BORDERS:
        faults.add(
            ("border",),
            f"There are {len(written.border)} borders, and a quilt has at most {MOST_BORDERS}. "
            "Leave some out.",
        )
    return tuple(read)


def _fabrics(written: QuiltFile, faults: FaultList) -> tuple[Fabric, ...]:
    """The fabrics without a fault, in the order of their letters."""
    read: dict[str, Fabric] = {}
    for index, fabric in enumerate(written.fabric):
        if fabric.letter is None:
            faults.missing(
                ("fabric", index, "letter"),
                'The letter of this fabric is missing. Add it, such as letter = "A".',
            )
        elif fabric.letter in read:
            faults.add(
                ("fabric", index, "letter"),
                f"The letter {fabric.letter} stands here more than once. Give each fabric its own.",
            )
        if fabric.name is None:
            faults.missing(
                ("fabric", index, "name"),
                'The name of this fabric is missing. Add it, such as name = "indigo print".',
            )
        half_said = _is_half_said(fabric, index, faults)
        if fabric.letter is not None and fabric.name is not None and not half_said:
            read.setdefault(fabric.letter, Fabric(**asdict(fabric)))
    return tuple(read[letter] for letter in sorted(read, key=by_letter))


def _is_half_said(fabric: WrittenFabric, index: int, faults: FaultList) -> bool:
    """Whether a key of this fabric wants another beside it; that is said."""
    if fabric.second is not None and fabric.share is None:
        faults.missing(
            ("fabric", index, "share"),
            "How much of this fabric is of the second colour is missing. Add it, a number in a "
            "hundred such as share = 30.",
        )
    elif fabric.share is not None and fabric.second is None:
        faults.missing(
            ("fabric", index, "second"),
            'The second colour is missing. Add it, such as second = "#ffffff", or take the share out.',
        )
    elif fabric.second is not None and fabric.colour is None:
        faults.missing(
            ("fabric", index, "colour"),
            'The colour of the ground is missing. Add it, such as colour = "#243b6b".',
        )
    elif fabric.value is not None and fabric.colour is not None:
        faults.add(
            ("fabric", index, "value"),
            "Its colour says how light this fabric is. Take the value out, or the colour.",
        )
    else:
        return False
    return True


def _choices(written: Cloth) -> Choices:
    """What was written, and the usual where nothing was."""
    return Choices(**{key: said for key, said in asdict(written).items() if said is not None})


def _size_of(pile: str, quilt: Quilt, written: QuiltFile) -> Path:
    """Where the size of `pile` stands in the file."""
    start = next(start for start in quilt.starts if start.pile == pile)
    key = "size" if start.length is None else "width"
    for index, more in enumerate(written.more):
        if more.pile == pile:
            return ("more", index, key)
    return ("squares" if start.length is None else "strips", key)

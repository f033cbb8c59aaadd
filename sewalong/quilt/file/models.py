"""A quilt file as it is written: a model for each table, its keys, and what each may hold.

Every key may be missing here, and nothing is held against anything else: so what is good in a
file can be understood although something in it is bad, and all faults come out together.

Behind each type stands the function that makes it of a value. These are plain structs, which
`model_reader` has pydantic's core check a file against: models of pydantic's own would say the
same, but to import and define them nearly doubles the time of `sewalong plan FILE`.
"""

from fractions import Fraction
from typing import Annotated, Any, get_args, get_origin

from msgspec import Struct
from msgspec.structs import fields

from sewalong.lengths import Unit
from sewalong.quilt import rules
from sewalong.quilt.file import values

Length = Annotated[Fraction | None, values.length]
LengthOrNothing = Annotated[Fraction | None, values.length_or_nothing]
Name = Annotated[str | None, values.name]
Pieces = Annotated[int | None, values.pieces]
Rows = Annotated[int | None, values.rows]
Colour = Annotated[str | None, values.colour]
YesOrNo = Annotated[bool | None, rules.yes_or_no]
Metres = Annotated[int | None, rules.metres]


class Counted(Struct, frozen=True):
    """How many pieces there are: `count`, or `packs` of `in_a_pack`."""

    count: Pieces = None
    packs: Pieces = None
    in_a_pack: Pieces = None


class Squares(Counted, frozen=True):
    """[squares]: squares of one `size`."""

    size: Length = None


class Strips(Counted, frozen=True):
    """[strips]: strips of one `width`, and the `length` of each that can be used."""

    width: Length = None
    length: Length = None


class More(Counted, frozen=True):
    """One [[more]]: another pile to begin with, of squares or of strips."""

    pile: Name = None
    size: Length = None
    width: Length = None
    length: Length = None


class Layout(Struct, frozen=True):
    """[layout]: rows down and columns across, and how they are put together."""

    rows: Rows = None
    columns: Rows = None
    joined: Annotated[str | None, rules.joined] = None


class Border(Struct, frozen=True):
    """One [[border]], the inner ones first."""

    cut: Length = None
    cloth: Name = None
    colour: Colour = None


class Setting(Struct, frozen=True):
    """[setting]: how the units are set, and what lies between them."""

    kind: Annotated[str | None, rules.setting_kind] = None
    sash: Length = None
    cloth: Name = None
    colour: Colour = None
    frame: YesOrNo = None
    cornerstones: YesOrNo = None
    cornerstone_cloth: Name = None
    cornerstone_colour: Colour = None
    larger: LengthOrNothing = None


class Finishing(Struct, frozen=True):
    """[finishing]: the stages wanted after the top."""

    stages: Annotated[tuple[str, ...], rules.finishing] = ()


class Fabric(Struct, frozen=True):
    """One [[fabric]] of the units."""

    letter: Annotated[str | None, rules.letter] = None
    name: Name = None
    colour: Colour = None
    squares: Pieces = None
    kind: Annotated[str | None, rules.fabric_kind] = None
    second: Colour = None
    share: Annotated[int | None, rules.share] = None
    value: Annotated[str | None, rules.value_word] = None


class Cloth(Struct, frozen=True):
    """[cloth]: what she chooses about cloth, joins and thread. The keys are those of Choices."""

    usable: Length = None
    margin: LengthOrNothing = None
    binding: Length = None
    binding_ends: LengthOrNothing = None
    joins: Annotated[str | None, rules.joins] = None
    corners: Annotated[str | None, rules.corners] = None
    spool_metres: Metres = None
    bobbin_metres: Metres = None
    own_seam: Length = None


class QuiltFile(Struct, frozen=True):
    """A whole quilt file."""

    name: Name = None
    method: Annotated[str | None, rules.a_name] = None
    method_file: Annotated[str | None, rules.a_file_name] = None
    unit: Annotated[Unit, rules.owner_unit] = Unit.INCH
    seam: Length = None
    trim: Annotated[tuple[Fraction, Fraction] | None, values.across_and_down] = None
    notes: Annotated[str, values.notes] = ""
    squares: Squares | None = None
    strips: Strips | None = None
    more: list[More] = []
    layout: Layout | None = None
    setting: Setting | None = None
    border: list[Border] = []
    finishing: Finishing = Finishing()
    fabric: list[Fabric] = []
    cloth: Cloth = Cloth()


def table_in(kind: Any) -> type[Struct] | None:
    """The model in `Squares`, `Squares | None` or `list[More]`; None where there is none."""
    for part in (kind, *get_args(kind)):
        if isinstance(part, type) and issubclass(part, Struct):
            return part
    return None


def tables_of(model: type[Struct]) -> dict[str, type[Struct]]:
    """The headings of a file, each with the model of its table."""
    return {key.name: table for key in fields(model) if (table := table_in(key.type)) is not None}


def several_of(model: type[Struct]) -> tuple[str, ...]:
    """The headings that may stand in a file more than once."""
    return tuple(key.name for key in fields(model) if get_origin(key.type) is list)


def keys_of(table: type[Struct]) -> tuple[str, ...]:
    """The keys that may stand in `table`."""
    return table.__struct_fields__


def heading(name: str, model: type[Struct] = QuiltFile) -> str:
    """`name` as its heading is written."""
    return f"[[{name}]]" if name in several_of(model) else f"[{name}]"

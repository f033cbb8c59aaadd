"""Several lengths in one line, as a person reads them off the tape."""

import re

from sewalong.lengths.reading import parse
from sewalong.lengths.shared_unit import unit_behind, with_unit
from sewalong.lengths.units import Length, Unit

_METRIC = r"(?i)mm|cm|m|(milli|centi)?met(re|er)s?"
_BETWEEN = r";|,(?!\d)|(?<!\d),"
"""What parts lengths whatever their unit: a comma between two digits may be a decimal comma."""


def parse_several(text: str, unit: Unit = Unit.INCH) -> tuple[Length, ...]:
    """The lengths in `text`, in inches, with commas or semicolons between them.

    A unit behind the last is that of all that have none of their own: "15.9, 16.1 cm". Where
    the unit is metric, a comma between two digits with no space is a decimal comma ("15,9"),
    for it cannot be told from one. Raises `LengthFault` for whatever is no length.
    """
    shared = unit_behind(text)
    parts: list[str] = []
    for part in re.split(_BETWEEN, text):
        own = unit_behind(part) or shared
        metric = re.fullmatch(_METRIC, own) if own else unit is Unit.CM
        parts += [part] if metric else part.split(",")
    parts = [part.strip() for part in parts if part.strip()] or [text]
    return tuple(parse(part, unit) for part in with_unit(parts, shared))

"""Exact lengths: read as people write them, kept as fractions of an inch, rounded when shown.

Standard library only; no clock, disk or terminal.
"""

from sewalong.lengths.across_and_down import parse_across_and_down
from sewalong.lengths.cloth import cloth_length, round_up_cloth
from sewalong.lengths.fault import LengthFault
from sewalong.lengths.printing import as_given, direction, show, show_some, show_stated
from sewalong.lengths.reading import parse, unit_typed
from sewalong.lengths.rounding import Rounding, round_to
from sewalong.lengths.several import parse_several
from sewalong.lengths.units import (
    CENTIMETRE,
    INCH_CM,
    INCH_MM,
    LONGEST,
    METRE,
    MILLIMETRE,
    YARD,
    Length,
    Unit,
    from_cm,
    to_cm,
)

__all__ = [
    "CENTIMETRE",
    "INCH_CM",
    "INCH_MM",
    "LONGEST",
    "METRE",
    "MILLIMETRE",
    "YARD",
    "Length",
    "LengthFault",
    "Rounding",
    "Unit",
    "as_given",
    "cloth_length",
    "direction",
    "from_cm",
    "parse",
    "parse_across_and_down",
    "parse_several",
    "round_to",
    "round_up_cloth",
    "show",
    "show_some",
    "show_stated",
    "to_cm",
    "unit_typed",
]
